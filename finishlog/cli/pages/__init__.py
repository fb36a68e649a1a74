"""Answers laid out."""
