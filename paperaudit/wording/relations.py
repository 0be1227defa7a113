"""Reads clauses that compare sizes: equations, ratios, "twice", "20° more than", "are supplementary"."""

from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.terms import SIGNS, expression_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    Expression,
    Measured,
    Negative,
    Number,
    NumberForm,
    Product,
    Relation,
    Sum,
)
from paperaudit.model.fact import AngleName, Fact, Holds
from paperaudit.wording.named import measure_of, measures_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import RIGHT_ANGLE

Facts = tuple[Fact, ...]

_TIMES = {"twice": 2, "double": 2, "thrice": 3, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
          "eight": 8, "nine": 9, "ten": 10}
_SHARES = {"half": Fraction(1, 2), "third": Fraction(1, 3), "quarter": Fraction(1, 4)}
_STRAIGHT = Measured(Number(Fraction(180)), "°")
_LESS = ("less", "smaller", "shorter")


def chain(node: Node, scene: Scene) -> Facts:
    """AB = AC = 5 cm, one relation between each two neighbours; B̂₁ = ∠ABD names an angle."""
    sides = [_side(side) for side in node.children[0:1]] + [_worded(side) for side in every(node.children[1], "worded")]
    signs = [SIGNS[sign.text] for sign in every(node.children[1], "sign")]
    return tuple(
        _named(left, right) if sign == "=" and _names(left, right) else Holds(Relation(left, sign, right))
        for left, sign, right in zip(sides, signs, sides[1:], strict=False)
    )


def measured_as(node: Node, scene: Scene) -> Facts:
    """∠ABC is twice ∠ACB; angle ABC measures 40 degrees."""
    left, right = _side(the(node, "measure")), _worded(the(node, "worded"))
    return (_named(left, right) if _names(left, right) else Holds(Relation(left, "=", right)),)


def _side(node: Node) -> Expression:
    return measure_of(node)


def _names(left: Expression, right: Expression) -> bool:
    """Whether one side is a numbered angle and the other three points round the same vertex."""
    match left, right:
        case (AngleAt(vertex, number), AngleOf(_, middle)) | (AngleOf(_, middle), AngleAt(vertex, number)):
            return number > 0 and vertex == middle
        case _:
            return False


def _named(left: Expression, right: Expression) -> Fact:
    name, angle = (left, right) if isinstance(left, AngleAt) else (right, left)
    assert isinstance(name, AngleAt) and isinstance(angle, AngleOf)
    return AngleName(name, angle)


def _worded(node: Node) -> Expression:
    """An expression that may be put in words: twice ∠B, 20° more than ∠B."""
    inner = the(node, "more_than", "multiple", "measure")
    match inner.expr_name:
        case "measure":
            return measure_of(inner)
        case "multiple":
            return times(_multiplier(the(inner, "multiplier")), _worded(the(inner, "worded")))
        case _:
            amount = expression_of(the(inner, "expression"))
            base = _worded(the(inner, "worded"))
            return Sum((base, Negative(amount) if _lessens(inner.children[1].text) else amount))


def _lessens(words: str) -> bool:
    return any(word in words for word in _LESS)


def _multiplier(node: Node) -> Number:
    number = first(node, "plain_number")
    if number is not None:
        value = expression_number(number)
        return value
    words = node.text.replace("-", " ").split()
    for word in words:
        if word in _SHARES:
            return Number(_SHARES[word], NumberForm.FRACTION)
    return Number(Fraction(_TIMES[words[0]]))


def expression_number(node: Node) -> Number:
    """The value of a `plain_number`."""
    from paperaudit.maths.numerals import plain_number

    return plain_number(node)


def times(factor: Expression, base: Expression) -> Expression:
    """A multiple of a quantity, with 1 times left out."""
    if factor == Number(Fraction(1)):
        return base
    return Product((factor, base))


def compared(node: Node, scene: Scene) -> Facts:
    """∠A exceeds ∠B by 20°."""
    left, right = measures_of(node)
    amount = expression_of([piece for piece in every(node, "measure", "expression") if piece.expr_name == "expression"][-1])
    words = node.children[0].children[1].text if node.children[0].children else node.text
    return (Holds(Relation(left, "=", Sum((right, Negative(amount) if _lessens(words) else amount)))),)


def ratio(node: Node, scene: Scene) -> Facts:
    """∠A : ∠B : ∠C = 2 : 3 : 4, as 3∠A = 2∠B and 4∠B = 3∠C."""
    sides = [_ratio_side(side) for side in every(node, "expression_side")]
    half = len(sides) // 2
    left_text = node.text.split("=")[0]
    if len(sides) != 2 * (left_text.count(":") + 1):
        raise NotUnderstood("the two ratios have different lengths", node.start, "as many terms on both sides")
    return _in_ratio(sides[:half], sides[half:])


def ratio_words(node: Node, scene: Scene) -> Facts:
    """∠A and ∠B are in the ratio 2 : 3."""
    sides = list(measures_of(the(node, "quantities")))
    shares = [_ratio_side(side) for side in every(node, "expression_side")]
    if len(sides) != len(shares):
        raise NotUnderstood("the ratio has not as many terms as quantities", node.start, "a term for each quantity")
    return _in_ratio(sides, shares)


def _ratio_side(node: Node) -> Expression:
    return expression_of(node)


def _in_ratio(sides: list[Expression], shares: list[Expression]) -> Facts:
    pairs = zip(sides, sides[1:], shares, shares[1:], strict=False)
    return tuple(Holds(Relation(times(next_share, one), "=", times(share, other))) for one, other, share, next_share in pairs)


def equal_all(node: Node, scene: Scene) -> Facts:
    """∠A, ∠B and ∠C are equal."""
    equals = measures_of(node)
    return tuple(Holds(Relation(left, "=", right)) for left, right in zip(equals, equals[1:], strict=False))


def sum_to(node: Node, scene: Scene) -> Facts:
    """∠A and ∠B are complementary (90°) or supplementary (180°)."""
    total = RIGHT_ANGLE if "complement" in node.text else _STRAIGHT
    return (Holds(Relation(Sum(measures_of(node)), "=", total)),)


def right_angle(node: Node, scene: Scene) -> Facts:
    """∠ABC is a right angle; acute and obtuse angles lie below and above it."""
    words = node.text
    sign = "<" if "acute" in words else ">" if "obtuse" in words else "="
    return (Holds(Relation(measure_of(the(node, "measure")), SIGNS[sign], RIGHT_ANGLE)),)


def respective(node: Node, scene: Scene) -> Facts:
    """∠A and ∠B are 40° and 60° respectively."""
    quantities = measures_of(the(node, "quantities"))
    values = [expression_of(piece) for piece in every(node, "quantities", "expression") if piece.expr_name == "expression"]
    if len(quantities) != len(values):
        raise NotUnderstood("there are not as many values as quantities", node.start, "a value for each quantity")
    return tuple(Holds(Relation(left, "=", right)) for left, right in zip(quantities, values, strict=True))
