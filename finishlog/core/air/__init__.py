"""The air of a room: what it is, what was read, what is usual."""
