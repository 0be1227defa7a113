"""Reads clauses on circles: centre, points on them, cyclic polygons, chords, diameters and radii."""

from collections.abc import Iterator
from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.quantities import points_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import LengthOf, Relation
from paperaudit.model.fact import Circle, Collinear, Diameter, Drawn, Fact, Holds, Parallel, Perpendicular, Shape
from paperaudit.wording.crossings import meeting
from paperaudit.wording.named import corners_of, distinct, path_of, point_of, points_under
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.shapes import kind_of, shape
from paperaudit.wording.the_circle import THE_CIRCLE

Facts = tuple[Fact, ...]
_A_CIRCLE = ""


def ring_of(node: Node) -> tuple[str, tuple[str, ...]]:
    """The centre of the circle that is named under a node, and the points that its name puts on it.

    The centre is THE_CIRCLE where no letter is said; circle O is named by its centre, circle ABC by its points.
    """
    ring = node if node.expr_name == "ring" else first(node, "ring")
    centre, on = THE_CIRCLE, points_through(node)
    if ring is None:
        return centre, on
    for piece in every(ring, "corners", "corner", "ring_centre"):
        if piece.expr_name == "corners":
            on = (*corners_of(piece), *on)
        else:
            centre = point_of(piece) if piece.expr_name == "ring_centre" else piece.text
    return centre, tuple(dict.fromkeys(on))


def points_through(node: Node) -> tuple[str, ...]:
    """The points of "through A, B and C"."""
    through = first(node, "through")
    if through is None:
        return ()
    polygon = first(through, "polygon")
    return corners_of(polygon) if polygon is not None else distinct(points_under(through), through)


def on_circle_with(centre: str, points: tuple[str, ...]) -> Facts:
    """The circle with these points, if that says anything."""
    points = tuple(dict.fromkeys(points))
    return (Circle(centre, points),) if points or centre.isupper() else ()


def circle_named(node: Node, scene: Scene) -> Facts:
    """Circle with centre O through A, B and C; the circle has centre O."""
    return on_circle_with(*ring_of(node))


def centre_is(node: Node, scene: Scene) -> Facts:
    """O is the centre of the circle."""
    named = next(piece for piece in every(node, "point", "ring", "through") if piece.expr_name == "point")
    centre, (said, on) = point_of(named), ring_of(node)
    if said not in (THE_CIRCLE, centre):
        raise NotUnderstood(f"the centre is named {centre} and {said}", node.start, "one letter for the centre")
    return on_circle_with(centre, on)


def on_circle(node: Node, scene: Scene) -> Facts:
    """A, B and C lie on the circle; on "a circle", they may share one of their own."""
    pieces = every(node, "points", "ring", "through")
    points = distinct(points_under(next(piece for piece in pieces if piece.expr_name == "points")), node)
    return on_circle_with(_one_of_their_own(node), (*points, *ring_of(node)[1]))


def _one_of_their_own(node: Node) -> str:
    """The centre of a clause's circle; a circle without a letter or an article that points back is a new one."""
    ring = first(node, "ring")
    centre = ring_of(node)[0]
    own = ring is None or ring.text in ("a circle", "one circle", "the same circle", "circle")
    return _A_CIRCLE if own and centre == THE_CIRCLE else centre


def cyclic(node: Node, scene: Scene) -> Facts:
    """ABCD is a cyclic quadrilateral; A, B, C and D are concyclic; triangle ABC inscribed in a circle."""
    centre, on = _one_of_their_own(node), ring_of(node)[1]
    listed = first(node, "points")
    if listed is not None:
        return (Circle(centre, distinct(points_under(listed), node)),)
    whole = first(node, "shape_is", "shape_named")
    named = next(piece for piece in every(node, "corners", "ring") if piece.expr_name == "corners")
    corners = corners_of(named)
    noun = first(node, "shape_noun")
    polygon = Shape(kind_of(noun.text if noun is not None else "", corners, named), corners)
    shapes = shape(whole, scene) if whole is not None else () if scene.knows(corners) else (polygon,)
    return (*shapes, *on_circle_with(centre, (*corners, *on)))


