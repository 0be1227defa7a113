"""A question's figure with the coordinates of one outcome: what is marked, how it stands, and its layout."""

import re
from collections.abc import Iterator, Mapping, Sequence

from paperaudit.geometry.coordinates.arrangement import Arrangement, Triangle
from paperaudit.geometry.coordinates.realise import Drawing
from paperaudit.geometry.draw.circles import circles_of, with_centres
from paperaudit.geometry.draw.elements import Layout
from paperaudit.geometry.draw.given_marks import marks_of
from paperaudit.geometry.draw.layout import Sheet, lay_out
from paperaudit.geometry.draw.orientation import enlarges, oriented
from paperaudit.geometry.draw.page import FRAME_WIDTH, Endless
from paperaudit.geometry.draw.proportions import well_proportioned
from paperaudit.geometry.draw.redrawn import well_spaced
from paperaudit.geometry.draw.structure import NotDrawable, structure, wanted
from paperaudit.geometry.draw.true_sizes import TrueSizes
from paperaudit.geometry.draw.unscaled import opened, unscaled
from paperaudit.geometry.figure.figure import HIDDEN, Figure, TangentAt, angle
from paperaudit.geometry.figure.plane import Spot
from paperaudit.model.derivation import Position
from paperaudit.model.expression import AngleAt, AngleOf, BearingOf, LengthOf, leaves
from paperaudit.model.fact import Drawn, Given, Holds
from paperaudit.model.reading import Reading

OWN_SCALE = "each figure to a scale of its own"
_EARLIER = re.compile(r"\banswer\s+to\b", re.IGNORECASE)


