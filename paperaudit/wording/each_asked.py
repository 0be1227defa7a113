"""Splits a part that asks for several things into its asks: "Find f′(x) and f′(2) if f(x) = x³"."""

import re
from collections.abc import Callable, Iterator
from dataclasses import replace

from paperaudit.model.ask import Ask
from paperaudit.model.each_asked import EachAsked
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading
from paperaudit.wording.sentences import sentences
from paperaudit.wording.statement import LONGEST_SENTENCE

_COMMAND = (
    r"(?:calculate|find|determine|work out|compute|solve|show|prove|verify|simplify|expand|factori[sz]e|evaluate"
    r"|multiply out|write|express|convert|sketch|make|state|give|deduce|estimate|decide|differentiate|integrate|name"
    r"|describe|what (?:is|are))\b"
)
_FINDS = re.compile(
    r"(?P<before>.*?)(?P<verb>\b(?:calculate|find|determine|work out|compute|state|give|write down|what (?:is|are))"
    r"(?: down)?) (?P<rest>.+)",
    re.IGNORECASE | re.DOTALL,
)
_ASKS = re.compile(rf"(?:.*[,;:.] )?(?:(?:hence|then|now|also|therefore),? )*{_COMMAND}", re.IGNORECASE | re.DOTALL)
_JOINT = re.compile(r",? and (?:(?:hence|also|then|therefore),? |thus |so )*|; (?:hence |then )?", re.IGNORECASE)
_TAIL = re.compile(r",? (?:of|if|for|given|when|in|on|with|where|from|at|to) ")
_AGAIN = re.compile(rf"{_COMMAND}", re.IGNORECASE)
_EARLIER = re.compile(r"\b(?:answer|result)s? (?:to|of|in|from)\b", re.IGNORECASE)
_MOST_ASKS, _MOST_WAYS = 4, 24

Read = Callable[[Question, Part], Reading]


def read_each(question: Question, part: Part, read: Read) -> Reading | None:
    """The part as several asks, each of which `read` understands by itself; None where it is not so."""
    line = part.text or question.text
    if line is None or part.ask is not None or part.options or _EARLIER.search(line.text):
        return None
    said = [one.text for one in sentences(line.text)]
    asking = [at for at, one in enumerate(said) if _ASKS.match(one) and len(one) <= LONGEST_SENTENCE]
    if not asking or len(asking) > _MOST_ASKS:
        return None
    ways = [(tuple(said[at] for at in asking))] if len(asking) > 1 else _ways(said[asking[0]])
    known: dict[str, Reading | None] = {}

    def reading_of(ask: str) -> Reading | None:
        if ask not in known:
            kept = [ask if at == asking[0] else one for at, one in enumerate(said) if at not in asking[1:]]
            found = read(*_with_text(question, part, line, " ".join(kept)))
            known[ask] = found if found.ask is not None and not found.unread else None
        return known[ask]

    for count, way in enumerate(ways):
        readings = tuple(found for one in way if (found := reading_of(one)) is not None)
        if len(readings) == len(way):
            return _together(question, part, line, readings, " ".join(said[at].strip(" .?!") for at in asking))
        if count > _MOST_WAYS:
            break
    return None


def _with_text(question: Question, part: Part, line: Line, text: str) -> tuple[Question, Part]:
    changed = replace(line, text=text)
    return (question, replace(part, text=changed)) if part.text is not None else (replace(question, text=changed), part)


def _together(question: Question, part: Part, line: Line, readings: tuple[Reading, ...], text: str) -> Reading | None:
    """One reading of all asks, with the accuracy of one where another names none; None for one ask said twice."""
    asks = [one.ask for one in readings if one.ask is not None]
    if len({repr(ask.task) for ask in asks}) < len(asks):
        return None
    accuracy = next((ask.accuracy for ask in asks if ask.accuracy is not None), None)
    readings = tuple(
        replace(one, ask=replace(ask, accuracy=ask.accuracy or accuracy))
        for one, ask in zip(readings, asks, strict=True)
    )
    givens = tuple(dict.fromkeys(given for one in readings for given in one.givens))
    reasons = any(ask.reasons for ask in asks)
    read_as = "; ".join(dict.fromkeys(ask.read_as for ask in asks if ask.read_as))
    whole = Ask(EachAsked(readings), text, accuracy, "", reasons, read_as, line.place)
    question = replace(question, not_to_scale=readings[0].question.not_to_scale)
    return Reading(question, part, givens, whole)


def _ways(sentence: str) -> Iterator[tuple[str, ...]]:
    """The asks that a sentence may be made of, as sentences: what stands behind both may go with each."""
    text, end = sentence.rstrip(".?! "), "?" if sentence.rstrip().endswith("?") else "."
    for joint in _JOINT.finditer(text):
        left, right = text[: joint.start()], text[joint.end() :]
        if _AGAIN.match(right):
            yield left + end, right[0].upper() + right[1:] + end
            for tail in _tails(right):
                yield left + tail + end, right[0].upper() + right[1:] + end
            continue
        found = _FINDS.fullmatch(left)
        if found is None:
            continue
        lead = found["before"] + found["verb"] + " "
        items = found["rest"].split(", ")
        for tail in (*_tails(right), ""):
            if any(_has_its_own(one, tail) for one in items):
                continue
            yield (*(lead + one + tail + end for one in items), lead + right + end)
            if len(items) > 1:
                yield lead + found["rest"] + tail + end, lead + right + end
        for tail in _tails(left):
            yield left + end, lead + right + tail + end


def _has_its_own(item: str, tail: str) -> bool:
    """Whether an item of a list cannot take a tail: numbers stand behind it already, or it is one of them."""
    word = tail.lstrip(", ").partition(" ")[0]
    return bool(word) and re.search(rf"\b{word} [-−]?\d|^[^A-Za-z]*$", item) is not None


def _tails(text: str) -> list[str]:
    """The ends of a text that may be said of what stands before it too, the longest first."""
    return [text[found.start() :] for found in _TAIL.finditer(text)]
