"""Equations in one letter beyond the first degree: polynomial, with fractions, roots and powers."""

from collections.abc import Sequence
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.algebra.logarithms import has_absolute, has_logarithm, signed_terms
from paperaudit.maths.algebra.ratios import has_letters_below
from paperaudit.maths.algebra.roots import count_real_roots
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.measure import unit_of
from paperaudit.maths.polynomial import algebraic_fraction
from paperaudit.maths.same_value import number_of
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Derived, Step
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Power,
    Relation,
    Root,
    Sum,
    letters_of,
    parts_of,
)
from paperaudit.strands.algebra.absolutes import solve_absolute
from paperaudit.strands.algebra.cleared import clear_fractions
from paperaudit.strands.algebra.confirming import floating_at, number_at, put_in, same_number
from paperaudit.strands.algebra.exponents import solve_exponential
from paperaudit.strands.algebra.exponents_by_logarithms import by_logarithms
from paperaudit.strands.algebra.fraction_powers import fraction_powers_in, solve_fraction_power
from paperaudit.strands.algebra.logarithm_equations import solve_logarithmic
from paperaudit.strands.algebra.radicals import solve_radical
from paperaudit.strands.algebra.roots import Method, Roots, solve_polynomial
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree, finished

CONFIRMED = "put back into the equation; the number of real roots counted by Sturm's theorem"
PUT_BACK = "put back into the equation; sign changes looked for between"
NO_ROOTS = "no real solutions"


def solve_one(relation: Relation, letter: str, ask: Ask, method: Method = "", used: tuple[str, ...] = ()) -> Derived:
    """An equation in one letter with every real root. Raises NotTerms, NoValue, ChecksDisagree, BudgetExceeded."""
    if unit_of(relation.left) or unit_of(relation.right):
        raise NotTerms(f"{write(relation)}, which has units")
    working = Working(_skill(relation, letter), used)
    roots, polynomial = _solved(relation, letter, working, method)
    values = sorted(dict.fromkeys(roots.values), key=_size)
    _confirm(relation, letter, roots, values, polynomial)
    confirmed = CONFIRMED if polynomial else PUT_BACK
    if roots.everything:
        working.conclude("both sides are always equal, so every number is a solution", "infinitely many solutions")
        return working.derived(Answer("infinitely many solutions"), confirmed_by=confirmed)
    if not values:
        if roots.values:
            raise ChecksDisagree("roots were found, and none was kept")
        if "no " not in working.steps[-1].statement:
            working.conclude("so there are no real solutions", NO_ROOTS)
        return working.derived(Answer(NO_ROOTS), confirmed_by=confirmed)
    return concluded(values, letter, ask, working, confirmed)


def concluded(values: Sequence[Expression], letter: str, ask: Ask, working: Working, confirmed: str) -> Derived:
    """The roots with the accuracy asked for."""
    forms = [f"{letter} = {write(value)}" for value in values]
    if working.steps[-1].statement != forms[-1] or len(forms) > 1:
        working.conclude(" or ".join(forms))
    answers: list[Answer] = []
    last = working.steps[-1].statement
    ending: list[Step] = []
    for value in values:
        answer, steps = finished(value, ask, last, letter)
        answers.append(answer)
        ending.extend(steps)
    working.steps.extend(ending)
    return working.derived(*answers, confirmed_by=confirmed)


def _size(value: Expression) -> Fraction:
    number = number_of(value)
    if number is None:
        raise NoValue(f"{write(value)} has no value")
    return Fraction(number)


def _solved(relation: Relation, letter: str, working: Working, method: Method) -> tuple[Roots, bool]:
    sides = (relation.left, relation.right)
    if any(map(has_logarithm, sides)):
        return solve_logarithmic(relation, letter, working), False
    if any(map(has_absolute, sides)):
        return solve_absolute(relation, letter, working), False
    if any(has_letter_in_exponent(side) for side in sides):
        return _exponential(relation, letter, working), False
    if any(map(fraction_powers_in, sides)):
        return solve_fraction_power(relation, letter, working), False
    if any(has_root_of_letter(side) for side in sides):
        return solve_radical(relation, letter, working), False
    if any(map(has_letters_below, sides)):
        cleared, forbidden = clear_fractions(relation, working)
        found = solve_polynomial(cleared, letter, working, method)
        kept: list[Expression] = []
        for value in found.values:
            if any(_is_nought(one, letter, value) for one in forbidden):
                working.say(f"{letter} = {write(value)} makes a denominator 0, so it is no solution")
            else:
                kept.append(value)
        return Roots(kept, found.everything), True
    return solve_polynomial(relation, letter, working, method), True


def _exponential(relation: Relation, letter: str, working: Working) -> Roots:
    """By powers of one base where there is one, else by logarithms; 3 × 2^x − 5 = 7 with the power alone first."""
    before = list(working.steps)
    powers = sum(has_letter_in_exponent(term) for side in (relation.left, relation.right)
                 for _, term in signed_terms(side))  # fmt: skip
    if powers == 1 and any(isinstance(side, Sum) for side in (relation.left, relation.right)):
        try:
            return by_logarithms(relation, letter, working)
        except NotTerms:
            working.steps[:] = before
    try:
        return solve_exponential(relation, letter, working)
    except NotTerms:
        working.steps[:] = before
    return by_logarithms(relation, letter, working)


