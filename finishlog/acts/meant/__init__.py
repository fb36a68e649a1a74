"""What the words of an act mean."""
