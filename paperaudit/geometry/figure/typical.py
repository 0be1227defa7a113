"""How large the lengths and letters of a figure are, as far as its givens tell before it is drawn."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.geometry.coordinates.graded import constant_value
from paperaudit.geometry.coordinates.margins import LETTER_SCALE
from paperaudit.geometry.figure.figure import Balance, Figure, SizeRelation
from paperaudit.geometry.figure.relations import dimension_of
from paperaudit.geometry.figure.sizes import NotLinear
from paperaudit.model.expression import AngleOf, ArcOf, Expression, Letter, leaves, letters_of


def stated_lengths(figure: Figure) -> tuple[float, ...]:
    """The lengths that the givens' numbers stand for, smallest first: √24 for an area of 24; at least one.

    >>> stated_lengths(Figure((), (), (), ()))
    (1.0,)
    """
    found = sorted(length for condition in figure.conditions for length in _lengths(condition) if length > 0)
    return tuple(found) or (1.0,)


def _lengths(condition: object) -> Iterator[float]:
    match condition:
        case SizeRelation(form, "length") if form.constant and form.terms:
            yield abs(float(form.constant)) / max(abs(float(value)) for value in form.terms.values())
        case Balance(left, right):
            for side, other in ((left, right), (right, left)):
                value, power = constant_value(side), _power(other)
                if value is not None and value > 0 and power > 0:
                    yield value ** (1 / power)


def _power(expression: Expression) -> float:
    """The power of a length that an expression is, 0 where it is none."""
    try:
        dimension = dimension_of(expression)
    except NotLinear:
        return 0.0
    return float(dimension) if isinstance(dimension, Fraction) else 0.0


def letter_scales(figure: Figure, unit: float) -> tuple[float, ...]:
    """In units of what each letter is carried: 40 where it stands for degrees, else the typical length."""
    about_angles = {letter for condition in figure.conditions for letter in _angular(condition)}
    about_lengths = {letter for condition in figure.conditions for letter in _linear(condition)}
    return tuple(
        LETTER_SCALE if letter in about_angles or letter not in about_lengths else unit for letter in figure.letters
    )


def _angular(condition: object) -> tuple[str, ...]:
    match condition:
        case SizeRelation(form, "angle"):
            return tuple(key.name for key in form.terms if isinstance(key, Letter))
        case Balance(left, right) if any(isinstance(leaf, AngleOf | ArcOf) for leaf in (*leaves(left), *leaves(right))):
            return letters_of(left) + letters_of(right)
    return ()


def _linear(condition: object) -> tuple[str, ...]:
    match condition:
        case SizeRelation(form, "length"):
            return tuple(key.name for key in form.terms if isinstance(key, Letter))
        case Balance(left, right):
            return letters_of(left) + letters_of(right)
    return ()
