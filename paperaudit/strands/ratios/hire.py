"""Hire purchase: deposit, balance, simple interest, instalments; and tax by bands of income."""

from dataclasses import dataclass
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.units import conversion
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Measured
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, rational, text_of, working_of

_MOST_PAYMENTS = 600


@dataclass(frozen=True, slots=True)
class Agreement:
    """What a hire purchase comes to; `number` payments of `instalment` follow the deposit."""

    price: Fraction
    deposit: Fraction
    interest: Fraction
    number: int
    instalment: Fraction

    @property
    def total(self) -> Fraction:
        """All that is paid."""
        return self.deposit + self.number * self.instalment


def hire_purchase(task: Reckoning, reading: Reading) -> Derived:
    """What is wanted of a hire purchase; all payments are added up one by one."""
    assert reading.ask is not None
    working = working_of("interest", reading)
    value = task.one("cash price")
    assert value is not None
    price, money = bare_of(value)
    deposit = _deposit(task, price, money, working, task.wanted == ("instalment",))
    if task.wanted == ("deposit",):
        require(deposit * price >= 0, "a deposit of less than nought")
        return working.derived(_closing(deposit, money, reading, working), confirmed_by="the share taken again")
    agreement = _agreement(task, price, deposit, money, working)
    answers = [_wanted(one, agreement, money, reading, working) for one in task.wanted]
    paid = _paid_month_by_month(task, price, deposit)
    require(paid == agreement.total == price + agreement.interest, "month by month it comes to something else")
    return working.derived(*answers, confirmed_by="payments and interest added up month by month")


def _paid_month_by_month(task: Reckoning, price: Fraction, deposit: Fraction) -> Fraction:
    """All that is paid, from the given payments or from the interest of each month."""
    number, each, rate, time = (task.one(name) for name in ("number", "instalment", "rate", "time"))
    paid = deposit
    if number is not None and each is not None:
        for _ in range(int(rational(number))):
            paid += bare_of(each)[0]
        return paid
    assert rate is not None and isinstance(time, Measured)
    months = rational(time.amount) * (12 if time.unit == "year" else 1)
    paid = price
    for _ in range(int(months)):
        paid += (price - deposit) * rational(rate) / 12
    return paid


def _closing(value: Fraction, money: str, reading: Reading, working: Working) -> Answer:
    assert reading.ask is not None
    return answered(value, money, reading.ask, working)


def _deposit(task: Reckoning, price: Fraction, money: str, working: Working, shown: bool) -> Fraction:
    given = task.one("deposit")
    if given is None:
        return Fraction(0)
    if isinstance(given, Measured):
        size, unit = bare_of(given)
        if unit != money:
            raise NoValue(f"{unit} and {money} together")
    else:
        share = rational(given)
        size = price * share
        row = f"{text_of(share * 100)}% of {text_of(price, money)} = {text_of(size, money)}"
        working.say(f"deposit = {row}", text_of(size, money), working.used)
    if not 0 <= size < price:
        raise NoValue("a deposit of the whole price or more")
    return size


def _agreement(task: Reckoning, price: Fraction, deposit: Fraction, money: str, working: Working) -> Agreement:
    number, each = task.one("number"), task.one("instalment")
    if number is not None and each is not None and task.one("rate") is None:
        count, size = _count(rational(number)), bare_of(each)[0]
        together = count * size
        working.say(f"{count} × {text_of(size, money)} = {text_of(together, money)}", text_of(together, money))
        return Agreement(price, deposit, deposit + together - price, count, size)
    rate, time = task.one("rate"), task.one("time")
    if rate is None or time is None or each is not None or number is not None:
        raise NoValue("neither the payments nor rate and time of the interest are given")
    assert isinstance(time, Measured)
    years = rational(time.amount) * (conversion(time.unit, "year") or Fraction(0))
    balance, share = price - deposit, rational(rate)
    if deposit:
        row = f"{text_of(price, money)} − {text_of(deposit, money)} = {text_of(balance, money)}"
        working.say(f"balance = {row}", text_of(balance, money))
    interest = balance * share * years
    row = f"{text_of(balance)} × {text_of(share)} × {text_of(years)} = {text_of(interest, money)}"
    working.say(f"interest = {row}", text_of(interest, money))
    count = _count(years * 12)
    return Agreement(price, deposit, interest, count, (balance + interest) / count)


