"""What follows from the five numbers of a box plot: ranges, shares of the values, skewness, outliers."""

import itertools
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.model.derivation import Answer, Derived, Outcome
from paperaudit.model.expression import Number, NumberForm
from paperaudit.model.reading import Reading
from paperaudit.model.reckoning import Reckoning
from paperaudit.strands.numbers.working import Working, require
from paperaudit.strands.ratios.plain_amounts import answered, bare_of, rational, text_of, working_of
from paperaudit.strands.refusals import impossible

FIVE = ("smallest value", "lower quartile", "median", "upper quartile", "largest value")
_SPANS = {"interquartile range": ("upper quartile", "lower quartile"), "range": ("largest value", "smallest value")}
_QUARTER = Fraction(1, 4)


def of_five_numbers(task: Reckoning, reading: Reading) -> Outcome:
    """The wanted number, share or word; raises NoValue where the five numbers do not settle it."""
    working = working_of("spread", reading)
    known, unit = _known(task)
    _check_order(known, working)
    (first, *_) = task.wanted
    match first:
        case "skewness":
            return working.derived(_skew(known, working), confirmed_by="box and whiskers compared")
        case "outlier":
            return working.derived(_outlier(task, known, working), confirmed_by="the distance from the nearer quartile")
        case "percentage" | "fraction" | "count":
            return _share(task, known, reading, working)
    return _spans(task, known, unit, reading, working)


def _known(task: Reckoning) -> tuple[dict[str, Fraction], str]:
    bare = {one.name: bare_of(one.value) for one in task.amounts if one.name in (*FIVE, *_SPANS)}
    units = {unit for _, unit in bare.values() if unit}
    if len(units) > 1:
        raise NoValue("numbers in several units")
    return {name: size for name, (size, _) in bare.items()}, units.pop() if units else ""


def _check_order(known: dict[str, Fraction], working: Working) -> None:
    """Raises Faulty where a box plot would run backwards."""
    told = [(name, known[name]) for name in FIVE if name in known]
    for (one, low), (other, high) in itertools.pairwise(told):
        if low > high:
            raise impossible(working.used, f"{one} ≤ {other}", f"{text_of(low)} ≤ {text_of(high)}: false")
    for name, (upper, lower) in _SPANS.items():
        if {name, upper, lower} <= known.keys() and known[upper] - known[lower] != known[name]:
            said = f"{text_of(known[upper])} − {text_of(known[lower])} = {text_of(known[name])}: false"
            raise impossible(working.used, f"{name} = {upper} − {lower}", said)


def _spans(task: Reckoning, known: dict[str, Fraction], unit: str, reading: Reading, working: Working) -> Derived:
    assert reading.ask is not None
    answers = []
    for name in task.wanted:
        if name in known:
            raise NoValue("a number that is told")
        law = next((law for law in _SPANS.items() if name in (law[0], *law[1])), None)
        if law is None or len({law[0], *law[1]} & known.keys()) != 2:
            raise NoValue(f"the {name} does not follow from what is told")
        span, (upper, lower) = law
        if name == span:
            one, sign, other = known[upper], "−", known[lower]
            formula = f"{span} = {upper} − {lower}"
        elif name == upper:
            one, sign, other = known[lower], "+", known[span]
            formula = f"{upper} = {lower} + {span}"
        else:
            one, sign, other = known[upper], "−", known[span]
            formula = f"{lower} = {upper} − {span}"
        value = one - other if sign == "−" else one + other
        working.say(formula, uses=working.used)
        working.say(f"= {text_of(one)} {sign} {text_of(other)}")
        known[name] = value
        require(known[upper] == known[lower] + known[span], "the numbers put back")
        answers.append(answered(value, unit, reading.ask, working))
    _check_order(known, working)
    return working.derived(*answers, confirmed_by="put back into the box plot")


