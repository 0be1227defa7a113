"""Domain and range of functions."""

from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.intervals import EVERYTHING, Interval, Intervals, both, end_size, text_of
from paperaudit.maths.exact import NotSurd, exact_expression, rational_value
from paperaudit.maths.near import near_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.plane_curves import decimal_of, zeros
from paperaudit.maths.polynomial import algebraic_fraction
from paperaudit.maths.powers import NotPowers, PowerSum, power_sum
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import (
    Expression,
    Negative,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    letters_of,
    parts_of,
)
from paperaudit.model.function_task import Function
from paperaudit.model.graph_task import DomainOf
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.signs import by_signs
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.functions.formulas import defined, formula_of, label
from paperaudit.strands.functions.values import in_one
from paperaudit.strands.numbers.working import require

SKILL = "graphs of functions"
_FAR = (Fraction(10**4), Fraction(-(10**4)), Fraction(10**6), Fraction(-(10**6)))
_NEAR = Decimal("0.02")
_LARGE = Decimal(100)


def domain_of(task: DomainOf, reading: Reading) -> Outcome:
    """The domain, the range or both, with the lines that find them."""
    function, used = defined(task.function, reading)
    if {*letters_of(formula_of(function))} - {function.letter}:
        raise NotSurd("a function with other letters in it")
    working = Working(SKILL, used)
    name = "y" if function.name in ("y", "") else label(function)
    found: list[str] = []
    domain = _domain(formula_of(function), function.letter, working)
    if task.what != "range":
        found.append(_domain_text(domain, function.letter))
        _confirm_domain(function, domain)
    else:
        working = Working(SKILL, used)
    if task.what != "domain":
        taken = _range(function, domain, working)
        found.append(text_of(taken, "y"))
        _confirm_range(function, domain, taken)
    if task.what == "domain and range":
        text = f"domain: {found[0]}; range: {found[1]}"
        working.conclude(text, text)
        return working.derived(Answer(text, letter=function.letter, kind="domain and range"), confirmed_by=_SAMPLED)
    (text,) = found
    working.conclude(f"{task.what}{f' of {name}' if name != 'y' else ''}: {text}", text)
    letter = function.letter if task.what == "domain" else "y"
    return working.derived(Answer(text, letter=letter, kind="domain"), confirmed_by=_SAMPLED)


def _domain_text(domain: Intervals, letter: str) -> str:
    """x ≠ −2 and x ≠ 2 where single numbers are left out."""
    left_out = [one.high for one in domain[:-1] if one.high is not None]
    alone = domain[0].low is None and domain[-1].high is None and all(
        one.high == other.low for one, other in pairwise(domain)
    )  # fmt: skip
    if alone and len(left_out) > 1:
        return " and ".join(f"{letter} ≠ {write(end)}" for end in left_out)
    return text_of(domain, letter)


_SAMPLED = "values of the function at two hundred numbers, far out and close to the ends"


def _domain(expression: Expression, letter: str, working: Working) -> Intervals:
    """The numbers for which every root and quotient has a value."""
    found = EVERYTHING
    for part in _restricting(expression, letter):
        if isinstance(part, Root):
            form = power_sum(part.radicand, letter)
            working.say(f"{form.text(letter)} ≥ 0")
            ends = tuple(map(exact_expression, zeros(form)))
            own = by_signs(ends, (), "≥", letter, form.value, working) if form.degree > 1 else _half_line(form)
            found = both(found, own)
        elif isinstance(part, Quotient):
            form = power_sum(part.denominator, letter)
            ends = tuple(map(exact_expression, zeros(form)))
            working.say(f"{form.text(letter)} ≠ 0")
            for end in ends:
                found = both(found, (Interval(None, end), Interval(end, None)))
    return found


def _half_line(form: PowerSum) -> Intervals:
    end = whole_or_fraction(-form.share(0) / form.share(1))
    return (Interval(end, None, True, False) if form.share(1) > 0 else Interval(None, end, False, True),)


