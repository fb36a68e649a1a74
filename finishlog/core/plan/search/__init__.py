"""The planner's search: a compiled shop, decoded on whole minutes, from several starts."""
