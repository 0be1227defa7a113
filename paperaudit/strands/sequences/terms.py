"""Terms of sequences: the formula, the next ones, which one it is, the common difference or ratio."""

from fractions import Fraction
from itertools import pairwise

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import bounded_power
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.plane_curves import zeros
from paperaudit.maths.powers import PowerSum, power_sum, put_in
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.expression import Expression, Letter, Number
from paperaudit.model.reading import Reading
from paperaudit.model.sequence_task import OfSequence
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.numbers.worked_rows import say_worked
from paperaudit.strands.numbers.working import Working, exact, require, with_givens
from paperaudit.strands.refusals import impossible
from paperaudit.strands.sequences.rules import LARGEST_COUNT, Rule, rule_of
from paperaudit.strands.substitution import substituted

SERIES = "series"
LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
ADDED_ONE_BY_ONE = 5_000
_COUNTED = "counted on from term to term"
_EACH = "for each two terms"


def number_text(value: Fraction) -> str:
    """A number as it is written."""
    return write(whole_or_fraction(value))


def bracketed(value: Fraction) -> str:
    """A number behind a sign, in brackets where it is negative or a fraction."""
    return f"({number_text(value)})" if value < 0 or value.denominator > 1 else number_text(value)


def say_formula(rule: Rule, working: Working, letter: str = "n") -> str:
    """Adds the lines that state the formula of the nth term, and gives its text back."""
    assert rule.formula is not None
    if rule.kind == "arithmetic" and len(rule.terms) != 5:
        working.say(f"Tₙ = a + (n − 1)d = {number_text(rule.first)} + (n − 1) × {bracketed(rule.step)}")
    elif rule.kind == "arithmetic":
        working.say(f"Tₙ = {number_text(rule.first)} + (n − 1) × {bracketed(rule.step)}")
    formula = write(put_in(rule.formula, "n", Letter(letter)))
    working.say(f"T{'ₙ' if letter == 'n' else letter} = {formula}", formula)
    return formula


def nth(task: OfSequence, reading: Reading) -> Outcome:
    """The formula of the nth term."""
    rule, working = rule_of(task, reading)
    if rule.formula is None:
        raise NoValue("a formula for the sums of the two terms before")
    formula = say_formula(rule, working, task.letter)
    return working.derived(
        Answer(formula, put_in(rule.formula, "n", Letter(task.letter)), kind="nth term"),
        confirmed_by="the terms that are given come out of the formula",
    )


def next_terms(task: OfSequence, reading: Reading) -> Outcome:
    """The terms that follow, or the first ones."""
    rule, working = rule_of(task, reading)
    begin = len(rule.terms) + 1 if task.what == "next" else 1
    if not 0 < task.count <= 50:
        raise BudgetExceeded("a list of so many terms")
    found = [rule.term(place) for place in range(begin, begin + task.count)]
    before = rule.terms[-1]
    again = _onwards(rule, task.count) if task.what == "next" else found
    for place, value in enumerate(found):
        if task.what == "next" and rule.kind in ("arithmetic", "geometric"):
            sign = "+" if rule.kind == "arithmetic" else "×"
            working.say(
                f"{number_text(before)} {sign} {bracketed(rule.step)} = {number_text(value)}", number_text(value)
            )
        elif rule.kind == "summed":
            one = found[place - 1] if place else before
            two = found[place - 2] if place > 1 else rule.terms[-1] if place else rule.terms[-2]
            working.say(f"{number_text(two)} + {number_text(one)} = {number_text(value)}", number_text(value))
        else:
            working.say(f"n = {begin + place}: {number_text(value)}", number_text(value))
        before = value
    require(found == again, "the next terms")
    text = ", ".join(map(number_text, found))
    only = whole_or_fraction(found[0]) if len(found) == 1 else None
    answer = Answer(text, only, kind="" if only is not None else "numbers in order")
    return working.derived(answer, confirmed_by="from the formula and from term to term")


def _onwards(rule: Rule, count: int) -> list[Fraction]:
    """The next terms by differences alone, without the formula; ratios for geometric ones."""
    terms = list(rule.terms)
    for _ in range(count):
        if rule.kind == "geometric":
            terms.append(terms[-1] * rule.step)
        elif rule.kind == "summed":
            terms.append(terms[-1] + terms[-2])
        else:
            rows = [terms[-6:]]
            while len(set(rows[-1])) > 1:
                rows.append([other - one for one, other in pairwise(rows[-1])])
            terms.append(sum((row[-1] for row in rows), Fraction(0)))
    return terms[-count:]


