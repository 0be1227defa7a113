"""Takes the value that a paper has π stand for out of its words: take π = 3.14, using 22/7 for π."""

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.model.expression import Number
from paperaudit.model.paper import Line, Part, Question

LEAST, MOST = Fraction(3), Fraction(16, 5)
"""What π is taken for at school lies between these (3, 3.1, 3.142, 22/7); anything else is left in the words."""

_NUMBER = r"(?: \d{1,3} / \d{1,3} | 3 \s+ 1/7 | \d (?: [.,] \d{1,8} )? )"
_TAKEN = re.compile(
    rf"""[,;(]? \s* (?: and \s+ )?
    (?: (?: take | taking | use | using | let | assume | assuming | where | with ) \s+ )?
    (?: the \s+ (?: value | approximation ) \s+ (?: of \s+ )? )?
    (?: (?: π | \b pi ) \s* (?: = | ≈ | as \b | to \s+ be \b | is \b | equal \s+ to \b ) \s* (?P<behind> {_NUMBER} )
      | (?<! [\w.,/] ) (?P<before> {_NUMBER} ) \s+ (?: for | as \s+ the \s+ value \s+ of ) \s+ (?: π | pi \b ) )
    (?! [\w/^²³√(] | [.,]\d | \s* [-+−–×*÷/·] ) (?: \s+ throughout )? \)?""",
    re.VERBOSE | re.IGNORECASE,
)
_LEFT = re.compile(r"[\s.,;]*")


@dataclass(frozen=True, slots=True)
class WithPi:
    """A question and its part without what they say of π, and the value that it is to be taken for."""

    question: Question
    part: Part
    value: Number | None = None


def pi_taken(question: Question, part: Part) -> WithPi:
    """The question and the part with the words about the value of π blanked out, so that places in the text stay.

    What the part says comes before what its question says; two values on one level are left as they stand.
    """
    shared = _values((*question.figure, *question.given, question.text))
    own = _values((*part.figure, *part.given, part.text, part.ask))
    values = own or shared
    if len(values) != 1:
        return WithPi(question, part)
    question = replace(
        question, figure=_without(question.figure), given=_without(question.given), text=_blanked(question.text)
    )
    figure, given = _without(part.figure), _without(part.given)
    part = replace(part, figure=figure, given=given, text=_blanked(part.text), ask=_blanked(part.ask))
    return WithPi(question, part, values[0])


def _values(lines: tuple[Line | None, ...]) -> list[Number]:
    """The different values that some lines have π stand for."""
    found: dict[Fraction, Number] = {}
    for line in lines:
        for said in _TAKEN.finditer(line.text) if line is not None else ():
            value = _value(said)
            if value is not None:
                found.setdefault(value.value, value)
    return list(found.values())


def _value(said: re.Match[str]) -> Number | None:
    words = (said["behind"] or said["before"]).replace(",", ".")
    whole, _, share = words.rpartition(" ") if "/" in words and " " in words else ("0", "", words)
    above, _, below = share.partition("/")
    if below and not int(below):
        return None
    value = int(whole) + Fraction(above) / int(below or 1)
    if not LEAST <= value <= MOST:
        return None
    return whole_or_fraction(value) if below else as_decimal(value, len(words.partition(".")[2]))


def _without(lines: tuple[Line, ...]) -> tuple[Line, ...]:
    """Lines of a list without the ones that speak of nothing but π."""
    blanked = (_blanked(line) for line in lines)
    return tuple(line for line in blanked if line is not None)


def _blanked(line: Line | None) -> Line | None:
    """A line with its words about π as spaces; None where nothing else is in it."""
    if line is None or not _TAKEN.search(line.text):
        return line
    text = _TAKEN.sub(lambda said: " " * len(said[0]) if _value(said) is not None else said[0], line.text)
    return None if _LEFT.fullmatch(text) else replace(line, text=text)
