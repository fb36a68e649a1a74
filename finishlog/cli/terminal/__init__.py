"""What a person sees and is asked: pages, pipes, terminals."""
