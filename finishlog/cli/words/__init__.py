"""What a finding says: the words of every rule, by its id; the only place where they stand."""
