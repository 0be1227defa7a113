"""Conditions on one circle, which is known by its centre or, of several about one centre, by a name of its own."""

from dataclasses import dataclass

from paperaudit.model.fact import Path


class _OfCircle:
    """What is about one circle."""

    __slots__ = ()
    centre: str
    name: str

    @property
    def key(self) -> str:
        """The circle's name: its centre's, unless it has one of its own."""
        return self.name or self.centre


@dataclass(frozen=True, slots=True)
class OnCircle(_OfCircle):
    """Points on one circle about `centre`, with the label of the given that puts each there.

    `name` tells the circle from others about the same centre.
    """

    centre: str
    points: tuple[str, ...]
    labels: tuple[int, ...]
    label: int
    name: str = ""


@dataclass(frozen=True, slots=True)
class TangentAt(_OfCircle):
    """The line `path` touches the circle about `centre` at the point `at` on it; `name` as of `OnCircle`."""

    path: Path
    at: str
    centre: str
    label: int
    name: str = ""