def _share(task: Reckoning, known: dict[str, Fraction], reading: Reading, working: Working) -> Derived:
    """A quarter of the values lies in each of the four stretches of a box plot."""
    assert reading.ask is not None
    limits = [bare_of(one)[0] for one in task.all_of("limit")]
    places = [_place(limit, known) for limit in limits]
    (kind,) = task.details
    low, high = {"above": (places[0], 4), "below": (0, places[0])}.get(kind, (places[0], places[-1]))
    if not 0 <= low < high <= 4:
        raise NoValue("a stretch of the box plot that has no values")
    share = _QUARTER * (high - low)
    names = [FIVE[at] for at in range(low, high + 1)]
    working.say(f"from the {names[0]} to the {names[-1]}: {high - low} of 4 quarters of the values")
    require(share == 1 - _QUARTER * (low + 4 - high), "the shares of a box plot do not fill it")
    if task.wanted[0] == "percentage":
        text = f"{text_of(share * 100)}%"
        working.conclude(f"{high - low} × 25% = {text}", text)
        answer = Answer(text, Number(share, NumberForm.PERCENT))
        return working.derived(answer, confirmed_by="the other stretches make up the rest")
    if task.wanted[0] == "fraction":
        answer = answered(share, "", reading.ask, working)
        return working.derived(answer, confirmed_by="the other stretches make up the rest")
    number = task.one("number of values")
    assert number is not None
    count = share * rational(number)
    if count.denominator != 1:
        raise NoValue(f"there would be {text_of(count)} of them, which is not whole")
    working.say(f"{text_of(share)} × {text_of(rational(number))} = {text_of(count)}", text_of(count))
    answer = answered(count, "", reading.ask, working)
    return working.derived(answer, confirmed_by="the other stretches make up the rest")


def _place(limit: Fraction, known: dict[str, Fraction]) -> int:
    """Which of the five numbers a limit is; raises NoValue where it is none, or two are equal."""
    found = [at for at, name in enumerate(FIVE) if known.get(name) == limit]
    if len(found) != 1:
        raise NoValue("a number that is not one of the five")
    return found[0]


def _skew(known: dict[str, Fraction], working: Working) -> Answer:
    """Positive where the upper half is the longer one, in the box and, where these are told, over both whiskers."""
    sides = [("lower quartile", "upper quartile"), ("smallest value", "largest value")]
    signs = set()
    for lower, upper in sides:
        if not {lower, upper, "median"} <= known.keys():
            continue
        below, above = known["median"] - known[lower], known[upper] - known["median"]
        working.say(f"median − {lower} = {text_of(below)}, {upper} − median = {text_of(above)}", uses=working.used)
        signs.add((above > below) - (above < below))
    if len(signs) != 1:
        raise NoValue("the box and the whiskers do not lean to the same side")
    word = {1: "positively skewed", -1: "negatively skewed", 0: "symmetrical"}[signs.pop()]
    working.conclude(word, word)
    return Answer(word, kind="skewness")


def _outlier(task: Reckoning, known: dict[str, Fraction], working: Working) -> Answer:
    told = task.one("value")
    if told is None or not {"lower quartile", "upper quartile"} <= known.keys():
        raise NoValue("both quartiles are needed")
    value, lower, upper = bare_of(told)[0], known["lower quartile"], known["upper quartile"]
    iqr = upper - lower
    low, high = lower - Fraction(3, 2) * iqr, upper + Fraction(3, 2) * iqr
    working.say(f"interquartile range = {text_of(upper)} − {text_of(lower)} = {text_of(iqr)}", text_of(iqr))
    working.say(f"{_plain(lower)} − 1.5 × {_plain(iqr)} = {_plain(low)}", _plain(low))
    working.say(f"{_plain(upper)} + 1.5 × {_plain(iqr)} = {_plain(high)}", _plain(high))
    beyond = value < low or value > high
    require(beyond == (2 * max(lower - value, value - upper) > 3 * iqr), "the outlier in two ways")
    working.conclude(f"{_plain(value)} is {'' if beyond else 'not '}an outlier", "yes" if beyond else "no")
    return Answer("yes" if beyond else "no")


def _plain(value: Fraction) -> str:
    from paperaudit.maths.write import write

    return write(as_decimal(value) or whole_or_fraction(value))
