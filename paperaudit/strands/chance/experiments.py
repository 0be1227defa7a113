"""The probability of an event of an experiment: favourable outcomes, or paths of a tree diagram."""

from dataclasses import replace
from fractions import Fraction
from itertools import combinations, permutations, product
from math import comb, factorial, prod

from paperaudit.errors import NoValue
from paperaudit.maths.sample_space import by_enumeration, meets, outcomes, score
from paperaudit.model.chance_task import (
    Alike,
    Both,
    Condition,
    Either,
    Event,
    Experiment,
    InTurn,
    Is,
    OutcomesOf,
    ProbabilityOf,
    Score,
    Single,
    Source,
    Thing,
    Times,
    Together,
)
from paperaudit.model.derivation import Answer
from paperaudit.strands.chance.conditional import conditional
from paperaudit.strands.chance.lines import Lines, share
from paperaudit.strands.chance.words import said
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import shown

MOST_LISTED = 40
Path = tuple[Condition, ...]


def probability(task: ProbabilityOf, lines: Lines) -> Answer:
    """The probability, or the number of times that the event is to be expected."""
    experiment = task.experiment
    if task.known is not None:
        return lines.end(conditional(experiment, task.event, task.known, lines, _value))
    value = _value(experiment, task.event, lines)
    require(by_enumeration(experiment, task.event) == value, "the probability in two ways")
    if task.trials:
        expected = value * task.trials
        lines.say(f"{lines.shown(value)} × {task.trials} = {shown(expected)}", shown(expected))
        lines.decimals = True
        return lines.end(expected)
    return lines.end(value)


def outcomes_of(task: OutcomesOf, lines: Lines) -> Answer:
    """How many outcomes there are: the numbers of outcomes of the draws multiplied."""
    sizes = [draw.size - (at if not task.experiment.replaced else 0) for at, draw in enumerate(task.experiment.draws)]
    value = prod(sizes)
    lines.skill = "combined events" if len(sizes) > 1 else lines.skill
    lines.say(" × ".join(map(str, sizes)) + (f" = {value}" if len(sizes) > 1 else ""), str(value), starts=True)
    require(sum(ways for _, ways in outcomes(task.experiment)) == value, "the number of outcomes in two ways")
    return lines.end(Fraction(value))


def _value(experiment: Experiment, event: Event, lines: Lines) -> Fraction:
    if isinstance(event, Single):
        return _single(experiment.draws[0], event.condition, lines)
    lines.skill = "combined events"
    if isinstance(event, Score):
        return _scores(experiment, event, lines)
    if _whole_of_none(event, experiment):
        assert isinstance(event, Times)
        none = _sum_of_paths(experiment, [(_opposite(event.condition),) * len(experiment.draws)], [1], lines)
        lines.say(f"P(at least one {said(event.condition)}) = 1 − {lines.shown(none)}", starts=False)
        lines.say(f"= {lines.shown(1 - none)}", lines.shown(1 - none))
        return 1 - none
    paths, orders = _paths(experiment, event)
    return _sum_of_paths(experiment, paths, orders, lines)


def _whole_of_none(event: Event, experiment: Experiment) -> bool:
    draws = experiment.draws
    return isinstance(event, Times) and event.least == 1 and event.most == len(draws) and len(draws) > 1


def _opposite(condition: Condition) -> Condition:
    match condition:
        case Either(options):
            return Both(tuple(map(_opposite, options)))
        case Both(conditions):
            return Either(tuple(map(_opposite, conditions)))
    return replace(condition, negated=not condition.negated)


def _single(source: Source, condition: Condition, lines: Lines) -> Fraction:
    good = [thing for thing in source.things if meets(condition, thing)]
    part, whole = sum(thing.count for thing in good), source.size
    if source.kind in ("dice", "numbers", "spinner") and whole <= MOST_LISTED and good:
        lines.say(f"favourable: {', '.join(thing.name for thing in good)}", starts=True)
    elif len(source.things) > 1 and source.kind == "bag":
        lines.say(
            f"total: {' + '.join(str(thing.count) for thing in source.things)} = {whole}", str(whole), starts=True
        )
        if len(good) > 1:
            lines.say(f"favourable: {' + '.join(str(thing.count) for thing in good)} = {part}", str(part))
    value = Fraction(part, whole)
    lines.say(f"P({said(condition)}) = {share(part, whole)}", share(part, whole), starts=not lines.steps)
    if lines.shown(value) != share(part, whole):
        lines.say(f"= {lines.shown(value)}", lines.shown(value))
    return value


