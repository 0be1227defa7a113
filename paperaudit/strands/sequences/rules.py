"""The rule of a sequence from its first terms: differences, ratios, sums of the two terms before."""

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.powers import PowerSum, put_in
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Letter, Negative, Number, Power, Product, Sum
from paperaudit.model.reading import Reading
from paperaudit.model.sequence_task import OfSequence, Sequence, SequenceKind
from paperaudit.strands.numbers.working import Working, exact, require, with_givens
from paperaudit.strands.refusals import Faulty, impossible

SKILL = "sequences"
LARGEST_COUNT = 100_000
_NAMES = {2: "second", 3: "third"}


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule: its kind, the first terms, the formula of the nth term, and first term and step of the simple kinds.

    `formula` is None for sums of the two terms before.
    """

    kind: SequenceKind
    terms: tuple[Fraction, ...]
    formula: Expression | None
    first: Fraction
    step: Fraction = Fraction(0)
    last: Fraction | None = None

    def term(self, count: int) -> Fraction:
        """The term with this number, from the formula, or one after the other where there is none."""
        if self.formula is not None:
            value = rational_value(put_in(self.formula, "n", Number(Fraction(count))))
            if value is None:
                raise NoValue("an irrational term")
            return value
        if count > 1_000:
            raise BudgetExceeded("a term too far along")
        before = list(self.terms[:2])
        while len(before) < count:
            before.append(before[-1] + before[-2])
        return before[count - 1]


def rule_of(task: OfSequence, reading: Reading, skill: str = SKILL) -> tuple[Rule, Working]:
    """The rule of the sequence that is asked about, with the lines that find it. Raises NoValue without one."""
    sequence, used = _stated(task, reading)
    working = Working(skill, used)
    kind = task.kind or sequence.kind
    if sequence.formula is not None:
        rule = _by_formula(sequence.formula)
        if task.what == "step" and rule.kind != kind:
            raise impossible(used or (write(sequence.formula),), f"that it is {_an(kind)} sequence is false")
        return rule, working
    if sequence.first is not None and sequence.step is not None:
        first, step = exact(sequence.first), exact(sequence.step)
        if kind == "arithmetic":
            return _arithmetic((first,), step, None), working
        return _geometric((first,), step, None), working
    terms = tuple(exact(with_givens(term, reading)[0]) for term in sequence.terms)
    last = exact(sequence.last) if sequence.last is not None else None
    rule = _found(terms, kind, last, working)
    for place, value in enumerate(terms, 1):
        require(rule.term(place) == value, f"term {place} of the sequence")
    return rule, working


def _stated(task: OfSequence, reading: Reading) -> tuple[Sequence, tuple[str, ...]]:
    if task.sequence is not None:
        return task.sequence, ()
    found = [(fact, (given.text,)) for given in reading.givens for fact in given.facts if isinstance(fact, Sequence)]
    if len(found) != 1:
        raise NoValue("no sequence is given" if not found else "it is not said which of the sequences is meant")
    return found[0]


def _by_formula(formula: Expression) -> Rule:
    terms = tuple(
        value
        for count in range(1, 6)
        if (value := rational_value(put_in(formula, "n", Number(Fraction(count))))) is not None
    )
    if len(terms) < 5:
        raise NoValue("a formula with irrational terms")
    steps = {other - one for one, other in pairwise(terms)}
    ratios = {other / one for one, other in pairwise(terms)} if all(terms) else set()
    if len(steps) == 1:
        return Rule("arithmetic", terms, formula, terms[0], steps.pop())
    if len(ratios) == 1:
        return Rule("geometric", terms, formula, terms[0], ratios.pop())
    return Rule("", terms, formula, terms[0])


def _found(terms: tuple[Fraction, ...], kind: SequenceKind, last: Fraction | None, working: Working) -> Rule:
    if kind == "summed" or (not kind and len(terms) >= 5 and _is_summed(terms)):
        if not _is_summed(terms):
            raise _no_such(terms, "summed", working)
        working.say("each term is the sum of the two before it")
        return Rule("summed", terms, None, terms[0])
    steps = [other - one for one, other in pairwise(terms)]
    if kind in ("", "arithmetic") and len(set(steps)) == 1 and (len(steps) > 1 or kind):
        working.say(f"difference = {_text(terms[1])} − {_bracketed(terms[0])} = {_text(steps[0])}", _text(steps[0]))
        return _arithmetic(terms, steps[0], last)
    ratios = [other / one for one, other in pairwise(terms)] if all(terms) else []
    if kind in ("", "geometric") and len(set(ratios)) == 1 and (len(ratios) > 1 or kind):
        working.say(f"ratio = {_text(terms[1])} ÷ {_bracketed(terms[0])} = {_text(ratios[0])}", _text(ratios[0]))
        return _geometric(terms, ratios[0], last)
    if kind in ("", "quadratic", "cubic"):
        return _by_differences(terms, kind, last, working)
    raise _no_such(terms, kind, working)


def _no_such(terms: tuple[Fraction, ...], kind: SequenceKind, working: Working) -> Faulty:
    """Terms that are not those of a sequence of the kind that the question says, with what shows it."""
    said = ", ".join(map(_text, terms))
    rows = [list(terms)]
    lines: list[str] = []
    if kind == "geometric" and all(terms):
        lines.append(f"ratios: {', '.join(_text(other / one) for one, other in pairwise(terms))}")
    for order in range(1, {"arithmetic": 1, "quadratic": 2, "cubic": 3}.get(kind, 0) + 1):
        rows.append([other - one for one, other in pairwise(rows[-1])])
        name = "differences" if kind == "arithmetic" else f"{_NAMES.get(order, 'first')} differences"
        lines.append(f"{name}: {', '.join(map(_text, rows[-1]))}")
    what = "a sequence in which each term is the sum of the two before" if kind == "summed" else f"{_an(kind)} sequence"
    return impossible(working.used or (said,), *lines, f"that {said} are the terms of {what} is false")


def _an(kind: str) -> str:
    return f"an {kind}" if kind[:1] == "a" else f"a {kind}"


def _is_summed(terms: tuple[Fraction, ...]) -> bool:
    return len(terms) > 2 and all(one + other == third for one, other, third in zip(terms, terms[1:], terms[2:]))  # noqa: B905


def _arithmetic(terms: tuple[Fraction, ...], step: Fraction, last: Fraction | None) -> Rule:
    formula = PowerSum({Fraction(1): step, Fraction(0): terms[0] - step}).expression("n")
    return Rule("arithmetic", terms, formula, terms[0], step, last)


def _geometric(terms: tuple[Fraction, ...], ratio: Fraction, last: Fraction | None) -> Rule:
    power = Power(whole_or_fraction(ratio), Sum((Letter("n"), Negative(Number(Fraction(1))))))
    first = whole_or_fraction(abs(terms[0]))
    size: Expression = power if abs(terms[0]) == 1 else Product((first, power), "×")
    return Rule("geometric", terms, Negative(size) if terms[0] < 0 else size, terms[0], ratio, last)


def _by_differences(terms: tuple[Fraction, ...], kind: SequenceKind, last: Fraction | None, working: Working) -> Rule:
    """A quadratic or cubic rule by its differences; one more term than the rule needs, unless its kind is named."""
    rows = [list(terms)]
    while len(rows[-1]) > 1 and (len(set(rows[-1])) > 1 or len(rows) == 1) and len(rows) < 4:
        rows.append([other - one for one, other in pairwise(rows[-1])])
    degree = len(rows) - 1
    named = {"quadratic": 2, "cubic": 3}.get(kind, 0)
    if named and len(terms) > named + 1 and (degree > named or len(set(rows[-1])) > 1):
        raise _no_such(terms, kind, working)
    if len(set(rows[-1])) > 1 or (named and degree != named) or (not named and len(rows[-1]) < 2) or degree < 2:
        raise NoValue(f"no rule is seen in the terms {', '.join(map(_text, terms))}")
    working.say(f"first differences: {', '.join(map(_text, rows[1]))}")
    for order in range(2, degree + 1):
        working.say(f"{_NAMES[order]} differences: {', '.join(map(_text, rows[order]))}")
    formula = _newton(rows)
    shares = [formula.share(exponent) for exponent in range(degree, -1, -1)]
    if degree == 2:
        a, b, c = shares
        working.say(f"2a = {_text(rows[2][0])}, so a = {_text(a)}", _text(a))
        working.say(f"3a + b = {_text(rows[1][0])}, so b = {_text(b)}", _text(b))
        working.say(f"a + b + c = {_text(terms[0])}, so c = {_text(c)}", _text(c))
    else:
        working.say(f"6a = {_text(rows[3][0])}, so a = {_text(shares[0])}", _text(shares[0]))
        working.say(f"12a + 2b = {_text(rows[2][0])}, so b = {_text(shares[1])}", _text(shares[1]))
        working.say(f"7a + 3b + c = {_text(rows[1][0])}, so c = {_text(shares[2])}", _text(shares[2]))
        working.say(f"a + b + c + d = {_text(terms[0])}, so d = {_text(shares[3])}", _text(shares[3]))
    found: SequenceKind = "quadratic" if degree == 2 else "cubic"
    return Rule(found, terms, formula.expression("n"), terms[0], last=last)


def _newton(rows: list[list[Fraction]]) -> PowerSum:
    """The polynomial whose differences begin each row."""
    total, product = PowerSum({}), PowerSum.number(1)
    for order, row in enumerate(rows):
        total = total + product.scaled(row[0])
        step = PowerSum({Fraction(1): Fraction(1), Fraction(0): Fraction(-1 - order)})
        product = (product * step).scaled(Fraction(1, order + 1))
    return total


def _text(value: Fraction) -> str:
    return write(whole_or_fraction(value))


def _bracketed(value: Fraction) -> str:
    return f"({_text(value)})" if value < 0 else _text(value)
