"""Reads the sine, cosine and tangent of an angle: sin ∠A, tan 30°, cos² x, the sine of ∠ABC."""

from collections.abc import Callable
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.numerals import plain_number
from paperaudit.maths.points import points_of
from paperaudit.maths.quantities import angle_of
from paperaudit.maths.tree import first, the
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    Expression,
    Function,
    Letter,
    Measured,
    Number,
    Power,
    Product,
    with_leaves,
)

GREEK = {"pi": "π", "theta": "θ", "alpha": "α", "beta": "β", "gamma": "γ"}
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")


def function_of(node: Node, expression_of: Callable[[Node], Expression]) -> Function | Power:
    """The value under `function`; `expression_of` reads what stands in brackets behind it."""
    words = node.text.removeprefix("the ")
    value = Function(
        "sin" if words.startswith("sin") else "cos" if words.startswith("cos") else "tan",
        _argument(the(node, "argument"), expression_of),
    )
    raised = first(node, "raised_on")
    if raised is None:
        return value
    written = raised.text.strip(" ^").translate(_RAISED)
    if not written.isdecimal():
        raise ExpressionNotRead(f"{words} can be read in two ways", raised.start, f"a power such as {value.name}² x")
    return Power(value, Number(Fraction(written)))


def _argument(node: Node, expression_of: Callable[[Node], Expression]) -> Expression:
    group, angle, triple, corner = (first(node, name) for name in ("group", "angle", "triple", "lone_corner"))
    if group is not None:
        return _angle_meant(expression_of(the(group, "expression")))
    if angle is not None:
        return angle_of(angle)
    if triple is not None:
        arm, vertex, other = points_of(triple.text)
        return AngleOf(arm, vertex, other)
    if corner is not None:
        part = first(node, "plain_number")
        return AngleAt(corner.text) if part is None else Product((plain_number(part), AngleAt(corner.text)))
    number, letter, degrees = (first(node, name) for name in ("plain_number", "letter_run", "degrees"))
    parts: list[Expression] = [plain_number(number)] if number is not None else []
    parts += [Letter(GREEK.get(letter.text, letter.text))] if letter is not None else []
    value = parts[0] if len(parts) == 1 else Product(tuple(parts))
    return value if degrees is None else Measured(value, "°")


def _angle_meant(argument: Expression) -> Expression:
    """A capital letter in sin (A + B) names the angle at that point."""

    def meant(leaf: Expression) -> Expression:
        return AngleAt(leaf.name) if isinstance(leaf, Letter) and leaf.name.isupper() else leaf

    return with_leaves(argument, meant)
