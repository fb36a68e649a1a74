"""Generic finishes: the stages of a film, classes, rate laws, what goes over what."""
