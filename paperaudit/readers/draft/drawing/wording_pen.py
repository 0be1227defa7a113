"""What all writers of a figure's statements share: letters for its points, names for its angles, what is written."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.angles import AngleMark
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFact
from paperaudit.readers.draft.drawing.spots import Ray, Skeleton, Spot
from paperaudit.readers.draft.page import Point, box_around

SPARE_LETTERS = "ZYXWVUTSRQNMLKJ"
"""Letters for points that have none, in this order."""


@dataclass
class Written:
    """The statements of one figure."""

    figure: list[DrawnFact] = field(default_factory=list)
    given: list[DrawnFact] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)


@dataclass
class WordingPen:
    """Writes statements; points that have no letter get one where a mark needs it.

    That is a doubt where other points have letters: one of the printed ones may have been missed.
    """

    skeleton: Skeleton
    print_size: float
    written: Written = field(default_factory=Written)

    def name(self, spot: Spot) -> str:
        """The letter of a spot, one of ours where it has none; "" where the alphabet is used up."""
        if not spot.name:
            lettered = any(other.name and not other.given_here for other in self.skeleton.spots)
            used = {other.name for other in self.skeleton.spots}
            spot.name = next((letter for letter in SPARE_LETTERS if letter not in used), "")
            if not spot.name:
                return ""
            spot.given_here = True
            if lettered:
                self.written.doubts.append(f"a point without a letter is called {spot.name} here")
        return spot.name

    def on_arm(self, vertex: Spot, ray: Ray) -> str:
        """A letter on an arm of an angle: the nearest to the vertex, else one of ours for its end."""
        along = self.skeleton.along(vertex, ray)
        named = next((spot.name for spot in along if spot.name), "")
        return named or (self.name(along[-1]) if along else "")

    def angle(self, mark: AngleMark) -> str:
        """The name of an angle, "" where its points have none."""
        arms = self.on_arm(mark.vertex, mark.first), self.on_arm(mark.vertex, mark.second)
        vertex = self.name(mark.vertex)
        if not (vertex and all(arms)):
            return ""
        first, second = sorted(arms)
        return f"{'reflex ' if mark.sweep > 181 else ''}∠{first}{vertex}{second}"

    def only_writable(self) -> None:
        """Moves statements with names that the statement language has not (P₁) to the doubts."""
        for kind in (self.written.figure, self.written.given):
            for fact in [fact for fact in kind if re.search("(?<!\u0302)[₀-₉]", fact.text)]:
                kind.remove(fact)
                self.written.doubts.append(f"“{fact.text}” has a letter with an index, which no statement can name")

    def given(self, text: str, boxes: Iterable[Box]) -> None:
        """Adds a statement, once."""
        fact = DrawnFact(text, box_around(list(boxes)))
        if all(fact.text != other.text for other in self.written.given):
            self.written.given.append(fact)


def square_round(at: Point, reach: float) -> Box:
    """The box round a point."""
    return at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach


def box_of(mark: AngleMark) -> Box:
    """The box of a marked angle, from its vertex to the middle of its arc."""
    return box_around([square_round(mark.vertex.at, 1.0), square_round(mark.middle, 1.0)])
