"""Reads clauses on arcs, sectors and semicircles: what lies on them, their middle, the angle that they subtend."""

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.points import points_of
from paperaudit.maths.quantities import angle_of
from paperaudit.maths.round_sizes import calls_minor_or_major, centre_of, circle_size_of, figure_size_of, named_arc
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import AngleOf, ArcOf, Expression, LengthOf, Measured, Number, Relation, SegmentOf
from paperaudit.model.fact import Circle, Diameter, Drawn, Fact, Holds, Incircle, OnArc, Path, Sides
from paperaudit.wording.circles import on_circle_with, points_through, ring_of
from paperaudit.wording.named import angle_named, corners_of, distinct, measure_of, path_of, point_of, points_under
from paperaudit.wording.relations import RIGHT_ANGLE
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import shape_before
from paperaudit.wording.the_circle import THE_CIRCLE, circle_in, circle_round

Facts = tuple[Fact, ...]
_PARTS = {"half": 2, "third": 3, "quarter": 4, "fifth": 5, "sixth": 6, "eighth": 8}


def arc_drawn(node: Node, scene: Scene) -> Facts:
    """Arc AB, arcs AB and BC, of which nothing more is said than that they are there."""
    if has(node, "arcs_named"):
        points = [point for run in every(node, "arc_points") for point in points_of(run.text)]
        return on_circle_with(THE_CIRCLE, tuple(points))
    return on_arc_named(the(node, "arc_named"))


def on_arc(node: Node, scene: Scene) -> Facts:
    """C and D lie on the major arc AB; on the arc AB that does not contain E."""
    points = distinct(points_under(the(node, "points")), node)
    return _on(points, the(node, "arc_named"))


def arc_midpoint(node: Node, scene: Scene) -> Facts:
    """M is the midpoint of arc AB: it lies on it, and cuts it into equal arcs."""
    middle, named = point_of(the(node, "point")), the(node, "arc_named")
    arc = named_arc(named)
    halves = ArcOf(arc.start, middle, centre=arc.centre), ArcOf(middle, arc.end, centre=arc.centre)
    return (*_on((middle,), named), Holds(Relation(halves[0], "=", halves[1])))


def _on(points: tuple[str, ...], named: Node) -> Facts:
    """Points on an arc; on one that does not contain a point they lie across its chord from that point."""
    arc = named_arc(named)
    ends = (arc.start, arc.end)
    if not set(points).isdisjoint((*ends, arc.through)):
        raise NotUnderstood(f"a point of {named.text} is one of its letters", named.start, "other letters")
    circle = _circle(arc, points)
    holding = first(named, "arc_holding")
    if holding is None or "not" not in holding.text:
        return (*circle, OnArc(points, arc))
    return (*circle, *(Sides((point, arc.through), ends, same=False) for point in points))


def on_arc_named(named: Node) -> Facts:
    """What the name of an arc says: its letters are on the circle, the middle one on the minor or the major arc."""
    arc = named_arc(named)
    major, minor = calls_minor_or_major(named)
    circle = _circle(arc)
    if not (major or minor):
        return circle
    return (*circle, OnArc((arc.through,), ArcOf(arc.start, arc.end, major=major, centre=arc.centre)))


def _circle(arc: ArcOf, points: tuple[str, ...] = ()) -> Facts:
    on = tuple(point for point in (arc.start, arc.through, arc.end, *points) if point)
    return on_circle_with(arc.centre or THE_CIRCLE, on)


