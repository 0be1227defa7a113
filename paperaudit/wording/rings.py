"""Reads clauses on a circle's size, on lines that meet a circle and on circles that meet each other."""

from collections.abc import Iterator
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.related import SIGNS
from paperaudit.maths.round_sizes import CircleKind
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import CircleSize, LengthOf, Number, Relation
from paperaudit.model.fact import Circle, Collinear, Diameter, Fact, Holds, Incircle, Tangent
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
    for around in every(clause, "of_ring", "on_circle", "cyclic", "incircle", "touches", "subtends"):
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


def ring_touches(node: Node, scene: Scene) -> Facts:
    """The circle through A and B, or on the diameter AB, touches CD at E."""
    centre, on = ring_of(node)
    base = first(node, "ring_on_diameter")
    ends = path_of(base) if base is not None else ()
    touched = the(node, "path_crossed")
    path, point = path_of(the(touched, "path")), point_of(the(touched, "point"))
    if has(touched, "on_tail"):
        raise NotUnderstood("where the tangent ends is not said", touched.start, "the tangent by its two ends")
    line: Facts = () if point in path else (on_line(point, path, touched),)
    across: Facts = (Diameter(path_of(base), centre),) if base is not None else ()
    return (*on_circle_with(centre, (*on, *ends, point)), *across, *line, Tangent(path, point, centre))


def ring_meets(node: Node, scene: Scene) -> Facts:
    """The circle with diameter AB meets BC at D and AC at E."""
    centre, on = ring_of(node)
    base = first(node, "ring_on_diameter")
    across = (path_of(base),) if base is not None else ()
    lines: list[Fact] = []
    points: list[str] = []
    for one in every(node, "path_crossed"):
        path, point = path_of(the(one, "path")), point_of(the(one, "point"))
        points.append(point)
        if point not in path:
            lines.append(on_line(point, path, one, has(one, "on_tail")))
    ends = tuple(end for path in across for end in path)
    round_facts = on_circle_with(centre, (*on, *ends, *points))
    return (*round_facts, *(Diameter(path, centre) for path in across), *lines)


def circles_alike(node: Node, scene: Scene) -> Facts:
    """Two equal circles with centres A and B."""
    one, other = distinct(tuple(corner.text for corner in every(node, "corner")), node)
    equal = Holds(Relation(CircleSize("radius", one), "=", CircleSize("radius", other)))
    return Circle(one, ()), Circle(other, ()), equal


def secant_through(node: Node, scene: Scene) -> Facts:
    """The secant PBC passes through O, which lies on the chord BC."""
    run, point = corners_of(the(node, "corners")), point_of(the(node, "point"))
    if len(run) != 3:
        raise NotUnderstood("a secant is named by where it starts and its two points", node.start, "three letters")
    on_it: Facts = () if point in run else (Collinear((run[1], point, run[2])),)
    return (Collinear(run), *on_it, *on_circle_with(ring_of(node)[0], run[1:]))


def radii_are(node: Node, scene: Scene) -> Facts:
    """Their radii are 9 cm and 4 cm, of two circles in the order in which they were named."""
    known = tuple(dict.fromkeys(scene.centres))
    if len(known) != 2 or THE_CIRCLE in known:
        raise NotUnderstood("it is not clear which two circles are meant", node.start, "as in “circle O has radius”")
    sizes = [measure_of(size) for size in every(node, "measure")]
    pairs = zip(known, sizes, strict=True)
    return tuple(Holds(Relation(CircleSize("radius", centre), "=", size)) for centre, size in pairs)


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
    path, point, *second = path_of(the(node, "path")), *points_under(node)
    centre, on = ring_of(node)
    if second:
        return (*_enters_and_leaves(path, (point, second[0]), node), *on_circle_with(centre, (*on, point, *second)))
    beyond = has(node, "on_tail") or has(node, "be")
    if centre == THE_CIRCLE and len(set(scene.centres)) == 1:
        centre = scene.centres[0]
    if centre in path and point not in path and not beyond:
        # A line from outside to the centre meets the circle on its way there.
        ends = path if path[1] == centre else path[::-1]
        return (Collinear((ends[0], point, centre)), *on_circle_with(centre, (*on, point)))
    if point not in path and not beyond and len([end for end in path if end in scene.on(centre)]) == 1:
        # A chord from its end on the circle: on which side of the other end, the figure says.
        return (Collinear(distinct((*path, point), node), ordered=False), *on_circle_with(centre, (*on, point)))
    if point not in path and not beyond:
        raise NotUnderstood(f"{point} could lie on either side", node.start, f"“{''.join(path)} produced”")
    on_it: Facts = () if point in path else (on_line(point, path, node, beyond=True),)
    return (*on_it, *on_circle_with(centre, (*on, point)))


def _enters_and_leaves(path: tuple[str, str], points: tuple[str, str], node: Node) -> Facts:
    """A line from outside meets a circle at two points, in their order where it ends at the second."""
    if points[1] == path[1]:
        return (Collinear(distinct((path[0], *points), node)),)
    if points[0] == path[1] or path[0] in points:
        raise NotUnderstood("the line is not named from where it starts", node.start, "the nearer point first")
    return (Collinear(distinct((*path, *points), node), ordered=False),)


def secant(node: Node, scene: Scene) -> Facts:
    """PAB is a secant: it enters and leaves the circle at its last two letters."""
    if has(node, "point"):
        centre, on = ring_of(node)
        near, far = points_under(node)
        through = first(node, "secant_centre")
        middle = (the(through, "corner").text,) if through is not None else ()
        path = path_of(the(node, "path"))
        line = _enters_and_leaves(path, (near, far), node)
        on_it = tuple(Collinear(distinct((near, point, far), node)) for point in middle)
        return (*line, *on_it, *on_circle_with(centre, (*on, near, far)))
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
