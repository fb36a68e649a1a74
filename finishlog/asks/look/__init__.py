"""The shop and its log, read and worked out; who is meant, and how things are put."""
