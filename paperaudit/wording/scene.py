"""What is already known of a figure while its statements are read one after the other."""

from dataclasses import dataclass, field
from fractions import Fraction

from paperaudit.maths.notation import Commas, Notation, read_notation
from paperaudit.maths.round_sizes import LARGER, SMALLER
from paperaudit.model.expression import Expression, LengthOf, Measured, Number, Relation
from paperaudit.model.fact import (
    Centre,
    Circle,
    CirclesTouch,
    Collinear,
    Diameter,
    Fact,
    Holds,
    Incircle,
    Inside,
    Midpoint,
    Parallel,
    Path,
    Perpendicular,
    Shape,
    Tangent,
)


class NotUnderstood(Exception):
    """Words that are grammatical and still name nothing; `start` is an offset in the plain text."""

    def __init__(self, message: str, start: int, expected: str = "") -> None:
        super().__init__(message)
        self.start = start
        self.expected = expected


@dataclass(slots=True)
class Scene:
    """The polygons, parallel lines and circles named so far, what letters and commas mean in the paper."""

    letters: frozenset[str] = frozenset()
    commas: Commas = ""
    shapes: list[Shape] = field(default_factory=list)
    parallels: list[Parallel] = field(default_factory=list)
    lines: list[Collinear] = field(default_factory=list)
    centres: list[str] = field(default_factory=list)
    on_circle: list[str] = field(default_factory=list)
    rounds: list[Circle] = field(default_factory=list)
    tangents: list[Path] = field(default_factory=list)
    perpendiculars: list[Perpendicular] = field(default_factory=list)
    incircles: list[Incircle] = field(default_factory=list)
    midpoints: list[Midpoint] = field(default_factory=list)
    sectors: list[tuple[str, str, str]] = field(default_factory=list)
    lengths: dict[frozenset[str], tuple[Fraction, str]] = field(default_factory=dict)
    shaded: Expression | None = None
    inner: list[tuple[str, tuple[str, ...]]] = field(default_factory=list)
    semicircle: Path | None = None
    semicircle_in: tuple[str, ...] = ()
    chord_lettered: bool = False
    on_semicircle: list[str] = field(default_factory=list)

    def notation(self, text: str, units: bool = True) -> Notation:
        """A text in the grammars' spelling, as this paper means its letters and commas."""
        return read_notation(text, self.letters, units, self.commas)

    def take(self, facts: tuple[Fact, ...]) -> None:
        """Remembers what later clauses may refer to: "its diagonals", "cuts them"."""
        self.shapes.extend(fact for fact in facts if isinstance(fact, Shape))
        self.parallels.extend(fact for fact in facts if isinstance(fact, Parallel))
        self.lines.extend(fact for fact in facts if isinstance(fact, Collinear))
        self.perpendiculars.extend(fact for fact in facts if isinstance(fact, Perpendicular))
        self.incircles.extend(fact for fact in facts if isinstance(fact, Incircle))
        self.midpoints.extend(fact for fact in facts if isinstance(fact, Midpoint))
        for fact in facts:
            match fact:
                case Holds(Relation(LengthOf(one, two), "=", Number(value))):
                    self.lengths[frozenset((one, two))] = (value, "")
                case Holds(Relation(LengthOf(one, two), "=", Measured(Number(value), unit))):
                    self.lengths[frozenset((one, two))] = (value, unit)
        self.inner.extend((fact.point, fact.polygon) for fact in facts if isinstance(fact, Inside))
        self.inner.extend(
            (fact.point, fact.polygon)
            for fact in facts
            if isinstance(fact, Centre) and fact.kind in ("incentre", "centroid")
        )
        for fact in facts:
            if isinstance(fact, Circle | Tangent | Diameter | Incircle) and fact.centre.isupper():
                self.centres.append(fact.centre)
            if isinstance(fact, CirclesTouch):
                self.centres.extend(centre for centre in (fact.first, fact.second) if centre.isupper())
            if isinstance(fact, Circle):
                self.on_circle.extend(fact.points)
                self.rounds.append(fact)
            if isinstance(fact, Tangent):
                self.tangents.append(fact.path)

    def on(self, centre: str) -> tuple[str, ...]:
        """The points named so far on the circle with this centre, or on "the circle".

        Where one centre only has a letter, "the circle" is that one. A circle without a letter, of a cyclic
        quadrilateral, is taken for it as long as nothing else was put on it.
        """
        if len(set(self.centres)) > 1 or not self.rounds or centre in (LARGER, SMALLER):
            return tuple(dict.fromkeys(p for circle in self.rounds if circle.centre == centre for p in circle.points))
        known = [circle for circle in self.rounds if circle.centre]
        named = [circle for circle in known if circle.points] or self.rounds
        return tuple(dict.fromkeys(point for circle in named for point in circle.points))

    def is_inside(self, point: str, triangle: tuple[str, ...]) -> bool:
        """Whether a point was said to lie inside this triangle, or is its centroid or incentre."""
        return any(name == point and set(corners) == set(triangle) for name, corners in self.inner)

    def latest(self, sides: int | None, corner: str = "") -> tuple[str, ...] | None:
        """The polygon named last that has this many sides and this corner."""
        for shape in reversed(self.shapes):
            if (sides is None or len(shape.points) == sides) and (not corner or corner in shape.points):
                return shape.points
        return None

    def knows(self, corners: tuple[str, ...]) -> bool:
        """Whether a polygon with these corners was named."""
        return any(set(shape.points) == set(corners) for shape in self.shapes)
