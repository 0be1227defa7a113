"""What a question says about its circles, one small value a fact."""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from paperaudit.model.expression import ArcOf

Path: TypeAlias = tuple[str, str]
"""Two points that a line, ray or segment is named by."""


@dataclass(frozen=True, slots=True)
class Circle:
    """Points on one circle, in no stated order; `centre` is "" where it has no letter."""

    centre: str
    points: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Tangent:
    """The line `path` touches a circle at the point `at`; `centre` is "" where the circle's has no letter."""

    path: Path
    at: str
    centre: str = ""


@dataclass(frozen=True, slots=True)
class Diameter:
    """`path` is a diameter of a circle; `centre` is "" where the circle's has no letter."""

    path: Path
    centre: str = ""


@dataclass(frozen=True, slots=True)
class Incircle:
    """A circle touches every side of the polygon from inside; `centre` is "" where the circle's has no letter.

    Points of contact with letters are told by a `Tangent` and a `Collinear` each.
    """

    centre: str
    polygon: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CirclesTouch:
    """Two circles, by their centres, touch at `at` ("" without a letter), from outside unless `inside` says how."""

    first: str
    second: str
    at: str = ""
    inside: Literal["", "second in first", "one in the other"] = ""


@dataclass(frozen=True, slots=True)
class OnArc:
    """Points that lie on an arc, between its ends, in no stated order."""

    points: tuple[str, ...]
    arc: ArcOf


RoundFact: TypeAlias = Circle | Tangent | Diameter | Incircle | CirclesTouch | OnArc
