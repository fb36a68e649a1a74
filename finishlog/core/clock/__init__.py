"""The drying clock: label hours over the air that a piece met."""
