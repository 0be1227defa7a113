"""Writes what a drawing shows as statements of the statement language."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.angles import AngleMark
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFact
from paperaudit.readers.draft.drawing.lettering import LabelKind, Run
from paperaudit.readers.draft.drawing.plane import apart, off_line, share_of, slant, towards
from paperaudit.readers.draft.drawing.rounds import Bow
from paperaudit.readers.draft.drawing.sides import ParallelMark, SideMarks, Span
from paperaudit.readers.draft.drawing.sizes import Sizes
from paperaudit.readers.draft.drawing.spots import Ray, Skeleton, Spot
from paperaudit.readers.draft.page import Point, box_around

BEYOND = 0.9
"""Sizes of print by which a line goes on beyond its last letter, at least, to be called a ray."""
ASKEW = 12.0
"""Degrees by which lines marked as parallel may differ as drawn."""
CERTAIN = 0.5
"""Points between a line and a circle that it touches, at most, for the contact to be certain."""
SPARE_LETTERS = "ZYXWVUTSRQNMLKJ"


@dataclass
class Written:
    """The statements of one figure."""

    figure: list[DrawnFact] = field(default_factory=list)
    given: list[DrawnFact] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)


class Writer:
    """Writes the statements of one figure; points that have no letter get one where a mark needs it."""

    def __init__(self, skeleton: Skeleton, print_size: float) -> None:
        self.skeleton = skeleton
        self.print_size = print_size
        self.written = Written()

    def write(self, angles: Sequence[AngleMark], sides: SideMarks, sizes: Sizes) -> Written:
        """All statements: what marks and labels say first, since it may need points to be named."""
        self._sizes_of_angles(angles, sizes)
        self._lengths(sizes)
        self._equal_sides(sides)
        self._parallels(sides.parallel)
        self._lines()
        self._circles()
        return self.written

    # Names

    def _name(self, spot: Spot) -> str:
        if not spot.name:
            used = {other.name for other in self.skeleton.spots}
            spot.name = next((letter for letter in SPARE_LETTERS if letter not in used), "")
            if not spot.name:
                return ""
            spot.given_here = True
            self.written.doubts.append(f"a point without a letter is called {spot.name} here")
        return spot.name

    def _on_arm(self, vertex: Spot, ray: Ray) -> str:
        """A letter on an arm of an angle: the nearest to the vertex, else one of ours for its end."""
        along = self.skeleton.along(vertex, ray)
        named = next((spot.name for spot in along if spot.name), "")
        return named or (self._name(along[-1]) if along else "")

    def _angle(self, mark: AngleMark) -> str:
        arms = self._on_arm(mark.vertex, mark.first), self._on_arm(mark.vertex, mark.second)
        vertex = self._name(mark.vertex)
        if not (vertex and all(arms)):
            return ""
        first, second = sorted(arms)
        return f"{'reflex ' if mark.sweep > 181 else ''}∠{first}{vertex}{second}"

    def _given(self, text: str, boxes: Iterable[Box]) -> None:
        fact = DrawnFact(text, box_around(list(boxes)))
        if all(fact.text != other.text for other in self.written.given):
            self.written.given.append(fact)

    # Angles

    def _sizes_of_angles(self, angles: Sequence[AngleMark], sizes: Sizes) -> None:
        for mark in angles:
            if mark.right:
                name = self._angle(mark)
                if name:
                    self._given(f"{name} = 90°", [_square(mark)])
        for numbered in sizes.numbered:
            mark = AngleMark(numbered.vertex, numbered.first, numbered.second, [0.0])
            name = self._angle(mark)
            if name:
                self._given(f"{numbered.vertex.name}̂{_index(numbered.number)} = {name}", [numbered.run.box])
        for run, mark in [*sizes.angles, *sizes.corners]:
            name = self._angle(mark)
            if name:
                self._given(f"{name} = {self._in_degrees(run)}", [run.box, _square(mark)])
        self._equal_angles(angles, sizes)

    def _in_degrees(self, run: Run) -> str:
        if run.kind is LabelKind.SIZE and run.text.replace(",", "").replace(".", "").isdigit():
            self.written.doubts.append(f"the label {run.text} at an angle has no degree sign")
            return f"{run.text}°"
        return run.text

    def _equal_angles(self, angles: Sequence[AngleMark], sizes: Sizes) -> None:
        classes: dict[tuple[int, int], list[AngleMark]] = {}
        for mark in angles:
            if not mark.right and (len(mark.radii) > 1 or mark.strokes):
                classes.setdefault((len(mark.radii), mark.strokes), []).append(mark)
        for kind, marks in classes.items():
            if len(marks) == 1 and not any(mark is marks[0] for _, mark in sizes.angles):
                arcs = f"{kind[0]} arcs" if kind[0] > 1 else "a stroke across its arc"
                self.written.doubts.append(f"{self._angle(marks[0])} has {arcs} and no other angle has")
            for other in marks[1:]:
                one, two = self._angle(marks[0]), self._angle(other)
                if one and two:
                    self._given(f"{one} = {two}", [_square(marks[0]), _square(other)])
        plain = [mark for mark in angles if not mark.right and len(mark.radii) == 1 and not mark.strokes]
        bare = [mark for mark in plain if not any(mark is other for _, other in sizes.angles)]
        numbered = {id(one.vertex) for one in sizes.numbered}
        bare = [mark for mark in bare if id(mark.vertex) not in numbered]
        if len(bare) > 1:
            names = " and ".join(filter(None, (self._angle(mark) for mark in bare)))
            self.written.doubts.append(f"whether the arcs without a label mean that {names} are equal cannot be told")

    # Sides

    def _side(self, span: Span) -> str:
        start, end = self._name(span.start), self._name(span.end)
        return "".join(sorted((start, end))) if start and end else ""

    def _lengths(self, sizes: Sizes) -> None:
        for run, span in sizes.sides:
            name = self._side(span)
            if name:
                self._given(f"{name} = {run.text}", [run.box])

    def _equal_sides(self, sides: SideMarks) -> None:
        classes: dict[int, list[tuple[str, Box]]] = {}
        for mark in sides.equal:
            name = self._side(mark.span)
            if name:
                classes.setdefault(mark.count, []).append((name, _round(mark.at, self.print_size / 2)))
        for count, marks in sorted(classes.items()):
            if len(marks) == 1:
                self.written.doubts.append(f"{marks[0][0]} has {count} tick{'s' * (count > 1)} and no other side has")
            for name, box in marks[1:]:
                self._given(f"{marks[0][0]} = {name}", [marks[0][1], box])
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
                    self.written.doubts.append(
                        f"{names[0]} and {name} have the arrows of parallels and are drawn askew"
                    )
                boxes = [_round(one.at, self.print_size / 2) for one in (group[0], mark)]
                self._given(f"{names[0]} ∥ {name}", boxes)

    def _directed(self, mark: ParallelMark, direction: float) -> str:
        """A line by its outermost letters in the direction of another one's arrow."""
        spots = self.skeleton.on_line(mark.line)
        if sum(bool(spot.name) for spot in spots) < 2 and len(spots) > 1:
            for spot in (spots[0], spots[-1]):
                self._name(spot)
        named = [spot for spot in spots if spot.name]
        if len(named) < 2:
            return ""
        first, last = named[0], named[-1]
        if apart(towards(first.at, last.at), direction) > 90:
            first, last = last, first
        return first.name + last.name

    # What is drawn

    def _lines(self) -> None:
        sides: list[str] = []
        boxes: list[Box] = []
        for number, line in enumerate(self.skeleton.lines):
            spots = self.skeleton.on_line(number)
            named = [spot for spot in spots if spot.name]
            if len(named) < 2:
                continue
            names = [spot.name for spot in named]
            box = box_around([(*spot.at, *spot.at) for spot in named])
            box = box_around([_round((box[0], box[1]), 1), _round((box[2], box[3]), 1)])
            if len(named) > 2:
                self.written.figure.append(DrawnFact("-".join(names), box))
                continue
            beyond = [math.dist(line.start, named[0].at), math.dist(line.end, named[-1].at)]
            goes_on = [reach > BEYOND * self.print_size for reach in beyond]
            if all(goes_on):
                self.written.figure.append(DrawnFact(f"line {''.join(names)}", box))
            elif any(goes_on):
                ordered = names if goes_on[1] else names[::-1]
                self.written.figure.append(DrawnFact(f"ray {''.join(ordered)}", box))
            else:
                sides.append("".join(sorted(names)))
                boxes.append(box)
        if sides:
            word = "segments" if len(sides) > 1 else "segment"
            self.written.figure.insert(0, DrawnFact(f"{word} {', '.join(sides)}", box_around(boxes)))

    def _circles(self) -> None:
        for number, circle in enumerate(self.skeleton.circles):
            centre = next((spot for spot in self.skeleton.spots if spot.name and number in spot.centre_of), None)
            on = [spot for spot in self.skeleton.spots if spot.name and number in spot.circles]
            on.sort(key=lambda spot: (towards(circle.centre, spot.at) - circle.start) % 360)
            names = [spot.name for spot in on]
            self._circle(circle, centre, names)
            for spot in self.skeleton.spots:
                if number in spot.circles:
                    for line in sorted(spot.contacts):
                        self._tangent(spot, line, number, centre)

    def _circle(self, circle: Bow, centre: Spot | None, names: Sequence[str]) -> None:
        box = _round(circle.centre, circle.radius)
        sector = not circle.whole and len(names) == 2 and centre is not None and circle.sweep < 178
        if centre is not None:
            through = f" through {_listed(names)}" if names else ""
            self.written.figure.append(DrawnFact(f"circle with centre {centre.name}{through}", box))
            if sector:
                text = f"{centre.name}{''.join(sorted(names))} is a sector of the circle with centre {centre.name}"
                self.written.figure.append(DrawnFact(text, box))
        elif len(names) > 1 or (names and circle.whole):
            verb = "lies" if len(names) == 1 else "lie"
            self.written.figure.append(DrawnFact(f"{_listed(names)} {verb} on the circle", box))
        elif circle.whole:
            self.written.doubts.append("a circle has no letter at its centre and none on it")
        if not circle.whole and not sector and (centre is not None or len(names) > 1):
            what = "half" if abs(circle.sweep - 180) < 6 else "a part"
            name = f" with centre {centre.name}" if centre is not None else f" through {_listed(names)}"
            self.written.doubts.append(f"only {what} of the circle{name} is drawn")

    def _tangent(self, spot: Spot, number: int, circle: int, centre: Spot | None) -> None:
        line, ring = self.skeleton.lines[number], self.skeleton.circles[circle]
        if sum(circle in other.circles for other in self.skeleton.on_line(number)) > 1:
            return
        named = [other for other in self.skeleton.on_line(number) if other.name and other is not spot]
        of = f" circle {centre.name}" if centre is not None else " the circle"
        if not named or not spot.name:
            letters = spot.name or "".join(other.name for other in named[:2])
            self.written.doubts.append(f"a line at {letters or 'a point without a letter'} seems to touch{of}")
            return
        off = abs(abs(off_line(ring.centre, *line.ends)) - ring.radius)
        ends = [named[0]]
        if share_of(spot.at, named[0].at, named[-1].at) > 0.02 and len(named) > 1:
            ends = (
                [named[0], named[-1]]
                if math.dist(named[0].at, named[-1].at) > math.dist(named[0].at, spot.at)
                else ends
            )
        name = ends[0].name + (ends[1].name if len(ends) > 1 else spot.name)
        box = box_around([_round(spot.at, self.print_size / 2), _round(ends[0].at, 1)])
        self.written.figure.append(DrawnFact(f"{name} is a tangent to{of} at {spot.name}", box))
        if off > CERTAIN + 0.003 * ring.radius:
            self.written.doubts.append(f"whether {name} touches{of} at {spot.name} is drawn only roughly")


def _one_a_line(marks: Sequence[ParallelMark]) -> list[ParallelMark]:
    """The first mark of each line: arrows on both halves of one line say it twice."""
    found: list[ParallelMark] = []
    for mark in marks:
        if all(mark.line != other.line for other in found):
            found.append(mark)
    return found


def _listed(names: Sequence[str]) -> str:
    return " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def _index(number: str) -> str:
    return number.translate(str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉"))


def _round(at: Point, reach: float) -> Box:
    return at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach


def _square(mark: AngleMark) -> Box:
    return box_around([_round(mark.vertex.at, 1.0), _round(mark.middle, 1.0)])
