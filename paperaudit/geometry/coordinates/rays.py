"""The half-lines and triangles that the drawn lines of a figure make."""

from collections.abc import Iterator
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Ray:
    """A half-line from `vertex` along a line; `way` is +1 along the line's own order. Nearest point first."""

    vertex: str
    line: int
    way: int
    points: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Triangle:
    """Three lines that meet pairwise in three labelled points, one corner a line opposite it."""

    corners: tuple[str, str, str]

    def turned(self) -> Iterator[tuple[str, str, str]]:
        """The corners with each in turn in front."""
        a, b, c = self.corners
        yield from ((a, b, c), (b, c, a), (c, a, b))
