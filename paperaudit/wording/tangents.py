"""Reads clauses on tangents: where they touch, where they meet each other or another line."""

from collections.abc import Iterator

from parsimonious.nodes import Node

from paperaudit.maths.points import points_of
from paperaudit.maths.tree import every, first, the
from paperaudit.model.fact import Collinear, Fact, Path, Tangent
from paperaudit.wording.circles import on_circle_with, ring_of
from paperaudit.wording.contacts import AT_AN_END, SOMEWHERE
from paperaudit.wording.lines import on_line
from paperaudit.wording.named import corners_of, distinct, path_of, point_of, points_under
from paperaudit.wording.scene import NotUnderstood, Scene

Facts = tuple[Fact, ...]


def tangent_is(node: Node, scene: Scene) -> Facts:
    """PT is a tangent to the circle at T; PA and PB touch the circle; CD touches it at E and meets PA at C."""
    crossed = first(node, "tangent_crosses")
    return (*_touching(node, scene), *(_crossed(crossed) if crossed is not None else ()))


def _crossed(node: Node) -> Iterator[Fact]:
    """Where a tangent is said to meet other lines."""
    for one in every(node, "path_crossed"):
        line, point = path_of(the(one, "path")), point_of(the(one, "point"))
        if point not in line:
            yield on_line(point, line, one, first(one, "on_tail") is not None)


def _touching(node: Node, scene: Scene) -> Facts:
    """S-T-R is a tangent at T."""
    runs = [_run(item) for item in every(node, "tangent_item", "tangent_name")]
    runs = runs or [path_of(path) for path in every(node, "path", "ring") if path.expr_name == "path"]
    centre, on = ring_of(node)
    starts, contacts = _said(node)
    several = first(node, "touched_at")
    contacts = points_under(several) if several is not None else contacts
    contacts = contacts or _contacts(runs, starts, {*on, *scene.on(centre)}, node)
    if len(contacts) == 1:
        contacts = contacts * len(runs)
    if len(contacts) != len(runs):
        raise NotUnderstood("there are not as many points as tangents", node.start, "a point for each tangent")
    facts: list[Fact] = []
    if contacts[0] in (SOMEWHERE, AT_AN_END):
        on_it: Facts = on_circle_with(centre, on) if on or centre.isupper() else ()
        return (*on_it, Tangent((runs[0][0], runs[0][1]), contacts[0], centre))
    facts += on_circle_with(centre, (*on, *contacts))
    for run, at in zip(runs, contacts, strict=True):
        facts.extend(tangent_at(run, at, centre, node))
    return tuple(dict.fromkeys(facts))


def _is_line(node: Node) -> bool:
    """Whether a tangent is spoken of as a line or a side that touches, not as a tangent from a point."""
    words = {noun.text.split()[0] for noun in every(node, "path_noun")}
    return node.expr_name == "touches" or bool(words & {"line", "straight", "side", "hypotenuse", "base"})


def _run(item: Node) -> tuple[str, ...]:
    """The letters of a tangent's name: PT, STR or S-T-R."""
    named = first(item, "corners", "length")
    if named is not None:
        return distinct(points_of(named.text), item)
    return distinct(tuple(corner.text for corner in every(item, "corner")), item)


