"""Random command lines against one shop, and random words against every reader of words."""
