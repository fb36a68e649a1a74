"""The verbs that record: one file a verb."""
