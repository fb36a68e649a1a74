"""Complete a command that is being typed."""
