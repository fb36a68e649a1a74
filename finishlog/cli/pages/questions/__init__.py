"""Pages of the questions."""
