"""The sizes that a figure shows beside its angles and sides: arcs, radii, heights, bearings, areas and perimeters."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TypeAlias

from paperaudit.errors import NoValue
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.coordinates.measure import centre_of
from paperaudit.geometry.draw.marks import (
    ArcMark,
    BearingMark,
    HeightMark,
    Outline,
    RadiusMark,
    SideMark,
    Surface,
    classed,
)
from paperaudit.geometry.draw.true_sizes import dimension_of
from paperaudit.geometry.figure.figure import arc, length
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    ArcLengthOf,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    Expression,
    LengthOf,
    Measured,
    Negative,
    Number,
    PerimeterOf,
    Product,
    SectorOf,
    SegmentOf,
    Sum,
)
from paperaudit.model.quantity import centre_of_circle

QUESTION_MARK = "?"
Beside: TypeAlias = ArcOf | ArcLengthOf | CircleSize | DistanceOf | BearingOf
"""What has a label of its own; areas and perimeters have none."""
_BESIDE = (ArcOf, ArcLengthOf, CircleSize, DistanceOf, BearingOf)
SHOWN = (*_BESIDE, AreaOf, PerimeterOf, SectorOf, SegmentOf)
"""What `SizeMarks` looks after."""


@dataclass
class SizeMarks:
    """Collects labels and questions; what a drawn segment shows (a radius, a height) becomes a mark of that side."""

    arrangement: Arrangement
    labels: dict[Beside, list[str]] = field(default_factory=dict)
    asked: list[Beside] = field(default_factory=list)
    equal: list[tuple[ArcOf, ArcOf]] = field(default_factory=list)
    shaded: list[Surface] = field(default_factory=list)
    holes: list[Surface] = field(default_factory=list)
    heavy: list[Outline] = field(default_factory=list)

    def take(self, size: Expression, value: Expression, is_plain: bool) -> None:
        """A relation of a size to a value in numbers and letters, or to another arc."""
        known = self._settled(size)
        if known is None:
            return
        if isinstance(known, ArcOf) and isinstance(value, ArcOf):
            other = self._settled(value)
            if isinstance(other, ArcOf):
                self.equal.append((known, other))
        elif is_plain:
            self.labels.setdefault(known, []).append(_label(known, value))

    def ask(self, size: Expression) -> None:
        """A size that is asked for."""
        match size:
            case Sum(terms) if all(dimension_of(_plain(term)) == 2 for term in terms):
                self._compound(terms)
            case AreaOf():
                self.shaded.append(size)
            case PerimeterOf():
                self.heavy.append(size)
            case SectorOf(kind, bounded) | SegmentOf(kind, bounded):
                known = self._settled(bounded)
                if isinstance(known, ArcOf):
                    meant = SectorOf(kind, known) if isinstance(size, SectorOf) else SegmentOf(kind, known)
                    self.shaded += [meant] if kind == "area" else []
                    self.heavy += [meant] if kind == "perimeter" else []
            case CircleSize("area" | "circumference" as kind, centre):
                if centre := centre or self._only_centre():
                    self.shaded += [CircleSize(kind, centre)] if kind == "area" else []
                    self.heavy += [CircleSize(kind, centre)] if kind == "circumference" else []
            case _:
                known = self._settled(size)
                self.asked += [known] if known is not None else []

    def _compound(self, terms: tuple[Expression, ...]) -> None:
        """Areas that are added up, and those that are taken away from them."""
        for term in terms:
            before = len(self.shaded)
            self.ask(_plain(term))
            if isinstance(term, Negative):
                self.holes += self.shaded[before:]
                del self.shaded[before:]

    def _settled(self, size: Expression) -> Beside | None:
        """A size in the figure's own terms; None for what the figure does not show."""
        match size:
            case ArcOf():
                try:
                    centre = centre_of(size, self.arrangement.circles)
                except NoValue:
                    return None
                return arc(size.start, size.end, centre, size.through, size.major)
            case ArcLengthOf(bounded):
                known = self._settled(bounded)
                return ArcLengthOf(known) if isinstance(known, ArcOf) else None
            case CircleSize("radius" | "diameter" as kind, centre):
                centre = centre or self._only_centre()
                return CircleSize(kind, centre) if centre else None
            case DistanceOf(point, (start, end)):
                first, second = sorted((start, end))
                return DistanceOf(point, (first, second))
            case BearingOf():
                return size
        return None

    def _only_centre(self) -> str:
        centres = list(self.arrangement.circles)
        return centres[0] if len(centres) == 1 else ""

    def _shown(self) -> Iterator[tuple[Beside, str, bool]]:
        for size in dict.fromkeys([*self.labels, *self.asked]):
            label = " = ".join(dict.fromkeys(self.labels.get(size, ())))
            yield size, label or QUESTION_MARK, size in self.asked and not label

    def arcs(self) -> Iterator[ArcMark]:
        """The arcs with labels, and those that are said to be equal."""
        classes = classed(self.equal)
        shown: set[ArcOf] = set()
        for size, label, is_asked in self._shown():
            known = size.arc if isinstance(size, ArcLengthOf) else size
            if isinstance(known, ArcOf):
                yield ArcMark(known, label, 0 if known in shown else classes.get(known, 0), is_asked, known in shown)
                shown.add(known)
        for known, number in classes.items():
            if known not in shown:
                yield ArcMark(known, strokes=number)

    def sides(self) -> Iterator[SideMark]:
        """The radii, diameters and heights that a drawn segment shows."""
        for size, label, is_asked in self._shown():
            side = self._segment(size)
            if side is not None:
                yield SideMark(side, label, is_asked=is_asked)

    def radii(self) -> Iterator[RadiusMark]:
        """The radii and diameters that no drawn segment shows."""
        for size, label, is_asked in self._shown():
            if isinstance(size, CircleSize) and self._segment(size) is None:
                kind = "radius" if size.kind == "radius" else "diameter"
                yield RadiusMark(kind, size.centre, label, is_asked)  # type: ignore[arg-type]

    def heights(self) -> Iterator[HeightMark]:
        """The distances from points to lines to which no perpendicular is drawn."""
        for size, label, is_asked in self._shown():
            if isinstance(size, DistanceOf) and self._segment(size) is None:
                yield HeightMark(size.point, size.path, label, is_asked)

    def bearings(self) -> Iterator[BearingMark]:
        """The bearings."""
        for size, label, is_asked in self._shown():
            if isinstance(size, BearingOf):
                yield BearingMark(size.start, size.end, label, is_asked)

    def _segment(self, size: Beside) -> LengthOf | None:
        """The drawn segment that shows a radius, a diameter or a height."""
        figure = self.arrangement
        match size:
            case CircleSize("radius", centre):
                middle = centre_of_circle(centre)
                drawn = [point for point in figure.circles.get(centre, ()) if figure.joined(middle, point)]
                free = sorted(drawn, key=lambda point: self._between(middle, point))
                return length(middle, free[0]) if free and self._between(middle, free[0]) == 0 else None
            case CircleSize("diameter", centre):
                on = figure.circles.get(centre, ())
                through = [line for line in figure.lines if centre_of_circle(centre) in line]
                ends = [[point for point in line if point in on] for line in through]
                return next((length(*pair) for pair in ends if len(pair) == 2), None)
            case DistanceOf(point, (start, end)):
                feet = [
                    foot
                    for line in figure.lines
                    if start in line and end in line
                    for foot in line
                    if figure.joined(point, foot) and self._is_foot(point, foot, start, end)
                ]
                return length(point, feet[0]) if feet else None
        return None

    def _between(self, start: str, end: str) -> int:
        """How many points divide a drawn segment."""
        line = self.arrangement.lines[self.arrangement.figure.line_of(start, end)]
        return abs(line.index(start) - line.index(end)) - 1

    def _is_foot(self, point: str, foot: str, start: str, end: str) -> bool:
        at = self.arrangement.at
        (x, y), (p, q), (u, v), (r, s) = at[point], at[foot], at[start], at[end]
        return abs((x - p) * (r - u) + (y - q) * (s - v)) < 1e-6 * ((r - u) ** 2 + (s - v) ** 2)


def diameter_or(size: Expression, arrangement: Arrangement) -> Expression:
    """The diameter, where an expression is twice a radius, which is how the paper's words come; else itself."""
    match size:
        case Product((Number(value), LengthOf(start, end))) if value == 2:
            for centre, points in arrangement.circles.items():
                if centre_of_circle(centre) in (start, end) and {start, end} & set(points):
                    return CircleSize("diameter", centre)
    return size


def _plain(term: Expression) -> Expression:
    """A term without its minus sign."""
    return term.operand if isinstance(term, Negative) else term


def _label(size: Beside, value: Expression) -> str:
    """A value as it stands in the figure; a bearing in whole degrees has three figures."""
    if isinstance(size, BearingOf):
        amount = value.amount if isinstance(value, Measured) else value
        if isinstance(amount, Number) and amount.value.denominator == 1:
            return f"{amount.value.numerator:03}°"
    return write(value)
