"""Tables of outcomes: a missing probability, relative frequencies, expected numbers, the mean of what is drawn."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import number
from paperaudit.model.chance_task import FromTable
from paperaudit.model.derivation import Answer, Case, Impossible, NotDetermined
from paperaudit.strands.chance.lines import Lines, share
from paperaudit.strands.finishing import finished
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import bracketed, shown


def from_table(task: FromTable, lines: Lines) -> Answer | Impossible | NotDetermined:
    """What is asked of a table whose probabilities add up to 1, or of a table of counts."""
    if task.counted:
        return _relative(task, lines)
    if task.shares:
        return _with_letter(task, lines)
    known = [value for value in task.chances if value is not None]
    lines.decimals = True
    if any(not 0 <= value <= 1 for value in known):
        beyond = lines.shown(next(value for value in known if not 0 <= value <= 1))
        used = tuple(given.text for given in lines.givens)
        return Impossible(used, (f"a probability of {beyond} is not from 0 to 1: false",))
    if all(value is not None for value in task.chances):
        chances = known
    else:
        rest = 1 - sum(known, Fraction(0))
        text = " + ".join(map(lines.shown, known))
        text = f"({text})" if len(known) > 1 else text
        lines.say(f"1 − {text} = {lines.shown(rest)}", lines.shown(rest), starts=True)
        require(sum((rest, *known), Fraction(0)) == 1, "the probabilities do not add up to 1")
        chances = [rest if value is None else value for value in task.chances]
        if task.want == "missing":
            return lines.end(rest)
    return _asked(task, chances, lines)


def _asked(task: FromTable, chances: list[Fraction], lines: Lines) -> Answer:
    match task.want:
        case "of":
            return _of(task, chances, lines)
        case "expected":
            return _expected(task, chances, lines)
    return _mean(task, chances, lines)


def _with_letter(task: FromTable, lines: Lines) -> Answer | Impossible | NotDetermined:
    """The letter from the sum 1, then what is asked with every probability worked out."""
    lines.decimals = not any(one is not None and _endless(one) for one in (*task.chances, *task.shares))
    constants = [value or Fraction(0) for value in task.chances]
    share, known = sum(task.shares, Fraction(0)), sum(constants, Fraction(0))
    terms = [_term(task, at, lines) for at in range(len(constants))]
    used = tuple(given.text for given in lines.givens)
    lines.say(f"{' + '.join(terms)} = 1", starts=True)
    if not share:
        if known == 1:
            cases = tuple(Case(f"{task.letter} = {lines.shown(value)}") for value in (Fraction(1, 20), Fraction(1, 10)))
            return NotDetermined(cases)
        return Impossible(used, (f"{lines.shown(known)} = 1: false",))
    if known:
        lines.say(f"{_multiple(share, task.letter, lines)} + {lines.shown(known)} = 1")
        if share != 1:
            lines.say(f"{_multiple(share, task.letter, lines)} = {lines.shown(1 - known)}")
    elif share != 1:
        lines.say(f"{_multiple(share, task.letter, lines)} = 1")
    value = (1 - known) / share
    lines.decimals = lines.decimals and not _endless(value)
    lines.say(f"{task.letter} = {lines.shown(value)}", lines.shown(value))
    chances = [constant + one * value for constant, one in zip(constants, task.shares, strict=True)]
    require(sum(chances, Fraction(0)) == 1, "the probabilities do not add up to 1")
    wrong = next((at for at, chance in enumerate(chances) if not 0 <= chance <= 1), None)
    if wrong is not None:
        said = f"P({task.names[wrong]}) would be {lines.shown(chances[wrong])}"
        return Impossible(used, (said, "a probability from 0 to 1: false"))
    if task.want == "missing":
        return lines.end(value)
    for at in task.of if task.want in ("of", "expected") else range(len(chances)):
        if task.shares[at]:
            put = terms[at].replace(task.letter, f" × {lines.shown(value)}").lstrip(" ×").replace("  ", " ")
            tail = f" = {lines.shown(chances[at])}" if put != lines.shown(chances[at]) else ""
            lines.say(f"P({task.names[at]}) = {put}{tail}", lines.shown(chances[at]))
    return _asked(task, chances, lines) if task.want != "of" or len(task.of) > 1 else lines.end(chances[task.of[0]])


def _endless(value: Fraction) -> bool:
    """Whether a fraction has no finite decimal."""
    below = value.denominator
    for prime in (2, 5):
        while below % prime == 0:
            below //= prime
    return below > 1


def _multiple(share: Fraction, letter: str, lines: Lines) -> str:
    return letter if share == 1 else f"−{letter}" if share == -1 else f"{lines.shown(share)}{letter}"


def _term(task: FromTable, at: int, lines: Lines) -> str:
    """An entry of the table as a pupil writes it: 0.3, 2x, 0.4 − x."""
    constant, share = task.chances[at] or Fraction(0), task.shares[at]
    if not share:
        return lines.shown(constant)
    term = _multiple(abs(share), task.letter, lines)
    if not constant:
        return term if share > 0 else f"(−{term})"
    if share > 0:
        return f"{term} {'+' if constant > 0 else '−'} {lines.shown(abs(constant))}"
    return f"{lines.shown(constant)} − {term}"


def _relative(task: FromTable, lines: Lines) -> Answer:
    counts = [int(value) for value in task.chances if value is not None]
    whole = sum(counts)
    if not whole:
        raise NoValue("a table without any counts")
    lines.say(f"total: {' + '.join(map(str, counts))} = {whole}", str(whole), starts=True)
    good = [counts[at] for at in task.of]
    part = sum(good)
    if len(good) > 1:
        lines.say(f"favourable: {' + '.join(map(str, good))} = {part}", str(part))
    value = Fraction(part, whole)
    lines.say(f"probability = {share(part, whole)}", share(part, whole))
    if lines.shown(value) != share(part, whole):
        lines.say(f"= {lines.shown(value)}", lines.shown(value))
    others = sum(count for at, count in enumerate(counts) if at not in task.of)
    require(1 - Fraction(others, whole) == value, "the probability in two ways")
    if task.want == "expected":
        lines.say(f"{lines.shown(value)} × {task.trials} = {shown(value * task.trials)}")
        lines.decimals = True
        return lines.end(value * task.trials)
    return lines.end(value)


def _of(task: FromTable, chances: list[Fraction], lines: Lines) -> Answer:
    good = [chances[at] for at in task.of]
    value = sum(good, Fraction(0))
    lines.skill = "combined events" if len(good) > 1 else lines.skill
    names = " or ".join(task.names[at] for at in task.of)
    text = " + ".join(map(lines.shown, good))
    lines.say(f"P({names}) = {text}", text, starts=not lines.steps)
    if len(good) > 1:
        lines.say(f"= {lines.shown(value)}", lines.shown(value))
    others = sum((chance for at, chance in enumerate(chances) if at not in task.of), Fraction(0))
    require(1 - others == value, "the probability in two ways")
    return lines.end(value)


def _expected(task: FromTable, chances: list[Fraction], lines: Lines) -> Answer:
    value = sum((chances[at] for at in task.of), Fraction(0))
    expected = value * task.trials
    lines.say(f"{lines.shown(value)} × {task.trials} = {shown(expected)}", shown(expected), starts=not lines.steps)
    others = sum((chance * task.trials for at, chance in enumerate(chances) if at not in task.of), Fraction(0))
    require(task.trials - others == expected, "the expected number in two ways")
    return lines.end(expected)


def _mean(task: FromTable, chances: list[Fraction], lines: Lines) -> Answer:
    values = [Fraction(name.replace("−", "-").replace(",", ".")) for name in task.names]
    rows = list(zip(values, chances, strict=True))
    mean = sum((value * chance for value, chance in rows), Fraction(0))
    text = " + ".join(f"{bracketed(value)} × {lines.shown(chance)}" for value, chance in rows)
    lines.say(f"E(X) = {text}", "", starts=not lines.steps)
    lines.say(f"= {shown(mean)}", shown(mean))
    drift = sum(((value - mean) * chance for value, chance in rows), Fraction(0))
    require(drift == 0, "the mean in two ways")
    if task.want == "mean":
        return lines.end(mean)
    squares = sum((value * value * chance for value, chance in rows), Fraction(0))
    text = " + ".join(f"{bracketed(value)}² × {lines.shown(chance)}" for value, chance in rows)
    lines.say(f"E(X²) = {text} = {shown(squares)}", shown(squares))
    variance = squares - mean * mean
    lines.say(f"Var(X) = {shown(squares)} − {bracketed(mean)}² = {shown(variance)}", shown(variance))
    again = sum(((value - mean) ** 2 * chance for value, chance in rows), Fraction(0))
    require(again == variance, "the variance in two ways")
    answer, closing = finished(number(variance), lines.ask, lines.steps[-1].statement)
    lines.steps.extend(closing)
    return answer
