"""Turns what does not fit the shape of a question file into complaints that a teacher can act on."""

import difflib
from collections.abc import Iterable, Sequence
from typing import Any

from pydantic import BaseModel

from paperaudit.errors import Complaint
from paperaudit.readers.shape import CoverShape, KeyPartShape, PaperShape, PartShape, QuestionShape, SectionShape
from paperaudit.readers.tree import Entries, Items, Node, Route, follow, place_of, shown

_KINDS = {
    "list_type": "a list",
    "dict_type": "keys with values",
    "model_type": "keys with values",
    "too_short": "a list of at least one",
}

_CLOSE = 0.7
"""How alike two words must be for one to be a slip of the other; below it suggestions are guesses."""


def nearest(word: str, known: Iterable[str]) -> str:
    """The known word that is closest to `word`, or "" where none is close.

    >>> nearest("makrs", ["marks", "split", "answer"])
    'marks'
    """
    lowered = {candidate.lower(): candidate for candidate in known}
    found = difflib.get_close_matches(word[:60].lower().strip(), list(lowered), n=1, cutoff=_CLOSE)
    return lowered[found[0]] if found else ""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A question to end a complaint with: "; did you mean 'marks'?", or "" where no word is near."""
    found = nearest(word, known)
    return f"; did you mean '{found}'?" if found and found != word else ""


def bound_id(question: str, path: Sequence[str]) -> str:
    """The id of a part by its question's number and the numbers of its levels.

    A paper numbered 3.2.1 prints the whole number at every level, so these are not joined again.

    >>> bound_id("3", ["b", "ii"]), bound_id("3", ["3.2", "3.2.1"])
    ('3.b.ii', '3.2.1')
    """
    joined = question
    for number in path:
        joined = number if number.startswith(f"{joined}.") else f"{joined}.{number}"
    return joined


def part_label(tree: Node, route: Route) -> str:
    """Which question or part a route leads into: "part 1.a", "question 2", or "" for the paper.

    A setter's key has its parts at the top.
    """
    numbers: list[str] = []
    for at, step in enumerate(route):
        if isinstance(step, int) and at and route[at - 1] in ("questions", "parts"):
            here = follow(tree, route[: at + 1])
            number = here.text("number") if isinstance(here, Entries) else ""
            numbers.append(number.strip("(). ")[:20] or f"#{step + 1}")
    if not numbers:
        return ""
    if route[0] == "parts":
        return f"part {numbers[0]}"
    return f"question {numbers[0]}" if len(numbers) == 1 else f"part {bound_id(numbers[0], numbers[1:])}"


def complaint(tree: Node, route: Route, message: str) -> Complaint:
    """A complaint about the value at `route`, with its place and the part that it belongs to."""
    label = part_label(tree, route)
    return Complaint(f"{label}: {message}" if label else message, place_of(tree, route))


def keys_at(route: Route) -> tuple[str, ...]:
    """The keys that may stand where `route` leads, in the order of the documentation."""
    if route[:1] == ("parts",):
        return tuple(KeyPartShape.model_fields)
    names = [step for step in route if isinstance(step, str)]
    last = names[-1] if names else ""
    shapes: dict[str, type[BaseModel]] = {
        "questions": QuestionShape,
        "parts": PartShape,
        "sections": SectionShape,
        "cover": CoverShape,
    }
    return tuple(shapes.get(last, PaperShape).model_fields)


def from_shape_error(tree: Node, error: dict[str, Any]) -> Complaint:
    """The complaint that one of pydantic's errors amounts to."""
    route: Route = tuple(error["loc"])
    kind = error["type"]
    name = str(route[-1]) if route else "the file"
    if kind == "missing":
        return complaint(tree, route, f"no '{name}' was read, expected one")
    if kind == "extra_forbidden":
        known = keys_at(route[:-1])
        read = f"the unknown key '{name[:40]}' was read, expected one of {', '.join(known)}"
        return complaint(tree, route, read + did_you_mean(name, known))
    if route and route[-1] == "[key]":
        return complaint(tree, route[:-2], f"the key '{str(route[-2])[:40]}' was read, {error['msg']}")
    value = follow(tree, route)
    where = f"{_of(route)} is {shown(value)}" if route else f"{shown(value)} was read"
    wanted = error["ctx"]["what"] if kind == "expected" else _KINDS.get(kind, error["msg"])
    known = error["ctx"]["known"] if kind == "expected" else ()
    return complaint(tree, route, f"{where}, expected {wanted}" + did_you_mean(shown(value).strip("'"), known))


def _of(route: Route) -> str:
    """The value's name within its part, positions counted from 1: "given 2", "sketch B 2"."""
    holders = (at for at, step in enumerate(route[:-2]) if step in ("questions", "parts", "sections"))
    inside = route[max(holders, default=-2) + 2 :]
    return " ".join(str(step + 1) if isinstance(step, int) else step[:40] for step in inside)


def without(tree: Node, routes: Iterable[Route]) -> Node:
    """The tree with the values at `routes` left out, so that the rest of a faulty file can still be read."""
    gone = set(routes)

    def pruned(node: Node, here: Route) -> Node:
        if isinstance(node, Items):
            kept = tuple(pruned(value, (*here, at)) for at, value in enumerate(node.values) if (*here, at) not in gone)
            return Items(kept, node.place)
        if isinstance(node, Entries):
            pairs = tuple(
                (key, pruned(value, (*here, key.text))) for key, value in node.pairs if (*here, key.text) not in gone
            )
            return Entries(pairs, node.place)
        return node

    return pruned(tree, ())
