"""A logarithm from others that are given: log 12 = 2 log 2 + log 3 = 2p + q."""

from collections.abc import Sequence
from fractions import Fraction

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.algebra.logarithms import LogTerm, log_terms, total_of
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.exact import rational_value
from paperaudit.maths.near import near_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.primes import LARGEST, powers, prime_factors
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import LogarithmFromOthers
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import (
    Euler,
    Expression,
    Letter,
    Logarithm,
    Negative,
    Number,
    Power,
    Product,
    Sum,
    letters_of,
)
from paperaudit.model.fact import Given, Holds
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree, answer_of, finished

SKILL = "laws of logarithms"
_CLOSE = Fraction(1, 10**40)
Known = list[tuple[Logarithm, Expression, str]]
"""Logarithms of numbers with what they are given as, and the text of the given."""


def known_logarithms(givens: Sequence[Given]) -> Known | None:
    """The logarithms that the givens have values or letters for; None where some given is another fact."""
    found: Known = []
    for given in givens:
        for fact in given.facts:
            if not isinstance(fact, Holds) or fact.relation.sign != "=":
                return None
            for log, value in ((fact.relation.left, fact.relation.right), (fact.relation.right, fact.relation.left)):
                if isinstance(log, Logarithm) and isinstance(value, Letter | Number) and not letters_of(log.argument):
                    found.append((log, value, given.text))
                    break
            else:
                return None
    return found


def from_others(task: LogarithmFromOthers, reading: Reading) -> Derived:
    """In the letters that are given."""
    if task.others:
        named: Known = [(one, one, "") for one in task.others if isinstance(one, Logarithm)]
        return _from_known(task.expression, named, None)
    known = known_logarithms(reading.givens)
    if not known or {value.name for _, value, _ in known if isinstance(value, Letter)} < set(task.letters):
        raise NotTerms(f"{write(task.expression)}, for which no logarithms are given")
    return _from_known(task.expression, known, None)


def from_values(expression: Expression, known: Known, ask: Ask) -> Derived:
    """As a number, from the decimals that are given for other logarithms."""
    return _from_known(expression, known, ask)


def _from_known(expression: Expression, known: Known, ask: Ask | None) -> Derived:
    terms, number = log_terms(expression)
    working = Working(SKILL, tuple(dict.fromkeys(text for _, _, text in known)))
    total: dict[int, Fraction] = {}
    for term in terms:
        shares, own = _shares(term.log, known)
        number += term.size * own
        for place, share in enumerate(shares):
            total[place] = total.get(place, Fraction(0)) + term.size * share
    pieces = [(share, *known[place]) for place, share in sorted(total.items()) if share]
    split = total_of([LogTerm(share, log) for share, log, _, _ in pieces], number)
    product = _product_line(terms, pieces, number)
    if product:
        working.say(f"{write(expression)} = {product}", uses=())
    working.say(f"= {write(split)}" if product else f"{write(expression)} = {write(split)}", write(split))
    _confirm(expression, split)
    put_in = _put_in(pieces, number)
    texts = tuple(dict.fromkeys(text for _, _, _, text in pieces if text))
    working.used = texts
    working.say(f"= {write(put_in)}", write(put_in), uses=(working.steps[-1].statement, *texts))
    confirmed = "the logarithms worked out to fifty figures by decimal arithmetic"
    if letters_of(put_in) or all(value == log for _, log, value, _ in pieces):
        return working.derived(Answer(write(put_in), put_in), confirmed_by=confirmed)
    size = rational_value(put_in)
    if size is None or ask is None:
        raise NotTerms(write(put_in))
    from paperaudit.maths.number_forms import as_decimal

    value = as_decimal(size) or whole_or_fraction(size)
    working.say(f"= {write(value)}", write(value))
    answer, closing = finished(value, ask, working.steps[-1].statement)
    working.steps.extend(closing)
    return working.derived(answer if closing else answer_of(value), confirmed_by=confirmed)


