"""Exact numbers and expressions: reading, writing, comparing, solving in lines."""
