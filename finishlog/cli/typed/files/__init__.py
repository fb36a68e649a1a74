"""Files and labels as people write them."""
