"""Compiled code only: arrays and integer codes in, arrays out. Imported by tables and engine alone."""
