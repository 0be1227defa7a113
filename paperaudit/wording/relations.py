"""Reads clauses that compare sizes: equations, ratios, "twice", "20° more than", "are supplementary"."""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.numerals import plain_number
from paperaudit.maths.related import SIGNS, related
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    AreaOf,
    Expression,
    Letter,
    Measured,
    Negative,
    Number,
    NumberForm,
    PerimeterOf,
    Product,
    Relation,
    Sum,
)
from paperaudit.model.fact import AngleName, Circle, Fact, Holds
from paperaudit.wording.named import measure_of, measures_of
from paperaudit.wording.scene import NotUnderstood, Scene

Facts = tuple[Fact, ...]

RIGHT_ANGLE = Measured(Number(Fraction(90)), "°")
_STRAIGHT = Measured(Number(Fraction(180)), "°")
_TIMES = {
    "twice": 2,
    "double": 2,
    "thrice": 3,
    "two": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "seven": 7,
    "eight": 8,
    "nine": 9,
    "ten": 10,
}
_SHARES = {"half": Fraction(1, 2), "third": Fraction(1, 3), "quarter": Fraction(1, 4)}
_LESS = ("less", "smaller", "shorter")


def chain(node: Node, scene: Scene) -> Facts:
    """AB = AC = 5 cm, one relation between each two neighbours; B̂₁ = ∠ABD names an angle."""
    start, rest = node.children
    sides = [measure_of(start), *(worded(side) for side in every(rest, "worded"))]
    signs = [SIGNS[sign.text] for sign in every(rest, "sign")]
    return tuple(_fact(related(left, sign, right)) for (left, right), sign in zip(pairwise(sides), signs, strict=True))


def measured_as(node: Node, scene: Scene) -> Facts:
    """∠ABC is twice ∠ACB; angle ABC measures 40 degrees."""
    return (_fact(related(measure_of(the(node, "measure")), "=", worded(the(node, "worded")))),)


def _fact(relation: Relation) -> Fact:
    """The relation, or the naming of an angle: a number at a vertex and three points round the same one."""
    match relation:
        case Relation(AngleAt(vertex, number) as name, "=", AngleOf(_, middle) as angle):
            pass
        case Relation(AngleOf(_, middle) as angle, "=", AngleAt(vertex, number) as name):
            pass
        case _:
            return Holds(relation)
    return AngleName(name, angle) if number and vertex == middle else Holds(relation)


def worded(node: Node) -> Expression:
    """An expression that may be put in words: twice ∠B, 20° more than ∠B."""
    inner = the(node, "more_than", "multiple", "sum_words", "measure")
    if inner.expr_name == "measure":
        return measure_of(inner)
    if inner.expr_name == "sum_words":
        return Sum(measures_of(inner))
    if inner.expr_name == "multiple":
        return times(_multiplier(the(inner, "multiplier")), measure_of(the(inner, "measure")))
    amount = expression_of(inner.children[0])
    return _changed(worded(inner), amount, inner.children[1].text)


def _changed(base: Expression, amount: Expression, words: str) -> Expression:
    return Sum((base, Negative(amount) if any(word in words for word in _LESS) else amount))


def _multiplier(node: Node) -> Number:
    number = first(node, "plain_number")
    if number is not None:
        return plain_number(number)
    words = node.text.replace("-", " ").split()
    share = next((_SHARES[word] for word in words if word in _SHARES), None)
    return Number(Fraction(_TIMES[words[0]])) if share is None else Number(share, NumberForm.FRACTION)


def times(factor: Expression, base: Expression) -> Expression:
    """A multiple of a quantity, with 1 times left out."""
    return base if factor == Number(Fraction(1)) else Product((factor, base))


def compared(node: Node, scene: Scene) -> Facts:
    """∠A exceeds ∠B by 20°; AB is longer than CD."""
    left, right = measures_of(node)
    words = the(node, "compared_by").text
    amount = next((piece for piece in every(node, "measure", "expression") if piece.expr_name == "expression"), None)
    if amount is not None:
        return (Holds(Relation(left, "=", _changed(right, expression_of(amount), words))),)
    return (Holds(Relation(left, "<" if any(word in words for word in _LESS) else ">", right)),)


