"""Pages of what was logged, and of the evening."""
