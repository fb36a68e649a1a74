"""Cans, jars and mixes: what is in them, and how each stands."""
