"""Splits prose into sentences with their offsets, and tells mathematics from scenery."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

_END = re.compile(r"[.?!]+[)\"”’]?(?=\s|$)|(?<=[;,] )…(?=\s+[A-Z][a-z])|\n\s*\n")
_ABBREVIATION = re.compile(r"\b(?:figs?|nos?|eq|e\.g|i\.e|approx|cf|vs|d\.p|s\.f|ex|st|mr|mrs|ms|dr)$", re.IGNORECASE)
_BEFORE_A_NUMBER = re.compile(r"\b(?:pp?|q)$")
"""p. 12 and q. 3; elsewhere these are letters at the end of a sentence: f(q) = 2q."""
_MATHEMATICS = re.compile(
    r"""[∠∡△∥⟂⊥≡≅∼=≠<>≤≥√\u0302²³°] | \|\|
    | (?<![A-Za-z]) (?! (?:NOT|TO|SCALE|DRAWN|THE|AND|OR|ALL|SI|PIN|TV|GPS) \b ) [A-Z]{2,} (?![a-z])
    | (?<![A-Za-z.]) [B-HJ-Z] (?! [A-Za-z.'’] | -[a-z]{2} )
    | (?<![\w.,]) \d+ [abknp-rt-z] \b
    | (?<![\w'’]) [a-z] \s? [-+−–*/^] \s? (?: \d | [a-z] (?![\w'’]) )
    | (?<![\w'’/-]) \d+ \s? [-+−*/] \s? [b-z] (?![\w'’])
    | (?<![A-Za-z]) (?: [fgh] \s? \( | (?: log | ln | sin | cos | tan ) \b )
    | \b (?: radius | diameter | circle | chord ) s? \b .* \d
    | \b (?: points? | vertex | angles? | line ) \s A \b
    | \b (?: at | in | to | through | from ) \s [A-HJ-Z] \.? $
    | \b (?: bisect \w* | perpendicular ) \b
    | \b proportional \b | \b var(?:y|ies) \s (?:directly|inversely|jointly|as) \b
    | \b lines? \s [a-z] \b (?! \s? ['’] ) .* \b (?: parallel | perpendicular | lines? ) \b""",
    re.VERBOSE | re.DOTALL,
)


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence as written, and where it starts in its text."""

    text: str
    start: int


def sentences(text: str) -> Iterator[Sentence]:
    """The sentences of a text. A stop in 7.5, after Fig. or in "d.p." ends none.

    >>> [sentence.text for sentence in sentences("AB = 7.5 cm. Find BC in Fig. 1.")]
    ['AB = 7.5 cm.', 'Find BC in Fig. 1.']
    """
    start = 0
    for end in _END.finditer(text):
        if end.group().startswith(".") and _goes_on(text, end.start(), end.end()):
            continue
        yield from _sentence(text, start, end.end())
        start = end.end()
    yield from _sentence(text, start, len(text))


def _goes_on(text: str, stop: int, after: int) -> bool:
    """Whether a full stop belongs to an abbreviation, or a small word follows it."""
    following = text[after : after + 20].split(maxsplit=1)
    if not following:
        return False
    if text.startswith("..", stop) and following[0][0] in "+-−–=×*<>≤≥,":
        return True
    if _ABBREVIATION.search(text, max(0, stop - 8), stop):
        return True
    if following[0][0].isdigit() and _BEFORE_A_NUMBER.search(text, max(0, stop - 8), stop):
        return True
    return following[0][0].islower() and len(following[0]) > 1 and following[0][1].isalpha()


def _sentence(text: str, start: int, end: int) -> Iterator[Sentence]:
    words = text[start:end]
    if words.strip():
        yield Sentence(words.strip(), start + len(words) - len(words.lstrip()))


def is_mathematics(sentence: str) -> bool:
    """Whether a sentence names points, symbols or relations, so that leaving it out could change the answer."""
    return _MATHEMATICS.search(sentence) is not None
