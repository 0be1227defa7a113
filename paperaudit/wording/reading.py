"""Reads a part of a paper: its givens from figure, given or text, and what it asks."""

from dataclasses import replace

from paperaudit.model.fact import Given
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading, Unread
from paperaudit.wording.asking import Asked, read_asked
from paperaudit.wording.choice import chosen_ask, stands_alone
from paperaudit.wording.prose import Prose, read_prose
from paperaudit.wording.scene import Scene
from paperaudit.wording.stated import letters_used, repeats
from paperaudit.wording.statement import Where, read_statement


def read(question: Question, part: Part) -> Reading:
    """A part with its typed givens and its ask; what was not understood is in `unread`.

    What stands under `figure` and `given` is read first. The text of the same level, question or
    part, gives facts only where that level has neither; where anything is stated it may add to it,
    never contradict it, and a sentence that cannot be read is no obstacle.
    """
    scene = Scene(letters_used(question, part))
    givens, unread = _stated(question, part, scene)
    stated = bool(givens or unread)
    explicit = read_asked(part.ask.text, part.ask.place, "ask", scene) if part.ask is not None else None
    alone = isinstance(explicit, Asked) and stands_alone(explicit.ask)
    proses = [
        _prose(question.text, not (question.figure or question.given or alone), scene),
        _prose(part.text, not (part.figure or part.given or alone), scene),
    ]
    for prose in proses:
        givens.extend(given for given in prose.givens if not repeats(given, givens, stated))
        if not stated:
            unread.extend(prose.unread)
    ask, conditions, missing = chosen_ask(question, part, explicit, proses, scene)
    givens.extend(given for given in conditions if not repeats(given, givens, stated))
    marked = question.not_to_scale or any(aside.not_to_scale for prose in proses for aside in prose.asides)
    question = replace(question, not_to_scale=marked)
    return Reading(question, part, tuple(givens), ask, (*unread, *missing))


def _stated(question: Question, part: Part, scene: Scene) -> tuple[list[Given], list[Unread]]:
    """What stands under `figure` and `given`, the question's first."""
    lines: list[tuple[Line, Where]] = [(line, "figure") for line in (*question.figure, *part.figure)]
    lines += [(line, "given") for line in (*question.given, *part.given)]
    givens: list[Given] = []
    unread: list[Unread] = []
    for line, where in lines:
        found = read_statement(line.text, line.place, where, scene)
        if isinstance(found, Given):
            givens.append(found)
        else:
            unread.append(found)
    return givens, unread


def _prose(line: Line | None, facts: bool, scene: Scene) -> Prose:
    return Prose() if line is None else read_prose(line, facts, scene)
