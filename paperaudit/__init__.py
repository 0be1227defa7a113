"""Audits a mathematics test before it goes to print, and writes its mark scheme and workbooks."""

__version__ = "0.1.0"
