"""What the shop knows and how it reasons: values in, values out; standard library only."""
