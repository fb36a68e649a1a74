"""The air of rooms, heaters, and the wood and films in it."""
