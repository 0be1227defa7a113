"""The strand of questions about numbers themselves: which derivation takes which task."""

from collections.abc import Callable
from typing import Any

from paperaudit.model.accuracy_task import Bound, Estimated
from paperaudit.model.derivation import Outcome
from paperaudit.model.number_form_task import PowerOf, RecurringAsFraction
from paperaudit.model.number_task import (
    Common,
    DigitAt,
    EqualTo,
    FromList,
    InBase,
    InOrder,
    InWords,
    IsOfKind,
    Listed,
    Picked,
    PrimeFactors,
    Related,
    Remainder,
    Truncated,
    ValueOfDigit,
)
from paperaudit.model.reading import Reading
from paperaudit.model.set_task import SetAsked
from paperaudit.strands.by_task import Derivations, StrandByTask
from paperaudit.strands.numbers import (
    bases,
    bounds,
    estimating,
    factors,
    kinds,
    ordering,
    picking,
    places,
    powers,
    recurring,
    sets,
)

Derive = Callable[[Any, Reading], Outcome]

DERIVATIONS: Derivations = {
    Common: factors.common,
    PrimeFactors: factors.in_primes,
    Remainder: factors.remainder,
    IsOfKind: picking.of_kind,
    FromList: picking.from_list,
    EqualTo: picking.equal_to,
    InWords: places.worded,
    Truncated: places.truncated,
    Listed: kinds.listed,
    InOrder: ordering.in_order,
    Picked: ordering.picked,
    Related: ordering.related,
    DigitAt: places.digit_at,
    ValueOfDigit: places.value_of_digit,
    InBase: bases.in_base,
    RecurringAsFraction: recurring.as_fraction,
    PowerOf: powers.as_power,
    Estimated: estimating.estimated,
    Bound: bounds.bound,
    SetAsked: sets.asked,
}
"""By the task of the ask."""


STRAND = StrandByTask("number", DERIVATIONS)
