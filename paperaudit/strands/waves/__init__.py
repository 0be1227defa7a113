"""Sines, cosines and tangents beyond triangles."""