def _restricting(expression: Expression, letter: str) -> list[Expression]:
    own: list[Expression] = [expression] if isinstance(expression, Root) and expression.degree % 2 == 0 else []
    if isinstance(expression, Quotient) and letter in letters_of(expression.denominator):
        own = [expression]
    if isinstance(expression, Power) and letter in letters_of(expression.exponent):
        base = rational_value(expression.base) if not letters_of(expression.base) else None
        if base is None or base <= 0:
            raise NotSurd("a power with the letter in its base and its exponent")
    elif isinstance(expression, Power) and letter in letters_of(expression.base):
        exponent = rational_value(expression.exponent)
        if exponent is None or exponent.denominator != 1 or exponent < 0:
            raise NotSurd("a root or a quotient written as a power")
    own = [part for part in own if letter in letters_of(part)]
    return [*own, *(one for part in parts_of(expression) for one in _restricting(part, letter))]


def _range(function: Function, domain: Intervals, working: Working) -> Intervals:
    """The values that the function takes, for the kinds of functions of school."""
    formula, x = formula_of(function), function.letter
    try:
        return _of_polynomial(power_sum(formula, x), x, working)
    except NotPowers:
        pass
    single = _one_special(formula, x)
    if single is not None:
        special, a, q = single
        closed = isinstance(special, Root)
        what = write(special)
        working.say(f"{what} {'≥' if closed else '>'} 0, so {write(formula)} {_sign(a, closed)} {_number(q)}")
        end = whole_or_fraction(q)
        return (Interval(end, None, closed, False) if a > 0 else Interval(None, end, False, closed),)
    whole = algebraic_fraction(formula)
    above, below = in_one(whole.above, x), in_one(whole.below, x)
    if below.degree != 1 or above.degree > 1 or not above.value(-below.share(0) / below.share(1)):
        raise NotSurd("the range of such a function")
    q = above.share(1) / below.share(1)
    working.say(f"for large {x}, y comes close to {_number(q)} and is never {_number(q)}")
    end = whole_or_fraction(q)
    return (Interval(None, end), Interval(end, None))


def _sign(a: Fraction, closed: bool) -> str:
    return ("≥" if closed else ">") if a > 0 else ("≤" if closed else "<")


def _number(value: Fraction) -> str:
    return write(whole_or_fraction(value))


def _of_polynomial(form: PowerSum, letter: str, working: Working) -> Intervals:
    if not form.is_polynomial:
        raise NotPowers("no polynomial")
    if not form.degree:
        end = whole_or_fraction(form.share(0))
        return (Interval(end, end, True, True),)
    if form.degree % 2:
        working.say("a polynomial of odd degree takes every value")
        return EVERYTHING
    if form.degree != 2:
        return _by_turning_values(form, letter, working)
    a, b = form.share(2), form.share(1)
    place = -b / (2 * a)
    height = form.value(place)
    kind = "least" if a > 0 else "greatest"
    working.say(f"{letter} = −b/(2a) = {_number(place)}: {kind} value y = {_number(height)}", _number(height))
    end = whole_or_fraction(height)
    return (Interval(end, None, True, False) if a > 0 else Interval(None, end, False, True),)


def _by_turning_values(form: PowerSum, letter: str, working: Working) -> Intervals:
    """A polynomial of an even degree, from the lowest or the highest of its turning values on."""
    slope = form.derivative()
    places = zeros(slope)
    working.say(f"dy/d{letter} = {slope.text(letter)} = 0")
    working.say(" or ".join(f"{letter} = {write(exact_expression(place))}" for place in places))
    heights = [form.at(exact_expression(place), letter) for place in places]
    for place, height in zip(places, heights, strict=True):
        working.say(f"{letter} = {write(exact_expression(place))}: y = {write(exact_expression(height))}")
    least = form.share(int(form.degree)) > 0
    end = (min if least else max)(heights, key=decimal_of)
    text = write(exact_expression(end))
    working.say(f"the {'least' if least else 'greatest'} value is {text}", text)
    size = exact_expression(end)
    return (Interval(size, None, True, False) if least else Interval(None, size, False, True),)


