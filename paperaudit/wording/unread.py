"""Says what was expected where reading stopped, and which known word is near."""

import re
from difflib import get_close_matches
from functools import cache
from pathlib import Path as File
from typing import Literal

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.notation import read_notation
from paperaudit.model.place import Place
from paperaudit.model.reading import Unread

_NEAR = 0.8
LONGEST_QUOTE = 200
_LATER = re.compile(
    r"\b(?:circles?|chords?|tangents?|arcs?|sectors?|diameters?|radius|radii|cyclic|circumference|semicircles?|cylinder"
    r"|sphere|cone|prism|pyramid|vectors?|probability|mean|median|mode|range|gradient|nth term)\b"
)
_EXPECTED = "a statement such as AB = AC, ∠ABC = 40° or AB ∥ CD"


def not_read(
    text: str, where: Literal["figure", "given", "ask", "text", "answer"], place: Place,
    error: ExpressionNotRead, expected: str = _EXPECTED,
) -> Unread:
    """The `Unread` of a text; the error's offset is one of the plain text, except beyond the limits."""
    if str(error):
        return Unread(text[:LONGEST_QUOTE], where, error.start, f"{error.expected} ({error})", "", place)
    notation = read_notation(text)
    later = _LATER.search(notation.text)
    if later:
        return Unread(text, where, notation.offset(later.start()), f"not yet known: {later.group()}", "", place)
    strange = _unknown_word(notation.text, error.start)
    start = error.start if strange is None else strange[0]
    nearest = "" if strange is None else strange[1]
    return Unread(text, where, notation.offset(start), expected, nearest, place)


def _unknown_word(text: str, start: int) -> tuple[int, str] | None:
    """The first word that no rule knows, from where reading stopped or before it, and its nearest known word."""
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
    text = "".join((here / name).read_text(encoding="utf-8") for name in ("statement.peg", "ask.peg"))
    literals = " ".join(re.findall(r'"([^"]*)"', text)).replace("-?", "")
    literals = re.sub(r"([a-z]+)s\?", r"\1 \1s", literals)
    return tuple(sorted(set(re.findall(r"(?<![\\?])\b[a-z]{4,}\b", literals))))
