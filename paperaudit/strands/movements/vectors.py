"""Sums and multiples of vectors, their lengths, whether two are parallel."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.exact import exact_expression
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.coordinates_task import PlanePoint
from paperaudit.model.derivation import Answer, Derivation, Derived, Outcome
from paperaudit.model.expression import Root
from paperaudit.model.movement_task import OfVectors, Vector, VectorsParallel
from paperaudit.model.reading import Reading
from paperaudit.strands.finishing import answer_of, finished
from paperaudit.strands.numbers.working import Working, exact, require
from paperaudit.strands.plane.places import fraction_text, in_brackets, pair_text, placed

SKILL = "vectors"
_CLOSE = Decimal("1e-20")


def of_vectors(task: OfVectors, reading: Reading) -> Outcome:
    """A sum of multiples of vectors, or its length."""
    working = Working(SKILL)
    x, y = (exact(task.own[0]), exact(task.own[1])) if task.own is not None else _summed(task, reading, working)
    if task.what == "vector":
        text = pair_text(x, y)
        return working.derived(Answer(text, kind="vector"), confirmed_by="the components added in another order")
    squares = x * x + y * y
    value = Surd.root(squares)
    length = exact_expression(value if value.fraction is None else value.fraction)
    working.say(f"length = √({in_brackets(x)}² + {in_brackets(y)}²)")
    under, worked = write(Root(whole_or_fraction(squares))), write(length)
    working.say(f"= {under}" if under == worked else f"= {under} = {worked}", worked)
    decimal = value.to_decimal()
    require(abs(decimal * decimal - Decimal(squares.numerator) / squares.denominator) < _CLOSE * 10**6, "the length")
    assert reading.ask is not None
    steps = tuple(working.steps)
    answer = answer_of(length)
    if reading.ask.accuracy is not None:
        answer, more = finished(length, reading.ask, steps[-1].statement)
        steps = (*steps, *more)
    return Derived((answer,), (Derivation(steps, "squared again to sixty figures", working.used),))


def _summed(task: OfVectors, reading: Reading, working: Working) -> tuple[Fraction, Fraction]:
    found = [(exact(share), *_components(name, reading)) for share, name in task.terms]
    working.used = tuple(dict.fromkeys(text for *_, texts in found for text in texts))
    for _, name in task.terms:
        _say_between(name, reading, working)
    for scaled in (False, True):
        shown = _as_sum([(k, x, y) for k, x, y, _ in found], scaled)
        if len(found) > 1 or not scaled:
            _say_new(shown, working)
    x = sum((k * x for k, x, _, _ in found), Fraction(0))
    y = sum((k * y for k, _, y, _ in found), Fraction(0))
    if not working.steps or not working.steps[-1].statement.endswith(pair_text(x, y)):
        working.say(f"= {pair_text(x, y)}", pair_text(x, y))
    again = (Fraction(0), Fraction(0))
    for k, one, other, _ in reversed(found):
        again = (again[0] + one * k, again[1] + other * k)
    require(again == (x, y), "the sum of the vectors")
    return x, y


def _say_new(shown: str, working: Working) -> None:
    last = working.steps[-1].statement if working.steps else ""
    if shown != last.removeprefix("= "):
        working.say(f"= {shown}" if last else shown, shown)


def _as_sum(terms: list[tuple[Fraction, Fraction, Fraction]], scaled: bool) -> str:
    """Multiples of vectors as they are written: 2(3, 1) − (2, −4), or worked out: (6, 2) − (2, −4)."""
    said = ""
    for k, x, y in terms:
        size = abs(k)
        many = (
            "" if size == 1 or scaled else fraction_text(size) if size.denominator == 1 else f"({fraction_text(size)})"
        )
        pair = pair_text(size * x, size * y) if scaled else pair_text(x, y)
        sign = (" − " if said else "−") if k < 0 else (" + " if said else "")
        said += f"{sign}{many}{pair}"
    return said


def _say_between(name: str, reading: Reading, working: Working) -> None:
    """The line to a vector from one point to another: AB = (4 − 1, 6 − 2)."""
    if len(name) != 2 or any(
        isinstance(fact, Vector) and fact.name == name for given in reading.givens for fact in given.facts
    ):
        return
    one, other = (placed(PlanePoint(letter), reading) for letter in name)
    across, up = (f"{fraction_text(end)} − {in_brackets(start)}" for start, end in ((one.x, other.x), (one.y, other.y)))
    working.say(f"{name} = ({across}, {up})", "")


def _components(name: str, reading: Reading) -> tuple[Fraction, Fraction, tuple[str, ...]]:
    """The components of a vector that a given states, or of one from a point to another."""
    known = [(fact, given) for given in reading.givens for fact in given.facts
             if isinstance(fact, Vector) and fact.name == name]  # fmt: skip
    if len(known) == 1:
        vector, given = known[0]
        return exact(vector.x), exact(vector.y), (given.text,)
    if known or len(name) != 2:
        raise NoValue(f"the vector {name} is not given, or more than once")
    one, other = (placed(PlanePoint(letter), reading) for letter in name)
    return other.x - one.x, other.y - one.y, (*one.texts, *other.texts)


def parallel(task: VectorsParallel, reading: Reading) -> Outcome:
    """Whether two vectors are parallel, or at right angles."""
    (a, b), (c, d) = ((exact(x), exact(y)) for x, y in (task.first, task.second))
    if not (a or b) or not (c or d):
        raise NoValue("the direction of a vector of length 0")
    working = Working(SKILL)
    if task.at_right_angles:
        value = a * c + b * d
        working.say(
            f"{in_brackets(a)} × {in_brackets(c)} + {in_brackets(b)} × {in_brackets(d)} = {fraction_text(value)}"
        )
        yes = value == 0
        require(yes == ((a + c) ** 2 + (b + d) ** 2 == a * a + b * b + c * c + d * d), "the directions")
    else:
        value = a * d - b * c
        working.say(
            f"{in_brackets(a)} × {in_brackets(d)} − {in_brackets(b)} × {in_brackets(c)} = {fraction_text(value)}"
        )
        yes = value == 0
        share = c / a if a else d / b
        require(yes == ((a * share, b * share) == (c, d)), "the directions")
    word = "perpendicular" if task.at_right_angles else "parallel"
    working.conclude(f"the vectors are {'' if yes else 'not '}{word}", "yes" if yes else "no")
    return working.derived(Answer("yes" if yes else "no"), confirmed_by="by Pythagoras' theorem or by a multiple")
