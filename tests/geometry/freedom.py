"""Whether what is asked can still move while every statement holds, from slopes on coordinates.

The statements of a figure are equations in the coordinates of its points and in its letters. To first
order what is asked is settled exactly where its gradient is a combination of theirs. The
judge of answers uses this beside the coordinates: an answer may be true of the figure that a
question was made from and still not follow from what it says.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from tests.geometry.measured_sizes import Measured, Spots
from tests.geometry.measuring import measured_gaps, rims_of

STEP = 1e-6
LOOSE = 1e-4
"""Share of the gradient that the statements leave out before what is asked counts as open."""

Row = NDArray[np.float64]


class Freedom:
    """The slopes of a question's statements at one figure that meets them."""

    def __init__(self, statements: Sequence[str], spots: Spots, letters: dict[str, float]) -> None:
        self.statements, self.letters = list(statements), letters
        self.names = list(spots)
        self.rims = rims_of(statements)
        flat = [value for name in self.names for value in spots[name]] + list(letters.values())
        self.start: Row = np.array(flat, dtype=float)
        reach = self.start[: 2 * len(self.names)].reshape(-1, 2)
        self.scale = float(np.abs(reach - reach.mean(axis=0)).max())
        self.steps: Row = np.array([self.scale] * 2 * len(self.names) + [max(1.0, abs(v)) for v in letters.values()])

    def measured(self, values: Row) -> Measured:
        points = {name: (float(values[2 * i]), float(values[2 * i + 1])) for i, name in enumerate(self.names)}
        letters = dict(zip(self.letters, map(float, values[2 * len(self.names) :]), strict=True))
        return Measured(points, letters, self.rims)

    def gaps(self, values: Row) -> Row:
        return np.array(measured_gaps(self.statements, self.measured(values)), dtype=float)

    def slopes(self) -> NDArray[np.float64]:
        """One row a gap, one column a coordinate or letter, each in its own measure."""
        columns = []
        for i, step in enumerate(self.steps):
            shift = np.zeros_like(self.start)
            shift[i] = STEP * step
            columns.append((self.gaps(self.start + shift) - self.gaps(self.start - shift)) / (2 * STEP))
        return np.array(columns).T.reshape(-1, len(self.start))

    def asked_slope(self, ask: str) -> Row:
        found = []
        for i, step in enumerate(self.steps):
            shift = np.zeros_like(self.start)
            shift[i] = STEP * step
            after, before = (self.measured(self.start + way * shift).size(ask) for way in (1, -1))
            found.append((after - before) / (2 * STEP))
        return np.array(found)

    def settles(self, ask: str) -> bool:
        """Whether the statements fix what is asked, to first order."""
        rows, row = self.slopes(), self.asked_slope(ask)
        if not len(rows):
            return not np.abs(row).max() > 0
        norms = np.linalg.norm(rows, axis=1, keepdims=True)
        rows = rows / np.where(norms > 1e-9, norms, 1.0)
        _, sizes, ways = np.linalg.svd(rows, full_matrices=False)
        ways = ways[sizes > 1e-6 * sizes.max()]
        left = row - ways.T @ (ways @ row)
        return float(np.linalg.norm(left)) < LOOSE * max(float(np.linalg.norm(row)), 1e-12)


def fitted_letters(statements: Sequence[str], spots: Spots, letters: dict[str, float]) -> dict[str, float]:
    """The letters' values that suit these coordinates best, from the values they have on the true figure."""
    if not letters:
        return {}
    found = dict(letters)
    for _ in range(30):
        freedom = Freedom(statements, spots, found)
        count = len(found)
        slopes = freedom.slopes()[:, -count:]
        now = freedom.gaps(freedom.start)
        move, *_ = np.linalg.lstsq(slopes, -now, rcond=None)
        found = {
            name: value + float(m) * max(1.0, abs(value)) for (name, value), m in zip(found.items(), move, strict=True)
        }
        if float(np.abs(move).max()) < 1e-12:
            break
    return found
