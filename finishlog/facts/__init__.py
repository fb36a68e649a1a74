"""Published figures as data, each with its source; read by load.py."""
