"""Simple and compound interest, straight-line and reducing-balance depreciation."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.units import MONEY, conversion
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Expression, Measured, Number, NumberForm
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.amounts_worked import size_of
from paperaudit.strands.ratios.ending import ended
from paperaudit.strands.ratios.laws import Known, Law, apply, chain

_LETTERS = {"principal": "P", "interest": "I", "final": "A", "rate": "i", "time": "n", "loss": "I"}
LAWS: dict[str, tuple[Law, ...]] = {
    "simple interest": (Law("I = P i n"), Law("A = P + I")),
    "compound interest": (Law("A = P(1 + i)ⁿ"), Law("I = A − P")),
    "straight-line depreciation": (Law("A = P(1 − i n)"), Law("I = P − A")),
    "reducing-balance depreciation": (Law("A = P(1 − i)ⁿ"), Law("I = P − A")),
}
"""By the kind of growth."""
PERIODS = {"yearly": 1, "half-yearly": 2, "quarterly": 4, "monthly": 12, "weekly": 52, "daily": 365}
_MOST_PERIODS = 400


def interest(task: Reckoning, reading: Reading) -> Derived:
    """The wanted amounts of an investment, a loan or a thing that loses value; simulated period by period."""
    assert reading.ask is not None
    working = Working("interest", tuple(given.text for given in reading.givens))
    known = Known()
    money = next((unit for unit in map(_unit, (amount.value for amount in task.amounts)) if unit in MONEY), "")
    many = next((PERIODS[one] for one in task.details if one in PERIODS), 1)
    for amount in task.amounts:
        known.values[_LETTERS[amount.name]] = _bare(amount.name, amount.value, many, money, working)
    if "n" in known.values and task.kind in ("compound interest", "reducing-balance depreciation"):
        _whole_periods(known.values["n"])
    answers = []
    for name in task.wanted:
        letter = _LETTERS[name]
        path = chain(LAWS[task.kind], known.values, letter)
        if path is None:
            raise NoValue(f"the {name} does not follow from what is given")
        for law, found in path:
            if size_of(apply(law, found, known, working)) < 0:
                raise NoValue(f"{found} would be negative")
        answers.append(_answer(letter, known.values[letter], money, many, reading, working))
    _simulated(task.kind, {letter: Fraction(size_of(value)) for letter, value in known.values.items()})
    return working.derived(*answers, confirmed_by="carried on period by period")


def unsaid(task: Reckoning, reading: Reading) -> Derived:
    """Growth or loss of which it is not said how it is reckoned."""
    if task.kind == "interest":
        raise NoValue("it is not said whether the interest is simple or compound")
    raise NoValue("it is not said whether the depreciation is straight-line or reducing-balance")


def _unit(value: Expression) -> str:
    return value.unit if isinstance(value, Measured) else ""


def _bare(name: str, value: Expression, many: int, money: str, working: Working) -> Expression:
    if name == "rate":
        return _rate(value, many, working)
    if name == "time":
        return _periods(value, many, working)
    if isinstance(value, Measured):
        if value.unit != money:
            raise NoValue(f"{write(value)} and {money} together")
        return value.amount
    return value


def _rate(value: Expression, many: int, working: Working) -> Expression:
    rate = rational_value(value)
    if rate is None or not 0 < rate < 10:
        raise NoValue("a rate that is no percentage")
    own = as_decimal(rate) or whole_or_fraction(rate)
    if many == 1:
        return own
    each = as_decimal(rate / many) if rate / many * 10**6 % 1 == 0 else None
    share = each or whole_or_fraction(rate / many)
    working.say(f"i = {write(own)} ÷ {many} = {write(share)}", write(share), working.used)
    return share


def _periods(value: Expression, many: int, working: Working) -> Expression:
    if not isinstance(value, Measured):
        raise NoValue("a time without a unit")
    scale = conversion(value.unit, "year")
    amount = rational_value(value.amount)
    if scale is None or amount is None:
        raise NoValue(f"{write(value)} is not brought to years")
    count = amount * scale * many
    back = conversion("year", value.unit)
    require(back is not None and count / many * back == amount, f"{write(value)} in years")
    number = as_decimal(count) or whole_or_fraction(count)
    if many > 1:
        working.say(f"n = {write(whole_or_fraction(amount * scale))} × {many} = {write(number)}", write(number))
    elif scale != 1:
        working.say(f"{write(value)} = {write(Measured(number, 'year'))}", write(number), working.used)
    return number


def _whole_periods(value: Expression) -> None:
    count = rational_value(value)
    if count is None or count.denominator != 1 or count < 1:
        raise NoValue("interest compounded over a part of a period")
    if count > _MOST_PERIODS:
        raise BudgetExceeded(f"more than {_MOST_PERIODS} periods")


def _answer(letter: str, value: Expression, money: str, many: int, reading: Reading, working: Working):  # type: ignore[no-untyped-def]
    ask = reading.ask
    assert ask is not None
    if letter == "i":
        yearly = rational_value(value)
        exact = yearly * many if yearly is not None else None
        if exact is not None:
            share: Expression = Number(exact, NumberForm.PERCENT)
        else:
            raise NoValue("a rate that is no fraction")
        return ended(share, ask, working, "r" if many > 1 else letter)
    if letter == "n":
        count = rational_value(value)
        if count is None:
            raise NoValue("a time that is no fraction of years")
        return ended(
            Measured(as_decimal(count / many) or whole_or_fraction(count / many), "year"), ask, working, letter
        )
    if ask.accuracy is None and money and not _in_cents(value):
        ask = replace(ask, accuracy=Accuracy("decimal places", "2"))
    return ended(Measured(value, money) if money else value, ask, working, letter)


def _in_cents(value: Expression) -> bool:
    exact = rational_value(value)
    return exact is not None and (exact * 100).denominator == 1


def _simulated(kind: str, sizes: Mapping[str, Fraction]) -> None:
    """The amount carried on from one period to the next, against the final amount."""
    if not {"P", "i", "n", "A"} <= sizes.keys():
        if kind == "simple interest" and {"P", "i", "n", "I"} <= sizes.keys():
            sizes = {**sizes, "A": sizes["P"] + sizes["I"]}
        else:
            return
    amount, left = sizes["P"], sizes["n"]
    while left > 0:
        share = min(Fraction(1), left)
        base = amount if kind.startswith(("compound", "reducing")) else sizes["P"]
        amount += (-1 if kind.endswith("depreciation") else 1) * base * sizes["i"] * share
        left -= share
    if abs(amount - sizes["A"]) > Fraction(1, 10**20) * max(Fraction(1), abs(amount)):
        raise ChecksDisagree("carried on period by period it comes to something else")
    if "I" in sizes and abs(abs(sizes["A"] - sizes["P"]) - sizes["I"]) > Fraction(1, 10**9):
        raise ChecksDisagree("what was gained is not the difference")
