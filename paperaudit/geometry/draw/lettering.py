"""Settles where every text stands: each at the best of the places that it wishes for, clear of all that is drawn."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from paperaudit.geometry.draw.elements import Box, Label, LabelKind, Stroke, distance
from paperaudit.geometry.draw.ground import Ground, covered_length, shared
from paperaudit.geometry.draw.type_metrics import baseline_under, box_round, text_extent
from paperaudit.geometry.figure.plane import Spot

PARTED = 7.0
MISTAKEN = 2.5
BEHIND_ARC = 2.5
CLOSER = 0.8
"""What it costs to stand behind a line, clearly nearer (by this share) to another's arc, or behind another arc."""
NEARER, BETWEEN = 1.3, 1.3
"""What it costs a length that another line is hardly farther (in terms of this) from than its own segment."""
ACROSS_CIRCLE = 1.0
"""What it costs a size to stand on the other side of a circle."""
FINE = 0.6
"""A text may cover this much without another place being looked for: it is no more than its margin."""
ROUNDS = 3
"""How often texts that cover something are placed anew, others giving way."""
SIZES_OF_SOMETHING = ("size", "asked")
ROW, IN_A_ROW = 9.0, 2.5
"""How near two sizes in one row may be before they look like one, and what that costs."""
HIDDEN_TELLS = 3.0
CROSSED_LEADER = 3.0
"""How much more it tells that something is hidden, once texts give way; what a thin line through a text costs."""


@dataclass(frozen=True, slots=True)
class Place:
    """A spot for a text, what speaks against it (in units of covered length), and a thin line to what it names."""

    centre: Spot
    penalty: float = 0.0
    leader: tuple[Spot, Spot] | None = None


@dataclass(frozen=True, slots=True)
class Wish:
    """A text and the places where it may stand, best first.

    `owner` is what the text belongs to: its point, the middle of its arc or side; `rivals` are other
    such spots, which it should not seem to belong to.
    """

    text: str
    kind: LabelKind
    places: tuple[Place, ...]
    owner: Spot
    rivals: tuple[Spot, ...] = ()
    beside: tuple[Spot, Spot] | None = None

    @property
    def extent(self) -> tuple[float, float]:
        """Width and height of the text."""
        return text_extent(self.text, self.kind)

    def box(self, place: Place) -> Box:
        """The box of the text at a place."""
        return box_round(place.centre, self.extent)


