"""An act as it was recorded, and what to heed about it."""
