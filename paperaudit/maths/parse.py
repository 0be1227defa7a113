"""Reads expressions and relations as teachers type them, by a grammar; nothing is ever evaluated."""

from collections.abc import Callable
from typing import TypeVar

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.limits import check_limits
from paperaudit.maths.notation import Commas, read_notation
from paperaudit.maths.peg import parsed
from paperaudit.maths.related import relations_of
from paperaudit.maths.terms import expression_of
from paperaudit.model.expression import Expression, Relation

Value = TypeVar("Value")


def read_expression(text: str, letters: frozenset[str] = frozenset(), commas: Commas = "") -> Expression:
    """The expression that a text stands for.

    `letters` are unknowns of the paper that look like units; `commas` says what the comma of 12,500 is
    where the paper lets that be known, else such a number is refused as doubtful.
    Raises ExpressionNotRead with the offset in `text`.

    >>> read_expression("xy")
    Product(factors=(Letter(name='x'), Letter(name='y')), sign='')
    """
    return _read(text, "expression", letters, commas, expression_of)


def read_relation(text: str, letters: frozenset[str] = frozenset(), commas: Commas = "") -> Relation:
    """The one relation that a text states. Raises ExpressionNotRead, for a chain a = b = c too."""
    relations = read_relations(text, letters, commas)
    if len(relations) > 1:
        raise ExpressionNotRead(f"{text.strip()} is more than one relation", 0, "one sign, as in AB = AC")
    return relations[0]


def read_relations(text: str, letters: frozenset[str] = frozenset(), commas: Commas = "") -> tuple[Relation, ...]:
    """The relations of a chain, each between neighbours: a = b = c is a = b and b = c."""
    return _read(text, "relation", letters, commas, relations_of)


def _read(text: str, rule: str, letters: frozenset[str], commas: Commas, value_of: Callable[[Node], Value]) -> Value:
    check_limits(text)
    notation = read_notation(text, letters, commas=commas)
    try:
        return value_of(parsed(expression_grammar(), rule, notation.text))
    except ExpressionNotRead as error:
        message = str(error) or f"{_shortened(text)} is not {_NAMES[rule]}"
        expected = error.expected or _EXPECTED[rule]
        raise ExpressionNotRead(message, notation.offset(error.start), expected) from None


_NAMES = {"expression": "an expression", "relation": "a relation"}
_EXPECTED = {"expression": "a number, a letter or a quantity such as ∠ABC", "relation": "a relation such as x = 5"}


def _shortened(text: str) -> str:
    trimmed = text.strip()
    return trimmed if len(trimmed) <= 60 else f"{trimmed[:57]}…"