def term(task: OfSequence, reading: Reading) -> Outcome:
    """The term with a number."""
    rule, working = rule_of(task, reading)
    if not 0 < task.count <= LARGEST_COUNT:
        raise BudgetExceeded("a term so far along")
    value = rule.term(task.count)
    name = f"T{str(task.count).translate(LOWERED)}"
    if rule.formula is not None:
        say_formula(rule, working)
        put = write(put_in(rule.formula, "n", Number(Fraction(task.count))))
        if rule.kind != "geometric":
            put = _spelled(rule.formula, task.count)
        working.say(f"{name} = {put}")
        say_worked(put, number_text(value), working)
    else:
        working.say(f"= {number_text(value)}", number_text(value))
    if rule.kind in ("arithmetic", "geometric") and task.count <= ADDED_ONE_BY_ONE:
        again = rule.first
        for _ in range(task.count - 1):
            again = again + rule.step if rule.kind == "arithmetic" else again * rule.step
        require(again == value, name)
    elif rule.formula is not None and rule.kind != "geometric":
        require(power_sum(rule.formula, "n").value(task.count) == value, name)
    return working.derived(Answer(number_text(value), whole_or_fraction(value)), confirmed_by=_COUNTED)


def _spelled(formula: Expression, count: int) -> str:
    """The formula with the number in it, × where it stands beside a number."""
    return write(substituted(formula, {"n": Number(Fraction(count))}))


def which(task: OfSequence, reading: Reading) -> Outcome:
    """Which term a number is, or whether it is one."""
    rule, working = rule_of(task, reading)
    assert task.value is not None
    if rule.formula is None:
        raise NoValue("which term it is, of sums of the two terms before")
    value = exact(with_givens(task.value, reading)[0])
    say_formula(rule, working)
    place = place_of(rule, value, working)
    asks_yes = task.what == "is a term"
    if place is None:
        _is_no_term(rule, value)
        working.conclude(f"n is no positive whole number, so {number_text(value)} is not a term", "no")
        return working.derived(Answer("no"), confirmed_by="the terms on either side of it differ")
    require(rule.term(place) == value, "which term it is")
    if working.steps[-1].statement != f"n = {place}":
        working.conclude(f"n = {place}", f"n = {place}")
    if asks_yes:
        return working.derived(Answer("yes"), confirmed_by=_PUT_IN)
    return working.derived(Answer(str(place), Number(Fraction(place)), kind="which term"), confirmed_by=_PUT_IN)


def _is_no_term(rule: Rule, value: Fraction) -> None:
    """The terms themselves: none of the first five hundred has the value."""
    for count in range(1, _TERMS_TRIED + 1):
        require(rule.term(count) != value, f"{number_text(value)} is the term {count}")
        if rule.kind == "geometric" and abs(rule.term(count)) > 10**6 * max(Fraction(1), abs(value)):
            return


_TERMS_TRIED = 500
_PUT_IN = "put into the formula of the nth term"


def place_of(rule: Rule, value: Fraction, working: Working) -> int | None:
    """The number of the term that has a value, with the lines to it; None where no term has."""
    assert rule.formula is not None
    working.say(f"{write(rule.formula)} = {number_text(value)}")
    if rule.kind == "geometric":
        return _power_place(rule, value, working)
    whole = power_sum(rule.formula, "n") - PowerSum.number(value)
    if whole.degree == 1:
        n = -whole.share(0) / whole.share(1)
        say_to_roots(rule.formula, "n", working.say, whole_or_fraction(value))
        working.say(f"n = {number_text(n)}")
        return int(n) if n.denominator == 1 and n > 0 else None
    working.say(f"{whole.text('n')} = 0")
    say_to_roots(whole.expression("n"), "n", working.say)
    places = [int(zero) for zero in zeros(whole) if isinstance(zero, Fraction) and zero.denominator == 1 and zero > 0]
    if len(places) > 1:
        raise NoValue(f"both the terms {places[0]} and {places[1]} are {number_text(value)}")
    return places[0] if places else None


def _power_place(rule: Rule, value: Fraction, working: Working) -> int | None:
    if abs(rule.step) in (0, 1) or not rule.first:
        raise NoValue("a ratio of 0, 1 or −1")
    power = value / rule.first
    working.say(f"{bracketed(rule.step)}^(n − 1) = {number_text(power)}")
    for count in range(0, 400):
        if bounded_power(rule.step, count) == power:
            working.say(f"= {bracketed(rule.step)}^{count}, so n − 1 = {count}")
            return count + 1
    return None


def step(task: OfSequence, reading: Reading) -> Outcome:
    """The common difference or ratio."""
    rule, working = rule_of(task, reading)
    if rule.kind not in ("arithmetic", "geometric"):
        said = ", ".join(map(number_text, rule.terms))
        raise impossible(working.used or (said,), f"that {said} have a common difference or a common ratio is false")
    return working.derived(Answer(number_text(rule.step), whole_or_fraction(rule.step)), confirmed_by=_EACH)
