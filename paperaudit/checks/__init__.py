"""One file a fault that a paper can have, named by the fault."""
