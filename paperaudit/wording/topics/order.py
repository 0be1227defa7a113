"""Asks about the order of numbers: "Put 0.3, 1/3 and 30% in ascending order", "Which is bigger: 2/3 or 3/5?"."""

import re
from typing import Literal

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, the
from paperaudit.model.ask import Ask, Task
from paperaudit.model.expression import Expression, RelationSign
from paperaudit.model.number_task import InOrder, Picked, Related
from paperaudit.model.paper import Part, Question
from paperaudit.wording.asides import Asides, asides_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.numbers_named import number_in, without_units
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told

_RANKS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_DOWN = re.compile(r"descending|decreasing|(?:largest|greatest|biggest|highest)(?: number| value)? (?:first|to)"
                   r"|with the (?:largest|greatest|biggest|highest)")  # fmt: skip
_UP = re.compile(r"ascending|increasing|(?:smallest|least|lowest)(?: number| value)? (?:first|to)"
                 r"|with the (?:smallest|least|lowest)")  # fmt: skip
_RELATIONS: tuple[tuple[str, RelationSign], ...] = (
    ("not equal to", "≠"),
    ("less than or equal to", "≤"),
    ("greater than or equal to", "≥"),
    ("less than", "<"),
    ("smaller than", "<"),
    ("greater than", ">"),
    ("bigger than", ">"),
    ("larger than", ">"),
    ("more than", ">"),
    ("at most", "≤"),
    ("at least", "≥"),
    ("equal to", "="),
    ("the same as", "="),
    ("≤", "≤"),
    ("≥", "≥"),
    ("<", "<"),
    (">", ">"),
    ("≠", "≠"),
    ("=", "="),
)


def _task(node: Node, asides: Asides) -> Task:
    chosen = the(node, "sorted", "picked", "signed_between", "is_related")
    if asides.accuracy is not None or asides.unit:
        raise NotUnderstood("an accuracy or a unit with a question about order", 0)
    match chosen.expr_name:
        case "sorted":
            said = first(chosen, "direction")
            direction = said.text if said is not None else "ascending"
            up, down = _UP.search(direction), _DOWN.search(direction)
            if (up is None) == (down is None):
                raise NotUnderstood("which way the order goes", 0, "ascending or descending order")
            return InOrder(_numbers(chosen), down is not None)
        case "picked":
            return _picked(chosen)
        case "signed_between":
            left, right = _numbers(chosen)
            return Related(left, "", right)
    return _related(chosen)


def _numbers(node: Node) -> tuple[Expression, ...]:
    return without_units(number_in(item, letters=False) for item in every(node, "item", "target")
                         if item.expr_name == "item")  # fmt: skip


def _picked(node: Node) -> Picked:
    target, rank = first(node, "target"), first(node, "rank")
    size = first(node, "size_word", "comparative")
    labels = tuple(label.text.strip(" ()") for label in every(node, "label"))
    which: Literal["biggest", "smallest", "closest"] = "closest"
    if target is None:
        assert size is not None
        which = "smallest" if size.text.startswith(("sm", "l")) and not size.text.startswith("larg") else "biggest"
    at = _RANKS.index(rank.text.strip(" -")) + 1 if rank is not None else 1
    numbers = _numbers(node)
    goal = number_in(the(target, "item"), letters=False) if target is not None else None
    return Picked(numbers, which, at, goal, labels)


def _related(node: Node) -> Related:
    left, right = _numbers(node)
    words = first(node, "relation_words", "equal_words")
    text = words.text if words is not None else "="
    if words is None or words.expr_name == "equal_words":
        sign: RelationSign = "≠" if re.search(r"different|unequal|non", text) else "="
    else:
        sign = next(sign for start, sign in _RELATIONS if text.strip().startswith(start))
    return Related(left, sign, right)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    """A question whose numbers stand behind its question mark: "Which is the smallest? (a) 0.3 (b) 1/3"."""
    lines = [line.text for line in (question.text, part.text or part.ask) if line is not None]
    if question.given or part.given or question.figure or part.figure:
        return None
    asides = asides_of(scene.notation(" ".join(" ".join(lines).split())))
    try:
        task = _task(parsed(topic_named("order of numbers").rules(), "ask", asides.rest.text), asides)
    except (ExpressionNotRead, NotUnderstood):
        return None
    place = (part.text or part.ask or question.text or part).place
    return Told(Ask(task, asides.rest.source.strip(" ."), reasons=bool(asides.reasons), place=place))


READERS = Readers(task=_task, story=_story)
