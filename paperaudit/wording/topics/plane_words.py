"""Points and curves of the coordinate plane as a sentence says them: A(2, 3), the line l, the graph of f."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.peg import parsed
from paperaudit.maths.related import relations_of
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.coordinates_task import Curve, CurveSaid, NamedCurve, PlanePoint
from paperaudit.model.expression import Expression, Letter, Number, Relation, letters_of
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.tasks import has_quantity
from paperaudit.wording.topics.numbers_named import number_in

_NOUGHT = Fraction(0)


def points_in(node: Node) -> tuple[PlanePoint, ...]:
    """The points under a node, those of a pair such as AB by their letters."""
    found: list[PlanePoint] = []
    for piece in every(node, "point", "pair", "corners", "named_point", "corner_is"):
        if piece.expr_name in ("pair", "corners"):
            found.extend(PlanePoint(letter) for letter in piece.text)
        else:
            found.append(point_of(piece))
    return tuple(found)


def point_of(node: Node) -> PlanePoint:
    """One point: A(2, 3), (2, 3), A, or the origin."""
    items = [_coordinate(item) for item in every(node, "item")]
    name = re.match(r"(?:the )?(?:points? )?([A-Z]′*)", node.text)
    if "origin" in node.text:
        return PlanePoint("", Number(_NOUGHT), Number(_NOUGHT))
    if items and len(items) != 2:
        raise NotUnderstood("a point with other than two coordinates", node.start, "a point such as A(2, 3)")
    return PlanePoint(name[1] if name else "", *items)


def _coordinate(node: Node) -> Expression:
    """A coordinate: a number, or an expression in one letter that is to be found."""
    try:
        return number_in(node)
    except NotUnderstood:
        value = value_in(node)
        if len(letters_of(value)) != 1 or has_quantity(value):
            raise
        return value


def curve_of(node: Node) -> CurveSaid:
    """The curve that a node says by its equation or by its name; None for "the line" that a given describes."""
    found = first(node, "relation", "called_curve", "function_named", "line_named")
    if found is None:
        return None
    if found.expr_name == "function_named":
        return NamedCurve(found.text[0])
    if found.expr_name == "line_named":
        return NamedCurve(found.text)
    if found.expr_name == "called_curve":
        formula = expression_of(the(found, "expression"))
        if letters_of(formula) != ("x",) or has_quantity(formula):
            raise NotUnderstood("no formula in x", found.start)
        return Curve(Relation(Letter("y"), "=", formula))
    named = first(node, "curve_name")
    return Curve(equation_of(found), named.text if named is not None else "")


def equation_of(node: Node) -> Relation:
    """The equation of a curve; raises NotUnderstood for other letters than x and y, and for other signs than =."""
    relations = relations_of(node)
    letters = {name for side in (relations[0].left, relations[0].right) for name in letters_of(side)}
    sized = any(has_quantity(side) for side in (relations[0].left, relations[0].right))
    if len(relations) > 1 or relations[0].sign != "=" or not letters or not letters <= {"x", "y"} or sized:
        raise NotUnderstood("no equation of a curve", node.start, "an equation in x and y")
    return relations[0]


def value_in(node: Node) -> Expression:
    """The expression that a piece of a sentence is."""
    return expression_of(parsed(expression_grammar(), "expression", node.text.strip()))
