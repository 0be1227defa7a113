"""Says what was expected where reading stopped, and which known word is near."""

import re
from difflib import get_close_matches
from functools import cache
from pathlib import Path as File
from typing import Literal

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.notation import Notation
from paperaudit.model.place import Place
from paperaudit.model.reading import Unread
from paperaudit.wording.clauses import GRAMMAR_FILES

_NEAR = 0.8
_MOST_SLIPS = 2
_SHORT = 4
"""Words of so many letters are near too many others."""
LONGEST_QUOTE = 200
_LATER = re.compile(
    r"\b(?:cylinder|sphere|cone|prism|pyramid|vectors?"
    r"|probability|mean|median|mode|range|gradient|nth term)\b"
)
_IN_PART = re.compile(
    r"\b(?:circles?|chords?|tangents?|diameters?|radius|radii|cyclic|circumference|arcs?|sectors?|semicircles?)\b"
)
"""Words of circles, known in many sentences; a statement with one that is not read leaves its part, as `_LATER` do."""
_REASONS = (
    (
        r"\b(?:to the (?:right|left) of|on the (?:right|left)|above|below|clockwise|anticlockwise)\b",
        "left, right, above and below are for a sketch to say",
    ),
    (r"\bshaded\b", "what is shaded is not said: name the figure, as in “area of segment AB”"),
    (r"\bexcircles?\b|\bexcent(?:re|er)s?\b", "not yet known: excircle"),
    (r"∠ ?[0-9]|\bangle [0-9]", "an angle named by its points, or a numbered one such as B1"),
)
"""What stands in the way of a statement, by a word in it that is known and cannot be used."""
_EXPECTED = "a statement such as AB = AC, ∠ABC = 40° or AB ∥ CD"


def not_read(
    notation: Notation,
    where: Literal["figure", "given", "ask", "text", "answer"],
    place: Place,
    error: ExpressionNotRead,
    expected: str = "",
) -> Unread:
    """The `Unread` of a text; the error's offset is one of its plain spelling."""
    text = notation.source
    if str(error):
        said, quoted = f"{error.expected} ({error})", text[:LONGEST_QUOTE]
        return Unread(quoted, where, min(notation.offset(error.start), len(quoted)), said, "", place)
    for pattern, reason in _REASONS:
        if found := re.search(pattern, notation.text):
            return Unread(text, where, notation.offset(found.start()), reason, "", place)
    later = _LATER.search(notation.text)
    strange = _unknown_word(notation)
    if later is None and strange is not None:
        return Unread(text, where, notation.offset(strange[0]), expected or _EXPECTED, strange[1], place)
    later = later or _IN_PART.search(notation.text)
    if later is not None:
        return Unread(text, where, notation.offset(later.start()), f"not yet known: {later.group()}", "", place)
    could_follow = expected or _after(notation.text[: error.start])
    return Unread(text, where, notation.offset(error.start), could_follow, "", place)


_BEHIND = (
    (r"(?:[∥⊥]|parallel to|perpendicular to|bisects) ?$", "a name such as CD or ∠ABC"),
    (r"[-+=<>≤≥≠×÷/:*] ?$|\b(?:is|than|twice|of) ?$", "a number, a letter or a quantity such as ∠ABC"),
    (r"^(?:[A-Z]′*){3} ?$", "∠ before three letters for an angle, or “is a triangle”, “is a straight line”"),
    (r"^(?:[A-Z]′*){2} ?$", "a relation such as AB = AC or AB ∥ CD, or “is produced to D”, “bisects ∠BAC”"),
)


def _after(before: str) -> str:
    """What could have followed what was read of a statement."""
    return next((words for pattern, words in _BEHIND if re.search(pattern, before)), _EXPECTED)


def _unknown_word(notation: Notation) -> tuple[int, str] | None:
    """The first word that no rule knows and that is a slip of the pen away from one that a rule knows.

    A word with a capital is a name, unless it begins the text and one slip makes a known word of it.
    """
    for word in re.finditer(r"[a-z][a-z-]{4,}", notation.text):
        capital = notation.source[notation.offset(word.start())].isupper()
        slips = 0 if capital and word.start() else 1 if capital else _MOST_SLIPS
        if word.group() in known_words() or word.group() in topic_words() or not slips:
            continue
        alike = [known for known in known_words() if known[0] == word.group()[0] and len(known) > _SHORT]
        near = get_close_matches(word.group(), alike, 1, _NEAR)
        if near and _slips(word.group(), near[0]) <= slips:
            return word.start(), near[0]
    return None


def _slips(word: str, known: str) -> int:
    """How many letters are added, left out, changed or swapped with their neighbour.

    >>> _slips("triangel", "triangle"), _slips("altitud", "altitude")
    (1, 1)
    """
    two_back: list[int] = []
    back = list(range(len(known) + 1))
    for at, letter in enumerate(word, 1):
        row = [at]
        for to, other in enumerate(known, 1):
            fewest = min(row[-1] + 1, back[to] + 1, back[to - 1] + (letter != other))
            if at > 1 and to > 1 and word[at - 2 : at] == known[to - 2 : to][::-1]:
                fewest = min(fewest, two_back[to - 2] + 1)
            row.append(fewest)
        two_back, back = back, row
    return back[-1]


@cache
def topic_words() -> frozenset[str]:
    """Every word of the topics' grammars: rightly spelled, even where a sentence with it is not read."""
    here = File(__file__).parent / "topics"
    text = "\n".join(file.read_text(encoding="utf-8") for file in sorted(here.rglob("*.peg")))
    return frozenset(re.findall(r"(?<![\\?])\b[a-z]{4,}\b", text))


@cache
def known_words() -> tuple[str, ...]:
    """Every word of the grammars."""
    here = File(__file__).parent
    text = "".join((here / name).read_text(encoding="utf-8") for name in GRAMMAR_FILES)
    literals = " ".join(re.findall(r'"([^"]*)"', text)).replace("-?", "")
    literals = re.sub(r"([a-z]+)s\?", r"\1 \1s", literals)
    return tuple(sorted(set(re.findall(r"(?<![\\?])\b[a-z]{4,}\b", literals))))
