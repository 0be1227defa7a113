"""The strand of questions about numbers themselves: which derivation takes which task."""

from collections.abc import Callable
from typing import Any

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.measure import UnitClash
from paperaudit.model.accuracy_task import Bound, Estimated
from paperaudit.model.derivation import NotRead, Outcome
from paperaudit.model.number_task import (
    Common,
    DigitAt,
    FromList,
    InBase,
    InOrder,
    InWords,
    IsOfKind,
    Listed,
    Picked,
    PowerOf,
    PrimeFactors,
    RecurringAsFraction,
    Related,
    Remainder,
    Truncated,
    ValueOfDigit,
)
from paperaudit.model.reading import Reading
from paperaudit.model.set_task import SetAsked
from paperaudit.strands.finishing import ChecksDisagree
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

DERIVATIONS: dict[type, Derive] = {
    Common: factors.common,
    PrimeFactors: factors.in_primes,
    Remainder: factors.remainder,
    IsOfKind: picking.of_kind,
    FromList: picking.from_list,
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


class NumbersStrand:
    """Takes the tasks of `model/number_task.py`."""

    name = "number"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        return reading.ask is not None and type(reading.ask.task) in DERIVATIONS

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        assert reading.ask is not None
        task = reading.ask.task
        try:
            return DERIVATIONS[type(task)](task, reading)
        except NoValue as fault:
            return NotRead(f"it has no value that could be given: {fault}")
        except UnitClash as fault:
            return NotRead(f"the units do not go together: {fault}")
        except (BudgetExceeded, ExpressionNotRead) as fault:
            return NotRead(f"it is beyond the limits of what is worked out: {fault}")
        except ChecksDisagree as fault:
            return NotRead(f"two ways of working it out disagree: {fault}")
        except NotSurd as fault:
            return NotRead(f"the exact value is not read yet: {fault}")
