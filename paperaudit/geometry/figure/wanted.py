"""What a part asks of a figure, and the coordinates that go with an answer."""

from dataclasses import dataclass

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import HIDDEN, Size
from paperaudit.geometry.figure.sizes import NotLinear, linear_form
from paperaudit.maths.linear import LinearForm
from paperaudit.model.derivation import Position
from paperaudit.model.expression import Expression


@dataclass(frozen=True, slots=True)
class Wanted:
    """One thing asked for: its expression with angles resolved, and its form."""

    expression: Expression
    form: LinearForm[Size]
    linear: bool = True


def wanted_of(item: Expression, unit: str) -> Wanted:
    """What is asked for as a linear form, or as an expression alone."""
    try:
        return Wanted(item, linear_form(item, unit))
    except NotLinear:
        return Wanted(item, LinearForm(), linear=False)


def positions(arrangement: Arrangement) -> tuple[Position, ...]:
    """The drawing's coordinates, rounded so that the same paper gives the same bytes."""
    return tuple(
        (point, round(x, 9), round(y, 9)) for point, (x, y) in arrangement.at.items() if not point.startswith(HIDDEN)
    )
