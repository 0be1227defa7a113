"""The regions of two events and the rules by which one probability follows from others."""

from collections.abc import Callable
from fractions import Fraction

from paperaudit.model.event_task import EventName
from paperaudit.strands.chance.lines import Lines

Region = frozenset[int]
"""Parts of the whole: 1 both events, 2 the first alone, 3 the second alone, 4 neither."""

WHOLE, BOTH, FIRST, SECOND, EITHER = (frozenset(one) for one in ((1, 2, 3, 4), (1,), (1, 2), (1, 3), (1, 2, 3)))
ONLY, OTHER_ONLY = frozenset((2,)), frozenset((3,))
Conditional = tuple[Region, Region]


class Search:
    """What is known of the regions of two events, each value with the line that gives it and what that rests on."""

    def __init__(self, names: tuple[str, str], lines: Lines) -> None:
        self.names, self.lines = names, lines
        self.known: dict[Region | Conditional, Fraction] = {}
        self.how: dict[Region | Conditional, tuple[str, tuple[Region | Conditional, ...]]] = {}
        self.independent = self.exclusive = False

    def text(self, region: Region | Conditional) -> str:
        """P(A and B) in words."""
        if isinstance(region, tuple):
            return f"P({self._name(region[0])} | {self._name(region[1])})"
        return f"P({self._name(region)})"

    def _name(self, region: Region) -> str:
        one, other = self.names
        named = {
            BOTH: f"{one} and {other}", FIRST: one, SECOND: other, EITHER: f"{one} or {other}",
            ONLY: f"{one} and not {other}", OTHER_ONLY: f"{other} and not {one}",
            frozenset((4,)): f"not {one} and not {other}", frozenset((3, 4)): f"not {one}",
            frozenset((2, 4)): f"not {other}", frozenset((2, 3)): f"exactly one of {one} and {other}",
            frozenset((2, 3, 4)): f"not both {one} and {other}", WHOLE: "any", frozenset[int](): "none",
        }  # fmt: skip
        return named.get(region, " or ".join(map(str, sorted(region))))

    def learn(self, region: Region | Conditional, value: Fraction, how: str, *rests: Region | Conditional) -> bool:
        """Keeps a value that is new."""
        if region in self.known:
            return False
        self.known[region] = value
        self.how[region] = (how, rests)
        return True

    def shown(self, region: Region | Conditional) -> str:
        """The value of a region in print."""
        return self.lines.shown(self.known[region])

    def work(self, wanted: Region | Conditional) -> bool:
        """Applies the rules until what is wanted is known or nothing new follows."""
        for _ in range(12):
            if wanted in self.known:
                return True
            if not any(rule(self, wanted) for rule in RULES):
                return wanted in self.known
        return wanted in self.known

    def write(self, region: Region | Conditional) -> None:
        """The lines that lead to a value, each once."""
        how, rests = self.how[region]
        for rest in rests:
            self.write(rest)
        if how and not any(step.statement.startswith(f"{self.text(region)} =") for step in self.lines.steps):
            self.lines.say(f"{self.text(region)} = {how}", starts=not self.lines.steps)
            self.lines.say(f"= {self.shown(region)}", self.shown(region))


def _complement(search: Search, wanted: Region | Conditional) -> bool:
    new = False
    for region in [one for one in search.known if isinstance(one, frozenset)]:
        other = WHOLE - region
        new |= search.learn(other, 1 - search.known[region], f"1 − {search.shown(region)}", region)
    return new


def _addition(search: Search, wanted: Region | Conditional) -> bool:
    """P(A or B) = P(A) + P(B) − P(A and B), for any of the four."""
    known = search.known
    new = False
    if {FIRST, SECOND, BOTH} <= set(known):
        value = known[FIRST] + known[SECOND] - known[BOTH]
        how = f"{search.shown(FIRST)} + {search.shown(SECOND)} − {search.shown(BOTH)}"
        new |= search.learn(EITHER, value, how, FIRST, SECOND, BOTH)
    if {FIRST, SECOND, EITHER} <= set(known):
        value = known[FIRST] + known[SECOND] - known[EITHER]
        how = f"{search.shown(FIRST)} + {search.shown(SECOND)} − {search.shown(EITHER)}"
        new |= search.learn(BOTH, value, how, FIRST, SECOND, EITHER)
    for one, other in ((FIRST, SECOND), (SECOND, FIRST)):
        if {one, EITHER, BOTH} <= set(known):
            value = known[EITHER] - known[one] + known[BOTH]
            how = f"{search.shown(EITHER)} − {search.shown(one)} + {search.shown(BOTH)}"
            new |= search.learn(other, value, how, EITHER, one, BOTH)
    return new


