"""How fast films dry here, learnt from their checks."""