def _count(value: Fraction) -> int:
    if value.denominator != 1 or not 1 <= value <= _MOST_PAYMENTS:
        raise NoValue("a number of payments that is not whole")
    return value.numerator


def _wanted(name: str, found: Agreement, money: str, reading: Reading, working: Working) -> Answer:
    balance = found.price - found.deposit
    match name:
        case "interest":
            if not working.steps or not working.steps[-1].statement.startswith("interest = "):
                paid = text_of(found.number * found.instalment, money)
                if found.deposit:
                    working.say(f"{text_of(found.deposit, money)} + {paid} = {text_of(found.total, money)}", "")
                row = f"{text_of(found.total, money)} − {text_of(found.price, money)}"
                working.say(f"interest = {row}", row)
            return _closing(found.interest, money, reading, working)
        case "instalment":
            owed = balance + found.interest
            row = f"{text_of(balance, money)} + {text_of(found.interest, money)} = {text_of(owed, money)}"
            working.say(f"to be paid = {row}", text_of(owed, money))
            working.say(f"{text_of(owed, money)} ÷ {found.number}", "")
            return _closing(found.instalment, money, reading, working)
        case "deposit":
            return _closing(found.deposit, money, reading, working)
    rest = found.number * found.instalment
    row = f"{text_of(found.deposit, money)} + {text_of(rest, money)}"
    if found.interest and working.steps[-1].statement.startswith("interest = "):
        row = f"{text_of(found.price, money)} + {text_of(found.interest, money)}"
    elif not found.deposit:
        row = text_of(rest, money)
    if name == "hire purchase price":
        if row != text_of(rest, money):
            working.say(f"total = {row}", row)
        return _closing(found.total, money, reading, working)
    if row != text_of(rest, money):
        working.say(f"total = {row} = {text_of(found.total, money)}", text_of(found.total, money))
    working.say(f"{text_of(found.total, money)} − {text_of(found.price, money)}", "")
    return _closing(found.total - found.price, money, reading, working)


def tax_by_bands(task: Reckoning, reading: Reading) -> Derived:
    """Tax where each part of an income has its rate; every unit of money is put into its band again."""
    assert reading.ask is not None
    working = working_of("percentages", reading)
    value = task.one("income")
    assert value is not None
    income, money = bare_of(value)
    free = task.one("free")
    bands = [(bare_of(free)[0], Fraction(0))] if free is not None else []
    bands += [
        (bare_of(size)[0], rational(rate)) for size, rate in zip(task.all_of("band"), task.all_of("rate"), strict=True)
    ]
    last = task.one("last rate")
    assert last is not None
    tax = _tax_in_lines(income, bands, rational(last), money, working)
    require(tax == _tax_again(income, bands, rational(last)), "from the top of the income down it is another tax")
    answers = []
    for name in task.wanted:
        if name == "income after tax":
            working.say(f"{text_of(income, money)} − {text_of(tax, money)}", "")
        answers.append(_closing(tax if name == "tax" else income - tax, money, reading, working))
    return working.derived(*answers, confirmed_by="the rates taken from the top of the income down")


def _tax_in_lines(
    income: Fraction, bands: list[tuple[Fraction, Fraction]], last: Fraction, money: str, working: Working
) -> Fraction:
    left, taxes = income, []
    for size, rate in [*bands, (income, last)]:
        part = min(left, size)
        if not part:
            break
        if rate:
            row = f"{text_of(rate * 100)}% of {text_of(part, money)} = {text_of(part * rate, money)}"
            working.say(row, text_of(part * rate, money))
            taxes.append(part * rate)
        rest = left - part
        if rest:
            row = f"{text_of(left, money)} − {text_of(part, money)} = {text_of(rest, money)}"
            working.say(row, text_of(rest, money))
        left = rest
    if len(taxes) > 1:
        working.say(f"tax = {' + '.join(text_of(one, money) for one in taxes)}", "")
    return sum(taxes, Fraction(0))


def _tax_again(income: Fraction, bands: list[tuple[Fraction, Fraction]], last: Fraction) -> Fraction:
    """The whole income at the last rate, less what the lower bands save."""
    tax, floor = income * last, Fraction(0)
    for size, rate in bands:
        tax -= min(size, max(Fraction(0), income - floor)) * (last - rate)
        floor += size
    return tax
