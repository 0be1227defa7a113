"""Money in another currency, with the commission that is kept."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Measured
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, rational, text_of, working_of


def exchange(task: Reckoning, reading: Reading) -> Derived:
    """An amount at a rate of exchange, either way; compared with the rate crosswise."""
    assert reading.ask is not None
    working = working_of("proportion", reading)
    rates = {unit: size for size, unit in map(bare_of, task.all_of("rate"))}
    given = task.one("amount")
    assert given is not None
    size, unit = bare_of(given)
    target = task.wanted[0].removeprefix("amount in ")
    if min(*rates.values(), size) <= 0:
        raise NoValue("an amount of money that is not positive")
    left, kept_after = _after_commission(size, unit, task, working)
    per_one, other = rates[unit], rates[target]
    result = exchanged(left, per_one, other)
    row = _row(left, unit, per_one, other)
    working.say(row, row)
    require(result * per_one == left * other, "the two amounts are not at the rate of exchange")
    if kept_after:
        working.say(f"= {text_of(result, target)}", text_of(result, target))
        working.say(f"{text_of(result, target)} − {text_of(kept_after, target)}", "")
        result -= kept_after
    _crosswise(size, result, per_one, other, task, unit)
    if result <= 0:
        raise NoValue("the commission takes it all")
    answer = answered(result, target, reading.ask, working)
    return working.derived(answer, confirmed_by="both amounts compared with the rate crosswise")


def exchanged(size: Fraction, per_one: Fraction, other: Fraction) -> Fraction:
    """An amount of which `per_one` is worth `other` of the other currency."""
    return size / per_one * other


def _crosswise(
    size: Fraction, result: Fraction, per_one: Fraction, other: Fraction, task: Reckoning, unit: str
) -> None:
    """The whole amount less the commission, in the currency in which it is taken, against what is got."""
    fee = task.one("commission")
    before, after = size, result
    if isinstance(fee, Measured) and fee.unit == unit:
        before -= rational(fee.amount)
    elif isinstance(fee, Measured):
        after += rational(fee.amount)
    elif fee is not None:
        before *= 1 - rational(fee)
    require(after * per_one == before * other, "the two amounts and the commission are not at the rate of exchange")


def _row(size: Fraction, unit: str, per_one: Fraction, other: Fraction) -> str:
    pieces = [text_of(size, unit), *([f"÷ {text_of(per_one)}"] if per_one != 1 else [])]
    return " ".join(pieces + ([f"× {text_of(other)}"] if other != 1 else []))


def _after_commission(size: Fraction, unit: str, task: Reckoning, working: Working) -> tuple[Fraction, Fraction]:
    """What is left of an amount to be changed, and what is kept of the result, after the commission."""
    fee = task.one("commission")
    if fee is None:
        return size, Fraction(0)
    if isinstance(fee, Measured):
        kept, own = bare_of(fee)
        if own != unit:
            return size, kept
    else:
        share = rational(fee)
        kept = size * share
        working.say(f"commission = {text_of(share * 100)}% of {text_of(size, unit)} = {text_of(kept, unit)}", "")
    left = f"{text_of(size, unit)} − {text_of(kept, unit)} = {text_of(size - kept, unit)}"
    working.say(left, text_of(size - kept, unit))
    return size - kept, Fraction(0)
