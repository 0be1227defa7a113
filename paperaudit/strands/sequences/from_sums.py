"""Terms of a series from the formula of its sums: Tₙ = Sₙ − Sₙ₋₁."""

from fractions import Fraction
from itertools import pairwise

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.powers import PowerSum, power_sum, put_in
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Expression, Letter, Negative, Number, Sum
from paperaudit.model.sequence_task import OfSequence
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.substitution import substituted

_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_SHIFT = PowerSum({Fraction(1): Fraction(1), Fraction(0): Fraction(-1)})
_MOST_TERMS, _FURTHEST = 12, 5_000
_ADDED = "the terms added one by one"


def from_sums(task: OfSequence, sums: Expression, used: tuple[str, ...]) -> Outcome:
    """A term, the first terms, the formula of the terms or a sum of a series by the formula of its sums."""
    total = power_sum(sums, "n")
    if total.share(0) or any(exponent.denominator > 1 or exponent < 0 for exponent in total.terms):
        raise NoValue(f"Sₙ = {write(sums)} is not that of a polynomial without a constant")
    working = Working("series", used)
    formula = total - _shifted(total)
    match task.what:
        case "sum":
            return _sum(sums, total, formula, task.count, working)
        case "term":
            return _term(sums, total, formula, task.count, working)
        case "first":
            return _first(sums, total, formula, task.count, working)
        case "nth term":
            return _formula(sums, total, formula, working)
        case "step" if formula.degree <= 1:
            one, second = (_say_term(sums, total, place, working) for place in (1, 2))
            value = second - one
            working.say(f"d = {_text(second)} − {_bracketed(one)} = {_text(value)}", _text(value))
            require(all(b - a == value for a, b in pairwise(map(formula.value, range(1, 9)))), "the difference")
            return working.derived(Answer(_text(value), whole_or_fraction(value)), confirmed_by=_ADDED)
    raise NoValue(f"the {task.what} from the formula of the sums")


def _shifted(total: PowerSum) -> PowerSum:
    """The sum of one term fewer: n − 1 in place of n."""
    found = PowerSum({})
    for exponent, share in total.terms.items():
        found = found + _SHIFT.power(int(exponent)).scaled(share)
    return found


def _text(value: Fraction) -> str:
    return write(whole_or_fraction(value))


def _bracketed(value: Fraction) -> str:
    return f"({_text(value)})" if value < 0 else _text(value)


def _low(count: int) -> str:
    return str(count).translate(_LOWERED)


def _added(formula: PowerSum, total: PowerSum, count: int) -> None:
    """The terms of the formula, added one by one, make the sums."""
    if not 0 < count <= _FURTHEST:
        raise NoValue("a term so far along")
    require(sum(map(formula.value, range(1, count + 1)), Fraction(0)) == total.value(count), f"S{_low(count)}")


def _sum(sums: Expression, total: PowerSum, formula: PowerSum, count: int, working: Working) -> Outcome:
    value = total.value(count)
    _added(formula, total, count)
    _say_sum(sums, count, value, working)
    return working.derived(Answer(_text(value), whole_or_fraction(value)), confirmed_by=_ADDED)


def _term(sums: Expression, total: PowerSum, formula: PowerSum, count: int, working: Working) -> Outcome:
    value = _say_term(sums, total, count, working)
    _added(formula, total, count)
    require(formula.value(count) == value, f"T{_low(count)}")
    return working.derived(Answer(_text(value), whole_or_fraction(value)), confirmed_by=_ADDED)


def _say_term(sums: Expression, total: PowerSum, count: int, working: Working) -> Fraction:
    whole, before = total.value(count), total.value(count - 1)
    said = {step.statement for step in working.steps}
    if not any(one.startswith(f"S{_low(count - 1)} = ") for one in said) and count > 1:
        _say_sum(sums, count - 1, before, working)
    _say_sum(sums, count, whole, working)
    if count == 1:
        working.say(f"T₁ = S₁ = {_text(whole)}", _text(whole))
        return whole
    value = whole - before
    name = f"T{_low(count)} = S{_low(count)} − S{_low(count - 1)}"
    working.say(f"{name} = {_text(whole)} − {_bracketed(before)} = {_text(value)}", _text(value))
    return value


def _say_sum(sums: Expression, count: int, value: Fraction, working: Working) -> None:
    put = write(substituted(sums, {"n": Number(Fraction(count))}))
    working.say(f"S{_low(count)} = {put} = {_text(value)}", _text(value))


def _first(sums: Expression, total: PowerSum, formula: PowerSum, count: int, working: Working) -> Outcome:
    if not 0 < count <= _MOST_TERMS:
        raise NoValue("a list of so many terms")
    found = [_say_term(sums, total, place, working) for place in range(1, count + 1)]
    require(found == [formula.value(place) for place in range(1, count + 1)], "the first terms")
    only = whole_or_fraction(found[0]) if count == 1 else None
    text = ", ".join(map(_text, found))
    return working.derived(Answer(text, only, kind="" if only else "numbers in order"), confirmed_by=_ADDED)


def _formula(sums: Expression, total: PowerSum, formula: PowerSum, working: Working) -> Outcome:
    before = _shifted(total)
    working.say("Tₙ = Sₙ − Sₙ₋₁")
    spelled = write(put_in(sums, "n", Sum((Letter("n"), Negative(Number(Fraction(1)))))))
    working.say(f"= {write(sums)} − [{spelled}]")
    working.say(f"= {write(sums)} − ({before.text('n')})")
    text = formula.text("n")
    working.say(f"= {text}", text)
    for count in (1, 2, 3, 7, 20):
        _added(formula, total, count)
    return working.derived(Answer(text, formula.expression("n"), kind="nth term"), confirmed_by=_ADDED)
