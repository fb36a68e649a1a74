"""Commands that answer."""
