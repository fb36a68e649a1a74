"""What may burn, and oily rags."""
