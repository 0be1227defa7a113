"""Reads what a part asks for: quantities, claims to show, equations to solve, commands."""

import re
from dataclasses import dataclass, replace

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.limits import check_limits
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, the
from paperaudit.model.ask import Ask, Establish, Rounded, Solve, WriteAs
from paperaudit.model.fact import Given
from paperaudit.model.place import NOWHERE, Place
from paperaudit.model.reading import Unread
from paperaudit.wording.asides import Asides, asides_of
from paperaudit.wording.clauses import statement_grammar
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.statement import LONGEST_SENTENCE, Where, givens_of
from paperaudit.wording.tasks import task_of
from paperaudit.wording.the_circle import Known
from paperaudit.wording.unread import not_read

_EXPECTED = "an ask such as ∠ABC, x, “show that AB ∥ CD” or “solve 2x + 3 = 7”"
_ALGEBRA = re.compile(r"\b(?:solve|simplify|expand|factori[sz]e|subject|multiply out)\b", re.IGNORECASE)

_PLACES = re.compile(r"\bdecimal places?\b|\bd\. ?p\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Asked:
    """An ask, and the conditions that its own sentence states: "Find x if AB = AC"."""

    ask: Ask
    conditions: tuple[Given, ...] = ()


def read_ask(text: str, place: Place = NOWHERE, scene: Scene | None = None) -> Ask | Unread:
    """What a text asks for, or where reading stopped.

    >>> read_ask("Find x, giving your answer to 1 decimal place.").accuracy
    Accuracy(kind='decimal places', amount='1')
    """
    asked = read_asked(text.strip(), place, "ask", scene or Scene())
    if isinstance(asked, Unread):
        return asked
    return settled_ask(asked.ask, Known(fact for given in asked.conditions for fact in given.facts))


def settled_ask(ask: Ask, known: Known) -> Ask:
    """The ask with the centre that the question gives to "the circle" of its claims."""
    if not isinstance(ask.task, Establish):
        return ask
    return replace(ask, task=replace(ask.task, claims=known.claimed(ask.task.claims)))


def read_asked(text: str, place: Place, where: Where, scene: Scene) -> Asked | Unread:
    """An ask with the conditions in the same sentence."""
    if not scene.commas and _PLACES.search(text[:LONGEST_SENTENCE]):
        scene = replace(scene, commas="decimal")
    notation = scene.notation(text[:LONGEST_SENTENCE], not _ALGEBRA.search(text[:LONGEST_SENTENCE]))
    asides = asides_of(notation.letters_apart() if "subject" in notation.text else notation)
    try:
        check_limits(text, LONGEST_SENTENCE)
        tree = parsed(statement_grammar(), "asked", asides.rest.text)
        return _asked(tree, asides, place, where, scene)
    except NotUnderstood as error:
        expected = error.expected or str(error)
        return Unread(text, where, asides.rest.offset(error.start), expected, "", place)
    except ExpressionNotRead as error:
        return not_read(asides.rest, where, place, error, _EXPECTED)


def _asked(tree: Node, asides: Asides, place: Place, where: Where, scene: Scene) -> Asked:
    conditions: list[Given] = []
    for found in every(tree, "condition", "ask"):
        if found.expr_name == "condition":
            conditions.extend(givens_of(found, asides.rest, place, where, scene))
    ask = the(tree, "ask").children[0]
    task = task_of(ask, tuple(conditions), asides, scene)
    spoken = ask if ask.expr_name != "find" or isinstance(task, Rounded | WriteAs) else the(ask, "wanted")
    said = asides.rest.source_of(_start(spoken), spoken.end)
    if isinstance(task, Rounded | WriteAs):
        said = asides.rest.source.strip(" .")
    ask_read = Ask(task, said, asides.accuracy, asides.unit, bool(asides.reasons), place)
    return Asked(ask_read, () if isinstance(task, Solve) else tuple(conditions))


def _start(spoken: Node) -> int:
    """Where the words of an ask begin, past "the size of"."""
    named = first(spoken, "angles_named", "measure", "angle_name") if spoken.expr_name == "wanted" else None
    if named is None:
        return int(spoken.start)
    before: str = spoken.full_text[: named.start]
    return int(named.start) - (len("angle ") if before.endswith("angle ") else 0)
