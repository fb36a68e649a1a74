"""Commands that log."""
