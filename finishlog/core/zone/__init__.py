"""One zone's whole state, the answers about it, and zones that stand alike."""
