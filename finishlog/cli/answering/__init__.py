"""What a command has at hand, asks for, and answers with."""
