"""Turns the parse tree of an expression into sums, products, quotients, powers and measures."""

from collections.abc import Callable
from fractions import Fraction
from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.functions import GREEK, function_of
from paperaudit.maths.logarithms import logarithm_of, refuse_doubtful_argument
from paperaudit.maths.notation import UNIT_MARK
from paperaudit.maths.numerals import fraction_of, number_of, plain_number
from paperaudit.maths.quantities import quantity_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.maths.units import unit_named
from paperaudit.model.expression import (
    Absolute,
    Expression,
    Letter,
    Measured,
    Negative,
    Number,
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)

HIGHEST_EXPONENT = 1_000
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻ⁿ", "0123456789-n")
_PLURALS = {"rand": "R", "deg": "°"}


def expression_of(node: Node) -> Expression:
    """The value of an `expression`: terms with their signs."""
    terms: list[Expression] = []
    minus = False
    for piece in every(node, "addition", "negation", "product", "product_side"):
        match piece.expr_name:
            case "addition":
                minus = piece.text == "-"
            case "negation":
                negated = bool(piece.text)
            case _:
                term = _product(piece)
                term = Negative(term) if negated else term
                terms.append(Negative(term) if minus else term)
                minus = False
    return terms[0] if len(terms) == 1 else Sum(tuple(terms))


def _product(node: Node) -> Expression:
    """Factors with × and ÷ between them, from the left."""
    value: Expression | None = None
    before: Node | None = None
    sign = ""
    for piece in every(node, "share", "signed", "times", "times_only"):
        if piece.expr_name.startswith("times"):
            if value is not None and sign == ":" == piece.text:
                raise ExpressionNotRead("a ratio of more than two terms", piece.start, "one ratio of two terms")
            sign = piece.text
            continue
        right = Negative(_share(the(piece, "share"))) if piece.expr_name == "signed" else _share(piece)
        refuse_doubtful_argument(before, piece)
        before = piece
        if value is None:
            value = right
        elif sign in ("÷", ":"):
            _refuse_doubtful_divisor(piece)
            value = Quotient(value, right, "÷")
        elif isinstance(value, Product) and value.sign == "×":
            value = Product((*value.factors, right), "×")
        else:
            value = Product((value, right), "×")
    assert value is not None
    return value


def _share(node: Node) -> Expression:
    shares = [_fraction(piece) for piece in every(node, "fraction")]
    value = shares.pop()
    while shares:
        value = Of(shares.pop(), value)
    return value


def _fraction(node: Node) -> Expression:
    """Operands with a slash between them; a unit behind the last belongs to the whole: 3/4 hour."""
    amounts = list(every(node, "amount"))
    if len(amounts) == 1:
        return _amount(amounts[0])
    for one, other in pairwise(amounts):
        refuse_doubtful_argument(one, other)
    *firsts, last = amounts
    unit = None if any(_unit_of(amount) for amount in firsts) else _unit_of(last)
    value, rest = _coefficient(amounts[:2]), amounts[2:]
    if value is None:
        value, rest = _amount(amounts[0]), amounts[1:]
    elif not rest:
        return value
    for amount in rest:
        _refuse_doubtful_divisor(amount)
        right = _run(the(amount, "run")) if unit is not None and amount is last else _amount(amount)
        value = Quotient(value, right)
    return measured(value, unit.text) if unit is not None else value


def _coefficient(amounts: list[Node]) -> Expression | None:
    """A fraction of two whole numbers, and what it multiplies: 3/4, 1/2 x, 2/3(x − 4), 3/4 hour."""
    if len(amounts) != 2 or not amounts[0].text.replace(" ", "").isdecimal():
        return None
    simple = first(amounts[1], "simple")
    run = first(simple, "run") if simple is not None else None
    if run is None or _is_money(run):
        return None
    factors = list(every(run, "factor", "factor_on"))
    denominator = factors[0].text.replace(" ", "")
    if not denominator.isdecimal() or has(factors[0], "power"):
        return None
    if int(denominator) == 0:
        raise ExpressionNotRead("a fraction over 0", run.start, "a denominator that is not 0")
    fraction = fraction_of(Number(Fraction(amounts[0].text.replace(" ", ""))), Number(Fraction(denominator)))
    rest = factors[1:]
    if rest and not rest[0].text.startswith((" ", "(")):
        raise ExpressionNotRead(
            f"{amounts[0].text}/{run.text} can be read in two ways",
            run.start,
            f"({amounts[0].text}/{denominator}){rest[0].text} or {amounts[0].text}/({run.text})",
        )
    value: Expression = Product((fraction, *map(_factor, rest))) if rest else fraction
    unit = _unit_of(amounts[1])
    return measured(value, unit.text) if unit is not None else value


def _refuse_doubtful_divisor(node: Node) -> None:
    """Refuses a ÷ b(c + d), which is read in two ways."""
    run = first(node, "run")
    factors = list(every(run, "factor", "factor_on")) if run is not None else []
    if len(factors) > 1 and any(has(factor, "group") for factor in factors):
        raise ExpressionNotRead(
            f"division by {node.text} can be read in two ways", node.start, f"brackets round {node.text}"
        )


