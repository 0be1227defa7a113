"""Accuracy of what is given: "x = 3.4 correct to 1 decimal place", "Write down the error interval for x"."""

import re

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.notation import read_notation
from paperaudit.maths.peg import parsed
from paperaudit.maths.terms import expression_of
from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.accuracy_task import Bound, RoundedTo
from paperaudit.model.ask import Accuracy, Ask, Task
from paperaudit.model.expression import Expression, Letter
from paperaudit.model.fact import Fact, Given, Origin
from paperaudit.model.paper import Part, Question
from paperaudit.wording.accuracy import accuracy_of
from paperaudit.wording.asides import Asides, asides_of
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.tasks import has_quantity
from paperaudit.wording.topics.registry import topic_named
from paperaudit.wording.topics.topic import Readers, Told

_CALLED = re.compile(r", ([A-Za-z])(?: [a-z]+)?,?$")
_SHAPES = (("rect", "rectangle"), ("square", "square"), ("tri", "triangle"), ("circ", "circle"), ("cuboid", "cuboid"),
           ("cube", "cube"))  # fmt: skip
_OWN_ACCURACIES = {
    "travelled": (("distance", "time"), "journey"),
    "weighed": (("mass", "volume"), "mass and volume"),
}
_QUANTITY = re.compile(r"\b(?:area|perimeter|volume|circumference|speed|density)\b")
_ASKED = re.compile(r"(?:write|find|calculate|state|work out|determine|give|what|complete)\b", re.IGNORECASE)


def _facts(node: Node, scene: Scene) -> tuple[Fact, ...]:
    chosen = the(node, "shaped", "of_shape", "travelled", "weighed", "several", "named", "thing", "in_two")
    if chosen.expr_name in _OWN_ACCURACIES:
        return _each_to_its_own(chosen)
    said = the(chosen, "known_to")
    accuracy, _ = accuracy_of(read_notation(said.text))
    if accuracy is None:
        raise NotUnderstood("no accuracy", said.start, "an accuracy such as “to 1 decimal place”")
    truncated = "truncated" in chosen.text
    if chosen.expr_name in ("thing", "in_two"):
        letter, noun = first(chosen, "letter"), first(chosen, "noun")
        called = _CALLED.search(noun.text) if noun is not None else None
        name = called[1] if called else letter.text if letter is not None else ""
        return (RoundedTo(name, _size(the(chosen, "sized")), accuracy, truncated),)
    if chosen.expr_name in ("shaped", "of_shape"):
        shape = next(kind for start, kind in _SHAPES if the(chosen, "shape").text.startswith(start))
        return tuple(
            RoundedTo(_dimension(one), _size(the(one, "sized")), accuracy, truncated, shape)
            for one in every(chosen, "dimension", "owned")
        )
    return tuple(
        RoundedTo(the(one, "letter").text, _size(the(one, "sized")), accuracy, truncated)
        for one in every(chosen, "letter_is")
    )


def _each_to_its_own(node: Node) -> tuple[Fact, ...]:
    """Two sizes, each with an accuracy of its own: a distance and its time, a mass and its volume."""
    names, kind = _OWN_ACCURACIES[node.expr_name]
    facts = []
    for name, sized, said in zip(names, every(node, "sized"), every(node, "known_own"), strict=True):
        accuracy, _ = accuracy_of(read_notation(the(said, "known_to").text))
        if accuracy is None:
            raise NotUnderstood("no accuracy", said.start, "an accuracy such as “to 1 decimal place”")
        facts.append(RoundedTo(name, _size(sized), accuracy, "truncated" in said.text, kind))
    return tuple(facts)


def _dimension(node: Node) -> str:
    name: str = the(node, "dimension_name").text
    return {"long": "length", "wide": "width", "high": "height", "breadth": "width", "edge": "side"}.get(name, name)


def _size(node: Node) -> Expression:
    return expression_of(parsed(expression_grammar(), "expression", node.text.strip()))


def _task(node: Node, asides: Asides) -> Task:
    """A bound asked for by name; "the greatest possible value" is one only beside a size with its accuracy."""
    if "bound" not in node.text and "error interval" not in node.text and first(node, "whole_number") is None:
        raise NotUnderstood("the greatest or least of something", node.start, "“upper bound” or “lower bound”")
    return _bound(node, asides)


