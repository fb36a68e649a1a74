"""What people type, read."""
