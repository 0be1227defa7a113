"""Reads clauses on circles about one centre, and settles which of them "the larger circle" is."""

from collections.abc import Iterator

from parsimonious.nodes import Node

from paperaudit.maths.related import SIGNS
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import CircleSize, Expression, LengthOf, Measured, Number, Relation
from paperaudit.model.fact import Circle, Drawn, Fact, Holds, Tangent
from paperaudit.model.quantity import AMONG
from paperaudit.wording.circle_sizes import HIDDEN_CENTRE, WHICH
from paperaudit.wording.circles import on_circle_with, ring_of
from paperaudit.wording.contacts import SOMEWHERE
from paperaudit.wording.named import measure_of, path_of, point_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.tangents import tangent_at

Facts = tuple[Fact, ...]
CHORD = ("A", "B")
"""The letters of a chord that has none, in a question without any point."""


def concentric(node: Node, scene: Scene) -> Facts:
    """Two concentric circles with centre O have radii 5 cm and 13 cm."""
    said = first(node, "shared_centre")
    centre = the(said, "corner").text if said is not None else ""
    larger, smaller = (CircleSize("radius", f"{centre or HIDDEN_CENTRE}{AMONG}{which}") for which in WHICH.values())
    facts: list[Fact] = [Circle(one.centre, ()) for one in (larger, smaller)]
    facts += on_circle_with(centre, ())
    facts.append(Holds(Relation(larger, SIGNS[">"], smaller)))
    sizes = first(node, "shared_sizes") or (node if has(node, "measure") else None)
    if sizes is not None:
        kind = "diameter" if "diameter" in sizes.text.partition(" of ")[0] else "radius"
        values = sorted((measure_of(one) for one in every(sizes, "measure")), key=lambda one: -_plain(one, sizes))
        for size, value in zip((larger, smaller), values, strict=True):
            facts.append(Holds(Relation(CircleSize(kind, size.centre), "=", value)))  # type: ignore[arg-type]
    return tuple(facts)


def _plain(size: Expression, node: Node) -> float:
    """A radius in numbers, by which the larger circle is told from the smaller one."""
    amount = size.amount if isinstance(size, Measured) else size
    if not isinstance(amount, Number):
        raise NotUnderstood("which circle is the larger one is not said", node.start, "two radii in numbers")
    return float(amount.value)


def chord_touches(node: Node, scene: Scene) -> Facts:
    """AB is a chord of the larger circle and touches the smaller circle at T."""
    path = path_of(the(node, "length"))
    outer, inner = (ring_of(ring)[0] for ring in every(node, "ring"))
    if outer == inner:
        raise NotUnderstood("a chord of a circle does not touch it", node.start, "another circle")
    at = point_of(the(node, "point")) if has(node, "point") else ""
    chord: Facts = (*on_circle_with(outer, path), Drawn("segment", path))
    if has(node, "chord_long"):
        chord = (*chord, Holds(Relation(LengthOf(*path), "=", measure_of(the(node, "chord_long")))))
    if not at:
        return (*chord, Tangent(path, SOMEWHERE, inner))
    return (*chord, *on_circle_with(inner, (at,)), *tangent_at(path, at, inner, node))


def chord_unnamed(node: Node, scene: Scene) -> Facts:
    """A chord of the larger circle touches the smaller circle."""
    return tuple(unnamed_chord(the(node, "chord_touching"), scene))


def unnamed_chord(node: Node, scene: Scene) -> Iterator[Fact]:
    """The chord of the larger circle which touches the smaller circle, which gets letters here."""
    outer, inner = (ring_of(ring)[0] for ring in every(node, "ring"))
    if scene.on_circle or scene.shapes or scene.lines or scene.tangents or outer == inner:
        raise NotUnderstood("this chord has no letters", node.start, "the chord by its ends, as in “chord AB”")
    scene.chord_lettered = True
    yield Circle(outer, CHORD)
    yield Drawn("segment", CHORD)
    yield Tangent(CHORD, SOMEWHERE, inner)
