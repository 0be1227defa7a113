"""Reads numerals exactly: decimals with either sign, thousands, percentages, mixed and vulgar fractions."""

import re
import unicodedata
from fractions import Fraction
from math import gcd

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.model.expression import Expression, Number, NumberForm, Quotient, Sum

_GROUPED = re.compile(r"\d{1,3}(,\d{3}){2,}(\.\d+)?|\d{1,3}(,\d{3})+\.\d+")
_DOUBTFUL = re.compile(r"[1-9]\d{0,2},\d{3}")


def number_of(node: Node) -> Expression:
    """The value under a `number`, `plain_number` or one of the other rules of numerals."""
    inner = node.children[0] if node.expr_name == "number" else node
    match inner.expr_name:
        case "percentage":
            return _percent(plain_number(inner.children[0]))
        case "mixed" | "vulgar":
            whole = _mixed(inner)
            return _percent(whole) if inner.text.endswith("%") and isinstance(whole, Number) else whole
        case _:
            return plain_number(inner)


def plain_number(node: Node) -> Number:
    """A whole number or a decimal. A comma is a decimal sign unless it can only part thousands.

    Raises ExpressionNotRead for 12,500, which one country reads as 12½ and another as 12 500.
    """
    written = node.text.replace(" ", "")
    if _GROUPED.fullmatch(written):
        written = written.replace(",", "")
    elif _DOUBTFUL.fullmatch(written):
        whole, thousandths = written.split(",")
        raise ExpressionNotRead(
            f"{node.text} can be read in two ways", node.start, f"{whole} {thousandths} or {whole}.{thousandths}"
        )
    written = written.replace(",", ".")
    _, point, decimals = written.partition(".")
    return Number(Fraction(written), NumberForm.DECIMAL if point else NumberForm.INTEGER, len(decimals))


def fraction_of(numerator: Number, denominator: Number) -> Expression:
    """Two whole numbers over a bar: one number where it is in lowest terms, so that 6/8 stays 6/8."""
    above, below = numerator.value, denominator.value
    if below > 1 and gcd(int(above), int(below)) == 1:
        return Number(above / below, NumberForm.FRACTION)
    return Quotient(numerator, denominator)


def _mixed(node: Node) -> Expression:
    written = node.text.rstrip("% ")
    if "/" in written:
        whole, _, rest = written.partition(" ")
        above, _, below = rest.partition("/")
    elif len(written) == 1:
        return Number(_vulgar(written), NumberForm.FRACTION)
    else:
        value = _vulgar(written[-1])
        return Number(int(written[:-1]) + value, NumberForm.MIXED)
    if int(below) == 0:
        raise ExpressionNotRead("a fraction over 0", node.start, "a denominator that is not 0")
    if int(above) >= int(below):
        if len(above) == 3:
            return fraction_of(Number(Fraction(whole + above)), Number(Fraction(below)))
        raise ExpressionNotRead(f"{written} is no mixed number", node.start, "a fraction below 1 behind the whole")
    if gcd(int(above), int(below)) == 1:
        return Number(int(whole) + Fraction(int(above), int(below)), NumberForm.MIXED)
    return Sum((Number(Fraction(whole)), Quotient(Number(Fraction(above)), Number(Fraction(below)))))


def _vulgar(sign: str) -> Fraction:
    above, _, below = unicodedata.normalize("NFKD", sign).partition("\u2044")
    return Fraction(int(above), int(below))


def _percent(number: Number) -> Number:
    value = number.value / 100
    places = number.places
    if number.form in (NumberForm.MIXED, NumberForm.FRACTION):
        places = next((count for count in range(1, 7) if (number.value * 10**count).denominator == 1), 0)
    return Number(value, NumberForm.PERCENT, places)
