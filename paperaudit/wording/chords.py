"""Reads clauses on chords, diameters and radii, and what these names say in passing."""

from collections.abc import Iterator
from itertools import pairwise

from parsimonious.nodes import Node

from paperaudit.maths.points import points_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.expression import LengthOf, Relation
from paperaudit.model.fact import Circle, Collinear, Diameter, Drawn, Fact, Holds, Parallel, Path, Perpendicular
from paperaudit.wording.circles import on_circle_with, ring_of
from paperaudit.wording.crossings import meeting
from paperaudit.wording.named import distinct, measure_of, path_of, point_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.the_circle import THE_CIRCLE

Facts = tuple[Fact, ...]


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
    long = first(node, "chord_long")
    if long is not None:
        facts.append(Holds(Relation(LengthOf(*ends_of(runs[-1])), "=", measure_of(the(long, "measure")))))
    return tuple(dict.fromkeys((*facts, *_compared(words, runs))))


def chord_way(node: Node, scene: Scene) -> Facts:
    """CD is a chord perpendicular to AB at E; OC is a radius parallel to AB."""
    line, other = path_of(the(node, "length")), path_of(the(node, "path"))
    words, centre = the(node, "chord_noun").text, ring_of(node)[0]
    named = _radii((line,), centre, node, scene) if "radi" in words else _chord(words, line, centre, node)
    parallel = "parallel to" in node.text
    meets = first(node, "point")
    if meets is None:
        return (*named, Parallel((line, other)) if parallel else Perpendicular(line, other))
    if parallel:
        raise NotUnderstood("parallel lines do not meet", meets.start, "“perpendicular”")
    return (*named, *meeting(line, other, point_of(meets), node), Perpendicular(line, other))


def ends_of(run: tuple[str, ...]) -> Path:
    """The first and the last letter of a line's name."""
    return run[0], run[-1]


def _compared(words: str, runs: tuple[tuple[str, ...], ...]) -> Iterator[Fact]:
    """Equal chords, parallel chords."""
    paths = tuple(map(ends_of, runs))
    if "equal" in words:
        yield from (Holds(Relation(LengthOf(*one), "=", LengthOf(*other))) for one, other in pairwise(paths))
    if "parallel" in words:
        yield Parallel(paths)


def _chord(words: str, run: tuple[str, ...], centre: str, node: Node) -> Facts:
    """A chord or a diameter, a diameter with its centre in the middle of its name or without."""
    ends = ends_of(run)
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