def _one_special(formula: Expression, letter: str) -> tuple[Expression, Fraction, Fraction] | None:
    """a·√(…) + q or a·bˣ + q: the root or the power with its a and q."""
    terms = formula.terms if isinstance(formula, Sum) else (formula,)
    special: tuple[Expression, Fraction] | None = None
    q = Fraction(0)
    for term in terms:
        if letter not in letters_of(term):
            value = rational_value(term)
            if value is None:
                return None
            q += value
            continue
        sign = Fraction(1)
        while isinstance(term, Negative):
            term, sign = term.operand, -sign
        factors = term.factors if isinstance(term, Product) else (term,)
        numbers = [rational_value(factor) for factor in factors if letter not in letters_of(factor)]
        others = [factor for factor in factors if letter in letters_of(factor)]
        if special is not None or len(others) != 1 or None in numbers or not _is_special(others[0], letter):
            return None
        for number in numbers:
            sign *= number or Fraction(0)
        special = (others[0], sign)
    return None if special is None else (special[0], special[1], q)


def _is_special(part: Expression, letter: str) -> bool:
    """A square root or a power of a number whose inside is of the first degree in the letter."""
    inside = part.radicand if isinstance(part, Root) else part.exponent if isinstance(part, Power) else None
    if inside is None or (isinstance(part, Power) and letters_of(part.base)):
        return False
    if isinstance(part, Root) and part.degree != 2:
        return False
    try:
        form = power_sum(inside, letter)
    except NotPowers:
        return False
    return form.is_polynomial and form.degree == 1


def _samples(function: Function, domain: Intervals) -> list[Decimal]:
    """Values of the function at many numbers, at and near the ends of its domain too."""
    found = []
    ends = [size for one in domain for end in (one.low, one.high) if (size := end_size(end)) is not None]
    near = [end + step for end in ends for step in (Fraction(0), Fraction(1, 10**4), Fraction(-1, 10**4))]
    for number in (*(Fraction(place, 16) + Fraction(1, 997) for place in range(-320, 321)), *_integers(), *near, *_FAR):
        try:
            found.append(near_value(formula_of(function), {function.letter: number}))
        except (NoValue, BudgetExceeded):
            continue
    return found


def _integers() -> list[Fraction]:
    return [Fraction(place, 2) for place in range(-40, 41)]


def _confirm_domain(function: Function, domain: Intervals) -> None:
    for number in (*_integers(), *(Fraction(place, 3) for place in range(-30, 31))):
        inside = any(interval.holds(number) for interval in domain)
        try:
            near_value(formula_of(function), {function.letter: number})
            has_value = True
        except NoValue:
            has_value = False
        require(inside == has_value, "the domain")


def _confirm_range(function: Function, domain: Intervals, taken: Intervals) -> None:
    """No value outside, values close to every end, and large ones where there is no end."""
    values = _samples(function, domain)
    require(len(values) > 20, "the range, for which there are too few values")
    for value in values:
        size = Fraction(value).limit_denominator(10**15)
        spread = [interval for interval in taken if _holds_nearly(interval, size)]
        require(bool(spread), "the range")
    for interval in taken:
        for end, far in ((interval.low, min(values)), (interval.high, max(values))):
            limit = end_size(end)
            if limit is None:
                require(abs(far) > _LARGE, "the range, which has an end")
            else:
                place = Decimal(limit.numerator) / Decimal(limit.denominator)
                require(min(abs(value - place) for value in values) < _NEAR * 5, "an end of the range")


def _holds_nearly(interval: Interval, size: Fraction) -> bool:
    slack = Fraction(1, 10**12)
    low, high = end_size(interval.low), end_size(interval.high)
    return (low is None or size > low - slack) and (high is None or size < high + slack)
