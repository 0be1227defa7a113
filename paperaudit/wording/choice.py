"""Decides what a part asks, from its ask, its own text and its question's text."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from paperaudit.model.ask import Ask, Find, Rounded, Solve, Subject, Transform, WriteAs
from paperaudit.model.expression import Letter, letters_of
from paperaudit.model.fact import Given, Holds
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Unread
from paperaudit.model.topic import TopicFact
from paperaudit.wording.asking import Asked, read_asked
from paperaudit.wording.prose import Prose
from paperaudit.wording.scene import Scene
from paperaudit.wording.tasks import in_form, is_numeric

_STATES = re.compile(r"(?<![A-Za-z])[A-Z]{2,}\s(?:is|are|has|have|lies?)\b|[=∥⊥≡]")
"""Words that say something of a figure, whatever the command in front of them is."""


@dataclass(frozen=True, slots=True)
class Choice:
    """The ask of a part with the conditions in its sentence, and what stopped it.

    `left_over` are sentences that look like an ask and could not be read, beside one that was;
    `whole` says that the part's text is the ask from end to end, and so states nothing.
    """

    ask: Ask | None = None
    conditions: tuple[Given, ...] = ()
    missing: tuple[Unread, ...] = ()
    left_over: tuple[Unread, ...] = ()
    whole: bool = False


def stands_alone(ask: Ask, givens: Sequence[Given] = ()) -> bool:
    """Whether an ask holds all that it needs, so that the words around it are scenery; `givens` are what these say."""
    said = {*letters_said(givens)}
    match ask.task:
        case Transform(_, expression) if said & {*letters_of(expression)}:
            return False
        case Rounded(expression) | WriteAs(expression) if said & {*letters_of(expression)}:
            return False
        case Transform("evaluate", expression) | Rounded(expression) | WriteAs(expression):
            return is_numeric(expression)
        case Solve(relations, letters):
            names = {name for one in relations for side in (one.left, one.right) for name in letters_of(side)}
            if names & {*letters_explained(givens)}:
                return False
            if not letters:
                return len(relations) >= len(names) or not names & said
            return names <= {*letters} or len(relations) >= len(names)
        case Subject() | Transform():
            return True
        case _:
            return False


def letters_said(givens: Iterable[Given]) -> Iterator[str]:
    """The letters that statements give a value, and the functions that they give a formula."""
    for given in givens:
        for fact in given.facts:
            if isinstance(fact, Holds) and fact.relation.sign == "=":
                yield from (*letters_of(fact.relation.left), *letters_of(fact.relation.right))
            elif isinstance(fact, TopicFact):
                yield fact.defines()


def letters_explained(givens: Iterable[Given]) -> Iterator[str]:
    """The letters that stand alone on one side of an equation: p of p = x + 1."""
    for given in givens:
        for fact in given.facts:
            if isinstance(fact, Holds) and fact.relation.sign == "=":
                sides = (fact.relation.left, fact.relation.right)
                yield from (side.name for side in sides if isinstance(side, Letter))


def chosen_ask(
    question: Question, part: Part, explicit: Asked | Unread | None, proses: Sequence[Prose], scene: Scene
) -> Choice:
    """The explicit ask, else that of the text, completed with what other sentences say of it."""
    whole = None if explicit or proses[1].asks else _whole_text(part, proses, scene)
    asked = explicit or whole or _from_text(question, part, proses)
    if isinstance(asked, Unread):
        return Choice(missing=(asked,))
    ask = _completed(asked.ask, part, proses)
    doubts = () if explicit is not None else tuple(_left_over(proses, whole is None))
    return Choice(ask, asked.conditions, left_over=doubts, whole=whole is not None)


def _left_over(proses: Sequence[Prose], own: bool) -> Iterator[Unread]:
    """Sentences like asks that are none: beside one of the same text, or with a figure where the part has its `own`."""
    for prose in proses:
        yield from (doubt for doubt in prose.unfinished if prose.asks or (own and _STATES.search(doubt.text)))


def _whole_text(part: Part, proses: Sequence[Prose], scene: Scene) -> Asked | None:
    """The part's text as an ask, behind a command of the question's text ("Simplify:", 3x + 2x) or alone (∠ABC)."""
    if part.text is None:
        return None
    shared, own = proses
    commands = [doubt.text.strip(" .:") for doubt in shared.unfinished[-1:]]
    starts = [f"{command}{gap}" for command in commands for gap in (" ", ": ")]
    alone = [""] if not (own.unfinished or starts) else []
    for start in (*starts, *alone):
        asked = read_asked(f"{start}{part.text.text.strip()}", part.text.place, "text", scene)
        if isinstance(asked, Asked):
            return asked
    return None


def _from_text(question: Question, part: Part, proses: Sequence[Prose]) -> Asked | Unread:
    """The ask of the part's text, else of the question's."""
    shared, own = proses
    if own.asks:
        return _together(own.asks)
    if own.unfinished:
        return own.unfinished[-1]
    if shared.asks:
        return _together(shared.asks)
    if shared.unfinished:
        return shared.unfinished[-1]
    line = part.text or question.text or Line("", part.place)
    return Unread(line.text.strip()[:200], "ask", 0, "what is to be found, such as ∠ABC or x", "", line.place)


def _together(asks: Sequence[Asked]) -> Asked | Unread:
    """Several asks in one text: quantities to be found go together, other tasks do not."""
    first = asks[0]
    if len(asks) == 1:
        return first
    tasks = [asked.ask.task for asked in asks]
    wanted = tuple(dict.fromkeys(item for task in tasks if isinstance(task, Find) for item in task.wanted))
    text = " and ".join(asked.ask.text for asked in asks)
    if not all(isinstance(task, Find) for task in tasks):
        return Unread(text, "ask", 0, "one task in a part", "", first.ask.place)
    whole = replace(
        first.ask,
        task=Find(wanted),
        text=text,
        reasons=any(asked.ask.reasons for asked in asks),
        accuracy=next((asked.ask.accuracy for asked in asks if asked.ask.accuracy), None),
    )
    return Asked(whole, tuple(given for asked in asks for given in asked.conditions))


def _completed(ask: Ask, part: Part, proses: Sequence[Prose]) -> Ask:
    """The ask with what other sentences say of accuracy, unit and reasons, the part's own first."""
    asides = [aside for prose in reversed(proses) for aside in prose.asides]
    accuracy = ask.accuracy or next((aside.accuracy for aside in asides if aside.accuracy), None)
    unit = ask.unit or next((aside.unit for aside in asides if aside.unit), "")
    said = next((aside.reasons for aside in asides if aside.reasons is not None), False)
    reasons = part.reasons if part.reasons is not None else ask.reasons or said
    form = next((aside.form for aside in asides if aside.form), "")
    return replace(ask, task=in_form(ask.task, form), accuracy=accuracy, unit=unit, reasons=reasons)
