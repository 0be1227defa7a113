"""Calculations in words: "Subtract 7 from 12", "the product of 6 and 0.5", "the cube root of 343"."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import NotSurd, rational_value
from paperaudit.maths.measure import UnitClash, unit_of, without_units
from paperaudit.maths.tree import the
from paperaudit.maths.write import write
from paperaudit.model.ask import Task, Transform
from paperaudit.model.expression import Expression, Negative, Number, NumberForm, Power, Product, Quotient, Root, Sum
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.tasks import is_numeric
from paperaudit.wording.topics.numbers_named import numbers_in
from paperaudit.wording.topics.topic import Readers

_DEGREES = ("square", "cube", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_RULES = ("added", "taken", "times", "over", "apart", "powered", "rooted", "shared")


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, *_RULES)
    numbers = numbers_in(chosen, letters=False)
    if not all(map(is_numeric, numbers)):
        raise NotUnderstood("a calculation with letters", node.start)
    return Transform("evaluate", _calculation(chosen, numbers))


def _calculation(node: Node, numbers: tuple[Expression, ...]) -> Expression:
    first, last = numbers[0], numbers[-1]
    if node.expr_name in ("added", "taken") and any(map(_is_percentage, numbers)):
        return _changed(node, numbers)
    if node.expr_name == "added" and " than " in node.text and _is_share(first) and _size(last) > 1:
        raise NotUnderstood("whether a fraction more is a fraction of it", node.start)
    match node.expr_name:
        case "added":
            turned = " to " in node.text or " than " in node.text
            return Sum(numbers[::-1] if turned else numbers)
        case "taken":
            turned = not node.text.startswith(("subtract ", "take ")) and " less than " not in node.text
            return Sum((first, Negative(last)) if turned else (last, Negative(first)))
        case "times":
            return Product(numbers, "×")
        case "over":
            return Quotient(first, last, "÷") if not _whole(numbers) else Quotient(first, last)
        case "apart":
            larger, smaller = (first, last) if _size(first) >= _size(last) else (last, first)
            return Sum((larger, Negative(smaller)))
        case "powered":
            return Power(first, last if len(numbers) > 1 else _number(2 if "square" in node.text else 3))
        case "rooted":
            name = the(node, "root_name").text.replace("third", "cube")
            return Root(first, _DEGREES.index(name) + 2)
    return _share(node.text.removeprefix("the "), first)


def _is_percentage(value: Expression) -> bool:
    return isinstance(value, Number) and value.form is NumberForm.PERCENT


def _is_share(value: Expression) -> bool:
    return isinstance(value, Number | Quotient) and "/" in write(value) and 0 < _size(value) < 1


def _changed(node: Node, numbers: tuple[Expression, ...]) -> Expression:
    """An amount with a percentage more or less: 15% more than 240 is 240 × (100% + 15%)."""
    down = node.expr_name == "taken"
    if all(map(_is_percentage, numbers)) and " than " not in node.text:
        return Sum((numbers[1], Negative(numbers[0])) if down else numbers)
    if (
        len(numbers) != 2
        or list(map(_is_percentage, numbers)) != [True, False]
        or not re.search(r" than | to | from ", node.text)
    ):
        raise NotUnderstood("what the percentage is of", node.start)
    share, amount = numbers
    hundred = Number(Fraction(1), NumberForm.PERCENT)
    return Product((amount, Sum((hundred, Negative(share) if down else share))), "×")


def _whole(numbers: tuple[Expression, ...]) -> bool:
    """Whether all numbers are whole, so that their quotient is a fraction where it does not come out."""
    return all(isinstance(_unsigned(one), Number) and _size(one).denominator == 1 for one in numbers)


def _unsigned(value: Expression) -> Expression:
    return value.operand if isinstance(value, Negative) else value


def _size(value: Expression) -> Fraction:
    try:
        size = rational_value(without_units(value, unit_of(value)))
    except (NoValue, UnitClash, BudgetExceeded, NotSurd):
        size = None
    if size is None:
        raise NotUnderstood("an irrational number", 0, "a number")
    return size


def _number(value: int) -> Number:
    return Number(Fraction(value))


def _share(words: str, number: Expression) -> Expression:
    if words.startswith("reciprocal"):
        return Quotient(_number(1), number)
    if words.startswith("hal"):
        return Quotient(number, _number(2), "÷")
    return Product((_number(3 if words.startswith(("tr",)) else 2), number), "×")


READERS = Readers(task=_task)
