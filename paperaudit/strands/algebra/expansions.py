"""Binomial expansions, their first terms, one term or coefficient of them, and a letter from a coefficient."""

from collections.abc import Sequence
from fractions import Fraction
from math import comb

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.algebra.binomial import (
    Binomial,
    binomial_of,
    choice,
    laurent_expression,
    multiplied_out,
    total_of_terms,
)
from paperaudit.maths.algebra.terms import NotTerms, Term, Terms, collected, expression_of, times
from paperaudit.maths.exact import rational_value
from paperaudit.maths.same_value import number_of
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expansion_task import BinomialExpansion, TermOfExpansion
from paperaudit.model.expression import Expression, Letter, Number, Power, Relation
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.binomial_series import is_series, series
from paperaudit.strands.algebra.roots import solve_polynomial
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree, answer_of

SKILL = "binomial expansion"
CONFIRMED = "the brackets multiplied out one after the other, without binomial coefficients"
_MOST_IN_FULL = 12


def expansion(task: BinomialExpansion, reading: Reading) -> Derived:
    """All terms, or the first ones by ascending or descending powers."""
    if is_series(task.expression):
        return series(task)
    if task.validity:
        raise NotTerms("a finite expansion, which holds for every number")
    found = binomial_of(task.expression)
    letter = task.letter or _letter_of(found)
    if found.front:
        raise NotTerms(f"{write(task.expression)}, a product with a binomial")
    if task.order:
        rising = found.second.exponent(letter) > found.first.exponent(letter)
        found = found if rising == (task.order == "ascending") else found.turned()
    count = found.count + 1 if not task.count else min(task.count, found.count + 1)
    if task.highest:
        count = sum(found.term(place).exponent(letter) <= task.highest for place in range(found.count + 1))
    if count > _MOST_IN_FULL + 1:
        raise BudgetExceeded("a power of a bracket beyond any school paper's: dozens of terms")
    whole = count == found.count + 1
    terms = [found.term(place) for place in range(count)]
    _confirm(found, terms, whole)
    working = Working(SKILL)
    dots = "" if whole else " + …"
    working.say(f"{write(task.expression)} = {' + '.join(map(found.written_term, range(count)))}{dots}")
    working.say(f"= {' + '.join(_counted(found, place) for place in range(count))}{dots}")
    value = total_of_terms(terms)
    working.say(f"= {write(value)}{dots}", write(value))
    return working.derived(Answer(write(value), value, kind="expansion"), confirmed_by=CONFIRMED)


def _counted(found: Binomial, place: int) -> str:
    """10 × (2x)² with the binomial coefficient as a number, ones left out."""
    text = found.written_term(place)
    number = str(comb(found.count, place))
    rest = text.removeprefix(choice(found.count, place)).removeprefix(" × ")
    return number if not rest else rest if number == "1" else f"{number} × {rest}"


def _letter_of(found: Binomial) -> str:
    names = dict.fromkeys(name for term in (found.second, found.first) for name, _ in term.powers)
    if not names:
        raise NotTerms("a binomial without letters")
    return "x" if "x" in names else next(iter(names))


def _confirm(found: Binomial, terms: Sequence[Term], whole: bool) -> None:
    """Every term must be in the product of the brackets, and there must be no more where all are given."""
    expected = multiplied_out(found)
    wanted = collected(terms)
    if any(term not in expected for term in wanted) or (whole and len(wanted) != len(expected)):
        raise ChecksDisagree("the terms of the expansion")


def term_of_expansion(task: TermOfExpansion, reading: Reading) -> Derived:
    """A coefficient or a term by its power or its place."""
    found = binomial_of(task.expression)
    working = Working(SKILL)
    if task.place:
        return _by_place(task, found, working)
    terms = _with_power(task, found, working)
    expected = tuple(term for term in multiplied_out(found) if term.exponent(task.letter) == task.power)
    if collected(terms) != collected(expected):
        raise ChecksDisagree(f"the coefficient of {write(_power(task))}")
    rest = collected(Term(term.coefficient, _without(term, task.letter)) for term in terms)
    if task.unknown:
        return _unknown(task, rest, working)
    coefficient = expression_of(rest)
    if task.asked == "term" and task.power:
        value: Expression = total_of_terms(list(collected(terms)))
        working.conclude(f"the term is {write(value)}", write(value))
        return working.derived(Answer(write(value), value), confirmed_by=CONFIRMED)
    name = f"the coefficient of {write(_power(task))}" if task.power else "the constant term"
    working.conclude(f"{name} is {write(coefficient)}", write(coefficient))
    answer = answer_of(coefficient) if number_of(coefficient) is not None else Answer(write(coefficient), coefficient)
    return working.derived(answer, confirmed_by=CONFIRMED)


