"""What holds a next step up, or should be heeded: one file a subject."""