def circles_named(clause: Node, scene: Scene, known: set[str]) -> Iterator[Fact]:
    """The circles that the names of arcs, sectors, segments and radii speak of, with points that are not `known`."""
    for line in every(clause, "to_line"):
        if "chord" in line.text and not known.issuperset(path_of(line)):
            yield Circle(THE_CIRCLE, path_of(line))
    for run in every(clause, "arcs_named"):
        points = tuple(dict.fromkeys(point for piece in every(run, "arc_points") for point in points_of(piece.text)))
        yield from () if known.issuperset(points) else (Circle(THE_CIRCLE, points),)
    for ring in every(clause, "shape_ring"):
        corners = shape_before(the(ring, "the_shape"), scene)
        centre = shape_ring_centre(ring, scene)
        yield Incircle(centre, corners) if centre == circle_in(corners) else Circle(centre, corners)
    for named in every(clause, "arc_named", "sector_size", "segment_size", "circle_size"):
        found = on_arc_named(named) if named.expr_name == "arc_named" else on_figure(named, scene)
        for fact in found:
            there = {*scene.on(fact.centre)} if isinstance(fact, Circle) and fact.centre.isupper() else known
            if not isinstance(fact, Circle) or not fact.points or not there.issuperset(fact.points):
                yield fact


def shape_ring_centre(node: Node, scene: Scene) -> str:
    """What stands for the centre of "the circle inscribed in the triangle"."""
    corners = shape_before(the(node, "the_shape"), scene)
    words = node.text.replace("-", "")
    return circle_in(corners) if "inscribed" in words or "incircle" in words else circle_round(corners)


def _round_polygon(named: Node, scene: Scene) -> Facts:
    """The incircle or the circumcircle that a radius is said to be of."""
    polygon = first(named, "polygon_name")
    centre = centre_of(named)
    if polygon is None:
        return on_circle_with(centre, ()) if centre and centre not in scene.centres else ()
    corners = points_of(polygon.text)
    inside = circle_size_of(named).centre == circle_in(corners)
    return (Incircle(circle_in(corners), corners) if inside else Circle(circle_round(corners), corners),)


def on_figure(named: Node, scene: Scene) -> Facts:
    """What the name of a sector or a segment says: the ends of its arc are on the circle round its centre."""
    if named.expr_name == "circle_size":
        return _round_polygon(named, scene)
    size = figure_size_of(named)
    on = (size.arc.start, size.arc.through, size.arc.end)
    if isinstance(size, SegmentOf):
        return on_circle_with(size.arc.centre or THE_CIRCLE, tuple(point for point in on if point))
    letters = [point for point in (*on, size.arc.centre) if point]
    known = [point for point in letters if point in scene.centres] or [point for point in letters if point == "O"]
    if len(known) != 1:
        raise NotUnderstood("the centre of the sector is not clear", named.start, "the circle with its centre first")
    return on_circle_with(known[0], tuple(point for point in letters if point != known[0]))


def arc_share(node: Node, scene: Scene) -> Facts:
    """Arc AB is 1/5 of the circumference."""
    arc = the(node, "arc_named")
    word = the(node, "arc_part").text.split(" ")[-1]
    if re.search(r"(?:^|/)0+(?:/|$)", word):
        raise NotUnderstood("a share of nothing", node.start, "a fraction of the circumference")
    share = Fraction(word) if "/" in word else Fraction(1, _PARTS[word])
    turn = Measured(Number(360 * share), "°")
    return (*on_arc_named(arc), Holds(Relation(named_arc(arc), "=", turn)))


def subtends(node: Node, scene: Scene) -> Facts:
    """Chord AB subtends an angle of 60° at the centre; ∠ACB is subtended by arc AB."""
    named = first(node, "arc_named")
    chord = path_of(the(node, "path")) if named is None else (named_arc(named).start, named_arc(named).end)
    on = () if named is None else on_arc_named(named)
    if named is not None and named_arc(named) != ArcOf(*chord, centre=named_arc(named).centre):
        raise NotUnderstood("only the angle over a minor arc is read", named.start, "the angle by three letters")
    at = _seen_from(node, scene)
    angle = first(node, "angle") or first(node, "angle_name")
    if angle is not None:
        return (*on, *_named_angle(angle, chord, at, node))
    if not at and has(node, "centre_word"):
        # Of a centre without a letter it is the minor arc that has this measure.
        turn = _turn(node)
        return (*on_circle_with(THE_CIRCLE, chord), *on, Holds(Relation(ArcOf(*chord), "=", turn)))
    if not at:
        raise NotUnderstood("it is not said where the angle is", node.start, "as in “at the centre O”")
    return (*on, Holds(Relation(AngleOf(chord[0], at, chord[1]), "=", _turn(node))))


