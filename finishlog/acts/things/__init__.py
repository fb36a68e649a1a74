"""Put on record what there is, change it, put it away."""