@dataclass(slots=True)
class Lettering:
    """The texts of a figure, settled one by one; `costs` says how much each of them hides."""

    ground: Ground
    wishes: list[Wish] = field(default_factory=list)
    places: dict[int, Place] = field(default_factory=dict)
    costs: dict[int, float] = field(default_factory=dict)

    @property
    def covered(self) -> float:
        """How much is hidden in all."""
        return sum(self.costs.values())

    @property
    def labels(self) -> tuple[Label, ...]:
        """The texts where they were settled."""
        return tuple(
            Label(
                wish.text,
                place.centre,
                wish.box(place),
                wish.kind,
                place.centre[1] + baseline_under(wish.text, wish.kind),
            )
            for number, wish in enumerate(self.wishes)
            for place in (self.places[number],)
        )

    @property
    def leaders(self) -> tuple[Stroke, ...]:
        """The thin lines from texts to what they name."""
        return tuple(Stroke(place.leader, "thin") for place in self.places.values() if place.leader)

    def settle(self, wishes: Iterable[Wish]) -> None:
        """Gives every wish its best place, the ones with least choice first as they come; then mends what clashes."""
        self.wishes = list(wishes)
        for number in range(len(self.wishes)):
            self._put(number)
        for _ in range(ROUNDS):
            clashing = [number for number, cost in self.costs.items() if cost > FINE]
            if not clashing:
                break
            for number in clashing:
                self._put(number, HIDDEN_TELLS)
                if self.costs[number] > FINE:
                    self._push(number)

    def _put(self, number: int, tells: float = 1.0) -> None:
        self.places[number], self.costs[number] = self._best(number, tells)

    def _push(self, number: int) -> None:
        """Takes a place where one other text alone is in the way, if that one finds a place that is not much worse."""
        wish = self.wishes[number]
        best, least = (self.places, self.costs), self._worth(number)
        kept = dict(self.places), dict(self.costs)
        for place in wish.places:
            if place.leader or self.ground.covered(wish.box(place)) > FINE:
                continue
            inside = [other for other, box, _ in self._others(number) if any(shared(box, wish.box(place)))]
            if len(inside) != 1:
                continue
            (other,) = inside
            before = self._worth(other)
            self.places[number] = place
            self._put(other)
            self.costs[number] = self._hidden(number, place)
            worth = self._worth(number) + self._worth(other) - before
            if worth < least:
                best, least = (dict(self.places), dict(self.costs)), worth
            self.places, self.costs = dict(kept[0]), dict(kept[1])
        self.places, self.costs = best

    def _worth(self, number: int) -> float:
        """What speaks against the place of a text as it is; what it hides counts more here than how far off it is."""
        place = self.places[number]
        return HIDDEN_TELLS * self.costs[number] + place.penalty + self._doubt(self.wishes[number], place)

    def _others(self, number: int) -> Iterator[tuple[int, Box, tuple[Spot, Spot] | None]]:
        for other, place in self.places.items():
            if other != number:
                yield other, self.wishes[other].box(place), place.leader

    def _best(self, number: int, tells: float) -> tuple[Place, float]:
        wish = self.wishes[number]
        best, least, hidden = wish.places[0], math.inf, math.inf
        for place in wish.places:
            if place.penalty >= least:
                continue
            against = place.penalty + self._doubt(wish, place) + self._mistakable(number, place)
            if against >= least:
                continue
            covered = self._hidden(number, place, (least - against) / tells)
            if tells * covered + against < least:
                best, least, hidden = place, tells * covered + against, covered
            if covered < FINE and against == 0:
                break
        return best, hidden

    def _hidden(self, number: int, place: Place, enough: float = math.inf) -> float:
        """What a text at a place would hide, of drawn lines and of other texts; its thin line counts too."""
        others = list(self._others(number))
        leads = [lead for _, _, lead in others if lead]
        box = self.wishes[number].box(place)
        total = self.ground.covered(box, [box for _, box, _ in others], leads, enough)
        if place.leader:
            total += CROSSED_LEADER * sum(covered_length(box, *place.leader) > 0 for _, box, _ in others)
        return total

    def _mistakable(self, number: int, place: Place) -> float:
        """What it costs a size to stand in one row with another, as if the two were one."""
        if self.wishes[number].kind not in SIZES_OF_SOMETHING:
            return 0.0
        left, top, right, bottom = self.wishes[number].box(place)
        row = (left - ROW, top, right + ROW, bottom)
        others = [box for other, box, _ in self._others(number) if self.wishes[other].kind in SIZES_OF_SOMETHING]
        return IN_A_ROW if any(any(shared(row, box)) for box in others) else 0.0

    def _doubt(self, wish: Wish, place: Place) -> float:
        """What a place costs because the text would seem to belong to something else."""
        if place.leader:
            return 0.0
        away = math.dist(place.centre, wish.owner)
        doubt = MISTAKEN if any(math.dist(place.centre, rival) < CLOSER * away for rival in wish.rivals) else 0.0
        if wish.beside and self.ground.nearest(place.centre, wish.beside) < NEARER * distance(
            place.centre, *wish.beside
        ):
            doubt += BETWEEN
        if self.ground.is_parted(wish.owner, place.centre):
            doubt += PARTED
        if self.ground.is_across_circle(wish.owner, place.centre):
            doubt += PARTED if wish.kind == "letter" else ACROSS_CIRCLE
        if wish.kind != "letter" and self.ground.is_behind_arc(wish.owner, place.centre):
            doubt += BEHIND_ARC
        return doubt


def total_box(boxes: Iterable[Box]) -> Box:
    """The smallest box round several."""
    every = list(boxes)
    return (
        min(box[0] for box in every),
        min(box[1] for box in every),
        max(box[2] for box in every),
        max(box[3] for box in every),
    )
