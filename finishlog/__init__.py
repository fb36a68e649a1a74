"""finishlog: a finishing schedule and project log for a one-person furniture shop."""

__version__ = "0.1.0"