def _turn(node: Node) -> Expression:
    """The size of an angle that is subtended, behind the size of the circle."""
    pieces = every(node, "measure", "ring_sized", "path", "arc_named", "subtended_at")
    return measure_of(next(piece for piece in pieces if piece.expr_name == "measure"))


def _seen_from(node: Node, scene: Scene) -> str:
    """The letter of the point at which an angle is subtended, "" if none is said."""
    where = first(node, "subtended_at")
    if where is None:
        return ""
    named = first(where, "point")
    if named is not None:
        return point_of(named)
    letters = [piece.text for piece in every(where, "corner")]
    if not has(where, "centre_word"):
        return ""
    named_here = first(node, "ring", "of_circle")
    if named_here is not None and not letters:
        letters = [corner.text for corner in every(named_here, "corner")]
    known = tuple(dict.fromkeys(letters or scene.centres))
    if not known:
        return ""
    if len(known) != 1:
        raise NotUnderstood("the centre has no letter", where.start, "the centre's letter")
    return str(known[0])


def _named_angle(angle: Node, chord: Path, at: str, node: Node) -> Facts:
    """An angle named by letters says nothing more if its arms go through the ends of the chord."""
    found = angle_of(angle) if angle.expr_name == "angle" else angle_named(angle.text)
    if not isinstance(found, AngleOf) or {found.arm, found.other} != set(chord) or at not in ("", found.vertex):
        raise NotUnderstood("the angle does not stand on this chord", angle.start, "an angle over its ends")
    return ()


def sector_is(node: Node, scene: Scene) -> Facts:
    """OAB is a sector of a circle with centre O, of radius 5 cm."""
    said = first(node, "sector_centre")
    if said is not None and not has(node, "corners"):
        return _sector_from_to(node, the(said, "corner").text, scene)
    corners = corners_of(the(node, "corners"))
    centre = point_of(said) if said is not None else ring_of(node)[0]
    known = [corner for corner in corners if corner in (centre, *scene.centres)]
    known = known or [corner for corner in corners if corner == "O"]
    if len(set(known)) != 1 or not 3 <= len(corners) <= 4 or (centre not in corners and centre != THE_CIRCLE):
        raise NotUnderstood("the centre of the sector is not clear", node.start, "the circle with its centre first")
    ends = tuple(corner for corner in corners if corner != known[0])
    radii: list[Fact] = [Drawn("segment", (known[0], end)) for end in (ends[0], ends[-1])]
    size = first(node, "sector_radius")
    if size is not None:
        radii.append(Holds(Relation(LengthOf(known[0], ends[0]), "=", measure_of(the(size, "measure")))))
    angle = first(node, "sector_angle")
    if angle is not None:
        turn = measure_of(the(angle, "measure"))
        radii.append(Holds(Relation(AngleOf(ends[0], known[0], ends[-1]), "=", turn)))
    if "qua" in the(node, "sector_word").text:
        radii.append(Holds(Relation(AngleOf(ends[0], known[0], ends[-1]), "=", RIGHT_ANGLE)))
    if "major" in the(node, "sector_word").text:
        raise NotUnderstood("a major sector is read in its sizes only", node.start, "the sector without “major”")
    if len(ends) == 2:
        scene.sectors.append((known[0], ends[0], ends[1]))
    return (*on_circle_with(known[0], ends), *radii)


