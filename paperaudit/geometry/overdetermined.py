"""Refutes a given by the others: what they make of a size is worked out, and the paper says something else."""

from collections.abc import Callable, Iterator
from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import BudgetExceeded
from paperaudit.geometry.incidence import Unclear
from paperaudit.geometry.sizes import NotLinear
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.same_value import number_of
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived, Impossible, Outcome, Several
from paperaudit.model.expression import Expression, Letter, Number, Quantity, leaves
from paperaudit.model.fact import Given, Holds

MOST_TRIED = 8
"""Givens that are left out one after the other."""
PLAINLY = Decimal("0.02")
"""Share by which two sizes must differ where some given has decimals, which may be rounded ones."""
AT_ALL = Decimal("1e-9")
"""The share where every given is exact."""


def overdetermined(
    givens: tuple[Given, ...], outcome_of: Callable[[tuple[Given, ...], Expression], Outcome]
) -> Impossible | None:
    """The clash of one given with what the others settle, found by deriving its size from them; None if none is.

    The last givens come first: what a setter adds to a figure that was settled already stands at the end.
    """
    exact = not any(leaf.places for given in givens for leaf in _numbers(given))
    for label, size, stated in list(_sizes_given(givens))[:MOST_TRIED]:
        others = (*givens[:label], *givens[label + 1 :])
        try:
            outcome = outcome_of(others, size)
        except (Unclear, NotLinear, BudgetExceeded):
            continue
        if not isinstance(outcome, Derived | Several) or not outcome.derivations:
            continue
        if all(_differs(answer, stated, AT_ALL if exact else PLAINLY) for answer in outcome.answers):
            return _clash(givens[label], size, outcome)
    return None


def _sizes_given(givens: tuple[Given, ...]) -> Iterator[tuple[int, Expression, Expression]]:
    """The givens that say no more than the size of one thing, with it and its size, the last first."""
    for label in range(len(givens) - 1, -1, -1):
        match givens[label].facts:
            case (Holds(relation),) if relation.sign == "=":
                for size, value in ((relation.left, relation.right), (relation.right, relation.left)):
                    if isinstance(size, Quantity) and all(isinstance(leaf, Number | Letter) for leaf in leaves(value)):
                        yield label, size, value


def _numbers(given: Given) -> Iterator[Number]:
    for fact in given.facts:
        if isinstance(fact, Holds):
            for side in (fact.relation.left, fact.relation.right):
                yield from (leaf for leaf in leaves(side) if isinstance(leaf, Number))


def _differs(answer: Answer, stated: Expression, share: Decimal) -> bool:
    """Whether a derived size is another than the stated one, in the same unit."""
    if answer.value is None:
        return False
    try:
        (ours, our_unit), (theirs, their_unit) = bare(answer.value), bare(stated)
    except UnitClash:
        return False
    one, two = number_of(ours), number_of(theirs)
    if one is None or two is None or (our_unit and their_unit and our_unit != their_unit):
        return False
    larger = max(abs(_decimal(one)), abs(_decimal(two)))
    return abs(_decimal(one) - _decimal(two)) > share * larger


def _decimal(value: Fraction | Decimal) -> Decimal:
    return Decimal(value.numerator) / value.denominator if isinstance(value, Fraction) else value


def _clash(given: Given, size: Expression, outcome: Derived | Several) -> Impossible:
    derivation = outcome.derivations[0]
    values = " or ".join(answer.text for answer in outcome.answers)
    lines = [step.statement for step in derivation.steps]
    return Impossible(
        tuple(dict.fromkeys((*derivation.givens_used, given.text))),
        (*lines, f"So {write(size)} = {values}, but the paper says {given.text}."),
        f"{write(size)} = {values} would fit the other givens.",
    )
