"""From a derivation to marks: the allocation of a part's marks to its lines."""
