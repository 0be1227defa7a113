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

_NEAR = 0.8
LONGEST_QUOTE = 200
_LATER = re.compile(
    r"\b(?:arcs?|sectors?|segments? of (?:the|a) circle|semicircles?|cylinder|sphere|cone|prism|pyramid|vectors?"
    r"|probability|mean|median|mode|range|gradient|nth term)\b"
)
_IN_PART = re.compile(r"\b(?:circles?|chords?|tangents?|diameters?|radius|radii|cyclic|circumference)\b")
"""Words of circles, known in many sentences; a statement with one that is not read leaves its part, as `_LATER` do."""
_EXPECTED = "a statement such as AB = AC, ∠ABC = 40° or AB ∥ CD"


def not_read(
    notation: Notation, where: Literal["figure", "given", "ask", "text", "answer"], place: Place,
    error: ExpressionNotRead, expected: str = "",
) -> Unread:
    """The `Unread` of a text; the error's offset is one of its plain spelling."""
    text = notation.source
    if str(error):
        said, quoted = f"{error.expected} ({error})", text[:LONGEST_QUOTE]
        return Unread(quoted, where, min(notation.offset(error.start), len(quoted)), said, "", place)
    later = _LATER.search(notation.text)
    strange = _unknown_word(notation.text)
    if later is None and strange is not None:
        return Unread(text, where, notation.offset(strange[0]), expected or _EXPECTED, strange[1], place)
    later = later or _IN_PART.search(notation.text)
    if later is not None:
        return Unread(text, where, notation.offset(later.start()), f"not yet known: {later.group()}", "", place)
    could_follow = expected or _after(notation.text[:error.start])
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


def _unknown_word(text: str) -> tuple[int, str] | None:
    """The first word that no rule knows and that is close to one that a rule knows."""
    for word in re.finditer(r"[a-z][a-z-]{3,}", text):
        if word.group() not in known_words():
            near = get_close_matches(word.group(), known_words(), 1, _NEAR)
            if near:
                return word.start(), near[0]
    return None


@cache
def known_words() -> tuple[str, ...]:
    """Every word of the grammars."""
    here = File(__file__).parent
    text = "".join((here / name).read_text(encoding="utf-8") for name in ("statement.peg", "circle.peg", "ask.peg"))
    literals = " ".join(re.findall(r'"([^"]*)"', text)).replace("-?", "")
    literals = re.sub(r"([a-z]+)s\?", r"\1 \1s", literals)
    return tuple(sorted(set(re.findall(r"(?<![\\?])\b[a-z]{4,}\b", literals))))
