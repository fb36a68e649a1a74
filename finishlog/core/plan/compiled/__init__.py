"""A shop compiled for the search: what the bench says of a task as minutes, lags and spans."""
