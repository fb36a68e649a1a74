"""What is published: the one set of facts, each a value with its source."""
