"""The questions that are answered: one file a question."""
