"""What happened: the log as values, and how its times are shown."""
