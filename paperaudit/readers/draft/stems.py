"""Which signs stand in a row, and which are powers or indices of the sign before them."""

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from statistics import median

from paperaudit.readers.draft.sign import Sign

_LEVEL = 0.13
"""Signs of one level have their axes this near to each other, in heights of the larger font."""
_SMALLER = 0.88
"""A power or an index is at most this high, measured against what it belongs to."""
_NEARLY = 0.985
"""Print at most this high that stands against its letter is a power or an index where it is far off the row."""
_AGAINST = 0.1
_FAR_OFF = 0.3
"""How near such print stands, and how far off the row, in heights of the letter's font."""
_CLOSE = 0.35
"""How far a power or an index may stand behind what it belongs to, in heights of that font."""
_HIGHEST = 0.8
_LOWEST = 0.6
"""How far the axis of a power may be above and that of an index below that of a letter, in heights of its font."""
_CLEARLY = 0.2
"""By how much nearer a sign of another row must be to have a power or an index, in heights of its font."""
_ROW = 0.3
"""Axes of one row differ by less than this, in heights of its font."""
_UNEVEN = 0.75
"""By how much the parts of one row may be higher and lower, in heights of the smaller font."""
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
    """Finds what `stem` stands beside, or else what it is a power or an index of, among the stems before it.

    Where it could belong to signs of two rows, it belongs to the one whose axis is nearer. What it stands against
    counts before larger print farther left that is at its height by chance.
    """
    found: tuple[float, Stem, list[Stem]] | None = None
    for neighbour in before:
        other: Stem | None = neighbour
        while other is not None:
            if _level(stem.sign, other.sign):
                if found and other.sign.right <= found[1].sign.left and stem.sign.size <= _NEARLY * other.sign.size:
                    break
                if other.host is None or (_is_near(stem, other) and not _is_past(other, before)):
                    _beside(stem, other)
                    return
            elif (row := _script(stem, other)) is not None:
                far = abs(other.sign.axis - stem.sign.axis)
                if found is None or far < found[0] - _CLEARLY * other.sign.size:
                    found = far, other, row
                break
            other = other.host
    if found:
        _, stem.host, row = found
        stem.previous = row[-1] if row else None
        row.append(stem)


def _is_near(stem: Stem, other: Stem) -> bool:
    return stem.sign.left - other.right < 0.6 * other.sign.size


def _is_past(other: Stem, before: Sequence[Stem]) -> bool:
    """Whether the row has gone on behind the power or index `other`."""
    ground = other
    while ground.host is not None:
        ground = ground.host
    return any(one.sign.left > other.sign.left and _level(one.sign, ground.sign) for one in before)


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
    if sign.left < other.sign.left + 0.3 * other.sign.width or other.sign.text in _SIDELESS:
        return None
    lift = other.sign.axis - sign.axis
    row = other.raised if lift > 0 else other.lowered
    end = max(other.sign.right, row[-1].right) if row else other.sign.right
    if sign.size > _SMALLER * size and not (sign.shape != "glyph" and sign.size <= 1.05 * size):
        against = sign.left - end <= _AGAINST * size and abs(lift) > _FAR_OFF * size
        if sign.size > _NEARLY * size or not against:
            return None
    if sign.left - end > (_CLOSE if other.sign.shape != "large" else 2 * _CLOSE) * size:
        return None
    highest = max(_HIGHEST * size, other.sign.axis - other.top + 0.4 * sign.size)
    lowest = max(_LOWEST * size, other.bottom - other.sign.axis + 0.3 * sign.size)
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
    return [sorted(row, key=lambda one: one.sign.key) for row in _level_out(rows)]


def _level_out(rows: Sequence[list[Stem]]) -> list[list[Stem]]:
    """Rows of which one stands in the gaps of the other, a little higher or lower, as one.

    Office programs centre equations on their row by height, so that their baselines differ.
    """
    merged: list[list[Stem]] = []
    for row in rows:
        if merged and _interlocked(merged[-1], row):
            merged[-1] = [*merged[-1], *row]
        else:
            merged.append(row)
    return merged


def _interlocked(row: Sequence[Stem], other: Sequence[Stem]) -> bool:
    """Whether two rows are at about one height, and nothing of one is above or below something of the other."""
    ground, size = _ground(row)
    lower, lower_size = _ground(other)
    near = lower - ground <= _UNEVEN * min(size, lower_size)
    if not near and not _reaches(row, lower) and not _reaches(other, ground):
        return False
    spans = sorted(
        [(stem.sign.left, stem.right, 0) for stem in row] + [(stem.sign.left, stem.right, 1) for stem in other]
    )
    return all(
        before[2] == after[2] or after[0] > before[1] - 0.1 * size for before, after in itertools.pairwise(spans)
    )


def _reaches(row: Sequence[Stem], axis: float) -> bool:
    """Whether something tall in a row has the height `axis` within its ink."""
    return any(stem.sign.shape != "glyph" and stem.sign.top < axis < stem.sign.bottom for stem in row)


def _ground(row: Sequence[Stem]) -> tuple[float, float]:
    """The axis of a row and the size of its letters."""
    size = median(stem.sign.size for stem in row)
    return median(stem.sign.axis for stem in row), size
