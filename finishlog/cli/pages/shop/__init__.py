"""Pages of what there is and what is published."""
