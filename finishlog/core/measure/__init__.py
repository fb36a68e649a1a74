"""Units, and measured quantities inside a sentence."""
