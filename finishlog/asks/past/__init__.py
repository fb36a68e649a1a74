"""What was done before."""
