"""What the wood under a coat says: its kind, its water, what was put into it."""
