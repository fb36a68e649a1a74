"""What there is: projects, parts, products, rooms, hours; and how it is named."""
