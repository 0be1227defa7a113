"""Sines, cosines and tangents rewritten by the identities of school."""
