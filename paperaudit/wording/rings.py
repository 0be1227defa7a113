"""Reads clauses on a circle's size, on lines that meet a circle and on circles that meet each other."""

from collections.abc import Iterator
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.related import SIGNS
from paperaudit.maths.round_sizes import CircleKind
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import CircleSize, LengthOf, Number, Relation
from paperaudit.model.fact import Circle, Collinear, Fact, Holds, Incircle
from paperaudit.wording.circles import on_circle_with, ring_of
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import corners_of, distinct, measure_of, path_of, point_of, points_under
from paperaudit.wording.relations import times
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.the_circle import THE_CIRCLE, circle_in, circle_round

Facts = tuple[Fact, ...]
_SIZES: tuple[CircleKind, ...] = ("radius", "diameter", "circumference", "area")


def circle_size(node: Node, scene: Scene) -> Facts:
    """The radius of the circle is 5 cm: that of a point named on it from its centre, where there is one."""
    centre, on = ring_of(node)
    after = first(node, "centre_after")
    if after is not None:
        centre = point_of(after)
    named = on_circle_with(centre, on) if on or centre not in (THE_CIRCLE, *scene.centres) else ()
    known = tuple(dict.fromkeys(scene.centres))
    if centre == THE_CIRCLE and len(known) == 1:
        centre = known[0]
    size = measure_of(the(node, "measure"))
    kind = _kind(node)
    rim = next(iter(scene.on(centre)), "")
    alone = centre.isupper() and rim and rim != centre and len(known) < 2
    if not alone or kind not in ("radius", "diameter"):
        whole = CircleSize(kind, "" if centre == THE_CIRCLE else centre)
        return (*named, Holds(Relation(whole, "=", size)))
    share = Number(Fraction(2 if kind == "diameter" else 1))
    return (*named, Holds(Relation(times(share, LengthOf(centre, rim)), "=", size)))


def size_alone(node: Node, scene: Scene) -> Facts:
    """And radius 10 cm, of the circle named before."""
    if len(set(scene.centres)) > 1:
        raise NotUnderstood("it could be the size of more than one circle", node.start, "as in “circle O has radius”")
    centre = scene.centres[-1] if scene.centres else ""
    return (Holds(Relation(CircleSize(_kind(node), centre), "=", measure_of(the(node, "measure")))),)


def sized_in_passing(clause: Node) -> Iterator[Fact]:
    """The radius in "a chord of a circle with radius 10 cm"."""
    for around in every(clause, "of_ring", "on_circle", "cyclic", "incircle", "touches"):
        size = first(around, "ring_sized")
        if size is not None:
            centre = ring_of(around)[0]
            whole = CircleSize(_kind(size), "" if centre == THE_CIRCLE else centre)
            yield Holds(Relation(whole, "=", measure_of(the(size, "measure"))))


def _kind(node: Node) -> CircleKind:
    word = the(node, "size_word").text
    return next(kind for kind in _SIZES if kind in word)


def polygon_sized(node: Node, scene: Scene) -> Facts:
    """The incircle of triangle ABC has radius 2."""
    around = the(node, "polygon_circle")
    corners = corners_of(the(around, "corners"))
    words = around.text.partition(" of ")[0].replace("-", "")
    inside = "incircle" in words or "inscribed" in words
    centre = circle_in(corners) if inside else circle_round(corners)
    kind = _kind(node)
    there: Fact = Incircle(centre, corners) if inside else Circle(centre, corners)
    return there, Holds(Relation(CircleSize(kind, centre), "=", measure_of(the(node, "measure"))))


def two_circles(node: Node, scene: Scene) -> Facts:
    """Circles with centres O and P intersect at A and B."""
    one, other = two_centres(node)
    points = distinct(points_under(the(node, "points")), node)
    return Circle(one, points), Circle(other, points)


def circles_given(node: Node, scene: Scene) -> Facts:
    """Two circles with centres O and P, of which the next statements speak."""
    return tuple(Circle(centre, ()) for centre in two_centres(node))


def in_disc(node: Node, scene: Scene) -> Facts:
    """P lies inside circle O, or outside it: nearer to its centre than a radius, or farther."""
    centre, on = ring_of(node)
    if centre == THE_CIRCLE and len(set(scene.centres)) == 1:
        centre = scene.centres[0]
    if centre == THE_CIRCLE or on:
        raise NotUnderstood("the centre of this circle has no letter", node.start, "as in “circle O”")
    sign = SIGNS[">" if "outside" in node.text else "<"]
    radius = CircleSize("radius", centre)
    return tuple(Holds(Relation(LengthOf(centre, point), sign, radius)) for point in points_under(node))


def meets_circle(node: Node, scene: Scene) -> Facts:
    """BO is produced to meet the circle at D; the line AD meets the circle at D."""
    path, point = path_of(the(node, "path")), point_of(the(node, "point"))
    centre, on = ring_of(node)
    beyond = has(node, "on_tail") or has(node, "be")
    if centre == THE_CIRCLE and len(set(scene.centres)) == 1:
        centre = scene.centres[0]
    if centre in path and point not in path and not beyond:
        # A line from outside to the centre meets the circle on its way there.
        ends = path if path[1] == centre else path[::-1]
        return (Collinear((ends[0], point, centre)), *on_circle_with(centre, (*on, point)))
    if point not in path and not beyond:
        raise NotUnderstood(f"{point} could lie on either side", node.start, f"“{''.join(path)} produced”")
    on_it: Facts = () if point in path else (on_line(point, path, node, beyond=True),)
    return (*on_it, *on_circle_with(centre, (*on, point)))


def secant(node: Node, scene: Scene) -> Facts:
    """PAB is a secant: it enters and leaves the circle at its last two letters."""
    runs = [corners_of(run) for run in every(node, "corners", "ring") if run.expr_name == "corners"]
    if any(len(run) != 3 for run in runs):
        raise NotUnderstood("a secant is named by where it starts and its two points", node.start, "three letters")
    centre, on = ring_of(node)
    points = tuple(point for run in runs for point in run[1:])
    return (*(Collinear(run) for run in runs), *on_circle_with(centre, (*on, *points)))


def two_centres(node: Node) -> tuple[str, str]:
    """The centres of two circles: circles O and P."""
    pair = first(node, "rings_two")
    if pair is not None and not has(pair, "ring"):
        centres = tuple(corner.text for corner in every(pair, "corner"))
    else:
        centres = tuple(ring_of(ring)[0] for ring in every(pair or node, "ring"))
    one, other = distinct(centres, node)
    if THE_CIRCLE in centres:
        raise NotUnderstood("the centres of the two circles are not named", node.start, "as in “circles O and P”")
    return one, other
