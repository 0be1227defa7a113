"""What a part states already: its letters, and givens that its prose would only repeat."""

import re
from collections.abc import Iterable

from paperaudit.maths.notation import read_notation
from paperaudit.model.expression import AngleAt, AngleOf, AreaOf, LengthOf, Letter, PerimeterOf, leaves
from paperaudit.model.fact import Fact, Given, Holds
from paperaudit.model.paper import Part, Question

_LONE = re.compile(r"(?<![A-Za-z°′])([mghlstL])(?![A-Za-z′∠²³])")
_UNIT_BEFORE = re.compile(r"(?:\d ?|\b(?:in|to|per|nearest) |/ ?)$")


def letters_used(question: Question, part: Part) -> frozenset[str]:
    """Letters that are units elsewhere and unknowns here: m in "m + 3", never m in "12 m" alone."""
    lines = (question.text, part.text, part.ask, *question.figure, *question.given, *part.figure, *part.given)
    found: set[str] = set()
    for line in lines:
        if line is None:
            continue
        text = read_notation(line.text, units=False).text
        found.update(
            lone.group(1) for lone in _LONE.finditer(text)
            if not _UNIT_BEFORE.search(text, max(0, lone.start() - 9), lone.start())
        )
    return frozenset(found)


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
