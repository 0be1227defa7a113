"""Distances, mid-points and gradients of points whose coordinates have roots: (√2, 3) and (3√2, 1)."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import exact_expression, exact_value, rational_value
from paperaudit.maths.postfix import decimal_value
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.coordinates_task import OfPoints
from paperaudit.model.derivation import Answer, Derivation, Derived
from paperaudit.model.expression import Expression, Negative, Number, Power, Quotient, Root, Sum
from paperaudit.model.reading import Reading
from paperaudit.strands.finishing import answer_of, finished
from paperaudit.strands.numbers.working import Working, require, with_givens
from paperaudit.strands.plane.places import pair_text, stated_point

SKILL = "coordinates"
_CLOSE = Decimal("1e-40")
_TWO = Number(Fraction(2))


@dataclass(frozen=True, slots=True)
class _Exact:
    """A point by its coordinates as they are written."""

    x: Expression
    y: Expression
    texts: tuple[str, ...]


def has_roots(task: OfPoints, reading: Reading) -> bool:
    """Whether both points are known and some coordinate is irrational."""
    if task.what not in ("distance", "mid-point", "gradient") or len(task.points) != 2:
        return False
    try:
        return any(rational_value(side) is None for one in _points(task, reading) for side in (one.x, one.y))
    except NoValue:
        return False


def of_surd_points(task: OfPoints, reading: Reading, ask: Ask) -> Derived:
    """The distance, mid-point or gradient, exact and worked out again in decimals."""
    a, b = _points(task, reading)
    working = Working(SKILL, tuple(dict.fromkeys((*a.texts, *b.texts))))
    if task.what == "mid-point":
        return _middle(a, b, working)
    if task.what == "gradient":
        return _gradient(a, b, working)
    return _distance(a, b, working, ask)


def _points(task: OfPoints, reading: Reading) -> list[_Exact]:
    found = []
    for point in task.points:
        stated, texts = stated_point(point, reading)
        assert stated.x is not None and stated.y is not None
        (x, first), (y, second) = with_givens(stated.x, reading), with_givens(stated.y, reading)
        found.append(_Exact(x, y, (*texts, *first, *second)))
    return found


def _less(one: Expression, other: Expression) -> Expression:
    return Sum((one, Negative(other)))


def _worked(expression: Expression) -> Expression:
    """The exact value as it is written, beside the value in decimals."""
    value = exact_expression(exact_value(expression))
    require(abs(decimal_value(value) - decimal_value(expression)) < _CLOSE, write(expression))
    return value


def _middle(a: _Exact, b: _Exact, working: Working) -> Derived:
    halves = [Quotient(Sum((one, other)), _TWO) for one, other in ((a.x, b.x), (a.y, b.y))]
    working.say(f"mid-point = ({', '.join(map(write, halves))})")
    x, y = map(_worked, halves)
    text = pair_text(x, y)
    working.say(f"= {text}", text)
    for start, middle, end in ((a.x, x, b.x), (a.y, y, b.y)):
        gap = decimal_value(_less(middle, start)) - decimal_value(_less(end, middle))
        require(abs(gap) < _CLOSE, "the mid-point")
    return working.derived(Answer(text, kind="points"), confirmed_by="as far from one end as from the other")


def _gradient(a: _Exact, b: _Exact, working: Working) -> Derived:
    across, up = _less(b.x, a.x), _less(b.y, a.y)
    if not decimal_value(across):
        raise NoValue("a vertical line has no gradient")
    working.say(f"m = {write(Quotient(up, across))}")
    value = _worked(Quotient(_worked(up), _worked(across)))
    working.say(f"= {write(value)}", write(value))
    step = decimal_value(a.y) + decimal_value(value) * (decimal_value(b.x) - decimal_value(a.x))
    require(abs(step - decimal_value(b.y)) < _CLOSE, "the gradient")
    return working.derived(answer_of(value), confirmed_by="from the first point the gradient leads to the second")


def _distance(a: _Exact, b: _Exact, working: Working, ask: Ask) -> Derived:
    across, up = _less(b.x, a.x), _less(b.y, a.y)
    working.say(f"d = {write(Root(Sum((Power(across, _TWO), Power(up, _TWO)))))}")
    squares = [_worked(Power(_worked(one), _TWO)) for one in (across, up)]
    working.say(f"= {write(Root(Sum(tuple(squares))))}")
    total = exact_expression(exact_value(Sum(tuple(squares))))
    if rational_value(total) is None:
        raise NoValue("a root of a root")
    value = _worked(Root(total))
    under = write(Root(total))
    working.say(f"= {under}" if under == write(value) else f"= {under} = {write(value)}", write(value))
    # |b − a|² = |a|² + |b|² − 2ab, without the differences of the lines.
    (p, q), (r, s) = ((decimal_value(one.x), decimal_value(one.y)) for one in (a, b))
    size = decimal_value(value)
    require(abs(size * size - (p * p + q * q + r * r + s * s - 2 * (p * r + q * s))) < _CLOSE, "the distance")
    steps = tuple(working.steps)
    answer = answer_of(value)
    if ask.accuracy is not None:
        answer, more = finished(value, ask, steps[-1].statement)
        steps = (*steps, *more)
    return Derived((answer,), (Derivation(steps, "from the coordinates in decimals", working.used),))
