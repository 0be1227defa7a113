"""Writes what the marked angles of a drawing state."""

from collections.abc import Sequence

from paperaudit.readers.draft.drawing.angles import AngleMark
from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import Run
from paperaudit.readers.draft.drawing.sizes import Sizes
from paperaudit.readers.draft.drawing.wording_pen import WordingPen, box_of


class AngleWords(WordingPen):
    """Writes the statements about angles."""

    def write(self, angles: Sequence[AngleMark], sizes: Sizes) -> None:
        """Right angles, numbered ones, sizes, bearings, equal angles."""
        feet = {id(mark.vertex) for mark in angles if mark.right}
        heights = {id(end) for _, span in sizes.sides for end in (span.start, span.end) if id(end) in feet}
        for mark in angles:
            if mark.right:
                name = self.angle(mark) if self._is_needed(mark, heights) else ""
                if name:
                    self.given(f"{name} = 90°", [box_of(mark)])
        for numbered in sizes.numbered:
            mark = AngleMark(numbered.vertex, numbered.first, numbered.second, [0.0])
            name = self.angle(mark)
            if name:
                self.given(f"{numbered.vertex.name}̂{_index(numbered.number)} = {name}", [numbered.run.box])
        for run, mark in [*sizes.angles, *sizes.corners]:
            if self._is_bearing(mark, run):
                continue
            name = self.angle(mark)
            if name:
                self.given(f"{name} = {self._in_degrees(run)}", [run.box, box_of(mark)])
        self._equal_angles(angles, sizes)

    def _is_bearing(self, mark: AngleMark, run: Run) -> bool:
        """Whether one arm of an angle points to the north; clockwise from it the angle is a bearing."""
        north = [any(spot.north for spot in self.skeleton.along(mark.vertex, ray)) for ray in (mark.first, mark.second)]
        if not any(north):
            return False
        other = self.on_arm(mark.vertex, mark.second) if north[0] else ""
        if other and mark.vertex.name:
            self.given(f"the bearing of {other} from {mark.vertex.name} is {run.text}", [run.box, box_of(mark)])
        else:
            self.written.doubts.append(
                f"the label {run.text} beside an arrow to the north is no bearing that can be read"
            )
        return True

    def _is_needed(self, mark: AngleMark, heights: set[int]) -> bool:
        """Whether a square corner stands at a letter, or its vertex has none and no length is a height to it.

        In a figure without letters every corner is needed.
        """
        lettered = any(spot.name and not spot.given_here for spot in self.skeleton.spots)
        return bool(mark.vertex.name) or id(mark.vertex) not in heights or not lettered

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
                self.written.doubts.append(f"{self.angle(marks[0])} has {arcs} and no other angle has")
            for other in marks[1:]:
                one, two = self.angle(marks[0]), self.angle(other)
                if one and two:
                    self.given(f"{one} = {two}", [box_of(marks[0]), box_of(other)])
        plain = [mark for mark in angles if not mark.right and len(mark.radii) == 1 and not mark.strokes]
        bare = [mark for mark in plain if not any(mark is other for _, other in sizes.angles)]
        numbered = {id(one.vertex) for one in sizes.numbered}
        bare = [mark for mark in bare if id(mark.vertex) not in numbered]
        if len(bare) > 1:
            names = " and ".join(filter(None, (self.angle(mark) for mark in bare)))
            self.written.doubts.append(f"whether the arcs without a label mean that {names} are equal cannot be told")


def _index(number: str) -> str:
    return number.translate(str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉"))
