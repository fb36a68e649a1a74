"""The tables, as the migrations make them."""
