"""Ladders, walks, shadows, kites, ramps and lines of sight told in everyday words, set down as figures in letters."""

import re

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.paper import Part, Question
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.figure_letters import Lettered, Sizes
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.scene_letters import KINDS, scene_in_letters, two_shadows, walk_in_letters
from paperaudit.wording.topics.stories.plain import plain
from paperaudit.wording.topics.topic import Readers, Told
from paperaudit.wording.topics.whole_text import whole_of
from paperaudit.wording.topics.written_in_letters import in_letters

_SAME_TIME = re.compile(r"\bat the same time\b")


def _figure(tree: Node) -> Lettered:
    """The one scene of a part in letters; raises NotUnderstood for two scenes or a size that is not clear."""
    kinds = {clause.children[0].expr_name for clause in every(tree, "clause")} - {"tall"}
    if len(kinds) != 1:
        raise NotUnderstood("one scene", 0)
    name = kinds.pop()
    if name == "walk":
        if len(every(tree, "walk_told")) != 1 or len(every(tree, "walk_ask")) != 1:
            raise NotUnderstood("one walk", 0)
        return _walk(tree)
    told: Sizes = {}
    for node in every(tree, *KINDS[name].sizes):
        told.setdefault(node.expr_name, []).append(node.text)
    wanted = [node.expr_name for node in every(tree, *KINDS[name].asked)]
    things = {kind: {one.text for one in every(tree, *kind)} for kind in (("object", "seen"), ("spot",))}
    if name == "shadow" and len(every(tree, "casting")) > 1:
        return _shadows(tree, told, wanted)
    if any(len(named) > 1 for named in things.values()):
        raise NotUnderstood("two things", 0)
    return scene_in_letters(name, told, wanted)


def _shadows(tree: Node, told: Sizes, wanted: list[str]) -> Lettered:
    casts = every(tree, "casting")
    things = [the(one, "object").text for one in casts]
    asked = first(tree, "thing")
    first_is_tall = has(casts[0], "shadow_height") and not has(casts[-1], "shadow_height")
    fits = len(casts) == len(("one", "other")) and things[0] != things[1] and wanted == ["height_asked"]
    if not fits or not first_is_tall or asked is None or asked.text != things[1] or "sun_angle" in told:
        raise NotUnderstood("two shadows at one time", 0)
    if not _SAME_TIME.search(tree.text):
        raise NotUnderstood("that both are seen at the same time", 0)
    return two_shadows(told["shadow_height"], told["shadow_long"])


def _walk(tree: Node) -> Lettered:
    """A walk between points that the paper names; those that it does not name get letters of our own."""
    legs = every(tree, "leg")
    starts = [_letter(node) for node in every(tree, "walk_start")]
    ends = [next((_letter(node) for node in every(leg, "walk_end")), "") for leg in legs]
    named = [point for point in (*starts, *ends) if point]
    if len(starts) > 1 or len(set(named)) < len(named):
        raise NotUnderstood("every point of the walk by a letter of its own", 0)
    free = iter(letter for letter in "ABCDEFGHJKL" if letter not in named)
    points = "".join(point or next(free) for point in (starts[0] if starts else "", *ends))
    wanted = ""
    for one in every(tree, "walk_length", "walk_way"):
        asked = [_letter(spot) for spot in every(one, "named_spot")] or list(one.text[-2:].upper())
        if len(set(asked)) != 2 or not set(asked) <= set(named):
            raise NotUnderstood("two points of the walk", 0)
        wanted = "".join(asked) if one.expr_name == "walk_length" else f"the bearing of {asked[0]} from {asked[1]}"
    return walk_in_letters([_leg(node) for node in legs], points, wanted)


def _letter(spot: Node) -> str:
    return str(spot.text)[-1].upper()


def _leg(node: Node) -> tuple[str, str]:
    heading = first(node, "heading")
    way = f"{the(heading, 'bearing').text}°" if heading is not None else ""
    compass = first(node, "compass")
    if compass is not None:
        way = "due " + re.sub(r"^due |wards?$", "", compass.text)
    return the(node, "size").text, way


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    whole = whole_of(question, part, scene)
    if whole is None or question.table:
        return None
    try:
        tree = parsed(topic_named("plain scenes").rules(), "ask", ". ".join(map(plain, whole.pieces)))
        figure = _figure(tree)
    except (ExpressionNotRead, NotUnderstood):
        return None
    return in_letters(figure, whole, scene)


READERS = Readers(story=_story)
