"""The terminal: parse what was typed, print what came back."""