def ratio(node: Node, scene: Scene) -> Facts:
    """∠A : ∠B : ∠C = 2 : 3 : 4, as 3∠A = 2∠B and 4∠B = 3∠C."""
    pieces = list(every(node, "expression_side", "ratio_equals"))
    middle = next(at for at, piece in enumerate(pieces) if piece.expr_name == "ratio_equals")
    before, after = ([expression_of(side) for side in half] for half in (pieces[:middle], pieces[middle + 1 :]))
    return in_ratio(before, after, node)


def in_ratio(sides: Sequence[Expression], shares: Sequence[Expression], node: Node) -> Facts:
    """Sizes in a ratio, as one equation for each two neighbours."""
    if len(sides) != len(shares):
        raise NotUnderstood("the two ratios have different lengths", node.start, "as many terms on both sides")
    return tuple(
        Holds(Relation(times(next_share, one), "=", times(share, other)))
        for (one, other), (share, next_share) in zip(pairwise(sides), pairwise(shares), strict=True)
    )


def equal_all(node: Node, scene: Scene) -> Facts:
    """∠A, ∠B and ∠C are equal; chords AB and CD of circle O are equal."""
    ring = first(node, "equal_of")
    centre = first(ring, "corner") if ring is not None else None
    if ring is not None and centre is None and "the circle" not in ring.text:
        raise NotUnderstood("which circle is meant is not said", ring.start, "the circle by its centre")
    around: Facts = (Circle(centre.text, ()),) if centre is not None else ()
    return (*around, *(Holds(Relation(left, "=", right)) for left, right in pairwise(measures_of(node))))


def sum_to(node: Node, scene: Scene) -> Facts:
    """∠A and ∠B are complementary (90°) or supplementary (180°)."""
    total = RIGHT_ANGLE if "complement" in node.text else _STRAIGHT
    return (Holds(Relation(Sum(measures_of(node)), "=", total)),)


def sum_is(node: Node, scene: Scene) -> Facts:
    """The sum of ∠A and ∠B is 110°; ∠A and ∠B add up to 110°."""
    parts = measures_of(the(node, "quantities", "sum_words"))
    *_, total = every(node, "quantities", "sum_words", "expression")
    return (Holds(Relation(Sum(parts), "=", expression_of(total))),)


def size_elided(node: Node, scene: Scene) -> Facts:
    """Its perimeter is 30 cm, of the polygon named before."""
    noun = first(node, "shape_noun")
    corners = scene.latest(3 if noun is not None and noun.text == "triangle" else None)
    if corners is None:
        raise NotUnderstood("no polygon was named before", node.start, "the polygon's name")
    whole = PerimeterOf(corners) if "perimeter" in node.text else AreaOf(corners)
    return (Holds(Relation(whole, "=", measure_of(the(node, "measure")))),)


def right_angle(node: Node, scene: Scene) -> Facts:
    """∠ABC is a right angle; acute and obtuse angles lie below and above it."""
    sign = "<" if "acute" in node.text else ">" if "obtuse" in node.text else "="
    # A capital alone that is obtuse is the angle at that corner.
    measures = (
        AngleAt(measure.name) if isinstance(measure, Letter) and measure.name.isupper() else measure
        for measure in measures_of(node)
    )
    return tuple(Holds(Relation(measure, SIGNS[sign], RIGHT_ANGLE)) for measure in measures)


def respective(node: Node, scene: Scene) -> Facts:
    """∠A and ∠B are 40° and 60° respectively."""
    quantities = measures_of(the(node, "quantities"))
    values = [piece for piece in every(node, "quantities", "expression") if piece.expr_name == "expression"]
    if len(quantities) != len(values):
        raise NotUnderstood("there are not as many values as quantities", node.start, "a value for each quantity")
    return tuple(
        Holds(Relation(left, "=", expression_of(right))) for left, right in zip(quantities, values, strict=True)
    )
