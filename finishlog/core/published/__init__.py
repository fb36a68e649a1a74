"""What the reasoning asks of the published facts."""
