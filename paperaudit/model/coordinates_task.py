"""What is given and asked on the coordinate plane: points, lines, parabolas and circles by their equations."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.expression import Expression, Relation
from paperaudit.model.topic import TopicFact, TopicTask


@dataclass(frozen=True, slots=True)
class PlanePoint(TopicFact):
    """A point by its name and coordinates; without coordinates where only its name is said, no name for (2, 3)."""

    name: str
    x: Expression | None = None
    y: Expression | None = None

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"the point {self.name}"


@dataclass(frozen=True, slots=True)
class Curve(TopicFact):
    """A line or a curve by its equation, with the name it is given, or ""."""

    relation: Relation
    name: str = ""

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"the equation of {self.name or 'a curve'}"


@dataclass(frozen=True, slots=True)
class NamedCurve:
    """A line or a curve by the name that a given gives it: the graph of f, the line l."""

    name: str


CurveSaid = Curve | NamedCurve | None
"""A curve as an ask says it: by its equation, by its name, or "the line" (None)."""

ConditionName = Literal["gradient", "distance", "collinear", "mid-point", "on"]


@dataclass(frozen=True, slots=True)
class PlaneCondition(TopicFact):
    """What points with coordinates have: a gradient, a distance, one line, a middle, a place on a curve.

    Of "mid-point" the first point is the middle one; `value` is the gradient or the distance.
    """

    what: ConditionName
    points: tuple[PlanePoint, ...]
    value: Expression | None = None
    curve: Relation | None = None

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"the {self.what} of points"


@dataclass(frozen=True, slots=True)
class PlaneUnknown(TopicTask):
    """A letter among the coordinates, from a condition that the ask itself states."""

    letter: str
    condition: PlaneCondition
    points: tuple[PlanePoint, ...] = ()

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"{self.letter} among coordinates"


@dataclass(frozen=True, slots=True)
class PointWanted(TopicTask):
    """The coordinates of a named point."""

    name: str

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the coordinates of {self.name}"


OfPointsName = Literal[
    "gradient", "mid-point", "distance", "equation", "perpendicular bisector", "collinear", "area", "perimeter"
]
OfCurveName = Literal[
    "gradient", "x-intercept", "y-intercept", "intercepts", "turning point", "axis of symmetry", "least value",
    "greatest value", "asymptotes", "centre", "radius", "centre and radius", "tangent", "on it",
    "position",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class OfPoints(TopicTask):
    """What two or more points have: a gradient, a distance, a line through them.

    `claimed` says that the ask has it so, to be shown, and does not ask whether.
    """

    what: OfPointsName
    points: tuple[PlanePoint, ...]
    claimed: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.what} of points with coordinates"


@dataclass(frozen=True, slots=True)
class OfCurve(TopicTask):
    """What a line or a curve has; `curve` is None where a given names it, `at` a point that the ask names."""

    what: OfCurveName
    curve: CurveSaid
    at: PlanePoint | None = None
    claimed: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.what} of a line or curve"


@dataclass(frozen=True, slots=True)
class Inclination(TopicTask):
    """The angle that a line, through two points or by its equation, makes with the positive x-axis."""

    points: tuple[PlanePoint, ...] = ()
    curve: CurveSaid = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the inclination of a line"


@dataclass(frozen=True, slots=True)
class LineThrough(TopicTask):
    """The equation of the line through a point with a gradient, or beside a line, parallel or at right angles."""

    point: PlanePoint
    gradient: Expression | None = None
    beside: CurveSaid = None
    pair: tuple[PlanePoint, ...] = ()
    at_right_angles: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the equation of a line"


@dataclass(frozen=True, slots=True)
class CircleWith(TopicTask):
    """The equation of the circle with this centre and radius, or through this point."""

    centre: PlanePoint
    radius: Expression | None = None
    through: PlanePoint | None = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the equation of a circle"


@dataclass(frozen=True, slots=True)
class Meeting(TopicTask):
    """Where two lines or curves meet."""

    first: CurveSaid
    second: CurveSaid

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "where two lines or curves meet"


@dataclass(frozen=True, slots=True)
class Direction(TopicTask):
    """Whether two lines are parallel or perpendicular."""

    first: Curve
    second: Curve
    at_right_angles: bool
    claimed: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "whether two lines are parallel or perpendicular"
