"""What a question says about its figure or its numbers, one small value a fact."""

from dataclasses import dataclass, field
from enum import Enum
from typing import Literal, TypeAlias

from paperaudit.model.expression import AngleAt, AngleOf, Relation
from paperaudit.model.place import NOWHERE, Place
from paperaudit.model.round_fact import Circle as Circle
from paperaudit.model.round_fact import CirclesTouch as CirclesTouch
from paperaudit.model.round_fact import Diameter as Diameter
from paperaudit.model.round_fact import Incircle as Incircle
from paperaudit.model.round_fact import OnArc as OnArc
from paperaudit.model.round_fact import Path as Path
from paperaudit.model.round_fact import Tangent as Tangent
from paperaudit.model.topic import TopicFact

ShapeKind: TypeAlias = Literal[
    "triangle", "quadrilateral", "parallelogram", "rectangle", "rhombus", "square", "kite", "trapezium", "polygon"
]
Quality: TypeAlias = Literal[
    "isosceles",
    "equilateral",
    "scalene",
    "right-angled",
    "acute-angled",
    "obtuse-angled",
    "regular",
    "convex",
    "30-60-90",
]


@dataclass(frozen=True, slots=True)
class Shape:
    """A polygon whose letters go round it. Pentagon and on are kind "polygon".

    An isosceles triangle named without its equal sides, or a right-angled one without its corner,
    has that quality here and nothing more.
    """

    kind: ShapeKind
    points: tuple[str, ...]
    qualities: tuple[Quality, ...] = ()


@dataclass(frozen=True, slots=True)
class Drawn:
    """A segment, line or ray that the figure shows."""

    kind: Literal["segment", "line", "ray"]
    path: Path


@dataclass(frozen=True, slots=True)
class Collinear:
    """Points on one straight line, in this order along it unless `ordered` is false."""

    points: tuple[str, ...]
    ordered: bool = True


@dataclass(frozen=True, slots=True)
class Crossing:
    """Two lines meet at `point`; `within` says that the point lies inside both segments."""

    first: Path
    second: Path
    point: str
    within: bool = True


@dataclass(frozen=True, slots=True)
class Parallel:
    """Lines that are parallel and named in the same direction."""

    paths: tuple[Path, ...]


@dataclass(frozen=True, slots=True)
class Perpendicular:
    """Two lines at right angles."""

    first: Path
    second: Path


@dataclass(frozen=True, slots=True)
class BisectsAngle:
    """`path` starts at the vertex of `angle` and halves it."""

    path: Path
    angle: AngleOf | AngleAt


@dataclass(frozen=True, slots=True)
class Midpoint:
    """`point` is half way along the segment `path`."""

    point: str
    path: Path


@dataclass(frozen=True, slots=True)
class BisectsSegment:
    """The line `path` goes through the middle of `segment`, at right angles to it if `perpendicular`.

    Where the middle has a letter that the statement names, it is said by `Midpoint` instead.
    """

    path: Path
    segment: Path
    perpendicular: bool = False


@dataclass(frozen=True, slots=True)
class Midline:
    """`path` joins the middles of two sides of a triangle, or of the two legs of a trapezium, not said of which."""

    path: Path
    polygon: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Centre:
    """`point` is a centre of the polygon: of a triangle by its kind, of another figure its "centre".

    The circumcentre is where the perpendicular bisectors of the sides meet, the incentre where the
    bisectors of the angles do, the centroid the medians, the orthocentre the altitudes (or these
    lines produced). The "centre" of a regular polygon, a square or a rectangle is as far from each
    corner, that of a parallelogram or a rhombus the crossing of its diagonals.
    """

    kind: Literal["circumcentre", "incentre", "centroid", "orthocentre", "centre"]
    point: str
    polygon: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RoundPoint:
    """Rays from `centre` to these points, in this order round it."""

    centre: str
    points: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Inside:
    """`point` lies inside the polygon."""

    point: str
    polygon: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Outside:
    """`point` lies outside the polygon, not on a side of it."""

    point: str
    polygon: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RayInside:
    """The ray from `vertex` through `point` runs inside the angle below 180° between the rays to `arm` and `other`."""

    vertex: str
    arm: str
    point: str
    other: str


@dataclass(frozen=True, slots=True)
class Between:
    """`point` lies in the strip between two parallel lines."""

    point: str
    first: Path
    second: Path


@dataclass(frozen=True, slots=True)
class Sides:
    """Whether two points lie on the same side of a line or on opposite sides."""

    points: tuple[str, str]
    line: Path
    same: bool


@dataclass(frozen=True, slots=True)
class Holds:
    """A relation between quantities, letters and numbers: ∠ABC = 2x + 10°, AB = AC."""

    relation: Relation


@dataclass(frozen=True, slots=True)
class Congruent:
    """Two polygons congruent, corresponding corners in order."""

    first: tuple[str, ...]
    second: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Similar:
    """Two polygons similar, corresponding corners in order."""

    first: tuple[str, ...]
    second: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class AngleName:
    """The figure's numbered angle, such as B̂₁, and the three points that it stands for."""

    name: AngleAt
    angle: AngleOf


Fact: TypeAlias = (
    Shape
    | Drawn
    | Collinear
    | Crossing
    | Parallel
    | Perpendicular
    | BisectsAngle
    | Midpoint
    | BisectsSegment
    | Midline
    | Centre
    | RoundPoint
    | Inside
    | Outside
    | RayInside
    | Between
    | Sides
    | Holds
    | Congruent
    | Similar
    | AngleName
    | Circle
    | Tangent
    | Diameter
    | Incircle
    | CirclesTouch
    | OnArc
    | TopicFact
)


class Origin(Enum):
    """Where a given comes from; a convention of the printed page is never shown as a clashing given alone."""

    FIGURE = "figure"
    GIVEN = "given"
    TEXT = "text"
    DRAWING = "drawing"
    CONVENTION = "convention"


@dataclass(frozen=True, slots=True)
class Given:
    """One statement of the paper and the facts that it amounts to.

    `text` is the statement as written, trimmed; clashes and unused givens are named by it.
    """

    text: str
    facts: tuple[Fact, ...]
    origin: Origin = Origin.GIVEN
    place: Place = field(default=NOWHERE, compare=False)
