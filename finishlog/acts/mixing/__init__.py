"""Cans, jars and mixes."""
