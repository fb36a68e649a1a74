"""What hurts whoever does it: by what a thing is, what is done with it, and where."""
