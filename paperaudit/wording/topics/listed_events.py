"""Independent events whose probabilities are listed: "P(A) = 0.5, P(B) = 0.4, P(C) = 0.6", "Ann, Ben and Cal pass"."""

import re
from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.maths.number_words import BELOW_TWENTY
from paperaudit.model.chance_task import Successes
from paperaudit.model.paper import Part, Question
from paperaudit.model.statistics_task import Told as Noted
from paperaudit.wording.scene import NotUnderstood, Scene
from paperaudit.wording.topics.heard import Sentence, givens_of, heard
from paperaudit.wording.topics.joined_events import amount_in
from paperaudit.wording.topics.named_events import stem
from paperaudit.wording.topics.topic import Readers, Told

_AMOUNT = r"(?:\d+ ?/ ?\d+|\d+(?:\.\d+)?(?: ?%)?|0?\.\d+)"
_NAME = r"(?!(?:it|he|she|they|the|an?|one|both|each|all)(?![a-z]))[A-Za-z][a-z]*"
_LETTERED = re.compile(rf"P ?\( ?(?P<name>[A-Z]) ?\) ?= ?(?P<amount>{_AMOUNT})")
_LIST = re.compile(
    rf"(?:the )?probabilit(?:ies|y) (?:that|of) (?P<names>{_NAME}(?:, {_NAME})*,? and {_NAME})(?: each| will)*"
    rf" (?P<verb>[a-z][a-z ]*?) (?:are|is) (?P<amounts>{_AMOUNT}(?:, {_AMOUNT})*,? and {_AMOUNT})(?:,? respectively)?"
    rf"(?P<rest>.*)"
)
_SINGLE = re.compile(
    rf"(?:the )?probability (?:that|of) (?P<name>{_NAME}) (?P<verb>[a-z][a-z ]*?) (?:is|was) (?P<amount>{_AMOUNT})"
)
_INDEPENDENT = re.compile(r"\bindependent(?:ly)?\b")
_ASK = re.compile(
    r"(?P<ahead>(?:if|given that|assuming(?: that)?) (?:the |these |all (?:the )?)?(?:events|results|they)"
    r" are independent,? )?"
    r"(?:(?:hence,? )?(?:find|calculate|determine|work out|what is|write down)(?: the)? )?"
    r"(?:probability (?:that )?(?P<words>.+?)|P ?\((?P<of>.+)\))"
    r"(?P<under>,? (?:if|given that|assuming(?: that)?) (?:the |these |all (?:the )?)?(?:events|results|they)"
    r" are independent)?"
)
_COUNTS = {word: BELOW_TWENTY.index(word) for word in BELOW_TWENTY[1:5]}
_TARGETS = (
    (re.compile(r"(?:all|both)(?: (?:the )?(?:two|three|four))?(?: of them| of the [a-z]+| events)?"), "all"),
    (re.compile(r"(?:none|neither)(?: of (?:them|the (?:two|three|four)|these|the [a-z]+))?|no one|nobody"), "none"),
    (re.compile(r"at least (?P<n>one|two|three)(?: of (?:them|the [a-z]+|these))?(?: event)?"), "least"),
    (re.compile(r"at most (?P<n>one|two|three)(?: of (?:them|the [a-z]+|these))?(?: events?)?"), "most"),
    (
        re.compile(r"(?:exactly|only|just) (?P<n>one|two|three)(?: of (?:them|the [a-z]+|these))?(?: events?)?"),
        "exactly",
    ),
)
_FILLER = frozenset(
    map(stem, ("will", "occur", "occurs", "happen", "happens", "does", "do", "is", "are", "they", "the", "them",
               "event", "events"))
)  # fmt: skip

_LINKS = frozenset(
    ("and", "are", "events", "independent", "independently", "three", "the", "with", "such", "that", "where", "given",
     "for", "these", "of", "each", "other", "two", "all", "they", "their", "results", "is")
)  # fmt: skip


@dataclass(slots=True)
class _Listed:
    """What the sentences say: events with their probabilities, what they do, whether they are independent."""

    chances: dict[str, Fraction] = field(default_factory=dict)
    texts: list[str] = field(default_factory=list)
    verb: str = ""
    independent: bool = False
    asked: tuple[Sentence, str, str] | None = None
    said_of: set[str] = field(default_factory=set)
    sources: list[Sentence] = field(default_factory=list)


def _story(question: Question, part: Part, scene: Scene) -> Told | None:
    told = heard(question, part, scene)
    if told.too_long or question.table:
        return None
    listed = _Listed()
    try:
        for sentence in told.sentences:
            _take(sentence, listed)
        if len(listed.chances) < 2 or listed.asked is None or not listed.independent:
            return None
        if listed.said_of and listed.said_of != set(listed.chances):
            return None
        task = _task(listed)
    except NotUnderstood:
        return None
    each = ", ".join(f"P({name}) = {value}" for name, value in listed.chances.items())
    read_as = f"{each}, independent: {task.least} to {task.most} of them"
    ask = told.ask(task, listed.asked[0].source, read_as, listed.asked[0].place)
    return Told(ask, givens_of(listed.sources, Noted))