def _sector_from_to(node: Node, centre: str, scene: Scene) -> Facts:
    """The quarter circle with centre A from B to D."""
    names = ("sector_centre", "sector_radius", "sector_inside", "corner")
    ends = tuple(piece.text for piece in every(node, *names) if piece.expr_name == "corner")
    start, end = ends if len({centre, *ends}) == 3 else ("", "")
    if not start or "major" in the(node, "sector_word").text:
        raise NotUnderstood("the sector is not clear", node.start, "its centre and the two ends of its arc")
    facts = _sector_of(centre, start, end, first(node, "sector_radius"), scene)
    if "qua" in the(node, "sector_word").text:
        facts = (*facts, Holds(Relation(AngleOf(start, centre, end), "=", RIGHT_ANGLE)))
    return facts


def arc_centred(node: Node, scene: Scene) -> Facts:
    """Arc BD is drawn with centre A: it is the arc of a sector."""
    arc = named_arc(the(node, "arc_named"))
    centre = next(c.text for c in every(node, "arc_named", "corner", "sector_radius") if c.expr_name == "corner")
    if arc.major or arc.through or arc.centre not in ("", centre) or centre in (arc.start, arc.end):
        raise NotUnderstood("the sector is not clear", node.start, "its centre and the two ends of its arc")
    return _sector_of(centre, arc.start, arc.end, first(node, "sector_radius"), scene)


def _sector_of(centre: str, start: str, end: str, size: Node | None, scene: Scene) -> Facts:
    scene.sectors.append((centre, start, end))
    radii: Facts = (Drawn("segment", (centre, start)), Drawn("segment", (centre, end)))
    if size is not None:
        radii = (*radii, Holds(Relation(LengthOf(centre, start), "=", measure_of(the(size, "measure")))))
    return (*on_circle_with(centre, (start, end)), *radii)


def semicircle(node: Node, scene: Scene) -> Facts:
    """C and D lie on the semicircle with diameter AB: on one side of it."""
    half = first(node, "half_ring") or node
    path = first(node, "path")
    runs = [corners_of(run) for run in every(node, "corners", "points") if run.expr_name == "corners"]
    listed = first(node, "points")
    points = points_under(listed) if listed is not None else ()
    said = [path_of(found) for found in every(half, "half_diameter")]
    said += [path_of(path)] if path is not None else []
    said += [path_of(found) for found in every(node, "half_ring", "length") if found.expr_name == "length"]
    said += [(run[0], run[-1]) for run in runs if not said]
    ends = said[0] if said else scene.semicircle
    if ends is None or any(set(other) != set(ends) for other in (*said, *((run[0], run[-1]) for run in runs))):
        raise NotUnderstood("the diameter of the semicircle is not clear", node.start, "as in “with diameter AB”")
    middle = tuple(point for run in runs for point in run[1:-1])
    on = distinct((*middle, *points, *points_through(node)), node)
    letter = first(half, "half_centre")
    centre = the(letter, "corner").text if letter is not None else THE_CIRCLE
    centre = next((point_of(found) for found in every(node, "ring_centre")), centre)
    inside = first(node, "half_inside")
    if inside is not None:
        shaped = first(inside, "the_shape")
        scene.semicircle_in = shape_before(shaped, scene) if shaped is not None else corners_of(inside)
    long = first(node, "half_long")
    size: Facts = (Holds(Relation(LengthOf(*ends), "=", measure_of(the(long, "measure")))),) if long else ()
    return (*on_circle_with(centre, (*ends, *on)), Diameter(ends, centre), *size, *_one_side(ends, on, scene))


def _one_side(ends: Path, on: tuple[str, ...], scene: Scene) -> Facts:
    """The points of a semicircle are all on one side of its diameter; the scene remembers them."""
    if scene.semicircle is None or set(scene.semicircle) != set(ends):
        scene.semicircle, scene.on_semicircle = ends, []
    known = [*scene.on_semicircle[-1:], *(point for point in on if point not in ends)]
    scene.on_semicircle.extend(known)
    return tuple(Sides(pair, ends, same=True) for pair in pairwise(known))
