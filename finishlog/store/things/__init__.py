"""What there is: added, changed, put away, read."""
