"""The verdict on a zone, on its edges, and in another room."""
