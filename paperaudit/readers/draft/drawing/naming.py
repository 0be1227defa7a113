"""Gives the letters of a figure to its points: a letter stands about one glyph away from its point."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from paperaudit.readers.draft.drawing.label_kinds import LabelKind
from paperaudit.readers.draft.drawing.lettering import Run
from paperaudit.readers.draft.drawing.matching import paired
from paperaudit.readers.draft.drawing.plane import apart, between, crossing, off_segment, share_of, slant, towards
from paperaudit.readers.draft.drawing.small_marks import Head
from paperaudit.readers.draft.drawing.spots import MEET, Skeleton, Spot
from paperaudit.readers.draft.page import Point

FARTHEST = 2.5
"""Sizes of print between a letter's middle and its point, at most."""
CLOSE = 1.7
"""The same where a letter stands by a line on which nothing marks its point."""
CROSSED = 0.7
"""What a line between a letter and its point costs, in sizes of print."""
COVERED = 0.6
"""What a letter costs that stands where a line leaves its point."""
PLAIN, FAINT, DOTTED, CORNERED = 0.25, 0.7, -0.35, -0.1
"""What speaks against a mere crossing and a centre without a dot, and for a dot and a corner."""
ROUGH = 1.5
"""Points that a line may pass a point by before it is said that this is rough."""
DOUBTFUL = 0.25
"""Two pairings whose costs differ by less could be either."""


@dataclass
class Letters:
    """What became of the letters: `used` stand at points, `left` at none, `doubts` says what is not certain."""

    used: list[Run] = field(default_factory=list)
    left: list[Run] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)
    repeated: tuple[str, ...] = ()


def give_letters(skeleton: Skeleton, runs: Sequence[Run], heads: Sequence[Head] = ()) -> Letters:
    """Names the spots of a skeleton by the letters among `runs`; what is drawn twice counts once.

    An N over an arrow that points up is the north and no point.
    """
    letters = _once([run for run in runs if run.kind is LabelKind.POINT])
    found = Letters()
    spots = [spot for spot in skeleton.spots if any(_may_name(letter, spot) for letter in letters)]
    costs = [[_cost(letter, spot, skeleton) for spot in spots] for letter in letters]
    columns = paired(costs, FARTHEST)
    found.doubts += _unsettled(letters, spots, costs, columns)
    for letter, column in zip(letters, columns, strict=True):
        if column is not None:
            spots[column].name = letter.text
            found.used.append(letter)
        else:
            _by_a_line(letter, skeleton, found)
    texts = [spot.name for spot in skeleton.spots if spot.name]
    _norths(skeleton, heads, texts.count("N"))
    texts = [spot.name for spot in skeleton.spots if spot.name]
    found.repeated = tuple(sorted({text for text in texts if texts.count(text) > 1}))
    skeleton.spots[:] = [spot for spot in skeleton.spots if spot.name or not spot.faint]
    for spot in skeleton.spots:
        if spot.faint:
            found.doubts.append(f"no dot marks the centre {spot.name}; its letter stands near it")
        for number in spot.lines:
            off = off_segment(spot.at, *skeleton.lines[number].ends)
            if spot.name and number not in spot.ends and off > ROUGH:
                found.doubts.append(f"whether the point {spot.name} lies on a line is drawn only roughly")
    return found


def _unsettled(
    letters: Sequence[Run], spots: Sequence[Spot], costs: Sequence[Sequence[float]], columns: Sequence[int | None]
) -> Iterator[str]:
    """Letters that fit another point nearly as well, one without a letter or one whose letter fits theirs.

    A centre that nothing marks is no such point.
    """
    owners = {column: row for row, column in enumerate(columns) if column is not None}
    for row, column in enumerate(columns):
        if column is None:
            continue
        for other, cost in enumerate(costs[row]):
            more = cost - costs[row][column]
            if other in owners:
                owner = owners[other]
                more += costs[owner][column] - costs[owner][other]
            if other != column and more < DOUBTFUL and not spots[other].faint:
                yield f"the letter {letters[row].text} could also stand at another point"
                break


