"""Tables of outcomes: a missing probability, relative frequencies, expected numbers, the mean of what is drawn."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.collected_values import number
from paperaudit.model.chance_task import FromTable
from paperaudit.model.derivation import Answer
from paperaudit.strands.chance.lines import Lines, share
from paperaudit.strands.finishing import finished
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import bracketed, shown


def from_table(task: FromTable, lines: Lines) -> Answer:
    """What is asked of a table whose probabilities add up to 1, or of a table of counts."""
    if task.counted:
        return _relative(task, lines)
    known = [value for value in task.chances if value is not None]
    lines.decimals = True
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
    match task.want:
        case "of":
            return _of(task, chances, lines)
        case "expected":
            return _expected(task, chances, lines)
    return _mean(task, chances, lines)


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
