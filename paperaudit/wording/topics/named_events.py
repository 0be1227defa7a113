"""Events in free words: which words of a sentence name the same event, and whether they deny it."""

import re
from dataclasses import dataclass, field

_SMALL = frozenset(
    re.findall(
        r"[a-z]+",
        "a an the to of do does did is are was were will be been being by it its at in on who that this he she "
        "they his her their them him one both either neither only but not and or also then there chosen selected "
        "picked random randomly sport sports subject subjects activity activities each given any day certain "
        "particular person no never out",
    )
)
_NEGATIONS = re.compile(r"\b(?:not|doesn′t|don′t|isn′t|won′t|never|no|fails? to|failed to|wasn′t|didn′t)\b")
_ALIKE = {
    "won": "win",
    "lost": "lose",
    "hit": "hit",
    "took": "take",
    "caught": "catch",
    "rainy": "rain",
    "made": "make",
}
_COIN = {"head", "tail"}
Words = frozenset[str]


def stem(word: str) -> str:
    """A word without the endings of number and tense: rains, rained and raining are one.

    >>> stem("scores") == stem("scored"), stem("misses") == stem("misses")
    (True, True)
    """
    word = _ALIKE.get(word, word)
    for ending in ("ing", "ed", "es", "s"):
        if word.endswith(ending) and len(word) - len(ending) > 2 and not word.endswith("ss"):
            word = word[: -len(ending)]
            break
    if len(word) > 3 and word[-1] == word[-2] and word[-1] not in "ls":
        word = word[:-1]
    return word.removesuffix("e") if len(word) > 3 else word


def stems(text: str) -> Words:
    """The stems of the words that carry meaning."""
    return frozenset(stem(word) for word in re.findall(r"[a-z0-9]+", text.replace("′s", "")) if word not in _SMALL)


def denied(text: str) -> bool:
    """Whether words deny an event: "it does not rain"."""
    return _NEGATIONS.search(text) is not None


@dataclass(frozen=True, slots=True)
class Event:
    """An event with the words that name it, and its name in a line of working."""

    words: Words
    name: str


@dataclass(slots=True)
class Events:
    """The events of a question, in the order in which they are told."""

    known: list[Event] = field(default_factory=list)

    def add(self, text: str, printed: str) -> tuple[Event, bool] | None:
        """The event that words name, new where they name none so far, and whether it happens."""
        found = self.find(text)
        if found is not None or not (words := stems(_NEGATIONS.sub(" ", text))):
            return found
        kept = [word for word in re.findall(r"[A-Za-z0-9′]+", printed) if word.lower() not in _SMALL - {"random"}
                and not _NEGATIONS.fullmatch(word.lower())]  # fmt: skip
        event = Event(words, " ".join(kept))
        self.known.append(event)
        return event, not denied(text)

    def find(self, text: str) -> tuple[Event, bool] | None:
        """The one event whose words these are, or a part of whose words; and whether it happens."""
        words = stems(_NEGATIONS.sub(" ", text))
        if not words:
            return None
        fitting = [one for one in self.known if one.words == words] or [one for one in self.known if words < one.words]
        if len(fitting) == 1:
            return fitting[0], not denied(text)
        if not fitting and len(named := [one for one in self.known if self._with_its_subject(one, words)]) == 1:
            return named[0], not denied(text)
        other = [one for one in self.known if "coin" in one.words | words and _turned(one.words, words)]
        return (other[0], denied(text)) if not fitting and len(other) == 1 else None

    def _with_its_subject(self, event: Event, words: Words) -> bool:
        """Whether words are those of an event told with "she", and the name of the one who acts in another event."""
        subjects = {
            stem(one.name.split(" ")[0].lower()) for one in self.known if one != event and one.name[:1].isupper()
        }
        return event.words < words and len(words - event.words) == 1 and words - event.words <= subjects


def _turned(one: Words, other: Words) -> bool:
    """Heads against tails of one coin."""
    return {*(one & _COIN), *(other & _COIN)} == _COIN and other - _COIN <= one - _COIN
