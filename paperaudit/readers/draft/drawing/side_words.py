"""Writes what the marked sides of a drawing state: lengths, equal sides, parallels, sizes of arcs."""

from collections.abc import Sequence

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.angles import AngleMark
from paperaudit.readers.draft.drawing.arc_sizes import ArcLabel
from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.plane import apart, slant, towards
from paperaudit.readers.draft.drawing.sides import ParallelMark, SideMarks, Span
from paperaudit.readers.draft.drawing.sizes import Sizes
from paperaudit.readers.draft.drawing.wording_pen import WordingPen, square_round

ASKEW = 12.0
"""Degrees by which lines marked as parallel may differ as drawn."""


class SideWords(WordingPen):
    """Writes the statements about sides and arcs."""

    def write(self, angles: Sequence[AngleMark], sides: SideMarks, sizes: Sizes, arcs: Sequence[ArcLabel]) -> None:
        """Lengths, arcs, equal sides, parallels."""
        self._lengths(angles, sizes, sides.arrowed)
        for arc in arcs:
            name = f"arc {''.join(arc.points)}"
            long = arc.run.kind is LabelKind.LENGTH
            self.given(f"{'length of ' if long else ''}{name} = {arc.run.text}", [arc.run.box])
        self._equal_sides(sides)
        self._parallels(sides.parallel)

    def _side(self, span: Span) -> str:
        start, end = self.name(span.start), self.name(span.end)
        return "".join(sorted((start, end))) if start and end else ""

    def _lengths(self, angles: Sequence[AngleMark], sizes: Sizes, arrowed: frozenset[int]) -> None:
        feet = {id(mark.vertex) for mark in angles if mark.right}
        for run, span in sizes.sides:
            name = self._height(span, feet) or self._radius(span) or self._side(span)
            if name:
                self.given(f"{name} = {run.text}", [run.box])
            if span.line in arrowed and len(run.text) == 1 and run.text.isalpha():
                self.written.doubts.append(f"{run.text} beside an arrow may be a vector and no length")

    def _height(self, span: Span, feet: set[int]) -> str:
        """What a perpendicular is called whose foot has no letter ("distance from A to BC"), else nothing."""
        for top, foot in ((span.start, span.end), (span.end, span.start)):
            if foot.name or not top.name or id(foot) not in feet:
                continue
            for number in foot.lines:
                named = [spot.name for spot in self.skeleton.on_line(number) if spot.name]
                if number != span.line and len(named) >= 2:
                    return f"distance from {top.name} to {''.join(sorted((named[0], named[-1])))}"
        return ""

    def _radius(self, span: Span) -> str:
        """What a line from a centre to a point of its circle without a letter is called, else nothing."""
        for centre, end in ((span.start, span.end), (span.end, span.start)):
            rings = set(centre.centre_of) & set(end.circles)
            if centre.name and not end.name and rings:
                across = [spot for spot in self.skeleton.on_line(span.line) if rings & set(spot.circles)]
                if len(across) > 1:
                    self.written.doubts.append(f"whether a size is the radius of circle {centre.name} or its diameter")
                return f"radius of circle {centre.name}"
        return ""

    def _equal_sides(self, sides: SideMarks) -> None:
        classes: dict[int, list[tuple[str, Box]]] = {}
        for mark in sides.equal:
            name = self._side(mark.span)
            if name:
                classes.setdefault(mark.count, []).append((name, square_round(mark.at, self.print_size / 2)))
        for count, marks in sorted(classes.items()):
            if len(marks) == 1:
                self.written.doubts.append(f"{marks[0][0]} has {count} tick{'s' * (count > 1)} and no other side has")
            for name, box in marks[1:]:
                self.given(f"{marks[0][0]} = {name}", [marks[0][1], box])
        self.written.doubts += sides.doubts

    def _parallels(self, marks: Sequence[ParallelMark]) -> None:
        classes: dict[int, list[ParallelMark]] = {}
        for mark in marks:
            classes.setdefault(mark.count, []).append(mark)
        for count, group in sorted(classes.items()):
            group = _one_a_line(group)
            names = [self._directed(mark, group[0].direction) for mark in group]
            if len(group) == 1:
                self.written.doubts.append(f"{names[0]} has {count} arrow{'s' * (count > 1)} and no other line has")
            for mark, name in zip(group[1:], names[1:], strict=True):
                if not (name and names[0]):
                    continue
                lines = [self.skeleton.lines[one.line].direction for one in (group[0], mark)]
                if slant(*lines) > ASKEW:
                    text = f"{names[0]} and {name} have the arrows of parallels and are drawn askew"
                    self.written.doubts.append(text)
                    continue
                boxes = [square_round(one.at, self.print_size / 2) for one in (group[0], mark)]
                self.given(f"{names[0]} ∥ {name}", boxes)

    def _directed(self, mark: ParallelMark, direction: float) -> str:
        """A line by its outermost letters in the direction of another one's arrow."""
        spots = self.skeleton.on_line(mark.line)
        if sum(bool(spot.name) for spot in spots) < 2 and len(spots) > 1:
            for spot in (spots[0], spots[-1]):
                self.name(spot)
        named = [spot for spot in spots if spot.name]
        if len(named) < 2:
            return ""
        first, last = named[0], named[-1]
        if apart(towards(first.at, last.at), direction) > 90:
            first, last = last, first
        return first.name + last.name


def _one_a_line(marks: Sequence[ParallelMark]) -> list[ParallelMark]:
    """The first mark of each line: arrows on both halves of one line say it twice."""
    found: list[ParallelMark] = []
    for mark in marks:
        if all(mark.line != other.line for other in found):
            found.append(mark)
    return found