def _norths(skeleton: Skeleton, heads: Sequence[Head], count: int) -> None:
    for spot in skeleton.spots:
        if spot.name != "N" or len(spot.lines) != 1 or not spot.ends:
            continue
        line = skeleton.lines[spot.lines[0]]
        upright = slant(line.direction, 90) < 3 and spot.at[1] <= min(y for _, y in line.ends) + MEET
        arrow = any(head.line == spot.lines[0] and apart(head.direction, 270) < 5 for head in heads)
        if upright and (arrow or count > 1):
            spot.name, spot.north = "", True


def _once(letters: Sequence[Run]) -> list[Run]:
    found: list[Run] = []
    for letter in letters:
        if not any(
            letter.text == other.text and math.dist(letter.middle, other.middle) < 0.25 * letter.size for other in found
        ):
            found.append(letter)
    return found


def _may_name(letter: Run, spot: Spot) -> bool:
    return math.dist(letter.middle, spot.at) <= FARTHEST * letter.size


def _cost(letter: Run, spot: Spot, skeleton: Skeleton) -> float:
    away = math.dist(letter.middle, spot.at) / letter.size
    if away > FARTHEST:
        return math.inf
    way = towards(spot.at, letter.middle)
    cost = away
    rays = skeleton.rays(spot)
    if any(apart(ray.direction, way) < 14 and ray.reach > away * letter.size for ray in rays):
        cost += COVERED
    cost += CROSSED * _crossed(spot, letter.middle, skeleton)
    if spot.dot:
        cost += DOTTED
    elif spot.faint:
        cost += FAINT
    elif not spot.ends and not spot.contacts:
        cost += PLAIN
    elif len(spot.ends) > 1:
        cost += CORNERED
    return max(cost, 0.01)


def _crossed(spot: Spot, at: Point, skeleton: Skeleton) -> int:
    """How many lines and circles that do not pass through the spot lie between it and a letter."""
    lines = sum(
        _cuts((spot.at, at), line.ends) for number, line in enumerate(skeleton.lines) if number not in spot.lines
    )
    circles = sum(
        (math.dist(spot.at, circle.centre) - circle.radius) * (math.dist(at, circle.centre) - circle.radius) < 0
        for number, circle in enumerate(skeleton.circles)
        if number not in spot.circles and circle.whole
    )
    return lines + circles


def _cuts(way: tuple[Point, Point], ends: tuple[Point, Point]) -> bool:
    met = crossing(way, ends)
    return met is not None and 0 < met[1] < 0.95 and 0 < met[2] < 1


def _by_a_line(letter: Run, skeleton: Skeleton, found: Letters) -> None:
    """A letter without a spot: it names a point of the line or the circle that it stands by, if there is one."""
    reach = CLOSE * letter.size
    lines = [(off_segment(letter.middle, *line.ends), number) for number, line in enumerate(skeleton.lines)]
    circles = [
        (abs(math.dist(letter.middle, circle.centre) - circle.radius), number)
        for number, circle in enumerate(skeleton.circles)
    ]
    near = sorted([(away, "line", at) for away, at in lines] + [(away, "circle", at) for away, at in circles])
    if not near or near[0][0] > reach:
        found.left.append(letter)
        return
    _, kind, at = near[0]
    if kind == "line":
        line = skeleton.lines[at]
        spot = Spot(between(line.start, line.end, share_of(letter.middle, *line.ends)), lines=[at])
    else:
        circle = skeleton.circles[at]
        way = math.radians(towards(circle.centre, letter.middle))
        point = circle.centre[0] + circle.radius * math.cos(way), circle.centre[1] + circle.radius * math.sin(way)
        spot = Spot(point, circles=[at])
    spot.name = letter.text
    skeleton.spots.append(spot)
    found.used.append(letter)
    found.doubts.append(f"nothing marks the point {letter.text}: it was taken to lie on the {kind} beside its letter")
