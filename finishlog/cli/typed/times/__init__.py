"""Times as people type them."""