def _amount(node: Node) -> Expression:
    compound = first(node, "compound")
    if compound is not None:
        pieces = every(compound, "unit_amount")
        return Sum(tuple(measured(plain_number(the(p, "plain_number")), the(p, "unit").text) for p in pieces))
    value, unit = _run(the(node, "run")), _unit_of(node)
    return value if unit is None else measured(value, unit.text)


def _unit_of(amount: Node) -> Node | None:
    """The unit behind an amount, not one inside its brackets."""
    return next((piece for piece in every(amount, "run", "unit") if piece.expr_name == "unit"), None)


def measured(amount: Expression, unit: str) -> Expression:
    """An amount with its unit; a word for a unit gives its symbol, x% is x over 100."""
    name = unit.strip(f" {UNIT_MARK}")
    if name == "%":
        return Quotient(amount, Number(Fraction(100)))
    name = _PLURALS.get(name, name)
    known = unit_named(name)
    if known is not None and (len(name) > 3 or "^" in name or name[-1:] in "23"):
        name = known.symbol
    return Measured(amount, name)


def _run(node: Node) -> Expression:
    """Factors side by side: 3x, 2(x + 1), xy²."""
    if _is_money(node):
        money = the(node, "money")
        return Measured(plain_number(the(money, "plain_number")), the(money, "money_sign").text)
    nodes = list(every(node, "factor", "factor_on"))
    factors = [factor for piece in nodes for factor in _factors(piece)]
    return factors[0] if len(factors) == 1 else Product(tuple(factors))


def _is_money(run: Node) -> bool:
    """Whether a run is an amount of money itself, and does not merely hold one in brackets."""
    found = first(run, "money", "factor")
    return found is not None and found.expr_name == "money"


def _factors(node: Node) -> tuple[Expression, ...]:
    """The factors of one factor: xy² is x and y²."""
    inner = the(node, "factor") if node.expr_name == "factor_on" else node
    operand = the(inner, "operand")
    base = operand.children[0]
    if base.expr_name == "letters" and base.text not in GREEK and not base.text[0].isupper():
        *before, last = (Letter(name) for name in base.text)
        return (*before, _powered(last, inner))
    return (_powered(_operand(base), inner),)


def _factor(node: Node) -> Expression:
    factors = _factors(node)
    return factors[0] if len(factors) == 1 else Product(factors)


def _powered(base: Expression, node: Node) -> Expression:
    powers = [piece for piece in every(node, "operand", "power") if piece.expr_name == "power"]
    if len(powers) > 1:
        raise ExpressionNotRead("a tower of powers", powers[1].start, "one exponent, in brackets if it is long")
    if not powers:
        return base
    if the(node, "operand").children[0].expr_name == "function":
        raise ExpressionNotRead(
            f"the power behind {the(node, 'function').text} can be read in two ways",
            powers[0].start,
            "brackets round the angle or round the whole",
        )
    return Power(base, _exponent(powers[0]))


def _exponent(node: Node) -> Expression:
    raised = first(node, "superscript", "exponent")
    assert raised is not None
    if raised.expr_name == "superscript":
        text = raised.text.translate(_RAISED)
        size: Expression = Letter("n") if text[-1] == "n" else Number(Fraction(text.lstrip("-")))
        value = Negative(size) if text.startswith("-") else size
    else:
        inner = the(raised, "group", "plain_number", "letter")
        size = _OPERANDS[inner.expr_name](inner)
        value = Negative(size) if raised.text.startswith("-") else size
    _check_exponent(value, raised.start)
    return value


def _check_exponent(exponent: Expression, start: int) -> None:
    todo = [exponent]
    while todo:
        match todo.pop():
            case Power():
                raise ExpressionNotRead("a tower of powers", start, "an exponent without a power in it")
            case Number(value) if abs(value) > HIGHEST_EXPONENT:
                raise ExpressionNotRead(f"an exponent above {HIGHEST_EXPONENT}", start, "a smaller exponent")
            case Negative(inner):
                todo.append(inner)
            case Sum(pieces) | Product(pieces):
                todo.extend(pieces)
            case Quotient(above, below):
                todo.extend((above, below))
            case _:
                pass


def _operand(node: Node) -> Expression:
    return _OPERANDS[node.expr_name](node)


def _letter(node: Node) -> Expression:
    return Letter(GREEK.get(node.text, node.text))


def _root(node: Node) -> Expression:
    words = first(node, "root_words")
    if words is not None:
        degree = 3 if "cube" in words.text.split(" root")[0] else 2
    else:
        sign = the(node, "root_sign").text
        degree = {"√": 2, "∛": 3, "∜": 4}.get(sign) or "³⁴⁵⁶⁷⁸⁹".index(sign[0]) + 3
    return Root(_factor(the(node, "factor")), degree)


_OPERANDS: dict[str, Callable[[Node], Expression]] = {
    "function": lambda node: function_of(node, expression_of),
    "logarithm": lambda node: logarithm_of(node, expression_of, _factor),
    "absolute": lambda node: Absolute(expression_of(the(node, "expression"))),
    "quantity": quantity_of,
    "number": number_of,
    "plain_number": number_of,
    "root": _root,
    "group": lambda node: expression_of(the(node, "expression")),
    "letters": _letter,
    "letter": _letter,
}
