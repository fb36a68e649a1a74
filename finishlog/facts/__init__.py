"""Published figures: the files under data, their reader, and the same compiled for a start."""
