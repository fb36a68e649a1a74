"""What the film itself says to a next step: its clocks, what it met, what was found on it."""
