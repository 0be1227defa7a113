"""Reads a setter's answer into its values: "x = 6, y = 2", "(6; 2)", "3√5 ≈ 6.708", "x = ±4"."""

import re
from dataclasses import dataclass

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression, read_relations
from paperaudit.maths.units import unit_named
from paperaudit.model.expression import Expression, Letter, Measured, Quantity, Relation

LONGEST_ANSWER = 500


@dataclass(frozen=True, slots=True)
class Stated:
    """One value of a stated answer: what it is of (None where unnamed), the value, and a decimal given beside it.

    `relation` holds an answer that is an inequality; `in_order` says that the values came as a pair.
    """

    value: Expression
    of: Expression | None = None
    beside: Expression | None = None
    relation: Relation | None = None
    in_order: bool = False


_PAIR = re.compile(r"[(\[](.*)[)\]]", re.DOTALL)
_NAMED_PAIR = re.compile(r"\(\s*[a-zA-Z]\s*[,;]\s*[a-zA-Z](?:\s*[,;]\s*[a-zA-Z])?\s*\)\s*=\s*(?=\()")
_PARTS = re.compile(r"\s*;\s*|\s*\n\s*|,\s+|\s+(?:and|or)\s+|,(?=\s*[A-Za-z∠]\w*\s*=)")
_COMMA = re.compile(r"\s*,\s*")
_SHARE = re.compile(r"[R$£€₦₹]? ?\d[\d., ]*(?: ?[a-zA-Z°%]+)?$")
"""One of several amounts with colons between them, as shares of a ratio are often written: R270 : R450."""
_SIGN = re.compile(r"[≈≃≅]|=~|~=")
_NUMBER_AND_WORD = re.compile(r"(?P<number>[-−–]?\s?\d[\d\s.,/]*?)\s*(?P<word>[A-Za-z][A-Za-z ]*)")


def read_stated(text: str, count: int, letters: frozenset[str] = frozenset()) -> tuple[Stated, ...]:
    """The values that an answer states, where `count` are expected; a comma then parts two numbers only if it must.

    Raises ExpressionNotRead where some of it is no value.

    >>> [value.of for value in read_stated("x = 6, y = 2", 2)]
    [Letter(name='x'), Letter(name='y')]
    """
    if len(text) > LONGEST_ANSWER:
        raise ExpressionNotRead(f"an answer of more than {LONGEST_ANSWER} characters", LONGEST_ANSWER, "a shorter one")
    trimmed = _NAMED_PAIR.sub("", text.strip().rstrip(".").strip())
    if "±" in trimmed:
        upper, lower = trimmed.replace("±", "+"), trimmed.replace("±", "−")
        return tuple(_one(side.replace("= +", "= ").strip(" +"), letters) for side in (upper, lower))
    pair = _PAIR.fullmatch(trimmed)
    inside = pair[1] if pair and _balanced(pair[1]) else ""
    values = _pieces(inside, count) if inside and count > 1 else []
    if len(values) > 1:
        return tuple(_one(value, letters, in_order=True) for value in values)
    shares = re.split(r"\s*:\s*", trimmed)
    if count > 1 and len(shares) == count and all(map(_SHARE.match, shares)):
        return tuple(_one(share, letters) for share in shares)
    listed = _COMMA.split(trimmed)
    if count > 1 and len(listed) == count and "=" not in trimmed:
        return tuple(_one(piece, letters) for piece in listed)
    try:
        return (_one(trimmed, letters),)
    except ExpressionNotRead:
        pieces = _pieces(inside or trimmed, count)
        if len(pieces) < 2:
            raise
    return tuple(_one(piece, letters, in_order=bool(inside)) for piece in pieces)


def _pieces(text: str, count: int) -> list[str]:
    pieces = [piece for piece in _PARTS.split(text) if piece and piece.strip()]
    if len(pieces) == 1 and count > 1:
        pieces = [piece for piece in _COMMA.split(text) if piece]
    return pieces


def _balanced(inside: str) -> bool:
    depth = 0
    for character in inside:
        depth += (character in "([") - (character in ")]")
        if depth < 0:
            return False
    return depth == 0


def _one(text: str, letters: frozenset[str], in_order: bool = False) -> Stated:
    exact, *approximate = _SIGN.split(text)
    beside = read_expression(approximate[-1], letters) if approximate else None
    if not any(sign in exact for sign in "=<>≤≥≠"):
        value = _value(exact, letters)
        if beside is not None and isinstance(value, Letter | Quantity):
            return Stated(beside, value, None, None, in_order)
        return Stated(value, None, beside, None, in_order)
    relations = read_relations(exact, letters)
    first, last = relations[0], relations[-1]
    if any(relation.sign != "=" for relation in relations):
        return Stated(last.right, first.left, beside, first, in_order)
    if isinstance(last.right, Letter | Quantity) and not isinstance(first.left, Letter | Quantity):
        return Stated(first.left, last.right, beside, None, in_order)
    return Stated(last.right, first.left, beside, None, in_order)


def _value(text: str, letters: frozenset[str]) -> Expression:
    """A value, with a counted thing behind it where that is no unit: 4 bags."""
    try:
        return read_expression(text, letters)
    except ExpressionNotRead:
        counted = _NUMBER_AND_WORD.fullmatch(text.strip())
        if counted is None or unit_named(counted["word"]):
            raise
        return Measured(read_expression(counted["number"], letters), counted["word"])
