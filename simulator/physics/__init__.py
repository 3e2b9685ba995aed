"""Air, ball, ground and greens: constants and formulas with their sources."""
