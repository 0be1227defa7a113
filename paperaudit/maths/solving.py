"""Linear equations in one unknown, solved in the lines that a pupil writes."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import lcm
from typing import Literal, TypeAlias

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.linear_moves import (
    Style,
    collect,
    expand_innermost,
    expression_of_side,
    flat,
    has_brackets,
    scaled,
    share_of,
)
from paperaudit.maths.linear_terms import Bracket, NotLinear, Side, Term, Unknown, needs_working, side_of
from paperaudit.maths.measure import unit_of, without_units
from paperaudit.maths.number_forms import decimal_places
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Letter,
    Measured,
    Number,
    NumberForm,
    Relation,
    Sum,
    leaves,
    letters_of,
    parts_of,
)

Move: TypeAlias = Literal["given", "work out", "expand", "multiply", "collect", "letters", "numbers", "divide"]
Outcome: TypeAlias = Fraction | Literal["none", "all"]

MAX_LINES = 40


@dataclass(frozen=True, slots=True)
class LinearSolution:
    """The lines from the equation to the unknown's value, each with the move that led to it.

    `lines[0]` is the equation as given. `value` is "none" where the last line is false (1 = 3), "all"
    where it holds for every number (0 = 0).
    """

    lines: tuple[str, ...]
    moves: tuple[Move, ...]
    value: Outcome


def solve_linear(relation: Relation, unknown: str | Unknown, unit: str = "") -> LinearSolution:
    """Solve an equation of the first degree for a letter or a quantity, in a pupil's lines.

    `unit` is put behind every constant (`5x + 40° = 180°`); measures in other units are brought to it.
    Raises NotLinear (another unknown, a second degree, an inequality), NoValue, UnitClash and
    BudgetExceeded.

    >>> from paperaudit.maths.parse import read_relation
    >>> solve_linear(read_relation("5x + 40 = 180"), "x", "°").lines
    ('5x + 40° = 180°', '5x = 140°', 'x = 28°')
    """
    key: Unknown = Letter(unknown) if isinstance(unknown, str) else unknown
    working = Working.of(relation, unit)
    for other in working.unknowns():
        if other != key and working.share(other):
            raise NotLinear(f"{write(other)} as well as {write(key)}")
    working.simplify()
    return working.finish(key)


class Working:
    """An equation being solved: its two sides, and the lines so far."""

    def __init__(self, sides: tuple[Side, Side], style: Style, first: Relation) -> None:
        self.sides = sides
        self.style = style
        self.relations: list[tuple[Relation, Move]] = [(first, "given")]
        self.multiplied_by = Fraction(1)

    @staticmethod
    def of(relation: Relation, unit: str = "") -> "Working":
        """The equation as given; products of numbers in it are worked out in a second line."""
        if relation.sign != "=":
            raise NotLinear(f"the inequality {write(relation)}" if relation.sign != "≠" else "a ≠ sign")
        common = unit or unit_of(Sum((relation.left, relation.right)))
        left, right = without_units(relation.left, common), without_units(relation.right, common)
        style = Style(in_decimals(relation, unit), unit)
        working = Working((side_of(left), side_of(right)), style, _first_line(relation, left, right, style))
        if needs_working(left) or needs_working(right):
            working.write("work out")
        return working

    def unknowns(self) -> tuple[Unknown, ...]:
        """Every unknown that stands on either side."""
        found = (term.unknown for side in self.sides for term in flat(side))
        return tuple(dict.fromkeys(unknown for unknown in found if unknown is not None))

    def share(self, unknown: Unknown) -> Fraction:
        """How often an unknown is left with everything taken to the left side."""
        return share_of(self.sides[0], unknown) - share_of(self.sides[1], unknown)

    def write(self, move: Move) -> None:
        """Add the equation as it stands as a line, unless that is the line already there."""
        left, right = (expression_of_side(side, self.style) for side in self.sides)
        relation = Relation(left, "=", right)
        if write(relation) != write(self.relations[-1][0]):
            self.relations.append((relation, move))
        if len(self.relations) > MAX_LINES:
            raise BudgetExceeded("an equation that takes dozens of lines")

    def set(self, left: Side, right: Side, move: Move) -> None:
        """Put new sides in place and write the line."""
        if (left, right) != self.sides:
            self.sides = left, right
            self.write(move)

    def simplify(self) -> None:
        """Multiply out, clear fractions and decimals, collect like terms, until one line of terms is left."""
        while True:
            if factor := self._common_multiple():
                self.multiplied_by *= factor
                self.set(scaled(self.sides[0], factor), scaled(self.sides[1], factor), "multiply")
            elif has_brackets(self.sides):
                self.set(expand_innermost(self.sides[0]), expand_innermost(self.sides[1]), "expand")
            else:
                self.set(collect(self.sides[0]), collect(self.sides[1]), "collect")
                return
            if _collects_inside(self.sides):
                self.set(collect(self.sides[0]), collect(self.sides[1]), "collect")

    def _common_multiple(self) -> Fraction | None:
        """What both sides are multiplied by to clear fractions before a letter or bracket, if by anything."""
        if _expands_to_whole(self.sides):
            return None
        leading = [_factor(term) for side in self.sides for term in side if _leads(term)]
        if all(factor.denominator == 1 for factor in leading):
            return None
        everything = [_factor(term) for side in self.sides for term in side]
        if self.style.decimals and all(decimal_places(factor) is not None for factor in everything):
            return Fraction(10 ** max(decimal_places(factor) or 0 for factor in everything))
        return Fraction(lcm(*(factor.denominator for factor in everything)))

    def finish(self, unknown: Unknown) -> LinearSolution:
        """Collect the unknown on the side where it has more, the numbers on the other, and divide."""
        for other in self.unknowns():
            if other != unknown:
                # It stands on both sides alike, or the equation would not be in one unknown.
                self._take(other, away_from=1, move="letters")
        shares = [share_of(side, unknown) for side in self.sides]
        on = 0 if not shares[1] or (shares[0] and shares[0] >= shares[1]) else 1
        if shares[1 - on] and not share_of(self.sides[1 - on], None):
            # 8y − 14 = y goes by 8y = y + 14, so that no side is left empty.
            self._take(None, away_from=on, move="numbers")
        self._take(unknown, away_from=1 - on, move="letters")
        share = share_of(self.sides[on], unknown)
        if not share:
            return self._solution("all" if share_of(self.sides[0], None) == share_of(self.sides[1], None) else "none")
        self._take(None, away_from=on, move="numbers")
        value = share_of(self.sides[1 - on], None) / share
        last = self.relations[-1][1]
        self.sides = (Term(Fraction(1), unknown),), (Term(value),)
        self.write("divide" if share != 1 else last)
        return self._solution(value)

    def _take(self, unknown: Unknown | None, away_from: int, move: Move) -> None:
        """Take the unknown's term, or the number, from one side to the other."""
        share = share_of(self.sides[away_from], unknown)
        if share:
            left, right = (collect((*side, Term(-share, unknown))) for side in self.sides)
            self.set(left, right, move)

    def _solution(self, value: Outcome) -> LinearSolution:
        texts = tuple(write(relation) for relation, _ in self.relations)
        return LinearSolution(texts, tuple(move for _, move in self.relations), value)


