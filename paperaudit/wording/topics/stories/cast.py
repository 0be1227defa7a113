"""Who and what a story is about: one key for each name, whatever article or plural it comes with."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.plain import Plain

_ARTICLE = re.compile(r"^(?:the|a|an|his|her|their|my|its|this|that|these|those|some|each|every) ")
_PLURALS = {
    "children": "child",
    "people": "person",
    "men": "man",
    "women": "woman",
    "pence": "penny",
    "loaves": "loaf",
    "knives": "knife",
    "shelves": "shelf",
    "mice": "mouse",
    "geese": "goose",
    "feet": "foot",
}
_SAME = frozenset({"bus", "glass", "gas", "class", "boss", "cross", "dress", "its", "this", "his", "as", "chess"})


def singular(word: str) -> str:
    """A noun without its plural ending.

    >>> singular("boxes"), singular("tickets"), singular("glass"), singular("berries")
    ('box', 'ticket', 'glass', 'berry')
    """
    if word in _PLURALS:
        return _PLURALS[word]
    if word in _SAME or len(word) < 4 or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("xes", "ches", "shes", "sses", "oes")):
        return word[:-2]
    return word[:-1] if word.endswith("s") else word


def bare(name: str) -> str:
    """A name without its article, each word singular.

    >>> bare("the adult tickets")
    'adult ticket'
    """
    stripped = _ARTICLE.sub("", name.strip())
    return " ".join(singular(word) for word in stripped.split())


@dataclass
class Cast:
    """The names of a story by key, in order of mention."""

    sentences: Sequence[Plain]
    names: dict[str, str] = field(default_factory=dict)

    def known(self, name: str) -> str | None:
        """The key of a name that was met: the same words, or the only one with the same last word."""
        key = bare(name)
        if key in self.names:
            return key
        alike = [
            one
            for one in self.names
            if one.split()[-1] == key.split()[-1]
            and (" " not in key or " " not in one)
            and ("'s" in one or "'s" in key)
        ]
        return alike[0] if len(alike) == 1 else None

    def take(self, name: str) -> str:
        """The key of a name, which may be new."""
        key = self.known(name)
        if key is None:
            key = bare(name)
            self.names[key] = name.strip()
        return key

    def find(self, name: str) -> str:
        """The key of a name that must have been met."""
        key = self.known(name)
        if key is None:
            raise NotUnderstood(f"who or what “{name}” is", 0)
        return key

    def only_other(self, keys: Iterable[str]) -> str:
        """The one name that is not among these, for "he is twice as old as his son"."""
        rest = [key for key in self.names if key not in set(keys)]
        if len(rest) != 1:
            raise NotUnderstood("whom a pronoun means", 0)
        return rest[0]

    def shown(self, key: str) -> str:
        """A name as it is printed: Ann, the father, Ann's brother."""
        words = [self._cased(word) for word in key.split()]
        proper = words[0][0].isupper()
        return " ".join(words) if proper else f"the {' '.join(words)}"

    def _cased(self, word: str) -> str:
        capital = word.capitalize()
        texts = [sentence.said for sentence in self.sentences]
        if any(re.search(rf"\b{re.escape(word)}(?![a-z])", text) for text in texts):
            return word
        inside = any(re.search(rf"(?<=[a-z,] ){re.escape(capital)}(?![a-z])", text) for text in texts)
        article = any(re.search(rf"\b(?:The|A|An|His|Her|Their) {re.escape(word)}", text) for text in texts)
        initial = any(
            re.match(rf"{re.escape(capital)}(?:'s|’s| is| has| and| was| will| gets| earns|,)", text) for text in texts
        )
        return capital if inside or (initial and not article) else word
