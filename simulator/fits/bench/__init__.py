"""The plain holes on which levels are measured, the published figures, and the measuring."""