def _bound(node: Node, asides: Asides) -> Bound:
    chosen = the(node, "interval", "bound_of")
    interval = chosen.expr_name == "interval"
    which = "interval" if interval else _which(the(chosen, "which"))
    number = first(chosen, "whole_number")
    if number is not None:
        if asides.accuracy is None:
            raise NotUnderstood("a number without an accuracy", number.start, "“correct to 1 decimal place”")
        return Bound(which, _size(the(number, "sized")), _of_number(asides))  # type: ignore[arg-type]
    target = first(chosen, "target")
    of, name = _target(target) if target is not None else (None, "")
    named = _QUANTITY.search(the(chosen, "which").text) if not interval else None
    name = name or (named.group() if named else "")
    return Bound(which, of, None, name)  # type: ignore[arg-type]


def _of_number(asides: Asides) -> Accuracy | None:
    if "truncated" in asides.rest.source:
        raise NotUnderstood("a truncated number in the ask", 0)
    return asides.accuracy


def _which(node: Node) -> str:
    return "both" if has(node, "both_bounds") else "upper" if has(node, "upper") else "lower"


def _target(node: Node) -> tuple[Expression | None, str]:
    """What the bound is of: a letter, an expression in letters, or words for the one thing that is given."""
    chosen = the(node, "letter_alone", "named_letter", "formula", "words")
    if chosen.expr_name in ("letter_alone", "named_letter"):
        name = the(chosen, "letter").text
        return Letter(name), name
    if chosen.expr_name == "words":
        quantity = _QUANTITY.search(chosen.text)
        return None, quantity.group() if quantity else ""
    expression = expression_of(the(chosen, "expression"))
    if has_quantity(expression):
        raise NotUnderstood("sizes of a figure", node.start)
    return expression, ""


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    """Statements with an accuracy, in two sentences or in one, and an ask for a bound; other sentences are scenery."""
    lines = [line.text for line in (question.text, *question.given, part.text, *part.given) if line is not None]
    asked = part.ask.text if part.ask is not None else ""
    sentences = [one.strip() for line in lines for one in re.split(r"(?<=[.?!])\s+(?=[A-Z(])", line) if one.strip()]
    behind = _asides_behind(sentences, scene)
    if not asked:
        if not sentences or not _ASKED.match(sentences[-1]) or any(_ASKED.match(one) for one in sentences[:-1]):
            return None
        asked = sentences.pop()
    givens = _givens(sentences, scene)
    task = _asked(asked, scene)
    if task is None or not givens:
        return None
    said = (task[1], *behind)
    accuracy = next((one.accuracy for one in said if one.accuracy), None)
    unit = next((one.unit for one in said if one.unit), "")
    place = (part.ask or part.text or part).place
    return Told(Ask(task[0], asked.strip(" ."), accuracy, unit, place=place), givens)


def _asides_behind(sentences: list[str], scene: Scene) -> list[Asides]:
    """What sentences at the end say of the answer alone, which are taken off: "Give your answer to 3 figures."."""
    found: list[Asides] = []
    while sentences:
        asides = asides_of(scene.notation(sentences[-1]))
        if asides.rest.text.strip(" .,;:!()"):
            break
        found.append(asides)
        sentences.pop()
    return found


def _asked(text: str, scene: Scene) -> tuple[Task, Asides] | None:
    asides = asides_of(scene.notation(text))
    try:
        return _bound(parsed(topic_named("bounds").rules(), "ask", asides.rest.text), asides), asides
    except (ExpressionNotRead, NotUnderstood):
        return None


def _givens(sentences: list[str], scene: Scene) -> tuple[Given, ...]:
    """A given for each sentence, or pair of sentences, that states a size with its accuracy; () if one is unread."""
    found: list[Given] = []
    left = list(sentences)
    while left:
        for count in (2, 1):
            text = " ".join(left[:count])
            if len(left) >= count and (facts := _stated(text, scene)):
                found.append(Given(text.rstrip("."), facts, Origin.TEXT))
                left = left[count:]
                break
        else:
            if re.search(r"\d", left.pop(0)):
                return ()
    return tuple(found)


def _stated(text: str, scene: Scene) -> tuple[Fact, ...]:
    try:
        return _facts(parsed(topic_named("bounds").rules(), "statement", scene.notation(text).text), scene)
    except (ExpressionNotRead, NotUnderstood):
        return ()


READERS = Readers(task=_task, facts=_facts, story=_story)
