"""Reads what a part asks for: quantities, claims to show, equations to solve, commands."""

import re
from dataclasses import dataclass, replace

from parsimonious.nodes import Node

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.limits import check_limits
from paperaudit.maths.peg import parsed
from paperaudit.maths.tree import every, first, the
from paperaudit.model.ask import Ask, Establish, Find, Rounded, Solve, WriteAs
from paperaudit.model.fact import Given, Origin
from paperaudit.model.place import NOWHERE, Place
from paperaudit.model.reading import Unread
from paperaudit.wording.asides import Asides, asides_of
from paperaudit.wording.clauses import statement_grammar
from paperaudit.wording.implied import by_size
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.statement import LONGEST_SENTENCE, Where, given_of, givens_of, read_clauses
from paperaudit.wording.tasks import in_form, named_in_claims, suppositions, task_of
from paperaudit.wording.the_circle import Known
from paperaudit.wording.topics.reading import topic_task
from paperaudit.wording.unread import not_read

_EXPECTED = "an ask such as ∠ABC, x, “show that AB ∥ CD” or “solve 2x + 3 = 7”"
WHICH_CIRCLE = "which circle is meant, as in “circle O”"
_ALGEBRA = re.compile(r"\b(?:solve|simplify|expand|factori[sz]e|subject|multiply out)\b", re.IGNORECASE)

_CONDITION = re.compile(
    r"(?:given(?: that)?|if|when|let|suppose(?: that)?),? (?P<said>.+?)[,.;:] (?:then )?"
    r"(?P<ask>(?:find|calculate|work out|determine|evaluate|what|write|express|state|give|solve|show|list)\b.+)",
    re.IGNORECASE | re.DOTALL,
)
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
    known = Known(fact for given in asked.conditions for fact in given.facts)
    if leaves_circle_open(asked.ask, known):
        return Unread(text.strip(), "ask", 0, WHICH_CIRCLE, "", place)
    return settled_ask(asked.ask, known)


def settled_ask(ask: Ask, known: Known) -> Ask:
    """The ask with the centre that the question gives to "the circle" of its claims and sizes."""
    match ask.task:
        case Establish(claims):
            return replace(ask, task=replace(ask.task, claims=known.claimed(claims)))
        case Find(wanted):
            return replace(ask, task=Find(tuple(known.size(size) for size in wanted)))
        case WriteAs(expression):
            return replace(ask, task=replace(ask.task, expression=known.size(expression)))
        case _:
            return ask


def leaves_circle_open(ask: Ask, known: Known) -> bool:
    """Whether an ask is about "the circle" of a question that has several, or about its centre without a letter."""
    match ask.task:
        case Establish(claims):
            return known.leaves_open(claims)
        case Find(wanted):
            return any(known.leaves_size_open(size) for size in wanted)
        case WriteAs(expression):
            return known.leaves_size_open(expression)
        case _:
            return False


def read_asked(text: str, place: Place, where: Where, scene: Scene) -> Asked | Unread:
    """An ask with the conditions in the same sentence."""
    if not scene.commas and _PLACES.search(text[:LONGEST_SENTENCE]):
        scene = replace(scene, commas="decimal")
    asked = _read_asked(text, place, where, scene)
    return asked if isinstance(asked, Asked) else _behind_condition(text, place, where, scene) or asked


def _behind_condition(text: str, place: Place, where: Where, scene: Scene) -> Asked | None:
    """An ask behind statements that the whole sentence does not read with it: "Given that A = 2³ × 3, find …"."""
    split = _CONDITION.fullmatch(text[:LONGEST_SENTENCE].strip())
    if split is None:
        return None
    asked = _read_asked(split["ask"], place, where, scene)
    givens = read_clauses(split["said"], place, where, scene)
    if isinstance(asked, Unread) or isinstance(givens, Unread):
        return None
    return replace(asked, conditions=(*givens, *asked.conditions))


def _read_asked(text: str, place: Place, where: Where, scene: Scene) -> Asked | Unread:
    notation = scene.notation(text[:LONGEST_SENTENCE], not _ALGEBRA.search(text[:LONGEST_SENTENCE]))
    asides = asides_of(notation.letters_apart() if "subject" in notation.text else notation)
    try:
        check_limits(text, LONGEST_SENTENCE)
        task = topic_task(asides)
        if task is not None:
            said = asides.rest.source.strip(" .")
            task = in_form(task, asides.form)
            return Asked(Ask(task, said, asides.accuracy, asides.unit, bool(asides.reasons), place=place))
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
    if ask.expr_name in ("establish", "decide"):
        conditions.extend(given_of(clause, asides.rest, place, where, scene) for clause in suppositions(ask))
        if shapes := named_in_claims(ask, scene):
            conditions.append(Given(asides.rest.source_of(ask.start, ask.end), shapes, Origin.TEXT, place))
            scene.take(shapes)
    if ask.expr_name == "find" and (said_too := tuple(dict.fromkeys(by_size(ask, scene)))):
        spoken = asides.rest.source_of(ask.start, ask.end)
        conditions.append(Given(spoken, said_too, Origin.TEXT, place))
    task = in_form(task_of(ask, tuple(conditions), asides, scene), asides.form)
    spoken = ask if ask.expr_name != "find" or isinstance(task, Rounded | WriteAs) else the(ask, "wanted")
    said = asides.rest.source_of(_start(spoken), spoken.end)
    if isinstance(task, Rounded | WriteAs):
        said = asides.rest.source.strip(" .")
    ask_read = Ask(task, said, asides.accuracy, asides.unit, bool(asides.reasons), place=place)
    return Asked(ask_read, () if isinstance(task, Solve) and ask.expr_name != "solve" else tuple(conditions))


def _start(spoken: Node) -> int:
    """Where the words of an ask begin, past "the size of"."""
    named = (
        first(spoken, "angles_named", "region_size", "measure", "angle_name") if spoken.expr_name == "wanted" else None
    )
    if named is None:
        return int(spoken.start)
    before: str = spoken.full_text[: named.start]
    return int(named.start) - (len("angle ") if before.endswith("angle ") else 0)