def _parts(search: Search, wanted: Region | Conditional) -> bool:
    """An event is what it shares with the other and the rest of it."""
    new = False
    exactly_one = frozenset((2, 3))
    wholes = ((FIRST, BOTH, ONLY), (SECOND, BOTH, OTHER_ONLY), (EITHER, BOTH, exactly_one),
              (exactly_one, ONLY, OTHER_ONLY), (EITHER, FIRST, OTHER_ONLY), (EITHER, SECOND, ONLY))  # fmt: skip
    for whole, part, rest in wholes:
        for one, other in ((part, rest), (rest, part)):
            if {whole, one} <= set(search.known):
                value = search.known[whole] - search.known[one]
                new |= search.learn(other, value, f"{search.shown(whole)} − {search.shown(one)}", whole, one)
        if {part, rest} <= set(search.known):
            value = search.known[part] + search.known[rest]
            new |= search.learn(whole, value, f"{search.shown(part)} + {search.shown(rest)}", part, rest)
    return new


def _independent(search: Search, wanted: Region | Conditional) -> bool:
    if not search.independent:
        return False
    known, new = search.known, False
    if {FIRST, SECOND} <= set(known):
        how = f"{search.shown(FIRST)} × {search.shown(SECOND)}"
        new |= search.learn(BOTH, known[FIRST] * known[SECOND], how, FIRST, SECOND)
    for one, other in ((FIRST, SECOND), (SECOND, FIRST)):
        if {one, BOTH} <= set(known) and known[one]:
            how = f"{search.shown(BOTH)} ÷ {search.shown(one)}"
            new |= search.learn(other, known[BOTH] / known[one], how, BOTH, one)
        if {one, EITHER} <= set(known) and known[one] != 1:
            how = f"({search.shown(EITHER)} − {search.shown(one)})/(1 − {search.shown(one)})"
            new |= search.learn(other, (known[EITHER] - known[one]) / (1 - known[one]), how, EITHER, one)
    return new


def _conditions(search: Search, wanted: Region | Conditional) -> bool:
    """P(A | B) = P(A and B) ÷ P(B), for any of the three."""
    new = False
    pairs = [one for one in (*search.known, wanted) if isinstance(one, tuple)]
    for of, given in pairs:
        shared = of & given
        if {shared, given} <= set(search.known) and search.known[given]:
            how = f"{search.shown(shared)} ÷ {search.shown(given)}"
            new |= search.learn((of, given), search.known[shared] / search.known[given], how, shared, given)
        if (of, given) not in search.known:
            continue
        if given in search.known:
            how = f"{search.shown((of, given))} × {search.shown(given)}"
            new |= search.learn(shared, search.known[(of, given)] * search.known[given], how, (of, given), given)
        if shared in search.known and search.known[(of, given)]:
            how = f"{search.shown(shared)} ÷ {search.shown((of, given))}"
            new |= search.learn(given, search.known[shared] / search.known[(of, given)], how, shared, (of, given))
    return new


RULES: tuple[Callable[[Search, Region | Conditional], bool], ...] = (
    _independent, _conditions, _addition, _parts, _complement,
)  # fmt: skip


def region_of(event: EventName, names: tuple[str, str]) -> Region | Conditional:
    """The region that an event is, or the pair of regions of a condition."""

    def single(term: tuple[str, bool]) -> Region:
        region = FIRST if term[0] == names[0] else SECOND
        return region if term[1] else WHOLE - region

    one = single(event.first)
    if event.second is None:
        return one
    other = single(event.second)
    if event.join == "given":
        return one, other
    joined = one & other if event.join == "and" else one ^ other if event.join == "xor" else one | other
    return WHOLE - joined if event.negated else joined
