"""Correct the log visibly."""