def _product_line(
    terms: Sequence[LogTerm], pieces: list[tuple[Fraction, Logarithm, Expression, str]], number: Fraction
) -> str:
    """log(2² × 3) where one logarithm of a whole number comes apart into whole powers."""
    if len(terms) != 1 or terms[0].size != 1 or any(share.denominator > 1 or share < 0 for share, *_ in pieces):
        return ""
    if number.denominator > 1 or number < 0 or len(pieces) + bool(number) < 2:
        return ""
    counted = [(share, log.argument) for share, log, _, _ in pieces]
    if number:
        counted.append((number, terms[0].log.base))
    factors = [base if share == 1 else Power(base, whole_or_fraction(share)) for share, base in counted]
    return write(Logarithm(Product(tuple(factors), "×"), terms[0].log.base))


def _put_in(pieces: list[tuple[Fraction, Logarithm, Expression, str]], number: Fraction) -> Expression:
    found: list[Expression] = []
    for share, _, value, _ in pieces:
        amount = whole_or_fraction(abs(share))
        body: Expression = (
            value if abs(share) == 1 else Product((amount, value), "" if not isinstance(value, Number) else "×")
        )
        found.append(Negative(body) if share < 0 else body)
    if number or not found:
        size = whole_or_fraction(abs(number))
        found.append(Negative(size) if number < 0 else size)
    found.sort(key=lambda piece: isinstance(piece, Negative))
    return found[0] if len(found) == 1 else Sum(tuple(found))


def _shares(log: Logarithm, known: Known) -> tuple[list[Fraction], Fraction]:
    """How often each given logarithm goes into this one, and the power of the base that is left."""
    from paperaudit.maths.linear import Elimination, LinearForm

    if any(other.base != log.base for other, _, _ in known):
        raise NotTerms("logarithms to other bases than those that are given")
    columns = [*(other.argument for other, _, _ in known), *(() if _is_letter(log.base) else (log.base,))]
    exponents = [_primes(one) for one in columns]
    target = _primes(log.argument)
    rows: Elimination[int, int] = Elimination()
    for place, prime in enumerate(sorted({*target, *(prime for one in exponents for prime in one)})):
        row = {at: one.get(prime, Fraction(0)) for at, one in enumerate(exponents) if one.get(prime)}
        if rows.add(LinearForm(row, -target.get(prime, Fraction(0))), place) is not None:
            raise NotTerms(f"{write(log)}, which the given logarithms do not make up")
    values = [rows.value(LinearForm.of(at)) for at in range(len(columns))]
    if any(value is None for value in values):
        raise NotTerms(f"{write(log)}, which the given logarithms make up in several ways")
    found = [Fraction(value) for value in values if value is not None]
    own = Fraction(0) if _is_letter(log.base) else found.pop()
    return found, own


def _is_letter(base: Expression) -> bool:
    """Whether nothing but its own logarithms can be made with a base."""
    return isinstance(base, Euler) or bool(letters_of(base))


def _primes(expression: Expression) -> dict[int, Fraction]:
    """The exponents of the primes of a positive number."""
    value = rational_value(expression)
    if value is None or value <= 0:
        raise NotTerms(f"{write(expression)} in a logarithm")
    if max(value.numerator, value.denominator) > LARGEST:
        raise BudgetExceeded("a number too large to be taken apart")
    found: dict[int, Fraction] = {}
    for size, sign in ((value.numerator, 1), (value.denominator, -1)):
        if size > 1:
            found |= {prime: Fraction(sign * count) for prime, count in powers(prime_factors(size))}
    return found


def _confirm(one: Expression, other: Expression) -> None:
    bases = {name: Fraction(7, 3) for name in letters_of(one)}
    sizes = [Fraction(near_value(side, bases)) for side in (one, other)]
    if abs(sizes[0] - sizes[1]) > _CLOSE:
        raise ChecksDisagree(f"{write(other)} is not {write(one)}")
