"""The questions of the evening."""