def chord_is(node: Node, scene: Scene) -> Facts:
    """AB is a chord, a diameter, OA a radius; AOB is a diameter with its centre."""
    words = the(node, "chord_noun").text
    centre, on = ring_of(node)
    runs = tuple(
        distinct(points_of((first(piece, "length", "corners") or piece).text), piece)
        for piece in every(node, "corners", "path", "length", "ring")
        if piece.expr_name != "ring"
    )
    facts = [*on_circle_with(centre, on)] if on else []
    facts.extend(fact for run in runs for fact in _chord(words, run, centre, node))
    if "radi" in words:
        facts = [*on_circle_with(centre, on)] if on else []
        facts.extend(_radii(runs, centre, node, scene))
    return tuple(dict.fromkeys((*facts, *_compared(words, runs))))


def _compared(words: str, runs: tuple[tuple[str, ...], ...]) -> Iterator[Fact]:
    """Equal chords, parallel chords."""
    paths = tuple((run[0], run[-1]) for run in runs)
    if "equal" in words:
        yield from (Holds(Relation(LengthOf(*one), "=", LengthOf(*other))) for one, other in pairwise(paths))
    if "parallel" in words:
        yield Parallel(paths)


def _chord(words: str, run: tuple[str, ...], centre: str, node: Node) -> Facts:
    """A chord or a diameter, a diameter with its centre in the middle of its name or without."""
    ends = (run[0], run[-1])
    if "diameter" not in words:
        if len(run) != 2:
            raise NotUnderstood("a chord is named by its two ends", node.start, "two letters")
        return (*on_circle_with(centre, ends), Drawn("segment", ends))
    if len(run) == 2:
        return (*on_circle_with(centre, ends), Diameter(ends, centre))
    if len(run) != 3 or (centre != THE_CIRCLE and centre != run[1]):
        raise NotUnderstood("a diameter is named by its ends with the centre between", node.start, "as in AB or AOB")
    return (*on_circle_with(run[1], ends), Collinear(run), Diameter(ends, run[1]))


def _radii(runs: tuple[tuple[str, ...], ...], centre: str, node: Node, scene: Scene) -> Facts:
    """OA is a radius: the centre is the known one, the letter that all share, O, or the first letter."""
    if any(len(run) != 2 for run in runs):
        raise NotUnderstood("a radius is named by its two ends", node.start, "two letters")
    shared = [end for end in runs[0] if all(end in run for run in runs)]
    known = [end for end in shared if end in (centre, *scene.centres, "O")]
    if not shared:
        raise NotUnderstood("these radii do not start at one centre", node.start, "lines from the centre")
    middle = (known or shared)[0]
    ends = tuple(end for run in runs for end in run if end != middle)
    return (*on_circle_with(middle, ends), *(Drawn("segment", (run[0], run[1])) for run in runs))


def chords_cross(node: Node, scene: Scene) -> Facts:
    """Chords AB and CD intersect at E, inside the circle or when produced."""
    centre, on = ring_of(node)
    pieces = [piece for piece in every(node, "path", "length", "ring", "point") if piece.expr_name != "ring"]
    one, other = (path_of(piece) for piece in pieces if piece.expr_name != "point")
    point = point_of(pieces[-1])
    facts: Facts = on_circle_with(centre, (*one, *other, *on))
    if any(word in node.text for word in ("produced", "extended", "outside")):
        return (*facts, *(Collinear(distinct((*path, point), node)) for path in (one, other)))
    facts = (*facts, *meeting(one, other, point, node))
    return (*facts, Perpendicular(one, other)) if "right angles" in node.text else facts


def by_noun(clause: Node, scene: Scene) -> Iterator[Fact]:
    """What the name of a line says in passing: "the chord AB is produced to D", "diameter AB"."""
    words = ""
    for piece in every(clause, "path", "measure", "tangent_is", "touches", "tangents_from", "chord_is"):
        if piece.expr_name not in ("path", "measure"):
            continue
        noun = first(piece, "path_noun")
        words = noun.text if noun is not None else words if words.strip().endswith(("s", "ii")) else ""
        found = first(piece, "length")
        if found is None or not any(name in words for name in ("chord", "diameter", "radi")):
            continue
        centre, path = ring_of(piece)[0], path_of(found)
        if "radi" in words:
            yield from (fact for fact in _radii((path,), centre, piece, scene) if isinstance(fact, Circle))
        else:
            yield from (fact for fact in _chord(words, path, centre, piece) if not isinstance(fact, Drawn))

