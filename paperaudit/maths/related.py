"""Turns the parse tree of a relation, or of a chain of them, into the relations of the model."""

from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    Expression,
    Measured,
    Number,
    NumberForm,
    Relation,
    RelationSign,
    parts_of,
)

SIGNS: dict[str, RelationSign] = {"=": "=", "≠": "≠", "<": "<", ">": ">", "≤": "≤", "≥": "≥"}


def relations_of(node: Node) -> tuple[Relation, ...]:
    """The relations of a `relation`, one between each two neighbours of the chain."""
    sides = [expression_of(side) for side in every(node, "expression")]
    signs = [SIGNS[sign.text] for sign in every(node, "sign")]
    return tuple(related(left, sign, right) for (left, right), sign in zip(pairwise(sides), signs, strict=True))


def related(left: Expression, sign: RelationSign, right: Expression) -> Relation:
    """The relation of two sides; R1 = 40° is an angle at R, not a sum of money."""
    if _in_degrees(right):
        left = angle_not_money(left)
    if _in_degrees(left):
        right = angle_not_money(right)
    return Relation(left, sign, right)


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
