"""The log: appended to, and read."""
