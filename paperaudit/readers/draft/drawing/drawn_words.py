"""Writes what is drawn: segments, points in order along lines, rays, circles, tangents."""

import math
from collections.abc import Sequence

from paperaudit.model.place import Box
from paperaudit.readers.draft.drawing.drawn_figure import DrawnFact
from paperaudit.readers.draft.drawing.plane import off_line, share_of, towards
from paperaudit.readers.draft.drawing.rounds import Bow
from paperaudit.readers.draft.drawing.spots import Spot, touches
from paperaudit.readers.draft.drawing.wording_pen import WordingPen, square_round
from paperaudit.readers.draft.page import box_around

BEYOND = 0.9
"""Sizes of print by which a line goes on beyond its last letter, at least, to be called a ray."""
CERTAIN = 0.5
"""Points between a line and a circle that it touches, at most, for the contact to be certain."""


class DrawnWords(WordingPen):
    """Writes the statements about what is drawn."""

    def write(self) -> None:
        """Lines and circles, by the letters that their points have by now."""
        self._lines()
        self._circles()

    def _lines(self) -> None:
        sides: list[str] = []
        boxes: list[Box] = []
        for number, line in enumerate(self.skeleton.lines):
            spots = self.skeleton.on_line(number)
            named = [spot for spot in spots if spot.name]
            if len(named) < 2:
                continue
            names = [spot.name for spot in named]
            box = box_around([(*spot.at, *spot.at) for spot in named])
            box = box_around([square_round((box[0], box[1]), 1), square_round((box[2], box[3]), 1)])
            if len(named) > 2:
                self.written.figure.append(DrawnFact("-".join(names), box))
                continue
            beyond = [math.dist(line.start, named[0].at), math.dist(line.end, named[-1].at)]
            goes_on = [reach > BEYOND * self.print_size for reach in beyond]
            if all(goes_on):
                self.written.figure.append(DrawnFact(f"line {''.join(names)}", box))
            elif any(goes_on):
                ordered = names if goes_on[1] else names[::-1]
                self.written.figure.append(DrawnFact(f"ray {''.join(ordered)}", box))
            else:
                sides.append("".join(sorted(names)))
                boxes.append(box)
        if sides:
            word = "segments" if len(sides) > 1 else "segment"
            self.written.figure.insert(0, DrawnFact(f"{word} {', '.join(sides)}", box_around(boxes)))

    def _circles(self) -> None:
        for number, circle in enumerate(self.skeleton.circles):
            centre = next((spot for spot in self.skeleton.spots if spot.name and number in spot.centre_of), None)
            on = [spot for spot in self.skeleton.spots if spot.name and number in spot.circles]
            names = _round_circle(on, circle)
            self._circle(circle, centre, names)
            for spot in self.skeleton.spots:
                if number in spot.circles:
                    for line in sorted(spot.contacts):
                        self._tangent(spot, line, number, centre)

    def _circle(self, circle: Bow, centre: Spot | None, names: Sequence[str]) -> None:
        box = square_round(circle.centre, circle.radius)
        sector = not circle.whole and len(names) == 2 and centre is not None and circle.sweep < 178
        if centre is not None:
            through = f" through {_listed(names)}" if names else ""
            self.written.figure.append(DrawnFact(f"circle with centre {centre.name}{through}", box))
            if sector:
                text = f"{centre.name}{''.join(sorted(names))} is a sector of the circle with centre {centre.name}"
                self.written.figure.append(DrawnFact(text, box))
        elif len(names) > 1 or (names and circle.whole):
            verb = "lies" if len(names) == 1 else "lie"
            self.written.figure.append(DrawnFact(f"{_listed(names)} {verb} on the circle", box))
        else:
            what = "circle" if circle.whole else "arc of a circle"
            self.written.doubts.append(f"no letter stands at the centre of a {what} and none on it")

    def _tangent(self, spot: Spot, number: int, circle: int, centre: Spot | None) -> None:
        line, ring = self.skeleton.lines[number], self.skeleton.circles[circle]
        if not touches(line, ring) or sum(circle in other.circles for other in self.skeleton.on_line(number)) > 1:
            return
        named = [other for other in self.skeleton.on_line(number) if other.name and other is not spot]
        of = f" circle {centre.name}" if centre is not None else " the circle"
        if not named or not spot.name:
            letters = spot.name or "".join(other.name for other in named[:2])
            self.written.doubts.append(f"a line at {letters or 'a point without a letter'} seems to touch{of}")
            return
        off = abs(abs(off_line(ring.centre, *line.ends)) - ring.radius)
        ends = [named[0]]
        if share_of(spot.at, named[0].at, named[-1].at) > 0.02 and len(named) > 1:
            ends = (
                [named[0], named[-1]]
                if math.dist(named[0].at, named[-1].at) > math.dist(named[0].at, spot.at)
                else ends
            )
        name = ends[0].name + (ends[1].name if len(ends) > 1 else spot.name)
        box = box_around([square_round(spot.at, self.print_size / 2), square_round(ends[0].at, 1)])
        self.written.figure.append(DrawnFact(f"{name} is a tangent to{of} at {spot.name}", box))
        if any(other.centre_of for other in named):
            self.written.doubts.append(f"whether {name} touches{of} or only comes out so cannot be told")
        if off > CERTAIN + 0.003 * ring.radius:
            self.written.doubts.append(f"whether {name} touches{of} at {spot.name} is drawn only roughly")


def _round_circle(on: Sequence[Spot], circle: Bow) -> list[str]:
    """The letters on a circle in order round it, from the first of the alphabet towards the earlier neighbour."""
    ordered = sorted(on, key=lambda spot: (towards(circle.centre, spot.at) - circle.start) % 360)
    names = [spot.name for spot in ordered]
    if not circle.whole or len(names) < 3:
        return sorted(names) if circle.whole else names
    first = names.index(min(names))
    names = names[first:] + names[:first]
    return names if names[1] < names[-1] else [names[0], *names[:0:-1]]


def _listed(names: Sequence[str]) -> str:
    return " and ".join(filter(None, (", ".join(names[:-1]), names[-1])))