def _said(node: Node) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Where the tangents are said to start ("from P") and to touch ("at A and B")."""
    named = ("tangent_item", "tangent_name", "path", "ring", "through", "tangent_crosses")
    names = ("tangent_first", "tangent_start", "point", *named)
    pieces = list(every(node, *names))
    starts = tuple(point_of(piece) for piece in pieces if piece.expr_name in ("tangent_first", "tangent_start"))
    return starts, tuple(point_of(piece) for piece in pieces if piece.expr_name == "point")


def _contacts(runs: list[tuple[str, ...]], starts: tuple[str, ...], on_circle: set[str], node: Node) -> tuple[str, ...]:
    """Where each tangent touches, if that is not said: away from where they start, or at a point of the circle."""
    starts = starts or tuple(end for end in runs[0] if len(runs) > 1 and all(end in run for run in runs))
    found: list[str] = []
    for run in runs:
        ends = [end for end in run if end not in starts]
        ends = [end for end in ends if end in on_circle] or ends
        if len(ends) != 1 and len(runs) == 1 and len(run) == 2:
            return (SOMEWHERE if _is_line(node) else AT_AN_END,)
        if len(ends) != 1:
            raise NotUnderstood("it is not said where the tangent touches the circle", node.start, "as in “at T”")
        found.append(ends[0])
    return tuple(found)


def tangent_at(run: tuple[str, ...], at: str, centre: str, node: Node) -> Iterator[Fact]:
    """The tangent by its ends, with the point of contact on it."""
    if len(run) > 2 and at not in run:
        raise NotUnderstood(f"{at} is not on the tangent by its name", node.start, "a tangent named with it")
    ends = (run[0], run[-1])
    if len(run) > 2 or at not in ends:
        yield Collinear(run if len(run) > 2 else (run[0], at, run[1]))
    yield Tangent(ends, at, centre)


def tangent_crosses_two(node: Node, scene: Scene) -> Facts:
    """The tangent at D meets AB at E and AC at F."""
    at = next(point_of(piece) for piece in every(node, "ring", "point", "path_crossed") if piece.expr_name == "point")
    ends = tuple(point_of(the(one, "point")) for one in every(node, "path_crossed"))
    if len(ends) != 2:
        raise NotUnderstood("a tangent meets two lines", node.start, "two lines and two points")
    run = distinct((ends[0], at, ends[1]), node)
    centre, on = ring_of(node)
    line = Collinear(run, ordered=False)
    return (*on_circle_with(centre, (*on, at)), line, Tangent((ends[0], ends[1]), at, centre), *_crossed(node))


def touches_angle(node: Node, scene: Scene) -> Facts:
    """Circle O touches the sides of angle P at A and B."""
    corner = next(piece.text for piece in every(node, "ring", "point", "corner") if piece.expr_name == "corner")
    return _from(corner, points_under(node), node)


def tangent_secant(node: Node, scene: Scene) -> Facts:
    """From P outside the circle a tangent PT and a secant PAB are drawn."""
    line, run = path_of(the(node, "length")), corners_of(the(node, "corners"))
    centre, on = ring_of(node)
    ends = [end for end in line if end != run[0]]
    said = first(node, "tangent_first")
    if len(run) != 3 or len(ends) != 1 or (said is not None and point_of(said) != run[0]):
        raise NotUnderstood("the tangent and the secant start at one point", node.start, "as in PT and PAB")
    inner = (*on, ends[0], *run[1:])
    return (Collinear(run), *on_circle_with(centre, distinct(inner, node)), Tangent((run[0], ends[0]), ends[0], centre))


def tangents_from(node: Node, scene: Scene) -> Facts:
    """Tangents from P touch the circle at A and B."""
    start, *contacts = points_under(node)
    return _from(start, tuple(contacts), node)


def tangents_meet(node: Node, scene: Scene) -> Facts:
    """The tangents at A and B meet at P."""
    one, other, meet = points_under(node)
    return _from(meet, (one, other), node)


def _from(start: str, contacts: tuple[str, ...], node: Node) -> Facts:
    centre, on = ring_of(node)
    paths: list[Path] = [(start, at) for at in contacts if distinct((start, at), node)]
    tangents = (Tangent(path, path[1], centre) for path in paths)
    return (*on_circle_with(centre, (*on, *contacts)), *tangents)


def contact_is(node: Node, scene: Scene) -> Facts:
    """T is the point of contact: a point of the circle, where a tangent of the question touches it."""
    centre, on = ring_of(node)
    return on_circle_with(centre, (*points_under(the(node, "points")), *on))


def tangent_meets(node: Node, scene: Scene) -> Facts:
    """The tangent at T meets AB produced at P."""
    at, meet = points_under(node)
    line = path_of(the(node, "path"))
    beyond = first(node, "on_tail") is not None
    on: Facts = () if meet in line else (on_line(meet, line, node, beyond),)
    return (*_from(meet, (at,), node), *on)


def tangents_named(clause: Node, scene: Scene, facts: Facts) -> Iterator[Fact]:
    """The tangents that a clause names in passing, unless they are known: "the tangent PT is parallel to AB"."""
    known = [*scene.tangents, *(fact.path for fact in facts if isinstance(fact, Tangent))]
    words = ""
    for path in every(clause, "path", "measure"):
        noun = first(path, "path_noun")
        words = noun.text if noun is not None else words if words.endswith("s ") else ""
        if "tangent" not in words or first(path, "length") is None:
            continue
        ends = path_of(path)
        if any(set(ends) == set(tangent) for tangent in known):
            continue
        at = next((end for end in reversed(ends) if end in scene.on(ring_of(path)[0])), None)
        if at is None:
            raise NotUnderstood("it is not said where the tangent touches the circle", path.start, "as in “at T”")
        yield from (*on_circle_with(ring_of(path)[0], (at,)), Tangent(ends, at, ring_of(path)[0]))
