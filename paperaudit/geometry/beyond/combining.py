"""Relations put together without any value known: products of ratios, sums of products, with what each rests on."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import TypeAlias

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.geometry.beyond.amounts import NoExactValue, Value, amount_in
from paperaudit.geometry.beyond.further_texts import sides_for
from paperaudit.geometry.beyond.reach import Reach
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.rows import Row, sides_of
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import canonical
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.theorems.theorem import Balanced, Equation, Proportional, SegmentsEqual, Stated
from paperaudit.maths.cancelling import NoRoot, reduced
from paperaudit.maths.linear import Elimination, LinearForm
from paperaudit.maths.polynomial import AlgebraicFraction, Monomial, Polynomial
from paperaudit.maths.surd import Surd
from paperaudit.model.expression import AngleOf, AreaOf, DistanceOf, Expression, LengthOf, leaves

Balance: TypeAlias = dict[Monomial, Fraction]
"""What a relation sets to 0, by its products of sizes."""

MOST_RELATIONS = 500
MOST_PRODUCTS = 300
"""Relations of lengths that are multiplied by a length."""
LARGEST_PRIME = 1000


@dataclass(frozen=True, slots=True)
class Relation:
    """A relation that is settled: the fact that says it, and what it sets to 0."""

    fact: Fact
    balance: Balance


def combined(reach: Reach, arrangement: Arrangement, left: Expression, right: Expression) -> tuple[Fact, ...] | None:
    """The facts from which `left` = `right` follows, fewest first tried; None where it does not follow from any.

    `reach` has come to its end. Ratios and products are multiplied and divided, sums are added.
    """
    aim = _balance(canonical(left, arrangement), canonical(right, arrangement))
    if aim is None:
        return None
    settled = sorted(_settled(reach), key=lambda relation: relation.fact.cost)[:MOST_RELATIONS]
    return _by_products(aim, settled) or _by_sums(aim, settled) or _by_sums(aim, [*settled, *_multiplied(aim, settled)])


def equal_ratios(reach: Reach, wanted: Sequence[Proportional | SegmentsEqual]) -> Iterator[Fact]:
    """Ratios, and segments, whose equality follows from the products and ratios that are settled."""
    if not wanted:
        return
    settled = sorted(_settled(reach), key=lambda relation: relation.fact.cost)[:MOST_RELATIONS]
    known = [(relation.fact, logs) for relation in settled if (logs := _logarithms(relation.balance)) is not None]
    rows: Elimination[object, int] = Elimination()
    for number, (_, form) in enumerate(known):
        rows.add(form, number)
    for predicate in wanted:
        sides = sides_of(predicate)
        balance = _balance(*sides) if sides and sides[0] != sides[1] else None
        wanted_form = _logarithms(balance) if balance else None
        if wanted_form is None or rows.value(wanted_form) != 0:
            continue
        facts = _fewest(wanted_form, [known[number] for number in rows.support(wanted_form)])
        if facts and not (len(facts) == 1 and facts[0].subject == predicate):
            yield Fact("predicate", predicate, {}, None, facts, 4 + sum(fact.cost for fact in facts))


def _settled(reach: Reach) -> Iterator[Relation]:
    """Every relation of lengths whose premises are settled."""
    for row in reach.rows:
        if row.source is None or row.conclusion is not None or any(isinstance(size, AngleOf) for size in row.terms):
            continue
        fact = _fact_of(reach, row)
        if fact is not None and isinstance(fact.subject, Balanced):
            balance = _balance(fact.subject.left, fact.subject.right)
            if balance:
                yield Relation(fact, balance)
    for predicate, fact in reach.facts.items():
        sides = sides_of(predicate) if isinstance(predicate, SegmentsEqual | Proportional | Balanced) else None
        balance = _balance(*sides) if sides and sides[0] != sides[1] else None
        if balance:
            yield Relation(fact, balance)


def _fact_of(reach: Reach, row: Row) -> Fact | None:
    """The relation of a row as a fact; None where one of its premises is not settled."""
    inputs = []
    for premise in row.premises:
        if isinstance(premise, Stated):
            continue
        fact = reach.facts.get(premise)
        if fact is None:
            return None
        inputs.append(fact)
    assert row.source is not None
    if not isinstance(row.source, Equation) and not row.source.relation.terms:
        return None
    left, right = sides_for(row.source, None)
    cost = row.weight + sum(fact.cost for fact in inputs)
    return Fact("predicate", Balanced(left, right), {}, row.source, tuple(inputs), cost)


@lru_cache(maxsize=8192)
def _balance(left: Expression, right: Expression) -> Balance | None:
    """left − right over one fraction bar, with rational shares; None for what has none."""
    sizes = [size for size in (*leaves(left), *leaves(right)) if isinstance(size, LengthOf | AreaOf | DistanceOf)]
    given: dict[Size, Value] = {size: Value(AlgebraicFraction(Polynomial.of(size))) for size in sizes}
    try:
        difference = amount_in(left, given, None) + -amount_in(right, given, None)
        above = reduced(difference).above
    except (NoExactValue, NoRoot, NoValue, BudgetExceeded, ZeroDivisionError):
        return None
    balance = {monomial: share.fraction for monomial, share in above.terms.items()}
    if any(share is None for share in balance.values()):
        return None
    return {monomial: share for monomial, share in balance.items() if share}


def _by_products(aim: Balance, settled: Sequence[Relation]) -> tuple[Fact, ...] | None:
    """Where every relation says that two products are equal: their logarithms are linear."""
    form = _logarithms(aim)
    if form is None:
        return None
    known = [(relation.fact, logs) for relation in settled if (logs := _logarithms(relation.balance)) is not None]
    return _fewest(form, known)


def _logarithms(balance: Balance) -> LinearForm[object] | None:
    """One product over the other as a sum of exponents of lengths and of primes; None where it is no such relation."""
    if len(balance) != 2:
        return None
    (one, first), (two, second) = balance.items()
    ratio = -second / first
    if ratio <= 0:
        return None
    terms: dict[object, Fraction] = {}
    for monomial, sign in ((one, 1), (two, -1)):
        for key, power in monomial:
            terms[key] = terms.get(key, Fraction(0)) + sign * power
    for number, sign in ((ratio.numerator, -1), (ratio.denominator, 1)):
        for prime, power in _primes(number).items():
            terms[prime] = terms.get(prime, Fraction(0)) + sign * power
    return LinearForm(terms)


def _by_sums(aim: Balance, settled: Sequence[Relation]) -> tuple[Fact, ...] | None:
    """Where the relations are added and subtracted, each product of sizes counting as one thing."""
    return _fewest(_form(aim), [(relation.fact, _form(relation.balance)) for relation in settled])


def _form(balance: Balance) -> LinearForm[object]:
    return LinearForm(dict[object, Fraction](balance.items()))


def _multiplied(aim: Balance, settled: Sequence[Relation]) -> list[Relation]:
    """Relations of lengths multiplied by the lengths that stand in the products of the aim and of the others."""
    keys = dict.fromkeys(key for monomial in aim for key, _ in monomial)
    for relation in settled:
        if len(keys) < 12 and any(sum(power for _, power in monomial) > 1 for monomial in relation.balance):
            keys.update(dict.fromkeys(key for monomial in relation.balance for key, _ in monomial))
    found: list[Relation] = []
    for relation in settled:
        if all(sum(power for _, power in monomial) <= 1 for monomial in relation.balance):
            for key in keys:
                if len(found) < MOST_PRODUCTS:
                    found.append(Relation(relation.fact, _times(relation.balance, key)))
    return found


def _times(balance: Balance, key: Expression) -> Balance:
    times = Polynomial.of(key)
    products = {monomial: Polynomial({monomial: Surd.rational(1)}) * times for monomial in balance}
    return {next(iter(products[monomial].terms)): share for monomial, share in balance.items()}


def _primes(number: int) -> dict[int, int]:
    """The prime factors of a number with their powers; what has no factor below LARGEST_PRIME counts as prime."""
    found: dict[int, int] = {}
    divisor = 2
    while divisor * divisor <= number and divisor < LARGEST_PRIME:
        while number % divisor == 0:
            found[divisor] = found.get(divisor, 0) + 1
            number //= divisor
        divisor += 1
    if number > 1:
        found[number] = found.get(number, 0) + 1
    return found


def _fewest(aim: LinearForm[object], known: Sequence[tuple[Fact, LinearForm[object]]]) -> tuple[Fact, ...] | None:
    """The facts of one relation that is a multiple of the aim, of two that add up to it, or of as few as are found."""
    scaled: dict[LinearForm[object], tuple[Fact, LinearForm[object]]] = {}
    for fact, form in known:
        scaled.setdefault(_normal(form), (fact, form))
    alone = scaled.get(_normal(aim))
    if alone:
        return (alone[0],)
    for fact, form in known:
        for share in _shares(aim, form):
            other = scaled.get(_normal(aim.plus(form, share)))
            if other:
                return fact, other[0]
    return _spanning(aim, list(scaled.values()))


def _shares(aim: LinearForm[object], form: LinearForm[object]) -> set[Fraction]:
    return {-aim.coefficient(key) / value for key, value in form.terms.items() if aim.coefficient(key)}


def _normal(form: LinearForm[object]) -> LinearForm[object]:
    """The form with its first term, in the order of their texts, made 1."""
    if not form.terms:
        return form
    first = min(form.terms, key=repr)
    return form.over(form.terms[first])


def _spanning(aim: LinearForm[object], known: Sequence[tuple[Fact, LinearForm[object]]]) -> tuple[Fact, ...] | None:
    """Relations that add up to the aim, those not needed left out one by one, the dearest first."""
    chosen = _support(aim, known)
    if chosen is None:
        return None
    kept = [known[number] for number in chosen]
    for entry in sorted(kept, key=lambda pair: -pair[0].cost):
        fewer = [other for other in kept if other is not entry]
        if _support(aim, fewer) is not None:
            kept = fewer
    return tuple(dict.fromkeys(fact for fact, _ in kept))


def _support(aim: LinearForm[object], known: Sequence[tuple[Fact, LinearForm[object]]]) -> list[int] | None:
    rows: Elimination[object, int] = Elimination()
    for number, (_, form) in enumerate(known):
        rows.add(form, number)
    rest, multiples = rows.reduce(aim)
    return None if rest.terms or rest.constant else sorted(multiples)