class ShownFigure:
    """The figure of a reading, at given positions (y up), with what is `asked` marked. Raises NotDrawable."""

    def __init__(self, reading: Reading, positions: Sequence[Position], asked: bool = True) -> None:
        self.reading = reading
        self.builder, figure = structure(reading)
        at = with_centres(figure, {name: (x, y) for name, x, y in positions if name in figure.points})
        if at and all(name.startswith(HIDDEN) for name in figure.points if name not in at):
            at = at if at.keys() == set(figure.points) else {name: (x, y) for name, x, y in drawn(reading)}
        if not _shows_something(figure) or at.keys() != set(figure.points):
            raise NotDrawable("not every point has a position")
        self.arrangement = Arrangement(figure, Drawing(at, {}))
        givens, sought = own_givens(reading), wanted(reading)
        self.marks = marks_of(self.builder, givens, self.arrangement, sought if asked else ())
        self.sizes = TrueSizes(self.builder, figure, givens, sought, at)

    def to_scale(self, keep_lengths: bool, triangle_sides: bool, note: str = "") -> Layout:
        """The layout true to scale. Lengths that the givens leave open are chosen, unless `keep_lengths`."""
        at = self.true_positions(keep_lengths)
        uneven = OWN_SCALE if not self._has_bearings() and enlarges(self.arrangement, at) else ""
        return self._laid_out(self.standing(at), triangle_sides, "; ".join(filter(None, (note, uneven))))

    def as_sketch(self, triangle_sides: bool, note: str) -> Layout:
        """A layout with the same order and turning, in which what is asked for is visibly off."""
        at = self.standing(self.true_positions(keep_lengths=False))
        return self._laid_out(unscaled(self.arrangement, at, self.marks, self.sizes), triangle_sides, note)

    def true_positions(self, keep_lengths: bool) -> dict[str, Spot]:
        """Positions true to scale, well proportioned where the givens leave lengths open."""
        if keep_lengths and self._asks_for_lengths():
            return dict(self.arrangement.at)
        return well_spaced(self.arrangement, self.sizes)

    def as_skeleton(self, triangle_sides: bool, note: str) -> Layout:
        """The layout of positions that stand for no true sizes, opened up as far as their order allows."""
        at = self.standing(well_proportioned(self.arrangement))
        return self._laid_out(opened(self.arrangement, at, self.marks), triangle_sides, note)

    def standing(self, at: Mapping[str, Spot]) -> dict[str, Spot]:
        """The points as they stand on the page; where bearings are measured, north is at its top."""
        return dict(at) if self._has_bearings() else oriented(self.arrangement, at)

    def _has_bearings(self) -> bool:
        sides = [
            side
            for given in self.reading.givens
            for fact in given.facts
            if isinstance(fact, Holds)
            for side in (fact.relation.left, fact.relation.right)
        ]
        return any(isinstance(leaf, BearingOf) for one in (*sides, *wanted(self.reading)) for leaf in leaves(one))

    def _laid_out(self, at: Mapping[str, Spot], triangle_sides: bool, note: str) -> Layout:
        return lay_out(self.sheet(triangle_sides, note), at)

    def sheet(self, triangle_sides: bool = False, note: str = "", least_width: float = FRAME_WIDTH) -> Sheet:
        """What goes on the page, wherever its points will be."""
        triangle = self._asked_triangle() if triangle_sides else None
        return Sheet(self.arrangement, self.marks, self._endless(), triangle, note, least_width)

    def _asks_for_lengths(self) -> bool:
        return any(isinstance(leaf, LengthOf) for one in wanted(self.reading) for leaf in leaves(one))

    def asked_angles(self) -> list[AngleOf]:
        """The angles whose sizes are asked for, by their three points."""
        found = []
        for one in wanted(self.reading):
            for leaf in leaves(one):
                if isinstance(leaf, AngleOf | AngleAt):
                    size = self.builder.resolved(leaf)
                    assert isinstance(size, AngleOf)
                    found.append(angle(size.arm, size.vertex, size.other, size.reflex))
        return found

    def _asked_triangle(self) -> tuple[str, str, str] | None:
        """The triangle that the question is about: of the angle asked for, else at its vertex, named ones first."""
        named = [
            Triangle((a, b, c))
            for shape, _ in self.arrangement.figure.shapes
            if len(shape.points) == 3
            for a, b, c in (shape.points,)
        ]
        triangles = [one.corners for one in (*named, *self.arrangement.triangles)]
        for one in self.asked_angles():
            spanned = [corners for corners in triangles if {one.arm, one.vertex, one.other} == set(corners)]
            touched = [corners for corners in triangles if one.vertex in corners]
            if spanned or touched:
                return (spanned + touched)[0]
        return triangles[0] if triangles else None

    def _endless(self) -> Endless:
        return Endless(frozenset((*self._open_ends(), *self._touching_ends())))

    def _touching_ends(self) -> Iterator[tuple[int, str]]:
        """Tangents run on beyond the point where they touch."""
        for condition in self.arrangement.figure.conditions:
            if isinstance(condition, TangentAt):
                number = self.arrangement.figure.line_of(*condition.path)
                if condition.at in (self.arrangement.lines[number][0], self.arrangement.lines[number][-1]):
                    yield number, condition.at

    def _open_ends(self) -> Iterator[tuple[int, str]]:
        for given in own_givens(self.reading):
            for fact in given.facts:
                if isinstance(fact, Drawn) and fact.kind != "segment":
                    number = self.arrangement.figure.line_of(*fact.path)
                    line = self.arrangement.lines[number]
                    forwards = line.index(fact.path[0]) < line.index(fact.path[1])
                    ends = (line[-1] if forwards else line[0], line[0] if forwards else line[-1])
                    yield from ((number, end) for end in (ends if fact.kind == "line" else ends[:1]))


def own_givens(reading: Reading) -> tuple[Given, ...]:
    """The givens of the paper, without what earlier parts were found to be."""
    return tuple(given for given in reading.givens if not _EARLIER.search(given.text))


def skeleton(reading: Reading) -> tuple[Position, ...]:
    """Positions that keep order and incidence where no figure meets the givens; none where these have no skeleton."""
    from paperaudit.geometry.linear.refute import skeletons

    _, figure = structure(reading)
    found = skeletons(figure) if figure.lines else []
    return tuple((name, x, y) for name, (x, y) in found[0].at.items()) if found else ()


def drawn(reading: Reading) -> tuple[Position, ...]:
    """Positions that meet the givens of a part that was not derived; none where no drawing was found."""
    from paperaudit.geometry.coordinates.drawn import FIRST_SEEDS
    from paperaudit.geometry.coordinates.realise import realise

    _, figure = structure(reading)
    found = realise(figure, FIRST_SEEDS) if _shows_something(figure) else []
    return tuple((name, x, y) for name, (x, y) in found[0].at.items()) if found else ()


def _shows_something(figure: Figure) -> bool:
    """Whether there is a line or a circle to be drawn."""
    return bool(figure.lines or circles_of(figure))
