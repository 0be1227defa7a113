"""The points in a run of capital letters."""

import re

_POINT = re.compile(r"[A-Z]′*")


def points_of(text: str) -> tuple[str, ...]:
    """The points of a run of capitals.

    >>> points_of("AB′C")
    ('A', 'B′', 'C')
    """
    return tuple(_POINT.findall(text))
