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
    "scarves": "scarf",
    "halves": "half",
    "wives": "wife",
    "calves": "calf",
    "wolves": "wolf",
    "leaves": "leaf",
    "hooves": "hoof",
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
    return " ".join(word if word.endswith("'s") else singular(word) for word in stripped.split())


def one_thing(names: Iterable[str], generic: Iterable[str] = ()) -> None:
    """Raises NotUnderstood where names mean more than one thing; generic words (it, rectangle) mean any.

    >>> one_thing(["the hull", "a hull", "it"], ["it"])
    """
    kinds = {bare(name) for name in names} - {bare(word) for word in generic} - {""}
    kinds = {kind for kind in kinds if not any(other.endswith(f" {kind}") for other in kinds)}
    if len(kinds) > 1:
        raise NotUnderstood(f"two things where one is told of: {' and '.join(sorted(kinds))}", 0)


def none_alike(names: Iterable[str]) -> None:
    """Raises NotUnderstood where two names may be one in two spellings, as an odd plural is.

    >>> none_alike(["pen", "pencil case", "scarf"])
    """
    known = list(names)
    for at, one in enumerate(known):
        for other in known[at + 1 :]:
            short, long = sorted((one, other), key=len)
            if len(short) > 3 and len(long) - len(short) < 3 and long.startswith(short[:-2]) and short != long:
                raise NotUnderstood(f"whether {one} and {other} are the same", 0)


_FOLLOWS = "'s|’s| is| has| and| was| will| gets| earns| takes| can| needs| thinks| pays|,"
"""What stands behind a name at the beginning of a sentence."""


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
        words = [self.cased(word) for word in key.split()]
        proper = words[0][0].isupper() or words[0] == "one"
        return " ".join(words) if proper else f"the {' '.join(words)}"

    def cased(self, word: str) -> str:
        """A word of a name as the story writes it: Ann, brother."""
        if word.endswith("'s"):
            return f"{self.cased(word[:-2])}'s"
        capital = word.capitalize()
        texts = [sentence.said for sentence in self.sentences]
        if any(re.search(rf"\b{re.escape(word)}(?![a-z])", text) for text in texts):
            return word
        inside = any(re.search(rf"(?<=[a-z,] ){re.escape(capital)}(?![a-z])", text) for text in texts)
        article = any(re.search(rf"\b(?:The|A|An|His|Her|Their) {re.escape(word)}", text) for text in texts)
        initial = any(re.match(rf"{re.escape(capital)}(?:{_FOLLOWS})", text) for text in texts)
        return capital if inside or (initial and not article) else word
