"""Reads exam English and notation into typed facts and asks."""

from paperaudit.wording.asking import read_ask
from paperaudit.wording.fact_words import fact_text
from paperaudit.wording.reading import read
from paperaudit.wording.statement import read_statement

__all__ = ["fact_text", "read", "read_ask", "read_statement"]
