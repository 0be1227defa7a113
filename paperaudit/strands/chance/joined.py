"""Probabilities of two named events: addition rule, product of independent ones, conditions, complements."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.model.derivation import Answer, Impossible, NotDetermined, NotRead
from paperaudit.model.event_task import AreEvents, ChanceIs, ChanceOf, EventName, EventsAre
from paperaudit.model.fact import Given
from paperaudit.strands.chance.left_open import left_open
from paperaudit.strands.chance.lines import Lines
from paperaudit.strands.chance.regions import BOTH, FIRST, SECOND, WHOLE, Conditional, Region, Search, region_of
from paperaudit.strands.numbers.working import require


def chance_of(task: ChanceOf, lines: Lines) -> Answer | Impossible | NotDetermined | NotRead:
    """The probability of joined events from those that are given."""
    wanted = region_of(task.of, _names(task.of, lines.givens))
    if task.of.join:
        lines.skill = "conditional probability" if task.of.join == "given" else "combined events"
    search, clash = _set_up(_names(task.of, lines.givens), lines)
    if clash is not None:
        return clash
    if not search.work(wanted):
        return left_open(search, wanted)
    found = _settled(search, wanted)
    if isinstance(found, Impossible):
        return found
    search.write(wanted)
    if not lines.steps:
        lines.say(f"{search.text(wanted)} = {search.shown(wanted)}", search.shown(wanted))
    require(found == search.known[wanted], "the probability in two ways")
    return lines.end(search.known[wanted])


def are_events(task: AreEvents, lines: Lines) -> Answer | Impossible | NotRead:
    """Whether two events are independent or mutually exclusive, by what they share."""
    search, clash = _set_up(task.events, lines)
    if clash is not None:
        return clash
    lines.skill = "combined events"
    independent = task.kind == "independent"
    needed = [BOTH, FIRST, SECOND] if independent else [BOTH]
    if not all(search.work(one) for one in needed):
        return NotRead("what is given does not settle this")
    found = _settled(search, BOTH)
    if isinstance(found, Impossible):
        return found
    for one in needed:
        search.write(one)
    named, also = search.names
    if independent:
        product = search.known[FIRST] * search.known[SECOND]
        lines.say(f"P({named}) × P({also}) = {search.shown(FIRST)} × {search.shown(SECOND)} = {lines.shown(product)}")
        yes = product == search.known[BOTH]
        under = search.known[SECOND]
        require(yes == (not under or search.known[BOTH] / under == search.known[FIRST]), "independence in two ways")
        lines.say(f"P({named} and {also}) = {search.shown(BOTH)}, so they are {'' if yes else 'not '}independent")
    else:
        yes = not search.known[BOTH]
        lines.say(
            f"P({named} and {also}) = {search.shown(BOTH)}, so they are {'' if yes else 'not '}mutually exclusive"
        )
    require(found == search.known[BOTH], "the probability in two ways")
    return Answer("yes" if yes else "no")


def _names(event: EventName, givens: tuple[Given, ...]) -> tuple[str, str]:
    """The two names of a question in alphabetical order; raises NoValue for more."""
    from paperaudit.errors import NoValue

    names = {event.first[0], *((event.second[0],) if event.second else ())}
    for fact in _facts(givens):
        if isinstance(fact, EventsAre):
            names |= set(fact.events)
        else:
            names |= {fact.of.first[0], *((fact.of.second[0],) if fact.of.second else ())}
    if len(names) > 2:
        raise NoValue("three events")
    first, *rest = sorted(names)
    return first, rest[0] if rest else "another event"


def _facts(givens: tuple[Given, ...]) -> Iterator[ChanceIs | EventsAre]:
    for given in givens:
        yield from (fact for fact in given.facts if isinstance(fact, ChanceIs | EventsAre))


def _set_up(names: tuple[str, str], lines: Lines) -> tuple[Search, Impossible | None]:
    search = Search(names, lines)
    for given in lines.givens:
        for fact in _facts((given,)):
            if isinstance(fact, EventsAre):
                search.independent |= fact.kind == "independent"
                search.exclusive |= fact.kind == "mutually exclusive"
                continue
            lines.decimals |= "/" not in fact.text
            if not 0 <= fact.value <= 1:
                return search, Impossible((given.text,), (f"a probability of {fact.value} is not from 0 to 1: false",))
            region = region_of(fact.of, names)
            if search.known.get(region, fact.value) != fact.value:
                return search, Impossible((given.text,), (f"two values for {search.text(region)}: false",))
            search.learn(region, fact.value, "")
    if search.exclusive:
        search.learn(BOTH, Fraction(0), "")
        lines.say(f"{search.text(BOTH)} = 0, as they are mutually exclusive", "0", starts=True)
    return search, None


def _settled(search: Search, wanted: Region | Conditional) -> Fraction | Impossible | None:
    """The probability a second way: the four parts of the whole are found, every given is put to them."""
    for region in (FIRST, SECOND, BOTH):
        search.work(region)
    values = search.known
    if not {FIRST, SECOND, BOTH} <= set(values):
        # A single event and its opposite, or one condition: what is known must fit P(A and B) = P(A | B) P(B).
        for pair in [one for one in values if isinstance(one, tuple)]:
            both, condition = pair[0] & pair[1], pair[1]
            if {both, condition} <= set(values):
                require(values[both] == values[pair] * values[condition], "the product of the condition")
        return (
            1 - values[WHOLE - wanted] if isinstance(wanted, frozenset) and WHOLE - wanted in values else values[wanted]
        )
    parts: dict[int, Fraction] = {1: values[BOTH], 2: values[FIRST] - values[BOTH], 3: values[SECOND] - values[BOTH]}
    parts[4] = 1 - sum(parts.values(), Fraction(0))
    texts = tuple(given.text for given in search.lines.givens)
    if any(value < 0 for value in parts.values()):
        least = next(frozenset((at,)) for at, value in parts.items() if value < 0)
        value = search.lines.shown(parts[min(least)])
        return Impossible(texts, (f"{search.text(least)} would be {value}", "a probability below 0: false"))

    def weight(of: Region | Conditional) -> Fraction:
        if isinstance(of, tuple):
            return weight(of[0] & of[1]) / (weight(of[1]) or 1)
        return sum((parts[at] for at in of), Fraction(0))

    for given, (how, _) in search.how.items():
        if not how and weight(given) != values[given]:
            said = f"{search.text(given)} would be {search.lines.shown(weight(given))}"
            return Impossible(texts, (said, f"{search.text(given)} = {search.shown(given)}: false"))
    if search.independent and values[BOTH] != values[FIRST] * values[SECOND]:
        return Impossible(texts, (f"{search.shown(FIRST)} × {search.shown(SECOND)} = {search.shown(BOTH)}: false",))
    return weight(wanted)
