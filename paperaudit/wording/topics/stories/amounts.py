"""Numbers, amounts and multiples in the trees of stories."""

from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.number_forms import as_decimal, as_mixed, whole_or_fraction
from paperaudit.maths.tree import first, the
from paperaudit.maths.units import unit_named
from paperaudit.model.expression import Number, NumberForm
from paperaudit.model.story import Amount
from paperaudit.wording.scene import NotUnderstood

TWICE = Number(Fraction(2))


def number_in(text: str) -> Number:
    """The number of a text in figures: 3, 2.50, 3/4, 1 1/2, 20%.

    >>> number_in("2.50").places, number_in("1 1/2").value
    (2, Fraction(3, 2))
    """
    text = text.strip()
    if text.endswith("%"):
        value = Fraction(text[:-1]) / 100
        return Number(value, NumberForm.PERCENT, max(len(text[:-1].partition(".")[2]), 0))
    sign = -1 if text.startswith("-") else 1
    whole, _, part = text.lstrip("-").rpartition(" ")
    if whole:
        return as_mixed(sign * (Fraction(whole) + Fraction(part)))
    if "." in part:
        value = sign * Fraction(part)
        return as_decimal(value, len(part.partition(".")[2])) or whole_or_fraction(value)
    if part.endswith("/0"):
        raise NotUnderstood("a division by nought", 0)
    return whole_or_fraction(sign * Fraction(part))


def amount_of(node: Node) -> Amount:
    """The amount under a node, with its unit's symbol; "" for a bare number."""
    found = (
        node
        if node.expr_name in ("money", "cents", "measure", "number")
        else first(node, "cents", "money", "measure", "number", "percentage")
    )
    if found is None:
        raise NotUnderstood("an amount", node.start)
    if found.expr_name in ("number", "percentage"):
        return Amount(number_in(found.text))
    number = number_in(the(found, "number").text)
    match found.expr_name:
        case "money":
            return Amount(number, found.text[0])
        case "cents":
            return Amount(number, "p" if found.text.rstrip().endswith(("p", "pence")) else "c")
        case _:
            return Amount(number, unit_symbol(the(found, "unit").text))


def unit_symbol(word: str) -> str:
    """The symbol of a unit that is written out or short."""
    unit = unit_named(word)
    if unit is None:
        raise NotUnderstood(f"the unit {word}", 0)
    return unit.symbol


def multiple_of(node: Node) -> Number:
    """The factor of "twice", "3 times", "2/3 of", "40% of"."""
    found = first(node, "percentage", "number")
    return number_in(found.text) if found is not None else TWICE
