"""Where a tangent touches whose point of contact has no letter, from all that a question says."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from paperaudit.model.expression import AngleOf, LengthOf, leaves
from paperaudit.model.fact import Circle, Collinear, Drawn, Fact, Holds, Path, Shape, Tangent

SOMEWHERE, AT_AN_END = "somewhere", "at an end"
"""Stand for the point of contact of a line or a side that touches a circle, of a tangent PA."""
NOT_SAID = "it is not said where the tangent touches the circle, as in “at T”"
_LETTERS = "TMNKLHQRSVWXYZ"


@dataclass(frozen=True, slots=True)
class Contact:
    """The point where a tangent touches; `is_new` says that the letter is ours. `between` has it between the ends."""

    at: str
    is_new: bool = False
    between: bool = False

    def facts(self, tangent: Tangent) -> Iterator[Fact]:
        """What the question says of the tangent, with its point of contact named."""
        yield Circle(tangent.centre, (self.at,))
        if self.is_new:
            start, end = tangent.path
            yield Collinear((start, self.at, end), ordered=self.between)
        yield Tangent(tangent.path, self.at, tangent.centre)


def is_open(fact: Fact) -> bool:
    """Whether a fact is a tangent of which it is not said where it touches."""
    return isinstance(fact, Tangent) and fact.at in (SOMEWHERE, AT_AN_END)


def contact_of(tangent: Tangent, facts: Sequence[Fact], on: Mapping[str, set[str]], used: str) -> Contact | None:
    """Where a tangent touches; None where the question leaves that open.

    An end that lies on the circle is the point of contact. A chord of another circle and a side of a
    polygon touch between their ends. A tangent PA touches where the question has no length to, if it
    has one from the centre to the other end alone; a line touches anywhere, if both ends are known.
    """
    ends = tangent.path
    there = [end for end in ends if end in on.get(tangent.centre, ())]
    if len(there) == 1:
        return Contact(there[0])
    new = next((letter for letter in _LETTERS if letter not in used), "")
    if there or not new:
        return None
    if any(set(ends) <= points for centre, points in on.items() if centre != tangent.centre):
        return Contact(new, True, True)
    reached = [end for end in ends if {tangent.centre, end} in _reaches(facts)]
    if tangent.at == SOMEWHERE and _is_side(ends, facts):
        return Contact(new, True, True)
    if len(reached) == 1:
        return Contact(ends[0] if ends[1] == reached[0] else ends[1])
    return Contact(new, True) if tangent.at == SOMEWHERE and len(reached) == 2 else None


def _reaches(facts: Sequence[Fact]) -> list[set[str]]:
    """The pairs of points between which a length or a line is named."""
    found = [set(fact.path) for fact in facts if isinstance(fact, Drawn)]
    for fact in facts:
        if isinstance(fact, Holds):
            for size in (*leaves(fact.relation.left), *leaves(fact.relation.right)):
                if isinstance(size, LengthOf):
                    found.append({size.start, size.end})
                elif isinstance(size, AngleOf):
                    found += [{size.vertex, size.arm}, {size.vertex, size.other}]
    return found


def _is_side(path: Path, facts: Sequence[Fact]) -> bool:
    """Whether a path is a side of a polygon that the question names."""
    polygons = [fact.points for fact in facts if isinstance(fact, Shape)]
    sides = [{one, other} for points in polygons for one, other in zip(points, points[1:] + points[:1], strict=True)]
    return set(path) in sides
