"""Decides what a part asks, from its ask, its own text and its question's text."""

from collections.abc import Sequence
from dataclasses import replace

from paperaudit.model.ask import Ask, Find, Rounded, Solve, Subject, Transform, WriteAs
from paperaudit.model.fact import Given
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Unread
from paperaudit.wording.asking import Asked, read_asked
from paperaudit.wording.prose import Prose
from paperaudit.wording.scene import Scene
from paperaudit.wording.tasks import is_numeric

Chosen = tuple[Ask | None, tuple[Given, ...], tuple[Unread, ...]]


def stands_alone(ask: Ask) -> bool:
    """Whether an ask holds all that it needs, so that the words around it are scenery."""
    match ask.task:
        case Transform(_, expression) | Rounded(expression) | WriteAs(expression):
            return is_numeric(expression)
        case Solve() | Subject():
            return True
        case _:
            return False


def chosen_ask(
    question: Question, part: Part, explicit: Asked | Unread | None, proses: Sequence[Prose], scene: Scene
) -> Chosen:
    """The ask with its accuracy and reasons, the conditions in its sentence, and what stopped it."""
    if isinstance(explicit, Unread):
        return None, (), (explicit,)
    asked = explicit or _from_text(question, part, proses, scene)
    if isinstance(asked, Unread):
        return None, (), (asked,)
    return _completed(asked.ask, part, proses), asked.conditions, ()


def _from_text(question: Question, part: Part, proses: Sequence[Prose], scene: Scene) -> Asked | Unread:
    """The ask of the part's text, else of the question's, else of both put together: "Simplify: 3x + 2x"."""
    shared, own = proses
    if own.asks:
        return _together(own.asks, part)
    if part.text is not None and shared.unfinished:
        for gap in (" ", ": "):
            start = shared.unfinished[-1].text.strip(" .:")
            joined = read_asked(f"{start}{gap}{part.text.text.strip()}", part.text.place, "text", scene)
            if isinstance(joined, Asked):
                return joined
    if own.unfinished:
        return own.unfinished[-1]
    if part.text is not None:
        bare = read_asked(part.text.text, part.text.place, "text", scene)
        if isinstance(bare, Asked):
            return bare
    if shared.asks:
        return _together(shared.asks, part)
    if shared.unfinished:
        return shared.unfinished[-1]
    line = part.text or question.text or Line("", part.place)
    return Unread(line.text.strip()[:200], "ask", 0, "what is to be found, as in ∠ABC or x", "", line.place)


def _together(asks: list[Asked], part: Part) -> Asked | Unread:
    """Several asks in one text: quantities to be found go together, other tasks do not."""
    if len(asks) == 1:
        return asks[0]
    first, *rest = asks
    if not all(isinstance(asked.ask.task, Find) for asked in asks):
        return Unread("; ".join(asked.ask.text for asked in asks), "ask", 0, "one task in a part", "", first.ask.place)
    wanted = tuple(dict.fromkeys(
        item for asked in asks if isinstance(asked.ask.task, Find) for item in asked.ask.task.wanted
    ))
    whole = replace(
        first.ask, task=Find(wanted), text=" and ".join(asked.ask.text for asked in asks),
        accuracy=next((asked.ask.accuracy for asked in asks if asked.ask.accuracy), None),
        reasons=any(asked.ask.reasons for asked in asks),
    )
    return Asked(whole, tuple(given for asked in asks for given in asked.conditions))


def _completed(ask: Ask, part: Part, proses: Sequence[Prose]) -> Ask:
    """The ask with what other sentences say of accuracy, unit and reasons, the part's own first."""
    asides = [aside for prose in reversed(proses) for aside in prose.asides]
    accuracy = ask.accuracy or next((aside.accuracy for aside in asides if aside.accuracy), None)
    unit = ask.unit or next((aside.unit for aside in asides if aside.unit), "")
    said = next((aside.reasons for aside in asides if aside.reasons is not None), False)
    reasons = part.reasons if part.reasons is not None else ask.reasons or said
    return replace(ask, accuracy=accuracy, unit=unit, reasons=reasons)
