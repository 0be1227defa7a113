"""Which of several packs gives more for the money."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import as_decimal
from paperaudit.maths.rounding import round_to
from paperaudit.maths.units import unit_text
from paperaudit.maths.write import write
from paperaudit.model.ask import Accuracy
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import require
from paperaudit.strands.ratios.plain_amounts import in_one_unit, text_of, working_of

_SHORT, _FIGURES = 6, (4, 8, 16)


def best_buy(task: Reckoning, reading: Reading) -> Derived:
    """The pack with the lowest price for one unit; prices for the size of the other pack compared as well."""
    assert reading.ask is not None
    working = working_of("proportion", reading)
    sizes, unit = in_one_unit(task.all_of("size"))
    prices, money = in_one_unit(task.all_of("price"))
    if min(*sizes, *prices) <= 0:
        raise NoValue("a pack or a price that is not positive")
    shares = [unit_price(price, size) for price, size in zip(prices, sizes, strict=True)]
    names = list(task.details) or [write(size) for size in task.all_of("size")]
    shown = _shown(shares)
    for name, price, size, share in zip(names, prices, sizes, shown, strict=True):
        own = f"{name}: " if task.details else ""
        row = f"{text_of(price, money)} ÷ {text_of(size, unit)}"
        per = f" per{unit_text(unit, False)}" if unit else " each"
        working.say(f"{own}{row} {share[0]} {money}{share[1]}{per}", f"{money}{share[1]}", working.used)
    best = min(range(len(shares)), key=shares.__getitem__)
    for other in range(len(shares)):
        require(prices[best] * sizes[other] <= prices[other] * sizes[best], "another pack costs less for its size")
        crosswise = prices[best] * sizes[other] == prices[other] * sizes[best]
        require(crosswise == (shares[other] == shares[best]), "which packs cost the same for their size")
    rest = [share for index, share in enumerate(shares) if index != best]
    if all(share == shares[best] for share in rest):
        working.conclude("they cost the same", "the same")
        return working.derived(Answer("they cost the same", kind="offer"), confirmed_by="sizes and prices crosswise")
    if shares[best] in rest:
        raise NoValue("two packs are equally cheap")
    smallest = shown[best][1]
    working.conclude(f"{money}{smallest} is the lowest price: {names[best]} is the better buy", names[best])
    value = task.all_of("size")[best]
    answer = Answer(names[best], value, task.details[best] if task.details else "", kind="offer")
    return working.derived(answer, confirmed_by="sizes and prices crosswise")


def unit_price(price: Fraction, size: Fraction) -> Fraction:
    """The price of one unit."""
    return price / size


def _shown(shares: list[Fraction]) -> list[tuple[str, str]]:
    """The sign and the decimal of each price for one unit, with figures enough to tell different ones apart."""
    found: list[tuple[str, str]] = []
    for figures in _FIGURES:
        found = [_decimal(share, figures) for share in shares]
        if len({text for _, text in found}) == len(set(shares)):
            break
    return found


def _decimal(share: Fraction, figures: int) -> tuple[str, str]:
    exact = as_decimal(share, 2 if share.denominator != 1 else 0)
    if exact is not None and exact.places <= _SHORT:
        return "=", write(exact)
    return "≈", write(round_to(share, Accuracy("significant figures", str(figures))))
