"""Which signs stand in a row, and which are powers or indices of the sign before them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from paperaudit.readers.draft.sign import Sign

_LEVEL = 0.13
"""Signs of one level have their axes this near to each other, in heights of the larger font."""
_SMALLER = 0.88
"""A power or an index is at most this high, measured against what it belongs to."""
_LOWERED = 0.11
"""An index lies at least this much lower, in heights of the font that it belongs to."""
_CLOSE = 0.35
"""How far a power or an index may stand behind what it belongs to, in heights of that font."""
_HIGHEST = 0.9
"""How far the axis of a power may be above that of a letter, in heights of its font."""
_ROW = 0.3
"""Axes of one row differ by less than this, in heights of its font."""
_BAND = 3.0
_OPENING = {")": "(", "]": "[", "}": "{", "⟩": "⟨"}


@dataclass(eq=False, slots=True)
class Stem:
    """A sign with its powers and indices, each a row of stems; `host` is what it is a power or an index of."""

    sign: Sign
    host: "Stem | None" = None
    previous: "Stem | None" = None
    raised: list["Stem"] = field(default_factory=list)
    lowered: list["Stem"] = field(default_factory=list)
    top: float = 0.0
    bottom: float = 0.0

    @property
    def right(self) -> float:
        """Where it ends with its powers and indices."""
        return max([self.sign.right, *(stem.right for stem in (*self.raised[-1:], *self.lowered[-1:]))])

    def signs(self) -> Iterator[Sign]:
        """The sign and those of its powers and indices."""
        yield self.sign
        for stem in (*self.raised, *self.lowered):
            yield from stem.signs()


def rows_of_stems(signs: Sequence[Sign]) -> list[list[Stem]]:
    """The rows from top to bottom, each from left to right."""
    return _rows(_planted(signs))


def _planted(signs: Sequence[Sign]) -> list[Stem]:
    """The stems that are no power and no index of another one."""
    ground: list[Stem] = []
    latest: dict[int, Stem] = {}
    for sign in sorted(signs, key=lambda one: one.key):
        stem = Stem(sign)
        stem.top, stem.bottom = (
            min(sign.top, sign.axis - 0.5 * sign.size),
            max(sign.bottom, sign.axis + 0.47 * sign.size),
        )
        bands = range(int(stem.top // _BAND), int(stem.bottom // _BAND) + 1)
        before = {latest[band] for band in bands if band in latest}
        _plant(stem, sorted(before, key=lambda one: (-one.sign.right, one.sign.axis)))
        if stem.host is None:
            ground.append(stem)
            _stretch(stem)
        for band in range(int(stem.top // _BAND), int(stem.bottom // _BAND) + 1):
            latest[band] = stem
    return ground


def _plant(stem: Stem, before: Sequence[Stem]) -> None:
    """Finds what `stem` stands beside or belongs to, among the stems before it and what those belong to."""
    for neighbour in before:
        other: Stem | None = neighbour
        while other is not None:
            if _level(stem.sign, other.sign):
                if other.host is None or stem.sign.left - other.right < 0.6 * other.sign.size:
                    _beside(stem, other)
                    return
            elif (where := _script(stem, other)) is not None:
                stem.host = other
                stem.previous = where[-1] if where else None
                where.append(stem)
                return
            other = other.host


def _beside(stem: Stem, other: Stem) -> None:
    stem.host, stem.previous = other.host, other
    if other.host is not None:
        row = other.host.raised if other in other.host.raised else other.host.lowered
        row.append(stem)


def _level(sign: Sign, other: Sign) -> bool:
    return abs(sign.axis - other.axis) <= _LEVEL * max(sign.size, other.size)


def _script(stem: Stem, other: Stem) -> list[Stem] | None:
    """The powers or the indices of `other` to which `stem` belongs, if it does."""
    sign, size = stem.sign, other.sign.size
    if sign.size > _SMALLER * size and not (sign.shape != "glyph" and sign.size <= 1.05 * size):
        return None
    if sign.left < other.sign.left + 0.3 * other.sign.width or other.sign.text in _SIDELESS:
        return None
    lift = other.sign.axis - sign.axis
    row = other.raised if lift > 0 else other.lowered
    end = max(other.sign.right, row[-1].right) if row else other.sign.right
    if sign.left - end > (_CLOSE if other.sign.shape != "large" else 2 * _CLOSE) * size:
        return None
    highest = max(_HIGHEST * size, other.sign.axis - other.top + 0.4 * sign.size)
    lowest = max(_HIGHEST * size, other.bottom - other.sign.axis + 0.4 * sign.size)
    if _LEVEL * size < lift < highest:
        return other.raised
    below = sign.baseline - other.sign.baseline
    if _LEVEL * size < -lift < lowest and (below > 0.05 * size or sign.shape != "glyph"):
        return other.lowered
    return None


_SIDELESS = frozenset("=+−-<>≤≥×÷,;:.")
"""Nothing is a power or an index of these."""


def _stretch(stem: Stem) -> None:
    """A closing bracket is as high as what it closes: a power of it stands there."""
    opening = _OPENING.get(stem.sign.text)
    if opening is None:
        return
    open_ones, other = 1, stem.previous
    top, bottom = stem.top, stem.bottom
    while other is not None and open_ones:
        top, bottom = min(top, other.top), max(bottom, other.bottom)
        open_ones += (other.sign.text == stem.sign.text) - (other.sign.text == opening)
        other = other.previous
    if not open_ones:
        stem.top, stem.bottom = top, bottom


def _rows(ground: Sequence[Stem]) -> list[list[Stem]]:
    rows: list[list[Stem]] = []
    axes: list[tuple[float, float]] = []
    for stem in sorted(ground, key=lambda one: (one.sign.axis, one.sign.key)):
        sign = stem.sign
        if rows and sign.axis - axes[-1][0] < _ROW * min(max(axes[-1][1], sign.size), 1.5 * sign.size):
            rows[-1].append(stem)
            axis, size = axes[-1]
            if sign.size >= size:
                axes[-1] = (axis + (sign.axis - axis) / len(rows[-1]), sign.size)
        else:
            rows.append([stem])
            axes.append((sign.axis, sign.size))
    for row in rows:
        row.sort(key=lambda one: one.sign.key)
    return rows
