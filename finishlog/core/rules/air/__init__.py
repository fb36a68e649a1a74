"""What the air says to a coat, and what burns in it."""
