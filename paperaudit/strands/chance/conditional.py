"""The probability of an event of an experiment where another is known to happen."""

from collections.abc import Callable
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.sample_space import holds, meets, outcomes, where_known
from paperaudit.model.chance_task import Both, Condition, Event, Experiment, InTurn, Is, Single, Source
from paperaudit.strands.chance.lines import Lines, share
from paperaudit.strands.chance.words import said
from paperaudit.strands.numbers.working import require

Valued = Callable[[Experiment, Event, Lines], Fraction]
_MOST_LISTED = 36
_MOST_NAMED = 13


def conditional(experiment: Experiment, event: Event, known: Event, lines: Lines, valued: Valued) -> Fraction:
    """P(event | known); raises NoValue where the known event cannot happen or no tree shows both."""
    lines.skill = "conditional probability"
    both, under = where_known(experiment, event, known)
    if not under:
        raise NoValue("what is known to happen cannot happen")
    if isinstance(event, Single) and isinstance(known, Single):
        value = _within(experiment.draws[0], event.condition, known.condition, lines)
    elif len(listed := [drawn for drawn, _ in outcomes(experiment) if holds(known, drawn)]) <= _MOST_LISTED and all(
        ways == 1 for _, ways in outcomes(experiment)
    ):
        good = [drawn for drawn in listed if holds(event, drawn)]
        for word, some in (("known", listed), ("of these, favourable", good)):
            text = ", ".join(f"({', '.join(one.name for one in drawn)})" for drawn in some)
            lines.say(f"{word}: {text or 'none'}", str(len(some)), starts=word == "known")
        value = _share(len(good), len(listed), lines)
    else:
        value = _by_quotient(experiment, event, known, lines, valued)
    require(Fraction(both, under) == value, "the probability in two ways")
    return value


def _share(part: int, whole: int, lines: Lines) -> Fraction:
    value = Fraction(part, whole)
    lines.say(f"probability = {share(part, whole)}", share(part, whole))
    if lines.shown(value) != share(part, whole):
        lines.say(f"= {lines.shown(value)}", lines.shown(value))
    return value


def _within(source: Source, condition: Condition, known: Condition, lines: Lines) -> Fraction:
    """One draw: only the outcomes that meet what is known are looked at."""
    under = [thing for thing in source.things if meets(known, thing)]
    good = [thing for thing in under if meets(condition, thing)]
    sizes = [sum(thing.count for thing in some) for some in (good, under)]
    if len(under) <= _MOST_NAMED and all(thing.count == 1 for thing in under):
        lines.say(f"{said(known)}: {', '.join(thing.name for thing in under)}", str(sizes[1]), starts=True)
        named = ", ".join(thing.name for thing in good) or "none"
        lines.say(f"of these {said(condition)}: {named}", str(sizes[0]))
    else:
        lines.say(f"{said(known)}: {sizes[1]}", str(sizes[1]), starts=True)
        lines.say(f"of these {said(condition)}: {sizes[0]}", str(sizes[0]))
    return _share(sizes[0], sizes[1], lines)


def _by_quotient(experiment: Experiment, event: Event, known: Event, lines: Lines, valued: Valued) -> Fraction:
    """P(both) ÷ P(known), where the two together are one event of the tree."""
    joint = _joint(experiment, event, known)
    if joint is None:
        raise NoValue("no tree shows both events at once")
    settled = _next_draw(experiment, event, known, lines)
    if settled is not None:
        return settled
    under = valued(experiment, known, lines)
    both = valued(experiment, joint, lines)
    value = both / under
    lines.skill = "conditional probability"
    lines.say(f"P(both) ÷ P(known) = {lines.shown(both)} ÷ {lines.shown(under)}")
    lines.say(f"= {lines.shown(value)}", lines.shown(value))
    return value


def _joint(experiment: Experiment, event: Event, known: Event) -> Event | None:
    if isinstance(event, InTurn) and isinstance(known, InTurn):
        return InTurn(tuple(_both(one, other) for one, other in zip(event.conditions, known.conditions, strict=True)))
    if all(holds(known, drawn) for drawn, _ in outcomes(experiment) if holds(event, drawn)):
        return event
    return None


def _both(one: Condition, other: Condition) -> Condition:
    if one == Is("any"):
        return other
    return one if other == Is("any") else Both((one, other))


def _next_draw(experiment: Experiment, event: Event, known: Event, lines: Lines) -> Fraction | None:
    """The second draw where the first is known: what is left in the bag says it at once."""
    if not isinstance(event, InTurn) or not isinstance(known, InTurn) or len(experiment.draws) != 2:
        return None
    if known.conditions[1] != Is("any") or event.conditions[0] != Is("any"):
        return None
    gone, wanted, source = known.conditions[0], event.conditions[1], experiment.draws[1]
    first = [thing for thing in source.things if meets(gone, thing)]
    good = sum(thing.count for thing in source.things if meets(wanted, thing))
    if experiment.replaced:
        return _share(good, source.size, lines)
    fits = {meets(wanted, thing) for thing in first}
    if len(fits) != 1:
        return None
    left = good - 1 if fits == {True} else good
    lines.say(f"left: {source.size} − 1 = {source.size - 1}, {said(wanted)}: {left}", str(left), starts=True)
    return _share(left, source.size - 1, lines)