def _scores(experiment: Experiment, event: Score, lines: Lines) -> Fraction:
    if any(thing.number is None for draw in experiment.draws for thing in draw.things):
        raise NoValue("a sum of outcomes that are no numbers")
    found, good, total = [], 0, 0
    for drawn, ways in outcomes(experiment):
        total += ways
        numbers = [one.number for one in drawn if one.number is not None]
        if meets(event.condition, Thing("", 1, score(event.how, numbers))):
            good += ways
            found.append(f"({', '.join(one.name for one in drawn)})")
    sizes = [draw.size - (at if not experiment.replaced else 0) for at, draw in enumerate(experiment.draws)]
    require(prod(sizes) == total, "the number of outcomes in two ways")
    lines.say(f"number of outcomes: {' × '.join(map(str, sizes))} = {total}", str(total), starts=True)
    if found and len(found) <= MOST_LISTED:
        lines.say(f"favourable: {', '.join(found)}", str(good), starts=True)
    value = Fraction(good, total)
    lines.say(f"P({event.how} {said(event.condition)}) = {share(good, total)}", share(good, total))
    if lines.shown(value) != share(good, total):
        lines.say(f"= {lines.shown(value)}", lines.shown(value))
    return value


def _paths(experiment: Experiment, event: Event) -> tuple[list[Path], list[int]]:
    """The paths of the tree that the event is made of, with how many orders each stands for."""
    draws = len(experiment.draws)
    same = all(draw == experiment.draws[0] for draw in experiment.draws)
    match event:
        case InTurn(conditions):
            paths = _along_the_tree(conditions, experiment.replaced)
            return paths, [1] * len(paths)
        case Times(condition, least, most) if same:
            counts = range(least, min(most, draws) + 1)
            opposite = _opposite(condition) if least < draws else condition
            paths = [(condition,) * times + (opposite,) * (draws - times) for times in counts]
            return paths, [comb(draws, times) for times in counts]
        case Times(condition, least, most):
            opposite = _opposite(condition)
            options = product((condition, opposite), repeat=draws)
            chosen = [one for one in options if least <= sum(piece is condition for piece in one) <= most]
            return chosen, [1] * len(chosen)
        case Together(parts) if same and sum(times for _, times in parts) == draws:
            path = tuple(condition for condition, times in parts for _ in range(times))
            return [path], [factorial(draws) // prod(factorial(times) for _, times in parts)]
        case Together(parts) if sum(times for _, times in parts) == draws:
            single = tuple(condition for condition, times in parts for _ in range(times))
            ways = [one for one in dict.fromkeys(permutations(single)) if _possible(one, experiment)]
            return ways, [1] * len(ways)
        case Alike(True) if same:
            kinds = [Is("named", thing.name) for thing in experiment.draws[0].things]
            return [(kind,) * draws for kind in kinds], [1] * len(kinds)
        case Alike(False) if same:
            kinds = [Is("named", thing.name) for thing in experiment.draws[0].things]
            chosen = [*combinations(kinds, draws)]
            return chosen, [factorial(draws)] * len(chosen)
    raise NoValue("an event of draws that are not alike")


def _along_the_tree(conditions: Path, replaced: bool) -> list[Path]:
    """The paths of draws of which some may be anything: these branch where a later draw depends on them."""
    while len(conditions) > 1 and conditions[-1] == Is("any"):
        conditions = conditions[:-1]
    last = conditions[-1]
    options = [(last, _opposite(last)) if one == Is("any") and not replaced else (one,) for one in conditions]
    return [*product(*options)]


def _possible(path: Path, experiment: Experiment) -> bool:
    return all(any(meets(condition, thing) for thing in draw.things)
               for condition, draw in zip(path, experiment.draws, strict=True))  # fmt: skip


def _sum_of_paths(experiment: Experiment, paths: list[Path], orders: list[int], lines: Lines) -> Fraction:
    if len(paths) > MOST_LISTED:
        raise NoValue("a tree with too many paths to be written")
    values = []
    for path, order in zip(paths, orders, strict=True):
        steps = _along(path, experiment)
        value = prod((Fraction(*one) for one in steps), start=Fraction(1))
        if not value and len(paths) > 1:
            continue
        said_path = ", ".join(said(condition) for condition in path if condition != Is("any"))
        text = " × ".join(share(*one) for condition, one in zip(path, steps, strict=False) if condition != Is("any"))
        lines.say(f"P({said_path}) = {text}", text, starts=True)
        lines.say(f"= {lines.shown(value)}", lines.shown(value))
        if order > 1:
            lines.say(f"{order} orders: {order} × {lines.shown(value)} = {lines.shown(order * value)}",
                      lines.shown(order * value))  # fmt: skip
        values.append(order * value)
    total = sum(values, Fraction(0))
    if len(values) > 1:
        lines.say(f"{' + '.join(map(lines.shown, values))} = {lines.shown(total)}", lines.shown(total))
    return total


def _along(path: Path, experiment: Experiment) -> list[tuple[int, int]]:
    """Favourable and all outcomes of each draw along a path; raises NoValue where conditions overlap in part."""
    steps = []
    for at, (condition, draw) in enumerate(zip(path, experiment.draws, strict=False)):
        good = {thing.name for thing in draw.things if meets(condition, thing)}
        count = sum(thing.count for thing in draw.things if thing.name in good)
        if experiment.replaced:
            steps.append((count, draw.size))
            continue
        for earlier in path[:at]:
            before = {thing.name for thing in draw.things if meets(earlier, thing)}
            if before <= good:
                count -= 1
            elif before & good:
                raise NoValue("conditions on draws without replacement that overlap in part")
        steps.append((max(count, 0), draw.size - at))
    return steps