def _power(task: TermOfExpansion) -> Expression:
    return Letter(task.letter) if task.power == 1 else Power(Letter(task.letter), Number(Fraction(task.power)))


def _without(term: Term, letter: str) -> tuple[tuple[str, int], ...]:
    return tuple(pair for pair in term.powers if pair[0] != letter)


def _by_place(task: TermOfExpansion, found: Binomial, working: Working) -> Derived:
    if not 1 <= task.place <= found.count + 1 or found.front:
        raise NotTerms(f"term {task.place} of {write(task.expression)}")
    place = task.place - 1
    term = found.term(place)
    _confirm(found, [term], False)
    value = laurent_expression(term)
    working.say(f"term {task.place}: {found.written_term(place)}")
    working.say(f"= {_counted(found, place)}")
    working.say(f"= {write(value)}", write(value))
    return working.derived(Answer(write(value), value), confirmed_by=CONFIRMED)


def _with_power(task: TermOfExpansion, found: Binomial, working: Working) -> list[Term]:
    """The terms with the power of the letter, from each term of what stands in front."""
    one, other = found.first.exponent(task.letter), found.second.exponent(task.letter)
    if one == other:
        raise NotTerms(f"{write(task.expression)}, both of whose terms have one power of {task.letter}")
    terms: list[Term] = []
    for factor in found.front or (Term(Fraction(1)),):
        needed = Fraction(task.power - factor.exponent(task.letter) - found.count * one, other - one)
        if needed.denominator != 1 or not 0 <= needed <= found.count:
            continue
        place = int(needed)
        term = times(factor, found.term(place))
        if one and other:
            exponent = f"{found.count * one} {'−' if other < one else '+'} {abs(other - one)}k".replace(" 1k", " k")
            general = f"{choice(found.count, 0)[:-1]}ₖ"
            working.say(f"the term with {general} has {task.letter}^({exponent})", uses=())
            working.say(f"{exponent} = {task.power - factor.exponent(task.letter)}, so k = {place}")
        front = f"{write(laurent_expression(factor))} × " if factor != Term(Fraction(1)) else ""
        counted = f" = {front}{_counted(found, place)}"
        shown = found.written_term(place)
        result = write(laurent_expression(term))
        middle = "" if counted == f" = {result}" else counted
        working.say(f"{front}{shown}{middle} = {result}", result, uses=() if not (one and other) else None)
        terms.append(term)
    if not terms:
        working.say(f"no term has {write(_power(task)) if task.power else 'no ' + task.letter}", uses=())
    elif len(terms) > 1:
        total = total_of_terms(list(collected(terms)))
        sources = tuple(step.statement for step in working.steps)
        working.say(f"together: {write(total)}", write(total), uses=sources)
    return terms


def _unknown(task: TermOfExpansion, rest: Terms, working: Working) -> Derived:
    """10k² = 40."""
    assert task.value is not None
    size = rational_value(task.value)
    if size is None or {name for term in rest for name, _ in term.powers} != {task.unknown}:
        raise NotTerms(f"{task.unknown} from a coefficient")
    relation = Relation(expression_of(rest), "=", task.value)
    working.say(relation)
    found = solve_polynomial(relation, task.unknown, working)
    values = found.values
    if task.positive:
        values = [value for value in values if (number_of(value) or 0) > 0]
        working.say(f"{task.unknown} > 0, so {task.unknown} = {' or '.join(map(write, values))}")
    _confirm_unknown(rest, task, values)
    answers = [answer_of(value, "", task.unknown) for value in values]
    if not answers:
        raise NotTerms(f"{write(relation)}, which has no solution")
    return working.derived(*answers, confirmed_by=CONFIRMED)


def _confirm_unknown(rest: Terms, task: TermOfExpansion, values: Sequence[Expression]) -> None:
    from paperaudit.maths.same_value import same_value
    from paperaudit.strands.algebra.confirming import put_in

    for value in values:
        if task.value is None or same_value(put_in(expression_of(rest), task.unknown, value), task.value) is not True:
            raise ChecksDisagree(f"{task.unknown} = {write(value)}")
