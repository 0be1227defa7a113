"""Reads logarithms: log₂ 8, log (x + 1), ln 3, log base 2 of 8."""

from collections.abc import Callable
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.numerals import plain_number
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import Absolute, Euler, Expression, Letter, Logarithm, Number, Product

_TEN = Number(Fraction(10))


def logarithm_of(
    node: Node, expression_of: Callable[[Node], Expression], factor_of: Callable[[Node], Expression]
) -> Logarithm:
    """The value under `logarithm`; log without a base has base 10, as on the keys of a calculator."""
    sign, base = first(node, "log_sign"), first(node, "log_base", "log_named")
    natural = sign is not None and sign.text == "ln"
    if natural and base is not None:
        raise ExpressionNotRead("ln with a base", node.start, "log with a base, or ln alone")
    size = _argument(the(node, "log_argument"), expression_of, factor_of)
    return Logarithm(size, Euler() if natural else _TEN if base is None else _base(base, expression_of))


def _argument(
    node: Node, expression_of: Callable[[Node], Expression], factor_of: Callable[[Node], Expression]
) -> Expression:
    run = first(node, "log_run")
    if run is None or first(node, "group", "absolute", "log_run") is not run:
        inside = expression_of(the(node, "expression"))
        return Absolute(inside) if node.text.startswith("|") else inside
    factors = [factor_of(piece) for piece in every(run, "factor")]
    flat = [inner for one in factors for inner in (one.factors if isinstance(one, Product) else (one,))]
    return flat[0] if len(flat) == 1 else Product(tuple(flat))


def _base(node: Node, expression_of: Callable[[Node], Expression]) -> Expression:
    inside, number = first(node, "expression"), first(node, "plain_number")
    text = node.text.strip("_ ")
    base: Expression
    if inside is not None:
        base = expression_of(inside)
    elif number is not None:
        base = plain_number(number)
    else:
        base = Number(Fraction(text)) if text[0].isdecimal() else Letter(text)
    return Euler() if base == Letter("e") else base


def refuse_doubtful_argument(left: Node | None, right: Node) -> None:
    """Refuses log x/y and log 2 × 3, where the logarithm may be meant to reach over the sign."""
    run = _last_run(left) if left is not None else None
    if run is not None and left is not None and run.end == left.end and not right.text.startswith(("log", "ln")):
        raise ExpressionNotRead(
            f"what the logarithm is taken of in {left.text} … {right.text} can be read in two ways",
            right.start,
            "brackets round what the logarithm is taken of",
        )


def _last_run(node: Node) -> Node | None:
    runs = every(node, "log_run")
    return runs[-1] if runs else None
