"""Lays a figure out for print: its proportions, how it is turned, its marks, and where every letter goes."""
