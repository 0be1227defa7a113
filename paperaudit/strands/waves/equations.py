"""Trigonometric equations that come down to one sine, cosine or tangent, between bounds or in general."""

from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction
from math import ceil, floor

from paperaudit.errors import NoValue
from paperaudit.maths.approximate import to_decimal
from paperaudit.maths.exact import PI, ExactValue, NotSurd, exact_expression, exact_value, rational_value
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.postfix import decimal_value
from paperaudit.maths.powers import PowerSum, power_sum
from paperaudit.maths.rounding import accuracy_text, round_to
from paperaudit.maths.trig.angles import functions_in
from paperaudit.maths.trig.radians import multiple_of_pi
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import (
    Expression,
    Function,
    Letter,
    Measured,
    Negative,
    Number,
    NumberForm,
    Relation,
    Sum,
)
from paperaudit.model.reading import Reading
from paperaudit.model.trig_task import SolveTrig
from paperaudit.strands.numbers.working import Working, exact, require
from paperaudit.strands.waves.scanned import CLOSE, apart, confirm_angles
from paperaudit.strands.waves.single_ratio import ratio_values, say_to_values

SKILL = "trigonometric equations"
_MOST = 60
_LARGEST_DENOMINATOR = 10**6
_SHOWN = 4
Name = str


def solve(task: SolveTrig, reading: Reading) -> Outcome:
    """The angles that satisfy the equation, in degrees, or the general solution."""
    assert reading.ask is not None
    working = Working(SKILL)
    if task.radians:
        working.say("π is 180°", "")
    name, times, shift, values = _one_ratio(task.relation, task.letter, working)
    if task.low is None or task.high is None:
        return _general(task, name, times, shift, values, working, reading.ask)
    low, high = exact(task.low), exact(task.high)
    found: list[Fraction] = []
    for value in values:
        found.extend(_angles(task, name, times, shift, value, (low, high), working, reading.ask, len(values) > 1))
    inside = sorted({angle for angle in found if _is_inside(angle, low, high, task)})
    confirm_angles(task, inside, (low, high))
    if not inside:
        working.conclude("there is no solution between the bounds", "no solution")
        return working.derived(Answer("no solution"), confirmed_by=_SCANNED)
    if task.radians:
        return _in_radians(task, inside, working, reading.ask)
    answers = tuple(_answer(angle, task.letter, reading.ask) for angle in inside)
    text = _rounded(" or ".join(answer.text for answer in answers), inside, reading.ask)
    if working.steps[-1].statement != text:
        working.conclude(text, text)
    return working.derived(*answers, confirmed_by=_SCANNED)


def _rounded(text: str, angles: Iterable[Fraction], ask: Ask) -> str:
    """The line of the solutions, which says to what it is rounded: x ≈ 72.5° or x ≈ 287.5° (to 1 decimal place)."""
    if ask.accuracy is None or all(map(_is_exact, angles)):
        return text
    return f"{text.replace(' = ', ' ≈ ')} (to {accuracy_text(ask.accuracy)})"


def _in_radians(task: SolveTrig, angles: list[Fraction], working: Working, ask: Ask) -> Outcome:
    """The angles as multiples of π, or as decimals to the accuracy asked for."""
    answers = []
    for angle in angles:
        size = multiple_of_pi(angle) if _is_exact(angle) else _decimal_radians(angle)
        if ask.accuracy is not None:
            size = round_to(_decimal_radians(angle).value, ask.accuracy, "")
        answers.append(Answer(f"{task.letter} = {write(size)}", size, task.letter))
    text = " or ".join(answer.text for answer in answers)
    working.conclude(f"in radians: {text}", text)
    return working.derived(*answers, confirmed_by=_SCANNED)


def _decimal_radians(degrees: Fraction) -> Number:
    return Number(degrees / 180 * Fraction(to_decimal(Letter(PI))))


_SCANNED = "put into the equation, and the changes of sign between the bounds counted"


def _is_inside(angle: Fraction, low: Fraction, high: Fraction, task: SolveTrig) -> bool:
    value = Fraction(angle)
    return (low < value or (not task.open_low and value == low)) and (
        value < high or (not task.open_high and value == high)
    )


