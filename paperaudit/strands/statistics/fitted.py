"""The line of least squares and the correlation coefficient of pairs of values."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.approximate import to_decimal
from paperaudit.maths.collected_values import number
from paperaudit.maths.exact import exact_expression, exact_value, rational_value
from paperaudit.maths.parse import read_expression
from paperaudit.maths.postfix import decimal_value
from paperaudit.maths.rounding import round_to
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer
from paperaudit.model.expression import Letter, Number, NumberForm, Product, Quotient, Root, letters_of
from paperaudit.model.fact import Given, Holds
from paperaudit.model.spread_task import OnStatedLine
from paperaudit.model.statistics_task import Pairs, Predicted
from paperaudit.strands.numbers.working import require
from paperaudit.strands.statistics.lines import Lines, bracketed, shown, summed
from paperaudit.strands.substitution import substituted

_SKILL = "scatter and regression"
MOST_PAIRS = 60
_CLOSE = Decimal("1e-30")


def _sums(pairs: Pairs, lines: Lines) -> tuple[int, Fraction, Fraction, Fraction, Fraction, Fraction]:
    """n, Σx, Σy, Σx², Σxy, Σy² with their lines."""
    count = len(pairs.across)
    if count < 2 or count > MOST_PAIRS:
        raise NoValue(f"a line through {count} points")
    rows = list(zip(pairs.across, pairs.up, strict=True))
    products = [one * other for one, other in rows]
    sums = (
        sum(pairs.across, Fraction(0)),
        sum(pairs.up, Fraction(0)),
        sum((one * one for one in pairs.across), Fraction(0)),
        sum(products, Fraction(0)),
        sum((one * one for one in pairs.up), Fraction(0)),
    )
    lines.say(f"n = {count}, Σx = {summed(pairs.across)} = {shown(sums[0])}", skill=_SKILL, starts=True)
    lines.say(f"Σy = {summed(pairs.up)} = {shown(sums[1])}", skill=_SKILL, starts=True)
    lines.say(
        f"Σx² = {' + '.join(f'{bracketed(one)}²' for one in pairs.across)} = {shown(sums[2])}",
        skill=_SKILL,
        starts=True,
    )
    both = " + ".join(f"{bracketed(one)} × {bracketed(other)}" for one, other in rows)
    lines.say(f"Σxy = {both} = {shown(sums[3])}", skill=_SKILL, starts=True)
    return count, *sums


def _line(pairs: Pairs, lines: Lines) -> tuple[Fraction, Fraction]:
    """Intercept a and gradient b of y = a + bx."""
    count, across, up, squares, both, _ = _sums(pairs, lines)
    below = count * squares - across * across
    if not below:
        raise NoValue("a line of regression where every x is the same")
    gradient = (count * both - across * up) / below
    start = (up - gradient * across) / count
    lines.say(f"b = ({count} × {shown(both)} − {bracketed(across)} × {bracketed(up)})"
              f"/({count} × {shown(squares)} − {bracketed(across)}²)", "", _SKILL)  # fmt: skip
    lines.say(f"= {shown(count * both - across * up)}/{shown(below)}", "", _SKILL)
    lines.say(f"= {shown(gradient)}", shown(gradient), _SKILL)
    lines.say(f"a = ({shown(up)} − {bracketed(gradient)} × {bracketed(across)})/{count}", "", _SKILL)
    lines.say(f"= {shown(start)}", shown(start), _SKILL)
    # A second way: no small turn or shift of the line makes the sum of squares smaller.
    rests = [y - start - gradient * x for x, y in zip(pairs.across, pairs.up, strict=True)]
    least = sum((rest * rest for rest in rests), Fraction(0))
    for shift, turn in ((1, 0), (-1, 0), (0, 1), (0, -1), (1, -1), (-1, 1)):
        moved = sum(((y - start - shift * _TINY - (gradient + turn * _TINY) * x) ** 2
                     for x, y in zip(pairs.across, pairs.up, strict=True)), Fraction(0))  # fmt: skip
        require(moved >= least, "another line fits better")
    require(sum(rests, Fraction(0)) == 0, "the line misses the mean point")
    return start, gradient


_TINY = Fraction(1, 10**6)


def regression_line(pairs: Pairs, lines: Lines) -> Answer:
    """The line y = a + bx of least squares of y on x."""
    start, gradient = _line(pairs, lines)
    texts = []
    for value in (start, gradient):
        if lines.ask.accuracy is not None:
            texts.append(write(round_to(value, lines.ask.accuracy)))
        else:
            texts.append(shown(value))
    slope = texts[1].removeprefix("−")
    slope = f"({slope})" if "/" in slope else "" if slope == "1" else slope
    text = f"y = {texts[0]} {'−' if gradient < 0 else '+'} {slope}x"
    if not start:
        text = f"y = {'−' if gradient < 0 else ''}{slope}x"
    if lines.ask.accuracy is None:
        read = read_expression(text.partition("=")[2])
        for at in (Fraction(0), Fraction(1), Fraction(7)):
            require(rational_value(read, {"x": at}) == start + gradient * at, "the line as it is written")
    lines.say(text, text, _SKILL)
    return Answer(text, None, "regression line", kind="statistic")


def predicted(task: Predicted, lines: Lines) -> Answer:
    """The value of y on the line of least squares at an x."""
    start, gradient = _line(task.collected, lines)
    value = start + gradient * task.at
    xs, ys = task.collected.across, task.collected.up
    means = sum(xs, Fraction(0)) / len(xs), sum(ys, Fraction(0)) / len(ys)
    require(value - means[1] == gradient * (task.at - means[0]), "the value on the line, from the mean point")
    lines.say(f"y = {shown(start)} + {bracketed(gradient)} × {bracketed(task.at)}", "", _SKILL)
    lines.say(f"= {shown(value)}", shown(value), _SKILL)
    return lines.end(number(value))


def on_stated_line(task: OnStatedLine, givens: tuple[Given, ...], lines: Lines) -> Answer:
    """The value of a letter on a line that is stated, by putting the other letter's value in."""
    lettered = [fact.relation for given in givens for fact in given.facts if isinstance(fact, Holds)]
    fitting = [one for one in lettered if one.sign == "=" and one.left == Letter(task.letter)
               and set(letters_of(one.right)) == {task.across}]  # fmt: skip
    if len(fitting) != 1 or len(lettered) != 1:
        raise NoValue("which line is meant")
    right = substituted(fitting[0].right, {task.across: number(task.at)})
    value = rational_value(right)
    if value is None:
        raise NoValue("a value that is irrational")
    lines.say(f"{task.letter} = {write(right)}", "", _SKILL, starts=True)
    lines.say(f"= {shown(value)}", shown(value), _SKILL)
    again = decimal_value(right)
    require(abs(again * value.denominator - value.numerator) < _CLOSE, "the value on the line in two ways")
    return lines.end(number(value))


