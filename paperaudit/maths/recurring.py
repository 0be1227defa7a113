"""Recurring decimals: 0.1666…, 0.16̇, 0.(45), read, written and turned into fractions."""

import re
from dataclasses import dataclass
from decimal import Context, Decimal
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, ExpressionNotRead
from paperaudit.maths.postfix import DIGITS

DOT = "\u0307"
"""The combining dot above the first and the last digit of a cycle."""

LONGEST_CYCLE = 30
_DOTTED = re.compile(rf"(-?)(\d*)[.,](\d*?)((?:\d{DOT}(?:\d*\d{DOT})?))")
_BRACKETED = re.compile(r"(-?)(\d*)[.,](\d*)\((\d+)\)")
_SPOKEN = re.compile(r"(-?)(\d*)[.,]()(\d) ?(?:recurring|repeating|rec)\.?")
_GOING_ON = re.compile(r"(-?)(\d*)[.,](\d{2,40})(?:…|\.{2,4})")


@dataclass(frozen=True, slots=True)
class Recurring:
    """`whole`.`fixed` and then `cycle` without end."""

    whole: int
    fixed: str
    cycle: str
    negative: bool = False

    def fraction(self) -> Fraction:
        """The value: the cycle over as many nines, behind as many noughts as there are fixed digits."""
        below = 10 ** len(self.fixed)
        value = self.whole + Fraction(int(self.fixed or "0"), below)
        value += Fraction(int(self.cycle), below * (10 ** len(self.cycle) - 1))
        return -value if self.negative else value

    def text(self) -> str:
        """As it is printed, with dots: 0.16̇, 0.4̇5̇, 0.1̇42857̇."""
        first, last = self.cycle[0], self.cycle[-1]
        dotted = first + DOT if len(self.cycle) == 1 else f"{first}{DOT}{self.cycle[1:-1]}{last}{DOT}"
        return f"{'−' if self.negative else ''}{self.whole}.{self.fixed}{dotted}"

    def shifted(self, places: int) -> str:
        """The decimal times a power of ten, with its first digits: 100x = 45.4545…"""
        digits = self.fixed + self.cycle * (places + 12)
        shown = max(3, 2 * len(self.cycle))
        whole = f"{self.whole}{digits[:places]}".lstrip("0") or "0"
        fixed = max(0, len(self.fixed) - places)
        return f"{whole}.{digits[places : places + fixed + shown]}…"

    def decimal(self) -> Decimal:
        """The value cut off far behind the point, put together digit by digit."""
        digits = (self.fixed + self.cycle * (DIGITS + 20))[: DIGITS + 20]
        value = Context(prec=DIGITS + 40).create_decimal(f"{self.whole}.{digits}")
        return -value if self.negative else value


def read_recurring(text: str) -> Recurring:
    """The recurring decimal of a text: 0.16̇, 0.(45), 0.6 recurring, 0.4545…

    Raises ExpressionNotRead where there is none, or where digits and three points leave the cycle open.

    >>> read_recurring("0.4545…").text()
    '0.4̇5̇'
    """
    plain = text.strip().replace("−", "-").replace("–", "-")
    for pattern in (_DOTTED, _BRACKETED, _SPOKEN):
        if found := pattern.fullmatch(plain):
            sign, whole, fixed, cycle = found.groups()
            return Recurring(int(whole or "0"), fixed, cycle.replace(DOT, ""), sign == "-")
    if found := _GOING_ON.fullmatch(plain):
        sign, whole, digits = found.groups()
        fixed, cycle = _cycle_of(digits)
        return Recurring(int(whole or "0"), fixed, cycle, sign == "-")
    raise ExpressionNotRead(f"{text.strip()} is no recurring decimal", 0, "digits with dots, as in 0.4̇5̇")


def _cycle_of(digits: str) -> tuple[str, str]:
    """The fixed digits and the cycle of digits that go on; the cycle has to be seen twice, a single digit thrice."""
    found = [
        (digits[:start], digits[start : start + size])
        for start in range(len(digits))
        for size in range(1, (len(digits) - start) // 2 + 1)
        if _repeats(digits[start:], size) and (size > 1 or len(digits) - start > 2 or not start)
    ]
    if not found:
        raise ExpressionNotRead(f"0.{digits}… leaves open what recurs", 0, "dots over the digits that recur")
    return min(found, key=lambda one: (len(one[0]) + len(one[1]), len(one[1])))


def _repeats(digits: str, size: int) -> bool:
    return all(digit == digits[at % size] for at, digit in enumerate(digits))


def recurring_of(value: Fraction) -> Recurring:
    """A fraction with endless decimals as a recurring decimal, by long division.

    Raises BudgetExceeded for long cycles, ExpressionNotRead for decimals that end.

    >>> recurring_of(Fraction(1, 6)).text()
    '0.16̇'
    """
    whole, rest = divmod(abs(value.numerator), value.denominator)
    seen: dict[int, int] = {}
    digits = ""
    while rest and rest not in seen:
        seen[rest] = len(digits)
        digit, rest = divmod(10 * rest, value.denominator)
        digits += str(digit)
        if len(digits) > 2 * LONGEST_CYCLE:
            raise BudgetExceeded("a cycle of dozens of digits")
    if not rest:
        raise ExpressionNotRead(f"the decimals of {value} end", 0, "a fraction whose decimals do not end")
    start = seen[rest]
    return Recurring(whole, digits[:start], digits[start:], value < 0)
