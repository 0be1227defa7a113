"""What a part states already: its letters, and givens that its prose would only repeat."""

import re
from collections.abc import Iterable

from paperaudit.maths.notation import Commas, read_notation
from paperaudit.model.expression import AngleAt, AngleOf, AreaOf, LengthOf, Letter, PerimeterOf, leaves
from paperaudit.model.fact import Fact, Given, Holds
from paperaudit.model.paper import Part, Question

_LONE = re.compile(r"(?<![A-Za-z°′])([mghlstL])(?![A-Za-z′∠²³])")
LONGEST_PROSE = 20_000
_DECIMAL_COMMA = re.compile(r"(?<![0-9,.])(?:[0-9]+,(?:[0-9]{1,2}|[0-9]{4,})|0,[0-9]+)(?![0-9,])")
_DECIMAL_POINT = re.compile(r"(?<![0-9.])[0-9]+\.[0-9]+(?![0-9.])")
_UNIT_BEFORE = re.compile(r"(?:\d ?|\b(?:in|to|per|nearest) |/ ?)$")


def letters_used(question: Question, part: Part) -> frozenset[str]:
    """Letters that are units elsewhere and unknowns here: m in "m + 3", never m in "12 m" alone."""
    found: set[str] = set()
    for text in _texts(question, part):
        found.update(
            lone.group(1)
            for lone in _LONE.finditer(text)
            if not _UNIT_BEFORE.search(text, max(0, lone.start() - 9), lone.start())
        )
    return frozenset(found)


def commas_used(question: Question, part: Part) -> Commas:
    """Whether a comma is a decimal sign here, or parts thousands; "" where nothing or both speak for it."""
    texts = _texts(question, part)
    decimal = any(_DECIMAL_COMMA.search(text) for text in texts)
    point = any(_DECIMAL_POINT.search(text) for text in texts)
    return "" if decimal == point else "decimal" if decimal else "thousands"


def _texts(question: Question, part: Part) -> list[str]:
    """Every text of the part and of its question, in plain spelling."""
    lines = (
        question.text,
        part.text,
        part.ask,
        part.answer,
        *question.figure,
        *question.given,
        *part.figure,
        *part.given,
        *(option for _, option in part.options),
    )
    return [read_notation(line.text[:LONGEST_PROSE], units=False).text for line in lines if line is not None]


def repeats(given: Given, givens: Iterable[Given], stated: bool) -> bool:
    """Whether a given of the prose adds nothing, or (`stated`) sizes what a stated given sizes already."""
    known = [fact for other in givens for fact in other.facts]
    if given.facts and all(fact in known for fact in given.facts):
        return True
    if not stated:
        return False
    sized = {_sized(fact) for fact in known if isinstance(fact, Holds)}
    return any(isinstance(fact, Holds) and _sized(fact) in sized for fact in given.facts)


def _sized(fact: Fact) -> frozenset[object]:
    """The quantities and letters of a relation, in a spelling-free form."""
    assert isinstance(fact, Holds)
    found: set[object] = set()
    for side in (fact.relation.left, fact.relation.right):
        for leaf in leaves(side):
            match leaf:
                case AngleOf(arm, vertex, other, reflex):
                    found.add((frozenset((arm, other)), vertex, reflex))
                case LengthOf(start, end):
                    found.add(frozenset((start, end)))
                case AngleAt() | AreaOf() | PerimeterOf() | Letter():
                    found.add(leaf)
    return frozenset(found)
