"""What is asked about reflections, rotations, translations and enlargements, and about vectors."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.coordinates_task import PlanePoint
from paperaudit.model.expression import Expression, Relation
from paperaudit.model.topic import TopicFact, TopicTask


@dataclass(frozen=True, slots=True)
class Reflected:
    """A reflection in a line."""

    line: Relation


@dataclass(frozen=True, slots=True)
class Turned:
    """A rotation about a point, so many degrees anticlockwise."""

    degrees: int
    centre: PlanePoint


@dataclass(frozen=True, slots=True)
class Shifted:
    """A translation, across and up."""

    across: Expression
    up: Expression


@dataclass(frozen=True, slots=True)
class Enlarged:
    """An enlargement with a scale factor from a centre."""

    factor: Expression
    centre: PlanePoint


Movement = Reflected | Turned | Shifted | Enlarged


@dataclass(frozen=True, slots=True)
class Image(TopicTask):
    """The images of points under one movement after the other."""

    points: tuple[PlanePoint, ...]
    movements: tuple[Movement, ...]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the image of a point"


@dataclass(frozen=True, slots=True)
class WhichMovement(TopicTask):
    """The single transformation that takes named points to others, in order."""

    before: tuple[PlanePoint, ...]
    after: tuple[PlanePoint, ...]

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "the transformation that maps a figure onto another"


@dataclass(frozen=True, slots=True)
class Vector(TopicFact):
    """A vector by its name and components."""

    name: str
    x: Expression
    y: Expression

    def in_words(self) -> str:
        """The statement as it is printed."""
        return f"the vector {self.name}"


@dataclass(frozen=True, slots=True)
class OfVectors(TopicTask):
    """A sum of multiples of vectors, or how long it is; `terms` are multiples and names, names of two points too."""

    what: Literal["vector", "magnitude"]
    terms: tuple[tuple[Expression, str], ...] = ()
    own: tuple[Expression, Expression] | None = None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.what} of vectors"


@dataclass(frozen=True, slots=True)
class VectorsParallel(TopicTask):
    """Whether two vectors are parallel or at right angles."""

    first: tuple[Expression, Expression]
    second: tuple[Expression, Expression]
    at_right_angles: bool = False

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "whether two vectors are parallel or perpendicular"
