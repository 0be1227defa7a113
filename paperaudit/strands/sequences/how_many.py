"""How many terms of an arithmetic or geometric series have a given sum."""

from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import bounded_power
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.plane_curves import zeros
from paperaudit.maths.powers import PowerSum
from paperaudit.model.derivation import Answer, Outcome
from paperaudit.model.reading import Reading
from paperaudit.model.sequence_task import OfSequence
from paperaudit.strands.algebra.root_lines import say_to_roots
from paperaudit.strands.numbers.working import Working, exact, require
from paperaudit.strands.refusals import impossible
from paperaudit.strands.sequences.rules import Rule, rule_of
from paperaudit.strands.sequences.terms import ADDED_ONE_BY_ONE, SERIES, bracketed, number_text, place_of, say_formula

_MOST = 1_000
"""Terms that are added one by one to confirm the number of them."""


def terms_to_a_sum(task: OfSequence, reading: Reading) -> Outcome:
    """The number of terms with the sum `task.value`; two numbers where a series turns back."""
    rule, working = rule_of(task, reading, SERIES)
    if task.value is None:
        return _all_terms(rule, working)
    total = exact(task.value)
    if rule.kind == "arithmetic" and rule.step:
        found = _of_arithmetic(rule, total, working)
    elif rule.kind == "geometric" and rule.step not in (0, 1, -1) and rule.first:
        found = _of_geometric(rule, total, working)
    else:
        raise NoValue("how many terms of such a sequence have a sum")
    _confirm(rule, total, found)
    if not found:
        said = number_text(total)
        raise impossible(working.used or (said,), working.steps[-1].statement, f"that terms add up to {said} is false")
    answers = tuple(Answer(str(count), whole_or_fraction(Fraction(count)), "n") for count in found)
    return working.derived(*answers, confirmed_by="the terms added one by one")


def _all_terms(rule: Rule, working: Working) -> Outcome:
    """The number of terms of a series that ends, from its last term."""
    if rule.last is None or rule.formula is None:
        raise NoValue("the series does not end")
    say_formula(rule, working)
    count = place_of(rule, rule.last, working)
    if count is None:
        last = number_text(rule.last)
        raise impossible(working.used or (last,), working.steps[-1].statement, f"that {last} is a term is false")
    if count > ADDED_ONE_BY_ONE:
        raise BudgetExceeded("a series of so many terms")
    counted = next((place for place in range(1, count + 1) if rule.term(place) == rule.last), 0)
    require(counted == count, "the number of terms")
    return working.derived(
        Answer(str(count), whole_or_fraction(Fraction(count)), "n"), confirmed_by="counted one by one"
    )


def _of_arithmetic(rule: Rule, total: Fraction, working: Working) -> list[int]:
    a, d = rule.first, rule.step
    working.say("Sₙ = n/2 × [2a + (n − 1)d]")
    working.say(f"{number_text(total)} = n/2 × [2 × {bracketed(a)} + (n − 1) × {bracketed(d)}]")
    form = PowerSum({Fraction(2): d, Fraction(1): 2 * a - d, Fraction(0): -2 * total})
    if d < 0:
        form = form.scaled(Fraction(-1))
    working.say(f"{form.text('n')} = 0")
    say_to_roots(form.expression("n"), "n", working.say)
    roots = [root for root in zeros(form) if isinstance(root, Fraction)]
    found = sorted(int(root) for root in roots if root > 0 and root.denominator == 1)
    refused = [root for root in roots if root not in found]
    said = " or ".join(f"n = {count}" for count in found) or "no whole number n > 0 does"
    why = f" (n = {number_text(refused[0])} is no number of terms)" if found and refused else ""
    working.say(said + why, str(found[0]) if len(found) == 1 else "")
    return found


def _of_geometric(rule: Rule, total: Fraction, working: Working) -> list[int]:
    a, r = rule.first, rule.step
    working.say("Sₙ = a(rⁿ − 1)/(r − 1)")
    working.say(f"{number_text(total)} = {bracketed(a)} × ({bracketed(r)}ⁿ − 1) ÷ {bracketed(r - 1)}")
    power = total * (r - 1) / a + 1
    working.say(f"{bracketed(r)}ⁿ = {number_text(power)}")
    found = [count for count in range(1, 200) if bounded_power(r, min(count, 50)) == power and count <= 50]
    working.say(f"n = {found[0]}" if found else "no whole number n does", str(found[0]) if found else "")
    return found


def _confirm(rule: Rule, total: Fraction, found: list[int]) -> None:
    if found and found[-1] > min(_MOST, ADDED_ONE_BY_ONE):
        raise BudgetExceeded("a sum of so many terms")
    value, met = Fraction(0), []
    for count in range(1, max(found, default=200) + 1):
        value += rule.term(count)
        if value == total:
            met.append(count)
    require(met == found, "how many terms have the sum")
