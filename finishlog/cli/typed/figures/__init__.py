"""Numbers and measured quantities as people type them."""
