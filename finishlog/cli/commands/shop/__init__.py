"""Commands of what there is."""
