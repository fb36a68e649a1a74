"""Coats, work, checks, faults, and what came off."""
