"""Functions, their derivatives and integrals."""