def _is_nought(expression: Expression, letter: str, value: Expression) -> bool:
    return same_number(number_at(put_in(expression, letter, value), {}), Fraction(0))


def has_letter_in_exponent(expression: Expression) -> bool:
    """Whether a letter stands in an exponent."""
    if isinstance(expression, Power) and letters_of(expression.exponent):
        return True
    return any(map(has_letter_in_exponent, parts_of(expression)))


def has_root_of_letter(expression: Expression) -> bool:
    """Whether a letter stands under a root."""
    if isinstance(expression, Root) and letters_of(expression.radicand):
        return True
    return any(map(has_root_of_letter, parts_of(expression)))


def _skill(relation: Relation, letter: str) -> str:
    sides = (relation.left, relation.right)
    if any(map(has_logarithm, sides)):
        return "logarithmic equations"
    if any(map(has_absolute, sides)):
        return "absolute values"
    if any(map(has_letter_in_exponent, sides)):
        return "exponential equations"
    if any(map(has_root_of_letter, sides)):
        return "equations with roots"
    if any(map(has_letters_below, sides)):
        return "equations with fractions"
    try:
        whole = algebraic_fraction(Sum((relation.left, Negative(relation.right)))).above
    except NotSurd:
        return "quadratic equations"
    return "quadratic equations" if whole.degree <= 2 else "polynomial equations"


def _confirm(relation: Relation, letter: str, roots: Roots, values: Sequence[Expression], polynomial: bool) -> None:
    """Every root must satisfy the equation as given, and there must be as many as the equation has."""
    for value in values:
        try:
            left, right = (number_at(put_in(side, letter, value), {}) for side in (relation.left, relation.right))
        except NoValue as fault:
            raise ChecksDisagree(f"{letter} = {write(value)} in {write(relation)}: {fault}") from None
        if not same_number(left, right):
            raise ChecksDisagree(f"{letter} = {write(value)} does not satisfy {write(relation)}")
    if polynomial:
        _confirm_count(relation, letter, roots, values)
    else:
        _confirm_by_signs(relation, letter, values)


def _confirm_count(relation: Relation, letter: str, roots: Roots, values: Sequence[Expression]) -> None:
    whole = algebraic_fraction(Sum((relation.left, Negative(relation.right))))
    above, below = (_numbers(part.terms, letter) for part in (whole.above, whole.below))
    if not above:
        if not roots.everything:
            raise ChecksDisagree("every number satisfies the equation")
        return
    if roots.everything:
        raise ChecksDisagree("not every number satisfies the equation")
    expected = count_real_roots(above) if len(above) > 1 else 0
    lost = _common_roots(above, below)
    if len(values) != expected - lost:
        raise ChecksDisagree(f"{len(values)} roots were found, the equation has {expected - lost}")


def _common_roots(above: list[Fraction], below: list[Fraction]) -> int:
    """How many different real roots numerator and denominator share."""
    from paperaudit.maths.algebra.division import divided

    one, other = above, below
    while other:
        one, other = other, divided(one, other)[1]
    return count_real_roots(one) if len(one) > 1 else 0


def _numbers(terms: object, letter: str) -> list[Fraction]:
    found: dict[int, Fraction] = {}
    for monomial, share in dict(terms).items():  # type: ignore[call-overload]
        exponent = sum(count for unknown, count in monomial if unknown == Letter(letter))
        if share.fraction is None:
            raise NotTerms("an irrational coefficient")
        found[exponent] = share.fraction
    return [found.get(place, Fraction(0)) for place in range(max(found) + 1)] if found else []


def _confirm_by_signs(relation: Relation, letter: str, values: Sequence[Expression]) -> None:
    """Left side minus right side may change its sign only at the roots found."""
    difference = Sum((relation.left, Negative(relation.right)))
    sizes = [_size(value) for value in values]
    before: tuple[Fraction, bool] | None = None
    for step in range(-160, 161):
        at = Fraction(step, 7) + Fraction(1, 31)
        value = floating_at(difference, letter, at)
        if not value:
            before = None
            continue
        changed = before is not None and before[1] != (value > 0)
        passed = before is not None and any(before[0] <= size <= at for size in sizes)
        if changed and before is not None and not passed and _crosses(difference, letter, before[0], at):
            raise ChecksDisagree(f"there is another solution of {write(relation)} near {letter} = {float(at):.1f}")
        before = (at, value > 0)


def _crosses(difference: Expression, letter: str, low: Fraction, high: Fraction) -> bool:
    """Whether a change of sign is a crossing of nought and no jump, by halving."""
    start = floating_at(difference, letter, low) or 0.0
    for _ in range(40):
        middle = (low + high) / 2
        value = floating_at(difference, letter, middle)
        if value is None or not value:
            return value is not None
        low, high = (middle, high) if (value > 0) == (start > 0) else (low, middle)
    ends = [abs(floating_at(difference, letter, at) or 0.0) for at in (low, high)]
    return min(ends) < 1e-3
