"""Values of expressions in sines, cosines and tangents at angles, in floating point, for confirming."""

from collections.abc import Iterator, Mapping
from math import cos, isfinite, radians, sin, tan

from paperaudit.errors import NoValue
from paperaudit.maths.near import float_value
from paperaudit.model.expression import Expression, Function, letters_of, parts_of

CLOSE = 1e-9
"""Two values that differ by a smaller share are the same."""
_RATIOS = {"sin": sin, "cos": cos, "tan": tan}
_ANGLES = (17.0, 41.5, 64.25, 113.0, 158.75, 203.5, 251.0, 322.25)
_LARGEST = 1e6


def angle_letters(expression: Expression) -> tuple[str, ...]:
    """The letters of an expression, those of the arguments of its functions too, π left out."""
    names = list(letters_of(expression))
    if isinstance(expression, Function):
        names.extend(letters_of(expression.argument))
    for part in parts_of(expression):
        names.extend(angle_letters(part))
    return tuple(name for name in dict.fromkeys(names) if name != "π")


def measured(expression: Expression, degrees: Mapping[str, float]) -> float | None:
    """The value with so many degrees for each letter, None where there is none."""
    try:
        value = float_value(expression, degrees, _RATIOS, radians)
    except (NoValue, ZeroDivisionError, OverflowError):
        return None
    return value if isinstance(value, float | int) and isfinite(value) and abs(value) < _LARGEST else None


def apart(one: Expression, other: Expression) -> Mapping[str, float] | None:
    """Angles at which the two have different values; None where they agree at all that were tried.

    Raises NoValue where there are fewer than three angles at which both have a value.
    """
    compared = 0
    for degrees in _assignments((*angle_letters(one), *angle_letters(other))):
        left, right = measured(one, degrees), measured(other, degrees)
        if left is None or right is None:
            continue
        if abs(left - right) > CLOSE * max(1.0, abs(left), abs(right)):
            return degrees
        compared += 1
    if compared < (3 if angle_letters(one) or angle_letters(other) else 1):
        raise NoValue("there are no angles at which both have a value")
    return None


def _assignments(names: tuple[str, ...]) -> Iterator[dict[str, float]]:
    letters = tuple(dict.fromkeys(names))
    for place in range(len(_ANGLES)):
        yield {name: _ANGLES[(place + 3 * at) % len(_ANGLES)] for at, name in enumerate(letters)}
