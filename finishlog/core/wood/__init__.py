"""Woods: what each does to a finish, how it moves."""