def _answer(angle: Fraction, letter: str, ask: Ask) -> Answer:
    if _is_exact(angle):
        size = Measured(as_decimal(angle) or whole_or_fraction(angle), "°")
        return Answer(f"{letter} = {write(size)}", size, letter)
    assert ask.accuracy is not None
    size = Measured(round_to(angle, ask.accuracy, "°"), "°")
    return Answer(f"{letter} = {write(size)}", size, letter)


def _one_ratio(
    relation: Relation, letter: str, working: Working
) -> tuple[Name, Fraction, Fraction, tuple[ExactValue, ...]]:
    """The function, kx + c inside it, and the values that it must have; raises NotSurd for other equations."""
    ratios = {*functions_in(relation.left), *functions_in(relation.right)}
    working.say(write(relation))
    if len(ratios) == 2 and {ratio.name for ratio in ratios} == {"sin", "cos"}:
        return _as_tangent(relation, ratios, letter, working)
    ratio, values = ratio_values(relation, letter)
    inside = _inside(ratio, letter)
    if values:
        say_to_values(relation, write(ratio), "t" if letter == "u" else "u", working)
    said = " or ".join(f"{write(ratio)} = {write(exact_expression(value))}" for value in values)
    if not values:
        raise NoValue("the equation in the function has no real solution")
    if said != write(relation):
        working.say(said, said)
    return ratio.name, inside.share(1), inside.share(0), values


def _as_tangent(
    relation: Relation, ratios: set[Function], letter: str, working: Working
) -> tuple[Name, Fraction, Fraction, tuple[ExactValue, ...]]:
    """a sin x = b cos x as tan x = b/a."""
    one, other = sorted(ratios, key=lambda ratio: ratio.name)
    if one.argument != other.argument:
        raise NotSurd("functions of different angles")
    whole = Sum((relation.left, Negative(relation.right)))
    at_one = [rational_value(_with_ratios(whole, shares)) for shares in ((0, 0), (1, 0), (0, 1), (1, 1), (2, 3))]
    nought, cosine, sine, both, checked = (value if value is not None else Fraction(0) for value in at_one)
    if None in at_one or nought or both != cosine + sine or not sine or not cosine:
        raise NotSurd("an equation in sine and cosine that is not a sin x = b cos x")
    if checked != 2 * cosine + 3 * sine:
        raise NotSurd("an equation in sine and cosine that is not a sin x = b cos x")
    value = -cosine / sine
    inside = _inside(one, letter)
    tangent = write(Function("tan", one.argument))
    working.say(f"{tangent} = {write(whole_or_fraction(value))}", tangent)
    return "tan", inside.share(1), inside.share(0), (value,)


def _with_ratios(expression: Expression, shares: tuple[int, int]) -> Expression:
    if isinstance(expression, Function):
        return Number(Fraction(shares[0] if expression.name == "cos" else shares[1]))
    return with_parts(expression, lambda part: _with_ratios(part, shares))


def _inside(ratio: Function, letter: str) -> PowerSum:
    argument = _bare(ratio.argument)
    form = power_sum(argument, letter)
    if ratio.name not in ("sin", "cos", "tan") or form.degree != 1 or not form.is_polynomial:
        raise NotSurd("an angle that is not of the first degree in the letter")
    return form


def _bare(expression: Expression) -> Expression:
    """An angle without its signs for degrees."""
    if isinstance(expression, Measured) and expression.unit == "°":
        return expression.amount
    return with_parts(expression, _bare)


def _first_angle(name: Name, value: ExactValue, working: Working, ask: Ask) -> Fraction | None:
    """The angle that the calculator gives, exact where it is a special one; None where there is none."""
    size = exact_expression(value)
    number = Decimal(0) + (value.to_decimal() if not isinstance(value, Fraction) else _decimal(value))
    if name != "tan" and abs(number) > 1:
        working.say(f"{name} lies between −1 and 1, and {write(size)} does not: no angle")
        return None
    turned = -value if name != "cos" else value
    for degrees in range(0, 91 if name != "cos" else 181, 15):
        try:
            special = exact_value(Function(name, Number(Fraction(degrees))))  # type: ignore[arg-type]
            if special in (value, turned):
                return Fraction(degrees if special == value else -degrees)
        except (NoValue, NotSurd):
            continue
    if ask.accuracy is None:
        raise NoValue(
            f"an angle that is no whole number of degrees, and no accuracy is asked for: {name} = {write(size)}"
        )
    return Fraction(decimal_value(Function(f"{name}⁻¹", size)))  # type: ignore[arg-type]


