"""The strand of sequences and series: which derivation takes which task."""

from collections.abc import Callable
from typing import Any

from paperaudit.model.derivation import Outcome
from paperaudit.model.reading import Reading
from paperaudit.model.sequence_task import OfSequence, Sequence, Sigma
from paperaudit.strands.refusals import or_not_read
from paperaudit.strands.sequences import as_sigma, from_sums, how_many, sums, terms

_DERIVE: dict[str, Callable[[OfSequence, Reading], Outcome]] = {
    "nth term": terms.nth,
    "next": terms.next_terms,
    "first": terms.next_terms,
    "term": terms.term,
    "which": terms.which,
    "is a term": terms.which,
    "sum": sums.summed,
    "sum of all": sums.summed,
    "sum to infinity": sums.to_infinity,
    "step": terms.step,
    "how many": how_many.terms_to_a_sum,
    "sigma": as_sigma.as_sigma,
}


class SequencesStrand:
    """Takes the tasks of `model/sequence_task.py`."""

    name = "sequences"

    def recognises(self, reading: Reading) -> bool:
        """Whether the ask is one of these tasks."""
        return reading.ask is not None and isinstance(reading.ask.task, OfSequence | Sigma)

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or NotRead with what stopped it."""
        assert reading.ask is not None
        task: Any = reading.ask.task
        if isinstance(task, Sigma):
            return or_not_read(lambda: sums.sigma(task, reading))
        found = sequence_of(task, reading)
        if found is not None and (formula := found[0].sums) is not None:
            used = found[1]
            return or_not_read(lambda: from_sums.from_sums(task, formula, used))
        return or_not_read(lambda: _DERIVE[task.what](task, reading))


def sequence_of(task: OfSequence, reading: Reading) -> tuple[Sequence, tuple[str, ...]] | None:
    """The one sequence that the ask or a given states, with the given's text; None for none or several."""
    if task.sequence is not None:
        return task.sequence, ()
    found = [(fact, (given.text,)) for given in reading.givens for fact in given.facts if isinstance(fact, Sequence)]
    return found[0] if len(found) == 1 else None


STRAND = SequencesStrand()
