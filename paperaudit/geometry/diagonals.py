"""Diagonals that a pupil draws in: those of the quadrilaterals that the paper names."""

from dataclasses import replace

from paperaudit.geometry.arrangement import Arrangement
from paperaudit.geometry.constructions import MOST_POINTS, Extended
from paperaudit.geometry.theorems import instances

MOST_JOINED = 4


def with_diagonals(arrangement: Arrangement) -> Extended | None:
    """Joins the opposite corners of named quadrilaterals; None where they are all joined."""
    lines = list(arrangement.lines)
    words: dict[str, str] = {}
    joined = 0
    for shape, _ in arrangement.figure.shapes:
        if len(shape.points) != 4 or len(arrangement.figure.points) > MOST_POINTS:
            continue
        a, b, c, d = shape.points
        for start, end in ((a, c), (b, d)):
            if joined < MOST_JOINED and not any(start in line and end in line for line in lines):
                joined += 1
                lines.append((start, end))
                text = f"Join {start}{end}"
                words.update({start + end: text, end + start: text})
    if not words:
        return None
    grown = Arrangement(replace(arrangement.figure, lines=tuple(lines)), arrangement.drawing)
    return Extended(grown, tuple(instances(grown)), words)