def _take(sentence: Sentence, listed: _Listed) -> None:
    """Puts one sentence to what is known; raises NotUnderstood where something of it is not understood."""
    text = sentence.text.strip(" .?!")
    asked = _ASK.fullmatch(text)
    if asked is not None and not _LETTERED.search(text) and _LIST.fullmatch(text) is None:
        if listed.asked is not None:
            raise NotUnderstood("two asks", 0)
        listed.asked = (sentence, asked["words"] or "", asked["of"] or "")
        listed.independent |= _INDEPENDENT.search(text) is not None
        return
    found = _LIST.fullmatch(text)
    if found is not None:
        names = re.split(r",? and |, ", found["names"])
        amounts = re.findall(_AMOUNT, found["amounts"])
        rest = found["rest"]
        listed.verb = found["verb"].replace(" independently", "")
    else:
        pairs = list(_LETTERED.finditer(text)) or list(_SINGLE.finditer(text))
        names, amounts = [one["name"] for one in pairs], [one["amount"] for one in pairs]
        rest = _SINGLE.sub(" ", _LETTERED.sub(" ", text))
        verbs = {one["verb"] for one in pairs if "verb" in one.groupdict()} | ({listed.verb} - {""})
        if len(verbs) > 1:
            raise NotUnderstood("one thing that they do", 0)
        listed.verb = verbs.pop() if verbs else ""
    if len(names) != len(amounts) or len(set(names)) != len(names) or set(names) & listed.chances.keys():
        raise NotUnderstood("a probability for each", 0)
    listed.chances |= {name: amount_in(amount) for name, amount in zip(names, amounts, strict=True)}
    listed.texts += amounts
    if _INDEPENDENT.search(text):
        listed.independent = True
    words = set(re.findall(r"[A-Za-z]+", rest)) - set(listed.chances)
    if _INDEPENDENT.search(text):
        listed.said_of |= {name for name in re.findall(r"\b[A-Z]\b", rest) if name != "P"}
    if (names or _INDEPENDENT.search(text)) and (words - _LINKS - listed.said_of or re.search(r"\d", rest)):
        raise NotUnderstood("something more about the events", 0)
    if not names and not _INDEPENDENT.search(text) and re.search(r"\d|\b(?:event|not|if|probab)", text):
        raise NotUnderstood("a sentence about the events", 0)
    if names or _INDEPENDENT.search(text):
        listed.sources.append(sentence)


def _task(listed: _Listed) -> Successes:
    assert listed.asked is not None
    _, words, of = listed.asked
    names, chances = tuple(listed.chances), tuple(listed.chances.values())
    decimal = not any("/" in text for text in listed.texts)
    if any(not 0 <= chance <= 1 for chance in chances):
        raise NotUnderstood("a probability beyond 1", 0)
    count = len(names)
    if of:
        parts = re.split(r" ?(∩|∪|and|or) ?", of)
        if set(parts[::2]) != set(names) or len(parts[::2]) != count or len(set(parts[1::2])) != 1:
            raise NotUnderstood("all the events", 0)
        return Successes(names, chances, count if parts[1] in ("∩", "and") else 1, count, decimal)
    alone = re.fullmatch(rf"(?:only|just) (?P<name>{_NAME})(?P<rest>.*)", words)
    if alone is not None and alone["name"] in names:
        _checked(alone["rest"], listed)
        turned = tuple(name if name == alone["name"] else f"not {name}" for name in names)
        values = tuple(one if name == alone["name"] else 1 - one for name, one in listed.chances.items())
        return Successes(turned, values, count, count, decimal)
    for pattern, kind in _TARGETS:
        found = pattern.match(words)
        if found is None:
            continue
        _checked(words[found.end() :], listed)
        number = _COUNTS[found["n"]] if "n" in found.groupdict() else count
        said = re.search(r"\b(two|three|four)\b", found.group()) if kind == "all" else None
        if number > count or (said and _COUNTS[said[1]] != count):
            raise NotUnderstood("more events than there are", 0)
        least, most = {"all": (count, count), "none": (0, 0), "least": (number, count), "most": (0, number)}.get(
            kind, (number, number)
        )
        return Successes(names, chances, least, most, decimal)
    raise NotUnderstood("how many of the events happen", 0)


def _checked(rest: str, listed: _Listed) -> None:
    """Raises NotUnderstood where the ask has other words than what the events are told to be."""
    own = {stem(word) for word in re.findall(r"[a-z]+", listed.verb)}
    said = {stem(word) for word in re.findall(r"[a-z]+", re.sub(r"\bgets?\b", "get", rest))}
    if said - own - _FILLER or re.search(r"\b(?:not|n)\b", rest):
        raise NotUnderstood("another event", 0)


READERS = Readers(story=_story)