def correlation(pairs: Pairs, lines: Lines) -> Answer:
    """Pearson's coefficient."""
    count, across, up, squares, both, up_squares = _sums(pairs, lines)
    lines.say(
        f"Σy² = {' + '.join(f'{bracketed(one)}²' for one in pairs.up)} = {shown(up_squares)}", skill=_SKILL, starts=True
    )
    above = count * both - across * up
    one, other = count * squares - across * across, count * up_squares - up * up
    if not one or not other:
        raise NoValue("a correlation with values that are all the same")
    lines.say(f"r = ({count} × {shown(both)} − {bracketed(across)} × {bracketed(up)})"
              f"/√(({count} × {shown(squares)} − {bracketed(across)}²)"
              f"({count} × {shown(up_squares)} − {bracketed(up)}²))",
              "", _SKILL)  # fmt: skip
    lines.say(f"= {over_root(above, one * other)}", "", _SKILL)
    value = exact_expression(exact_value(Quotient(_exact(above), Root(_exact(one * other)))))
    decimal = to_decimal(value)
    require(abs(decimal - _again(pairs)) < Decimal("1e-9"), "the correlation in two ways")
    if isinstance(value, Number):
        return lines.end(number(value.value), "statistic", "correlation coefficient")
    return lines.end(value, "statistic", "correlation coefficient")


def over_root(above: Fraction, below: Fraction) -> str:
    """A number over the root of another, in print."""
    return f"{shown(above)}/√{shown(below)}" if below.denominator == 1 else f"{shown(above)} ÷ √({shown(below)})"


def _exact(value: Fraction) -> Number | Product:
    return Number(value, NumberForm.FRACTION)


def _again(pairs: Pairs) -> Decimal:
    """The same from distances to the means, in floating point."""
    from statistics import correlation as pearson

    return Decimal(pearson([float(one) for one in pairs.across], [float(one) for one in pairs.up]))
