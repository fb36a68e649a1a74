"""Where pieces are, and what is said of them."""
