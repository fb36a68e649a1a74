"""What there is, and what is published of it."""
