"""Figures drawn to scale: coordinates that meet every given, and what they settle of the arrangement."""
