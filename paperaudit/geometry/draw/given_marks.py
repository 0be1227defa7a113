"""What of a question's givens its figure shows: sizes, equal sides, parallels, right angles, and what is asked."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.draw.marks import AngleMark, Marks, ParallelMark, SideMark, classed
from paperaudit.geometry.draw.size_marks import QUESTION_MARK, SHOWN, SizeMarks, diameter_or
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import EqualLengths, ParallelPair, RightAngle, angle, length
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.geometry.figure.shapes import shape_conditions
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    Expression,
    LengthOf,
    Letter,
    Measured,
    Number,
    leaves,
)
from paperaudit.model.fact import (
    AngleName,
    BisectsAngle,
    Fact,
    Given,
    Holds,
    Midpoint,
    Parallel,
    Path,
    Perpendicular,
    Shape,
)

_SIZES = (AngleOf, AngleAt, LengthOf)
_SHOWN_OF_SHAPES = {
    "square": (EqualLengths, RightAngle),
    "rhombus": (EqualLengths,),
    "rectangle": (RightAngle,),
}
"""What marks tell a shape; one whose name is not here shows all that its name says."""


def marks_of(
    builder: FigureBuilder, givens: Sequence[Given], arrangement: Arrangement, wanted: Iterable[Expression] = ()
) -> Marks:
    """The marks of the givens, and a question mark at each size in `wanted` that has no label yet.

    Sums, ratios and relations of several sizes have no mark; they stay with the words of the question.
    """
    collected = _Collected(builder, arrangement)
    for given in givens:
        for fact in given.facts:
            collected.take(fact, [other.facts for other in givens])
    for expression in wanted:
        collected.ask(expression)
    return collected.marks()


@dataclass
class _Collected:
    builder: FigureBuilder
    arrangement: Arrangement
    angle_labels: dict[AngleOf, list[str]] = field(default_factory=dict)
    side_labels: dict[LengthOf, list[str]] = field(default_factory=dict)
    equal_angles: list[tuple[AngleOf, AngleOf]] = field(default_factory=list)
    equal_sides: list[tuple[LengthOf, LengthOf]] = field(default_factory=list)
    shape_sides: set[LengthOf] = field(default_factory=set)
    parallels: list[tuple[Path, Path]] = field(default_factory=list)
    squares: list[tuple[Path, Path]] = field(default_factory=list)
    right: list[AngleOf] = field(default_factory=list)
    named_right: list[AngleOf] = field(default_factory=list)
    numbers: dict[AngleOf, int] = field(default_factory=dict)
    asked: list[AngleOf | LengthOf] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.sizes = SizeMarks(self.arrangement)

    def take(self, fact: Fact, groups: list[tuple[Fact, ...]]) -> None:
        match fact:
            case Holds(relation) if relation.sign == "=":
                self._relation(relation.left, relation.right)
            case Shape():
                self._shape(fact, groups)
            case Parallel(paths):
                for other in paths[1:]:
                    self._parallel(paths[0], other)
            case Perpendicular(first, second):
                self._square(first, second)
            case BisectsAngle(path, bisected):
                whole = self._angle(bisected)
                if whole is not None and whole.vertex in path:
                    point = path[1] if path[0] == whole.vertex else path[0]
                    halves = [self._angle(angle(arm, whole.vertex, point)) for arm in (whole.arm, whole.other)]
                    if halves[0] and halves[1]:
                        self.equal_angles.append((halves[0], halves[1]))
            case Midpoint(point, (start, end)):
                self._equal(length(start, point), length(point, end))
            case AngleName(name, named):
                size = self._angle(named)
                if size is not None and name.number:
                    self.numbers[size] = name.number

    def ask(self, expression: Expression) -> None:
        size = self._angle(expression) if isinstance(expression, AngleOf | AngleAt) else expression
        if isinstance(size, LengthOf):
            self.asked += [side for side in (length(size.start, size.end),) if self._is_drawn(side)]
        elif isinstance(size, AngleOf):
            self.asked.append(size)
        else:
            self.sizes.ask(expression)

    def _relation(self, left: Expression, right: Expression) -> None:
        left, right = (diameter_or(size, self.arrangement) for size in (left, right))
        if not isinstance(left, (*_SIZES, *SHOWN)):
            left, right = right, left
        if isinstance(left, SHOWN):
            self.sizes.take(left, right, _is_plain(right))
        if not isinstance(left, _SIZES):
            return
        if isinstance(left, LengthOf):
            self._length_relation(left, right)
            return
        size = self._angle(left)
        if size is None:
            return
        if isinstance(right, AngleOf | AngleAt):
            other = self._angle(right)
            if other is not None:
                self.equal_angles.append((size, other))
        elif _is_right(right) and not size.reflex:
            self.right.append(size)
        elif _is_plain(right):
            self.angle_labels.setdefault(size, []).append(write(right))

    def _length_relation(self, left: LengthOf, right: Expression) -> None:
        side = length(left.start, left.end)
        if isinstance(right, LengthOf):
            self._equal(side, length(right.start, right.end))
        elif _is_plain(right) and self._is_drawn(side):
            self.side_labels.setdefault(side, []).append(write(right))

    def _equal(self, first: LengthOf, second: LengthOf) -> None:
        if self._is_drawn(first) and self._is_drawn(second):
            self.equal_sides.append((first, second))

    def _parallel(self, first: Path, second: Path) -> None:
        if self._is_drawn(length(*first)) and self._is_drawn(length(*second)):
            self.parallels.append((first, second))

    def _is_drawn(self, side: LengthOf) -> bool:
        ends = {side.start, side.end}
        return len(ends) == 2 and any(ends <= set(line) for line in self.arrangement.lines)

    def _shape(self, shape: Shape, groups: list[tuple[Fact, ...]]) -> None:
        shown = _SHOWN_OF_SHAPES.get(shape.kind, (EqualLengths, RightAngle, ParallelPair))
        squares: list[tuple[Path, Path]] = []
        sides = {length(*ends) for ends in zip(shape.points, shape.points[1:] + shape.points[:1], strict=True)}
        for condition in shape_conditions(shape, 0, groups):
            if not isinstance(condition, shown):
                continue
            match condition:
                case EqualLengths(first, second) if {first, second} <= sides:
                    self._equal(first, second)
                    self.shape_sides |= {first, second}
                case ParallelPair(one, other):
                    self._parallel(one, other)
                case RightAngle(one, other):
                    squares.append((one, other))
        stated = list(self.right)
        for one, other in squares[:1] if shape.kind == "square" else squares:
            self._square(one, other)
        self.named_right += [size for size in self.right if size not in stated]

    def _square(self, first: Path, second: Path) -> None:
        """A right angle at the letter where two lines meet, in a quadrant without rays; else where they cross."""
        figure = self.arrangement.figure
        if not (self._is_drawn(length(*first)) and self._is_drawn(length(*second))):
            return
        meet = self.arrangement.meet(figure.line_of(*first), figure.line_of(*second))
        if meet is None:
            self.squares.append((first, second))
            return
        sizes = [
            self.arrangement.corner(one, meet, other)
            for one in first
            if one != meet
            for other in second
            if other != meet
        ]
        if not any(size in self.right for size in sizes):
            self.right.append(min(sizes, key=self._rays_inside))

    def _rays_inside(self, size: AngleOf) -> int:
        """How many drawn rays divide an angle."""
        whole = self.arrangement.turn(size.vertex, size.arm, size.other)
        others = [ray.points[0] for ray in self.arrangement.rays[size.vertex]]
        turns = [self.arrangement.turn(size.vertex, size.arm, other) for other in others]
        return sum(min(0.0, whole) + 1e-6 < turn < max(0.0, whole) - 1e-6 for turn in turns)

    def _angle(self, named: AngleOf | AngleAt) -> AngleOf | None:
        """The angle in the figure's own terms; None where it is unclear, not drawn, or straight."""
        try:
            size = self.builder.resolved(named)
        except Unclear:
            return None
        assert isinstance(size, AngleOf)
        try:
            return None if self.arrangement.is_straight(size) else self.arrangement.canonical(size)
        except KeyError:
            return None

    def marks(self) -> Marks:
        return Marks(
            tuple(self._angle_marks()),
            tuple(self._all_sides()),
            tuple(self._parallel_marks()),
            tuple(self.squares),
            tuple(self.sizes.arcs()),
            tuple(self.sizes.radii()),
            tuple(self.sizes.heights()),
            tuple(self.sizes.bearings()),
            tuple(self.sizes.shaded),
            tuple(self.sizes.holes),
            tuple(self.sizes.heavy),
        )

    def _all_sides(self) -> Iterator[SideMark]:
        """The marks of the sides; one without a label takes that of a radius or a height that it shows."""
        found = {mark.side: mark for mark in self._side_marks()}
        for mark in self.sizes.sides():
            before = found.get(mark.side, mark)
            if not before.label or before.label == QUESTION_MARK:
                before = replace(before, label=mark.label, is_asked=mark.is_asked)
            found[mark.side] = before
        yield from found.values()

    def _angle_marks(self) -> Iterator[AngleMark]:
        classes = classed(self.equal_angles)
        asked = [size for size in self.asked if isinstance(size, AngleOf)]
        # A corner of a rectangle that is asked for has no square, which would be the answer.
        self.right = [size for size in self.right if size not in asked or size not in self.named_right]
        square = {classes[size] for size in self.right if size in classes}
        self.right += [size for size, number in classes.items() if number in square and size not in self.right]
        sizes = dict.fromkeys([*self.angle_labels, *self.right, *classes, *self.numbers, *asked])
        for size in sizes:
            label = " = ".join(dict.fromkeys(self.angle_labels.get(size, ())))
            right = size in self.right
            mark = AngleMark(size, label, 0 if right else classes.get(size, 0), right, number=self.numbers.get(size, 0))
            if size in asked and not label and not right:
                mark = replace(mark, label=QUESTION_MARK, is_asked=True)
            yield mark

    def _side_marks(self) -> Iterator[SideMark]:
        classes = classed(self.equal_sides)
        asked = [size for size in self.asked if isinstance(size, LengthOf)]
        for side in dict.fromkeys([*self.side_labels, *classes, *asked]):
            label = " = ".join(dict.fromkeys(self.side_labels.get(side, ())))
            ticks = 0 if self._told_by_others(side, classes) else classes.get(side, 0)
            if not ticks and not label and side not in asked:
                continue
            mark = SideMark(side, label, ticks)
            yield replace(mark, label=QUESTION_MARK, is_asked=True) if side in asked and not label else mark

    def _told_by_others(self, side: LengthOf, classes: dict[LengthOf, int]) -> bool:
        """Whether a side of a shape that points divide can go without ticks: two others of its class have them."""
        if side not in self.shape_sides or not self._is_divided(side):
            return False
        others = [one for one, number in classes.items() if number == classes[side] and not self._is_divided(one)]
        return len(others) > 1

    def _is_divided(self, side: LengthOf) -> bool:
        line = self.arrangement.lines[self.arrangement.figure.line_of(side.start, side.end)]
        return abs(line.index(side.start) - line.index(side.end)) > 1

    def _parallel_marks(self) -> Iterator[ParallelMark]:
        figure = self.arrangement.figure
        lines = {path: figure.line_of(*path) for pair in self.parallels for path in pair}
        classes = classed([(lines[one], lines[other]) for one, other in self.parallels])
        shown: dict[int, Path] = {}
        for path, line in lines.items():
            shown.setdefault(line, path)
        for line, path in shown.items():
            yield ParallelMark(path, classes[line])


def _is_plain(expression: Expression) -> bool:
    """Whether a size is given in numbers and letters alone, so that it can stand as a label."""
    return all(isinstance(leaf, Number | Letter) for leaf in leaves(expression))


def _is_right(expression: Expression) -> bool:
    return isinstance(expression, Measured) and expression.unit == "°" and expression.amount == Number(Fraction(90))