def _is_exact(angle: Fraction) -> bool:
    """Whether an angle is exact: one from a calculator has dozens of decimals here."""
    return angle.denominator < _LARGEST_DENOMINATOR


def _decimal(value: Fraction) -> Decimal:
    return Decimal(value.numerator) / Decimal(value.denominator)


def _families(name: Name, first: Fraction) -> tuple[tuple[Fraction, int], ...]:
    """The angles with the same value, each with its period: x, 180° − x; x, −x; x."""
    if name == "tan":
        return ((first, 180),)
    other = 180 - first if name == "sin" else -first
    return ((first, 360),) if (other - first) % 360 == 0 else ((first, 360), (other, 360))


def _angles(
    task: SolveTrig,
    name: Name,
    times: Fraction,
    shift: Fraction,
    value: ExactValue,
    bounds: tuple[Fraction, Fraction],
    working: Working,
    ask: Ask,
    several: bool,
) -> list[Fraction]:
    """The angles for one value, with the lines to them."""
    first = _first_angle(name, value, working, ask)
    if first is None:
        return []
    inner = PowerSum({Fraction(1): times, Fraction(0): shift})
    low, high = sorted((inner.value(bounds[0]), inner.value(bounds[1])))
    found: list[Fraction] = []
    for base, period in _families(name, first):
        start, stop = ceil((low - base) / period), floor((high - base) / period)
        if stop - start > _MOST:
            raise NoValue("dozens of angles")
        found.extend(base + period * turn for turn in range(start, stop + 1))
    found.sort()
    said = _linear_text(times, shift, task.letter)
    if found and (several or times != 1 or shift or not all(map(_is_exact, found))):
        before = f"{name} {said} = {write(exact_expression(value))}: " if several else ""
        working.say(f"{before}{said} = {' or '.join(map(_degrees, found))}")
    return [(angle - shift) / times for angle in found]


def _linear_text(times: Fraction, shift: Fraction, letter: str) -> str:
    text = PowerSum({Fraction(1): times, Fraction(0): shift}).text(letter)
    return f"{text}°" if shift else text


def _degrees(angle: Fraction) -> str:
    """The angle as it is written, one from a calculator with its first four decimals: 72.5423…°."""
    if _is_exact(angle):
        return write(Measured(as_decimal(angle) or whole_or_fraction(angle), "°"))
    cut = Fraction((abs(angle) * 10**_SHOWN).__floor__(), 10**_SHOWN)
    return f"{write(Number(-cut if angle < 0 else cut, NumberForm.DECIMAL, _SHOWN))}…°"


def _general(
    task: SolveTrig,
    name: Name,
    times: Fraction,
    shift: Fraction,
    values: tuple[ExactValue, ...],
    working: Working,
    ask: Ask,
) -> Outcome:
    """x = a + k·360° and so on, k a whole number."""
    families: list[str] = []
    starts: list[Fraction] = []
    said = _linear_text(times, shift, task.letter)
    for value in values:
        first = _first_angle(name, value, working, ask)
        if first is None:
            continue
        for base, period in _families(name, first):
            if len(values) > 1 or times != 1 or shift or not _is_exact(base):
                before = f"{name} {said} = {write(exact_expression(value))}: " if len(values) > 1 else ""
                working.say(f"{before}{said} = {_degrees(base)} + k × {period}°")
            start = (base - shift) / times
            for turn in (-1, 0, 2):
                angle = float(start) + turn * period / float(times)
                require(abs(apart(task, angle)) < CLOSE, "the general solution")
            step = _degrees(Fraction(period) / abs(times))
            starts.append(start)
            families.append(f"{task.letter} = {_degrees_short(start, ask)} + k × {step}")
    if not families:
        raise NoValue("the equation has no solution")
    text = " or ".join(families)
    working.conclude(f"{_rounded(text, starts, ask)}, k a whole number", text)
    return working.derived(Answer(text, kind="general solution"), confirmed_by="three angles of each family put in")


def _degrees_short(angle: Fraction, ask: Ask) -> str:
    if _is_exact(angle):
        return _degrees(angle)
    assert ask.accuracy is not None
    return write(Measured(round_to(angle, ask.accuracy, "°"), "°"))
