"""The state of the whole shop, and what follows from it for parts and evenings."""
