"""Which comparison each kind of answer has."""

from collections.abc import Callable, Mapping
from typing import TypeAlias

from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Comparison

Comparer: TypeAlias = Callable[[str, tuple[Answer, ...], Ask], Comparison]
"""The setter's text against the derived answers of one part: agrees, differs, or cannot be told."""

COMPARISONS: Mapping[str, Comparer] = {}
"""By the `kind` of an Answer."""
