"""A data logger's export, read."""
