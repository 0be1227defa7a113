"""Turns the parse tree of a relation, or of a chain of them, into the relations of the model."""

from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every
from paperaudit.maths.units import unit_named
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    ArcLengthOf,
    ArcOf,
    Expression,
    Measured,
    Negative,
    Number,
    NumberForm,
    Relation,
    RelationSign,
    Sum,
    parts_of,
    with_leaves,
)

SIGNS: dict[str, RelationSign] = {"=": "=", "≠": "≠", "<": "<", ">": ">", "≤": "≤", "≥": "≥"}


def relations_of(node: Node) -> tuple[Relation, ...]:
    """The relations of a `relation`, one between each two neighbours of the chain."""
    sides = [expression_of(side) for side in every(node, "expression")]
    signs = [SIGNS[sign.text] for sign in every(node, "sign")]
    return tuple(related(left, sign, right) for (left, right), sign in zip(pairwise(sides), signs, strict=True))


def related(left: Expression, sign: RelationSign, right: Expression) -> Relation:
    """The relation of two sides; R1 = 40° is an angle at R, not a sum of money, and arc AB = 5 cm the arc's length."""
    if _in_degrees(right):
        left = angle_not_money(left)
    if _in_degrees(left):
        right = angle_not_money(right)
    if _in_lengths(right):
        left = with_leaves(left, _as_length)
    if _in_lengths(left):
        right = with_leaves(right, _as_length)
    return Relation(left, sign, right)


def _as_length(leaf: Expression) -> Expression:
    return ArcLengthOf(leaf) if isinstance(leaf, ArcOf) else leaf


def _in_lengths(expression: Expression) -> bool:
    """Whether an amount in a unit of length stands in an expression, outside a product with other sizes."""
    match expression:
        case Measured(_, name):
            unit = unit_named(name)
            return unit is not None and unit.dimension == "length"
        case ArcLengthOf():
            return True
        case Sum(terms):
            return any(_in_lengths(term) for term in terms)
        case Negative(operand):
            return _in_lengths(operand)
        case _:
            return False


def angle_not_money(expression: Expression) -> Expression:
    """R1 as the angle at R with the number 1; anything else as it is."""
    match expression:
        case Measured(Number(value, NumberForm.INTEGER), "R") if value.denominator == 1 and 0 < value < 10:
            return AngleAt("R", int(value))
        case _:
            return expression


def _in_degrees(expression: Expression) -> bool:
    match expression:
        case Measured(_, "°") | AngleOf() | AngleAt():
            return True
        case _:
            return any(_in_degrees(part) for part in parts_of(expression))
