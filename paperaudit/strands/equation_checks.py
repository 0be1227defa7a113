"""The second way for equations: exact evaluation of both sides, with nothing taken from the lines."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import product
from typing import Literal

from paperaudit.errors import ExpressionNotRead, NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.linear import Elimination, LinearForm
from paperaudit.maths.measure import unit_of, without_units
from paperaudit.maths.parse import read_relation
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Relation, letters_of
from paperaudit.strands.finishing import ChecksDisagree

SUBSTITUTED = "put back into every equation: both sides have the same exact value"
EVALUATED = "evaluated exactly at enough points to settle an expression of the first degree"


def difference(relation: Relation, values: Mapping[str, Fraction], unit: str = "") -> Fraction:
    """Left side minus right side for these values of the letters, measures in `unit`; raises NoValue if it has none."""
    own = unit_of(relation.left) or unit_of(relation.right)
    common = unit if own and unit else own
    left, right = (rational_value(without_units(side, common), values) for side in (relation.left, relation.right))
    if left is None or right is None:
        raise NoValue(f"a side of {write(relation)} is irrational")
    return left - right


def confirm_values(
    relations: Sequence[Relation], values: Mapping[str, Fraction], unit: str = ""
) -> dict[str, Fraction]:
    """The values, in `unit`, must satisfy every equation and be the only ones; raises ChecksDisagree.

    Letters without a value here get the one that the equations leave them; all values are returned.
    """
    letters = tuple(dict.fromkeys([*values, *(name for relation in relations for name in letters_in(relation))]))
    rows = _rows(relations, letters, unit)
    everything = rows.solved(letters) if rows is not None else {}
    if any(letter not in everything or everything[letter] != value for letter, value in values.items()):
        raise ChecksDisagree("the equations, taken at points, give other values or none")
    for relation in relations:
        if everything.keys() >= set(letters_in(relation)) and difference(relation, everything, unit):
            raise ChecksDisagree(f"the values found do not satisfy {write(relation)}")
    return everything


def solutions(relations: Sequence[Relation], letters: Sequence[str], unit: str = "") -> Literal["one", "none", "all"]:
    """How many solutions linear equations have, from their values at points alone.

    Raises ChecksDisagree where a value shows that an equation is not linear after all.
    """
    rows = _rows(relations, letters, unit)
    if rows is None:
        return "none"
    return "one" if len(rows.solved(letters)) == len(letters) else "all"


def letters_in(relation: Relation) -> tuple[str, ...]:
    """The letters of both sides, each once."""
    return tuple(dict.fromkeys((*letters_of(relation.left), *letters_of(relation.right))))


def _rows(relations: Sequence[Relation], letters: Sequence[str], unit: str) -> Elimination[str, int] | None:
    """The equations as rows in the letters, or None where they clash."""
    rows: Elimination[str, int] = Elimination()
    for number, relation in enumerate(relations):
        if rows.add(form_at_points(relation, letters, unit), number) is not None:
            return None
    return rows


def form_at_points(relation: Relation, letters: Sequence[str], unit: str = "") -> LinearForm[str]:
    """Left side minus right side as a linear form, its coefficients taken from values at points."""
    origin = {letter: Fraction(0) for letter in letters}
    constant = difference(relation, origin, unit)
    shares = {letter: difference(relation, {**origin, letter: Fraction(1)}, unit) - constant for letter in letters}
    elsewhere = {letter: Fraction(2 * place + 3, place + 2) for place, letter in enumerate(letters)}
    predicted = constant + sum((shares[letter] * elsewhere[letter] for letter in letters), Fraction(0))
    if difference(relation, elsewhere, unit) != predicted:
        raise ChecksDisagree(f"{write(relation)} is not linear")
    return LinearForm(shares, constant)


def confirm_lines(lines: Sequence[str], values: Mapping[str, Fraction], unit: str = "") -> None:
    """Every line, read back as a pupil's text, must hold for the values; raises ChecksDisagree.

    A line that the parser does not read, or that still has another letter, is left aside.
    """
    for line in lines:
        text = line.rpartition(": ")[2]
        try:
            relation = read_relation(text, frozenset(values))
            if difference(relation, values, unit):
                raise ChecksDisagree(f"the line {line} does not hold for the values found")
        except (ExpressionNotRead, NoValue):
            continue


def confirm_same(lines: Sequence[Expression], letters: Sequence[str]) -> None:
    """Every line must have the first one's value at points that settle the first degree; raises ChecksDisagree."""
    for point in _points(letters):
        expected = rational_value(lines[0], point)
        for line in lines[1:]:
            if rational_value(line, point) != expected:
                raise ChecksDisagree(f"{write(line)} is not {write(lines[0])}")


def _points(letters: Sequence[str]) -> Iterator[dict[str, Fraction]]:
    """The corners of a unit cube in up to four letters, else the unit points, and one point inside."""
    if len(letters) <= 4:
        for corner in product((0, 1), repeat=len(letters)):
            yield dict(zip(letters, map(Fraction, corner), strict=True))
    for chosen in letters:
        yield {letter: Fraction(int(letter == chosen)) for letter in letters}
    yield {letter: Fraction(2 * place + 3, place + 2) for place, letter in enumerate(letters)}
