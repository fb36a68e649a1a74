"""A film on a zone: its layers, checks, faults and damage."""
