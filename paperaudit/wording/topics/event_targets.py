"""What is asked of events in words: one of them, both, neither, at least one, so many of several trials."""

import re
from dataclasses import dataclass

from paperaudit.model.event_task import EventName, EventTerm
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.named_events import Event, Events, denied, stems

MANY = 10**6
_NUMBER = r"(?:one|two|three|four|five|six|seven|eight|nine|ten|\d+)"
_WORDS = {word: at for at, word in enumerate(("none", "one", "two", "three", "four", "five", "six", "seven", "eight",
                                              "nine", "ten"))} | {"once": 1, "twice": 2}  # fmt: skip
_HOW_OFTEN = re.compile(
    rf"\b(?P<how>exactly|at least|at most|more than|fewer than|less than|only|just|no more than)"
    rf" (?P<count>once|twice|{_NUMBER})(?: times)?\b|(?P<plain>\b(?:once|twice|{_NUMBER} times|{_NUMBER})\b(?! or))"
)
_ALL = re.compile(r"\b(?:both(?: times)?|all(?: (?:three|four|five|the))?|every time|each time|all of)\b")
_NONE = re.compile(r"\b(?:none|neither|no)\b")
_THINGS = re.compile(
    r"\b(?:of|them|the|times?|these|those|two|three|four|five|six|events?|happens?|happen|occurs?|occur|people|kicks?"
    r"|shots?|throws?|days?|boats?|seeds?|bulbs?|games?|matches|attempts?)\b"
)


@dataclass(frozen=True, slots=True)
class Target:
    """A joined event of two, or from `least` to `most` of several (of their opposites where `happens` is False)."""

    of: EventName | None = None
    least: int = -1
    most: int = -1
    happens: bool = True


def target_of(text: str, events: Events, trials: int) -> Target:
    """What is asked for; raises NotUnderstood where it is none of these."""
    single = events.find(text) if not _joined(text) else None
    if trials > 1:
        return _counted(text, events)
    if len(events.known) == 2:
        joined = _of_two(text, events.known[0], events.known[1], events)
        if joined is not None:
            return Target(joined)
    if single is not None and not _HOW_OFTEN.search(text) and not _ALL.search(text) and not _NONE.search(text):
        return Target(EventName((single[0].name, single[1])))
    if len(events.known) > 2:
        return _counted(text, events)
    raise NotUnderstood("an event that is not told of", 0)


def _joined(text: str) -> bool:
    return re.search(r"\b(?:and|or|both|neither|only|but|exactly|least|most|all|none)\b", text) is not None


def _counted(text: str, events: Events) -> Target:
    """How many of the trials or events: their words must be those that the events have in common."""
    count = _HOW_OFTEN.search(text)
    every, none = _ALL.search(text), _NONE.search(text)
    if sum(found is not None for found in (count, every, none)) != 1:
        if not (every and count and count["plain"]):
            raise NotUnderstood("how many of the trials", 0)
        count = None
    rest = text
    for pattern in (_HOW_OFTEN, _ALL, _NONE):
        rest = pattern.sub(" ", rest)
    words, happens = stems(_THINGS.sub(" ", rest)), not denied(rest)
    turned = events.find(rest) if len(events.known) == 1 else None
    if turned is not None:
        words, happens = turned[0].words, turned[1]
    if not all(words <= one.words for one in events.known):
        raise NotUnderstood("other words than those of the events", 0)
    if len(events.known) == 1 and not words and not every and not none:
        raise NotUnderstood("which event", 0)
    if every:
        return Target(None, MANY, MANY, happens)
    if none or count is None:
        return Target(None, 0, 0, happens)
    amount = count["count"] or count["plain"].removesuffix(" times")
    number = _WORDS.get(amount)
    number = int(amount) if number is None else number
    how = count["how"] or "exactly"
    least, most = {"at least": (number, MANY), "more than": (number + 1, MANY), "at most": (0, number),
                   "no more than": (0, number), "fewer than": (0, number - 1), "less than": (0, number - 1),
                   }.get(how, (number, number))  # fmt: skip
    return Target(None, least, most, happens)


def _of_two(text: str, one: Event, other: Event, events: Events) -> EventName | None:
    """Two events joined; None where the words do not join them."""
    shared = one.words & other.words
    first, second = (one.name, True), (other.name, True)
    rest = re.sub(r"\b(?:exactly|only|just|at least|one of|one|both|neither|nor|of them|of the two|the two|events?|them"
                  r"|people|happens?|occurs?|either)\b", " ", text)  # fmt: skip
    plain = stems(re.sub(r"\bnot\b", " ", rest))
    bare = plain <= shared or plain == one.words | other.words or (
        plain - shared == (one.words | other.words) - shared)  # fmt: skip
    negated = denied(rest.replace("no ", " "))
    if bare and not (negated and plain - shared):
        if re.search(r"\bneither\b", text) and not negated:
            return EventName((one.name, False), "and", (other.name, False))
        if re.search(r"\bat least one\b", text):
            return EventName((one.name, not negated), "or", (other.name, not negated))
        if re.search(r"\b(?:exactly|only|just) one\b", text):
            return EventName(first, "xor", second)
        if re.search(r"\bboth\b", text):
            return EventName((one.name, not negated), "and", (other.name, not negated))
    alone = re.fullmatch(r"only (.+)", text.strip())
    if alone is not None:
        return _only(alone[1], (one, other), events)
    pieces = re.split(r",? (?:and|but) ", text)
    if len(pieces) == 2:
        terms = [_term(pieces[0], events), _term(pieces[1], events, shared)]
        if terms[0] is not None and terms[1] is not None and terms[0][0] != terms[1][0]:
            return EventName(terms[0], "and", terms[1])
    choices = re.split(r" or ", text)
    if len(choices) == 2 and "both" not in text:
        terms = [_term(choices[0], events), _term(choices[1], events, shared)]
        if terms[0] is not None and terms[1] is not None and terms[0][0] != terms[1][0]:
            return EventName(terms[0], "or", terms[1])
    return EventName(first, "and", second) if bare and plain == one.words | other.words and " and " in text else None


def _only(text: str, both: tuple[Event, Event], events: Events) -> EventName | None:
    found = events.find(text)
    if found is None or not found[1]:
        return None
    other = both[0] if found[0] == both[1] else both[1]
    return EventName((found[0].name, True), "and", (other.name, False))


def _term(text: str, events: Events, shared: frozenset[str] = frozenset()) -> EventTerm | None:
    """One of two joined events; "Ben is not" names the event whose other words it leaves out."""
    found = events.find(text)
    return (found[0].name, found[1]) if found is not None else None
