"""Sets: "A = {1, 2, 3}", "n(A ∩ B) = 6", "List the members of A ∪ B", and counting stories about two groups."""

import re
from itertools import pairwise
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.ask import Task
from paperaudit.model.fact import Fact
from paperaudit.model.set_task import (
    Combined,
    Complement,
    NamedSet,
    SetAsked,
    SetCounted,
    SetDescribed,
    SetExpression,
    SetIs,
)
from paperaudit.wording.asides import Asides
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.topic import Readers
from paperaudit.wording.topics.two_groups import told_story

Kind = Literal["integer", "even", "odd", "prime", "square", "cube", "multiple", "factor", "triangular"]
_KINDS: tuple[tuple[str, Kind], ...] = (
    ("even", "even"),
    ("odd", "odd"),
    ("prime", "prime"),
    ("square", "square"),
    ("perfect", "square"),
    ("cube", "cube"),
    ("triang", "triangular"),
    ("multiple", "multiple"),
    ("factor", "factor"),
    ("divisor", "factor"),
)
_UNIVERSAL = ("ξ", "ε", "𝓔", "Ω", "U")
_WHOLE = re.compile(r"-?\d+")
_LONGEST = 1_000


def _name(node: Node) -> str:
    return "ξ" if node.text in _UNIVERSAL else node.text


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    return tuple(_fact(chosen) for chosen in every(node, "counted_fact", "described", "listed"))


def _fact(chosen: Node) -> Fact:
    match chosen.expr_name:
        case "counted_fact":
            of = _expression(the(chosen, "set_expr"))
            inside, _, count = chosen.text.rpartition("=")
            turned = inside.rstrip().endswith("′") and not inside.rstrip().endswith("′)")
            return SetCounted(Complement(of) if turned else of, int(count))
        case "listed":
            return SetIs(_name(the(chosen, "set_name")), _members(the(chosen, "braces")))
    return _described(chosen)


def _members(node: Node) -> tuple[str, ...]:
    """The members as written; points of omission between whole numbers are filled in."""
    texts = [piece.text.strip() for piece in every(node, "member")]
    if len(texts) == 1 and re.search(r"[a-z]{2,}", texts[0]):
        raise NotUnderstood(f"whether {{{texts[0]}}} names its members or describes them", node.start)
    if not any(set(text) <= set(".…") and text for text in texts):
        if len(set(texts)) < len(texts):
            raise NotUnderstood("a member that is stated twice", node.start)
        return tuple(texts)
    at = next(place for place, text in enumerate(texts) if set(text) <= set(".…"))
    before, behind = texts[:at], texts[at + 1 :]
    numbers = [int(text) for text in (*before, *behind) if _WHOLE.fullmatch(text)]
    if len(numbers) < len(texts) - 1 or len(before) < 2 or len(behind) != 1:
        raise NotUnderstood("points of omission", node.start, "two numbers in front of them and one behind")
    step = numbers[1] - numbers[0]
    steady = all(later - earlier == step for earlier, later in pairwise(numbers[:at]))
    span = numbers[-1] - numbers[0]
    if not step or not steady or span % step or not 0 < span // step < _LONGEST:
        raise NotUnderstood("points of omission between numbers without a steady step", node.start)
    return tuple(str(numbers[0] + step * count) for count in range(span // step + 1))


def _described(node: Node) -> SetDescribed:
    name = _name(the(node, "set_name"))
    chain = first(node, "chain")
    if chain is not None:
        low, high = (int(one) for one in _WHOLE.findall(chain.text)[:2])
        signs = re.findall(r"[≤<]", chain.text)
        return SetDescribed(name, "integer", 0, low + (signs[0] == "<"), high - (signs[1] == "<"))
    words = the(node, "kind", "one_kind").text
    kind: Kind = next((kind for start, kind in _KINDS if words.startswith(start)), "integer")
    of = int(words.rpartition(" ")[2]) if kind in ("multiple", "factor") else 0
    bounds = first(node, "bounds")
    ends = _ends(bounds.text) if bounds is not None else (None, None)
    return SetDescribed(name, kind, of, *ends)


def _ends(words: str) -> tuple[int | None, int | None]:
    numbers = [int(one) for one in _WHOLE.findall(words)]
    if len(numbers) == 2:
        if "between" in words and "inclusive" not in words:
            raise NotUnderstood("whether the ends belong to it", 0, "“from … to …”")
        return numbers[0], numbers[1]
    included = "or equal" in words or "up to" in words
    return None, numbers[0] if included else numbers[0] - 1


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "how_many", "members", "plain")
    of = _expression(the(chosen, "set_expr"))
    if asides.accuracy is not None or asides.unit:
        raise NotUnderstood("an accuracy or a unit with a set", 0)
    counted = chosen.expr_name == "how_many"
    return SetAsked(Complement(of) if counted and has(chosen, "turned") else of, counted)


def _expression(node: Node) -> SetExpression:
    """A set from left to right; two different signs without brackets are not read."""
    parts = [_part(piece) for piece in every(node, "set_part")]
    signs = [piece.text for piece in every(node, "set_sign", "set_part") if piece.expr_name == "set_sign"]
    if len(set(signs)) > 1 or (len(signs) > 1 and signs[0] == "\\"):
        raise NotUnderstood("∪ and ∩ without brackets", node.start, "brackets, as in (A ∪ B) ∩ C")
    names: dict[str, Literal["∪", "∩", "−"]] = {"∪": "∪", "union": "∪", "∩": "∩", "intersection": "∩", "\\": "−"}
    whole = parts[0]
    for sign, part in zip(signs, parts[1:], strict=True):
        whole = Combined(whole, names[sign], part)
    return whole


def _part(node: Node) -> SetExpression:
    inner = the(node, "set_expr", "empty", "set_name")
    match inner.expr_name:
        case "set_expr":
            found: SetExpression = _expression(inner)
        case "empty":
            found = NamedSet("∅")
        case _:
            found = NamedSet(_name(inner))
    return Complement(found) if has_own(node) else found


def has_own(node: Node) -> bool:
    """Whether a complement sign stands behind this set, not inside its brackets."""
    return any(piece.expr_name == "complement" for piece in every(node, "complement", "set_expr"))


READERS = Readers(task=_task, facts=_facts, story=told_story)
