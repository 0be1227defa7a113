"""Refutes a given by the others: what they make of a size is worked out, and the paper says something else."""

from collections.abc import Callable, Iterator
from decimal import Decimal
from fractions import Fraction
from typing import TypeAlias

from paperaudit.errors import BudgetExceeded
from paperaudit.geometry.beyond.refute_further import SAYS
from paperaudit.geometry.figure.incidence import Unclear
from paperaudit.geometry.figure.sizes import NotLinear
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.same_value import number_of
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived, Impossible, Outcome, Several, Step
from paperaudit.model.expression import Expression, Letter, Number, Quantity, leaves
from paperaudit.model.fact import Given, Holds

MOST_TRIED = 8
"""Givens that are left out one after the other."""
PLAINLY = Decimal("0.02")
"""Share by which two sizes must differ at least where some given has decimals, which may be rounded ones."""
PLAYS = 5
"""How often the shares by which all decimals may be rounded must fit into that difference, taken together."""
AT_ALL = Decimal("1e-9")
"""The share where every given is exact."""

OutcomeOf: TypeAlias = Callable[[tuple[Given, ...], Expression], Outcome]
"""What some givens say of a size."""


def overdetermined(givens: tuple[Given, ...], outcome_of: OutcomeOf) -> Impossible | None:
    """The clash of one given with what the others settle, found by deriving its size from them; None if none is.

    The last givens come first: what a setter adds to a figure that was settled already stands at the end.
    """
    apart = _apart(givens)
    for label, size, stated in list(_sizes_given(givens))[:MOST_TRIED]:
        others = (*givens[:label], *givens[label + 1 :])
        try:
            outcome = outcome_of(others, size)
        except (Unclear, NotLinear, BudgetExceeded):
            continue
        if isinstance(outcome, Impossible) and outcome.clash:
            return outcome
        if not isinstance(outcome, Derived | Several) or not outcome.derivations:
            continue
        if all(_differs(answer, stated, apart) for answer in outcome.answers):
            labels = _behind(givens, label, outcome)
            smaller = _smaller(givens, labels, label, size, outcome_of)
            return smaller or _clash(givens, labels, label, size, outcome)
    return None


def _apart(givens: tuple[Given, ...]) -> Decimal:
    """The share by which two sizes must differ so that no rounding of the decimals among the givens explains it."""
    decimals = [leaf for given in givens for leaf in _numbers(given) if leaf.places and leaf.value]
    if not decimals:
        return AT_ALL
    plays = sum(Fraction(1, 2 * 10**leaf.places) / abs(leaf.value) for leaf in decimals)
    return max(PLAINLY, PLAYS * _decimal(Fraction(plays)))


def _behind(givens: tuple[Given, ...], label: int, outcome: Derived | Several) -> tuple[int, ...]:
    """The givens that a derived size rests on, and the one that states it otherwise."""
    used = {text for derivation in outcome.derivations for text in derivation.givens_used}
    return tuple(other for other, given in enumerate(givens) if other == label or given.text in used)


def _smaller(
    givens: tuple[Given, ...], labels: tuple[int, ...], label: int, size: Expression, outcome_of: OutcomeOf
) -> Impossible | None:
    """A clash without some relation that the derivation used, where what is left cannot be drawn either.

    Of 3-4-5 and AC = 2, a leg does no more than make the derivation.
    """
    for other in labels:
        if other == label or not any(isinstance(fact, Holds) for fact in givens[other].facts):
            continue
        kept = (
            given
            for place, given in enumerate(givens)
            if place != other and (place in labels or not any(isinstance(fact, Holds) for fact in given.facts))
        )
        try:
            outcome = outcome_of(tuple(kept), size)
        except (Unclear, NotLinear, BudgetExceeded):
            continue
        if isinstance(outcome, Impossible) and outcome.clash:
            return outcome
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


def _clash(
    givens: tuple[Given, ...], labels: tuple[int, ...], label: int, size: Expression, outcome: Derived | Several
) -> Impossible:
    values = " or ".join(answer.text for answer in outcome.answers)
    return Impossible(
        tuple(dict.fromkeys(givens[other].text for other in labels)),
        (
            *(_line(step) for step in outcome.derivations[0].steps),
            f"So {write(size)} = {values}, but the paper says {givens[label].text}.",
        ),
        f"{write(size)} = {values} would fit the other givens.",
    )


def _line(step: Step) -> str:
    """A line with its theorem in words."""
    says = SAYS.get(step.reason.name, "") if step.reason else ""
    return f"{step.statement}: {says[0].lower()}{says[1:]}" if says else step.statement
