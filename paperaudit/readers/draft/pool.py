"""The signs of a region by where they are, so that those near a place are found without looking at all of them."""

from bisect import bisect_left, insort
from collections import defaultdict
from collections.abc import Iterable, Iterator
from itertools import islice

from paperaudit.readers.draft.sign import Sign

MOST_NEAR = 400
"""Signs near one place; where there are more, no print can be read there."""
_BAND = 8.0
"""Points of height that one list holds."""


def _across(sign: Sign) -> tuple[float, float, float, str]:
    return sign.middle, sign.axis, sign.size, sign.text


class Pool:
    """Signs that can be taken out and put in; `near` gives those of a window."""

    def __init__(self, signs: Iterable[Sign]) -> None:
        self._bands: dict[int, list[Sign]] = defaultdict(list)
        self._kept: set[Sign] = set()
        for sign in signs:
            self._bands[int(sign.axis // _BAND)].append(sign)
            self._kept.add(sign)
        for band in self._bands.values():
            band.sort(key=_across)

    def near(self, left: float, right: float, top: float, bottom: float) -> Iterator[Sign]:
        """The signs with their middle from `left` to `right`, their axis from `top` to `bottom`."""
        return islice(self._near(left, right, top, bottom), MOST_NEAR)

    def _near(self, left: float, right: float, top: float, bottom: float) -> Iterator[Sign]:
        for number in range(int(top // _BAND), int(bottom // _BAND) + 1):
            band = self._bands.get(number)
            if not band:
                continue
            at = bisect_left(band, left, key=lambda sign: sign.middle)
            while at < len(band) and band[at].middle <= right:
                if band[at] in self._kept and top <= band[at].axis <= bottom:
                    yield band[at]
                at += 1

    def replace(self, old: Iterable[Sign], new: Sign) -> None:
        """Takes `old` out and puts `new` in."""
        self._kept.difference_update(old)
        self._kept.add(new)
        insort(self._bands[int(new.axis // _BAND)], new, key=_across)

    def all(self) -> list[Sign]:
        """What is left, from left to right."""
        return sorted(self._kept, key=lambda sign: sign.key)
