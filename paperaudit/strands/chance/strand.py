"""The strand of probability and counting: which derivation takes which task."""

from collections.abc import Callable
from typing import Any

from paperaudit.model.chance_task import (
    AreCounted,
    FromTable,
    Observed,
    OfCompleted,
    OfVenn,
    OutcomesOf,
    ProbabilityOf,
    Successes,
)
from paperaudit.model.counting_task import Committee, Count, Digits, Row, Spelling
from paperaudit.model.derivation import Answer, Derivation, Derived, Impossible, NotDetermined, NotRead, Outcome
from paperaudit.model.event_task import AreEvents, ChanceOf
from paperaudit.model.reading import Reading
from paperaudit.strands.chance import counting, experiments, joined, observed, ordered, repeated, tables, two_sets
from paperaudit.strands.chance.completed import of_completed
from paperaudit.strands.chance.lines import Lines
from paperaudit.strands.refusals import or_not_read

Found = Answer | Impossible | NotDetermined | NotRead

DERIVATIONS: dict[type, tuple[Callable[[Any, Lines], Found], str]] = {
    ProbabilityOf: (experiments.probability, "counted over every outcome of the experiment"),
    OutcomesOf: (experiments.outcomes_of, "counted outcome by outcome"),
    ChanceOf: (joined.chance_of, "put together from the four parts of the whole, in which every given holds"),
    Observed: (observed.relative, "put back: what is left of the trials is what did not happen"),
    AreCounted: (observed.are_counted, "compared once more within those who have the first property"),
    Successes: (repeated.successes, "put together trial by trial"),
    OfVenn: (two_sets.of_venn, "counted over every member of the group"),
    FromTable: (tables.from_table, "put back into the table"),
    OfCompleted: (of_completed, "put back into the table"),
    Count: (counting.counted, "counted again by another rule"),
    Row: (ordered.row, "counted again pattern by pattern"),
    Spelling: (ordered.spelling, "counted again, written out or letter by letter"),
    Digits: (ordered.digits, "every number written out and looked at"),
    Committee: (ordered.committee, "counted again with one person after the other taken or left"),
    AreEvents: (joined.are_events, "put together from the four parts of the whole, in which every given holds"),
}
"""By the task of the ask, with the second way in words."""


class ChanceStrand:
    """Takes the tasks of `model/chance_task.py`."""

    name = "probability"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        return reading.ask is not None and type(reading.ask.task) in DERIVATIONS

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, a clash of what is given, or NotRead with what stopped it."""
        assert reading.ask is not None
        task = reading.ask.task
        used = tuple(given.text for given in reading.givens)
        lines = Lines(reading.ask, used, reading.givens)
        derive, confirmed = DERIVATIONS[type(task)]

        def derived() -> Outcome:
            found = derive(task, lines)
            if not isinstance(found, Answer):
                return found
            return Derived((found,), (Derivation(tuple(lines.steps), confirmed, lines.used),))

        return or_not_read(derived)


STRAND = ChanceStrand()