def unit_of_constants(*relations: Relation) -> str:
    """The unit that the constants of equations carry; "" where letters stand inside a measure: (2x + 10)°.

    Raises UnitClash where a relation has measures of different kinds.
    """
    sides = [side for relation in relations for side in (relation.left, relation.right)]
    if any(letters_of(measured) for side in sides for measured in _measures(side)):
        return ""
    return unit_of(Sum(tuple(sides)))


def _measures(expression: Expression) -> Iterator[Measured]:
    if isinstance(expression, Measured):
        yield expression
    for part in parts_of(expression):
        yield from _measures(part)


def _first_line(relation: Relation, left: Expression, right: Expression, style: Style) -> Relation:
    """The equation as given, or with the unit behind its constants where they were written without."""
    if not style.unit or (left, right) != (relation.left, relation.right):
        return relation
    return Relation(expression_of_side(side_of(left), style), "=", expression_of_side(side_of(right), style))


def in_decimals(relation: Relation, unit: str = "") -> bool:
    """Whether an equation's lines are written in decimals: it has some, or measures, and no fractions."""
    numbers = [leaf for side in (relation.left, relation.right) for leaf in leaves(side) if isinstance(leaf, Number)]
    forms = {number.form for number in numbers}
    decimal = bool(unit or forms & {NumberForm.DECIMAL, NumberForm.PERCENT})
    return decimal and not forms & {NumberForm.FRACTION, NumberForm.MIXED}


def _leads(term: Term | Bracket) -> bool:
    return isinstance(term, Bracket) or term.unknown is not None


def _factor(term: Term | Bracket) -> Fraction:
    return term.coefficient if isinstance(term, Term) else term.factor


def _expands_to_whole(sides: Iterable[Side]) -> bool:
    """Whether a bracket is there and multiplying out leaves no fraction or decimal before a letter."""
    terms = [term for side in sides for term in side]
    brackets = [term for term in terms if isinstance(term, Bracket)]
    rest = all(_factor(term).denominator == 1 for term in terms if _leads(term) and not isinstance(term, Bracket))
    return bool(brackets) and rest and all(term.coefficient.denominator == 1 for term in flat(tuple(brackets)))


def _collects_inside(sides: Iterable[Side]) -> bool:
    """Whether a bracket has like terms that are collected before it is multiplied out in its turn."""
    return any(isinstance(term, Bracket) and collect(term.inside) != term.inside for side in sides for term in side)
