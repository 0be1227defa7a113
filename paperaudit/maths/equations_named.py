"""Equations with names, (1), (2), (3) = 2 × (1), and the sheet that they are worked on."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.maths.linear_moves import Style, expression_of_side, flat, share_of
from paperaudit.maths.linear_terms import Side, Term, Unknown, side_of
from paperaudit.maths.measure import unit_of, without_units
from paperaudit.maths.parts import with_parts
from paperaudit.maths.solving import Move, in_decimals
from paperaudit.maths.units import conversion
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    AnswerTo,
    Expression,
    Letter,
    Measured,
    Quantity,
    Relation,
    Sum,
    leaves,
    with_leaves,
)

SystemMove: TypeAlias = Move | Literal["rearrange", "combine", "substitute"]
Values: TypeAlias = dict[Unknown, Fraction]
Sides: TypeAlias = tuple[Side, Side]


@dataclass(frozen=True, slots=True)
class NamedEquation:
    """An equation and what the working calls it: (1), or "(1) in (2)" for one that gets no number."""

    name: str
    relation: Relation

    def sides(self) -> Sides:
        """The terms of both sides, measures in their common unit as bare numbers."""
        left, right = self.relation.left, self.relation.right
        unit = unit_of(Sum((left, right)))
        return side_of(without_units(left, unit)), side_of(without_units(right, unit))

    def shares(self) -> Values:
        """The coefficients of the unknowns with everything taken to the left, noughts left out."""
        left, right = self.sides()
        found = {unknown: share_of(left, unknown) - share_of(right, unknown) for unknown in unknowns_of(self.relation)}
        return {unknown: share for unknown, share in found.items() if share}

    def isolated(self) -> Iterator[tuple[Unknown, Expression]]:
        """An unknown that stands alone on a side, with what it equals: y and 3x − 16."""
        left, right = self.relation.left, self.relation.right
        for alone, rest in ((left, right), (right, left)):
            if isinstance(alone, Letter | Quantity | AnswerTo) and alone not in leaves(rest):
                yield alone, rest


@dataclass(slots=True)
class Sheet:
    """The lines so far, how many equations have a number, and the unit behind constants."""

    lines: list[tuple[str, SystemMove]]
    numbered: int
    unit: str

    def copy(self) -> "Sheet":
        """The same sheet to try a way on."""
        return Sheet(list(self.lines), self.numbered, self.unit)

    def number(self) -> str:
        """The next number for an equation."""
        self.numbered += 1
        return f"({self.numbered})"

    def write(self, name: str, relation: Relation, move: SystemMove) -> None:
        """Add a line, with the name of its equation or of what was done in front."""
        self.lines.append((f"{name}: {write(relation)}" if name else write(relation), move))

    def length(self) -> tuple[int, int, int]:
        """How long the work is: its lines, then its subtractions, then its characters.

        A line that only rearranges counts four times: an unknown that stands alone asks for substitution.
        """
        rearranged = sum(move == "rearrange" for _, move in self.lines)
        subtracted = sum(move == "combine" and ") − (" in text for text, move in self.lines)
        return len(self.lines) + 3 * rearranged, subtracted, sum(len(text) for text, _ in self.lines)

    def style(self, *equations: NamedEquation) -> Style:
        """How numbers are printed in an equation that follows from these."""
        return Style(any(in_decimals(equation.relation, self.unit) for equation in equations), self.unit)


def unknowns_of(relation: Relation) -> tuple[Unknown, ...]:
    """The letters and quantities of a relation, each once, in order of appearance."""
    both = (*leaves(relation.left), *leaves(relation.right))
    return tuple(dict.fromkeys(leaf for leaf in both if isinstance(leaf, Letter | Quantity | AnswerTo)))


def letters_left(sides: Sides, unknowns: tuple[Unknown, ...]) -> Sides:
    """Unknowns in a fixed order on the left, the number on the right."""
    shares = {unknown: share_of(sides[0], unknown) - share_of(sides[1], unknown) for unknown in unknowns}
    constant = share_of(sides[1], None) - share_of(sides[0], None)
    return tuple(Term(share, unknown) for unknown, share in shares.items() if share), (Term(constant),)


def combined(one: Sides, two: Sides, times: Fraction) -> Sides:
    """The first equation and `times` the second, added side by side, not collected."""
    return (
        (*flat(one[0]), *(Term(times * term.coefficient, term.unknown) for term in flat(two[0]))),
        (*flat(one[1]), *(Term(times * term.coefficient, term.unknown) for term in flat(two[1]))),
    )


def relation_of(sides: Sides, style: Style) -> Relation:
    """The equation of two sides."""
    return Relation(expression_of_side(sides[0], style), "=", expression_of_side(sides[1], style))


def in_unit(relation: Relation, unit: str) -> Relation:
    """The relation with its measures in one unit, so that several equations can be worked on together."""

    def change(part: Expression) -> Expression:
        if isinstance(part, Measured) and conversion(part.unit, unit) not in (None, 1):
            return Measured(without_units(part, unit), unit)
        return with_parts(part, change)

    return Relation(change(relation.left), relation.sign, change(relation.right))


def replaced(relation: Relation, values: Mapping[Unknown, Expression]) -> Relation:
    """The relation with unknowns replaced, in brackets where that needs them: 4(1) + y, 3x + 2(x − 1)."""

    def change(leaf: Expression) -> Expression:
        return values.get(leaf, leaf) if isinstance(leaf, Letter | Quantity | AnswerTo) else leaf

    sides = (with_leaves(side, change) for side in (relation.left, relation.right))
    left, right = (Sum(tuple(_terms(side))) if isinstance(side, Sum) else side for side in sides)
    return Relation(left, relation.sign, right)


def _terms(total: Sum) -> Iterator[Expression]:
    """The terms of a sum; one that has become a sum itself needs no brackets."""
    for term in total.terms:
        if isinstance(term, Sum):
            yield from term.terms
        else:
            yield term
