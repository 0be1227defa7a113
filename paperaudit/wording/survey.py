"""Reads clauses on angles of elevation and depression, and on compass directions."""

import re
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import AngleOf, BearingOf, LengthOf, Measured, Number, NumberForm, Relation
from paperaudit.model.fact import Fact, Holds, Perpendicular
from paperaudit.wording.named import distinct, path_of
from paperaudit.wording.scene import NotUnderstood, Scene

Facts = tuple[Fact, ...]

_QUARTERS = {"north": 0, "northeast": 45, "east": 90, "southeast": 135, "south": 180, "southwest": 225, "west": 270}
_QUARTERS["northwest"] = 315
_READING = re.compile(r"([NS]) ?([0-9]+(?:[.,][0-9]+)?) ?° ?([EW])")


def elevation(node: Node, scene: Scene) -> Facts:
    """The angle of elevation of T from A on level ground: ∠TAB, where TB stands at right angles to AB.

    The angle of depression of A from T is as large (alternate angles between horizontal lines).
    """
    angle, square = sighted_angle(the(node, "elevation_named"), scene)
    *_, size = every(node, "elevation_named", "expression")
    return (*square, Holds(Relation(angle, "=", expression_of(size))))


def sighted_angle(node: Node, scene: Scene) -> tuple[AngleOf, Facts]:
    """The angle under `elevation_named`, and the right angle at the foot where only its words say it."""
    target, observer = every(node, "sighted")
    if node.text.removeprefix("the ").split(" ")[3] == "from":
        target, observer = observer, target
    high, low = (observer, target) if "depression" in node.text else (target, observer)
    top, ground = (the(end, "corner").text for end in (high, low))
    foot, upright = _foot(high, top, ground, scene)
    if not foot or (upright and not has(low, "sighted_level")):
        raise NotUnderstood("where the horizontal is, is not said", node.start, "a right angle such as TB ⊥ AB")
    square: Facts = (Perpendicular((top, foot), (ground, foot)),) if upright else ()
    distinct((top, ground, foot), node)
    return AngleOf(top, ground, foot), square


def _foot(high: Node, top: str, ground: str, scene: Scene) -> tuple[str, bool]:
    """The point below the top at the level of the ground, and whether the right angle there is still to be said."""
    for right in scene.perpendiculars:
        for one, other in ((right.first, right.second), (right.second, right.first)):
            shared = set(one) & set(other)
            if top in one and ground in other and len(shared) == 1 and shared.isdisjoint((top, ground)):
                return shared.pop(), False
    thing = first(high, "sighted_thing")
    upright = first(thing, "length") if thing is not None else None
    ends = path_of(upright) if upright is not None else ()
    return (next(end for end in ends if end != top), True) if top in ends else ("", False)


def compass_of(node: Node, scene: Scene) -> Facts:
    """B is 5 km due north of A; B is N 40° E of A: as a bearing, clockwise from north."""
    end, start = distinct(tuple(the(place, "corner").text for place in every(node, "place")), node)
    facts: list[Fact] = [Holds(Relation(BearingOf(start, end), "=", _bearing(the(node, "compass").text)))]
    far = first(node, "expression")
    if far is not None:
        facts.insert(0, Holds(Relation(LengthOf(start, end), "=", expression_of(far))))
    return tuple(facts)


def _bearing(words: str) -> Measured:
    reading = _READING.fullmatch(words)
    if reading is None:
        name = re.sub(r"due |directly |-", "", words)
        return Measured(Number(Fraction(_QUARTERS[name])), "°")
    half, digits, side = reading.groups()
    size = Fraction(digits.replace(",", "."))
    places = len(digits.replace(",", ".").partition(".")[2])
    if half == "S":
        size = 180 - size if side == "E" else 180 + size
    elif side == "W":
        size = 360 - size
    return Measured(Number(size, NumberForm.DECIMAL if places else NumberForm.INTEGER, places), "°")
