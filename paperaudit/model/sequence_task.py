"""What is given and asked about sequences and series."""

from dataclasses import dataclass
from typing import Literal

from paperaudit.model.expression import Expression
from paperaudit.model.topic import TopicFact, TopicTask

SequenceKind = Literal["", "arithmetic", "geometric", "quadratic", "cubic", "summed"]
"""The rule of a sequence where the paper names it; "summed" where each term is the sum of the two before."""


@dataclass(frozen=True, slots=True)
class Sequence(TopicFact):
    """A sequence by its first terms, by the formula of its nth term in `letter`, or by first term and step.

    `step` is the common difference or ratio; `last` the last term of a series that ends; `sums` the formula of
    the sum of the first n terms.
    """

    kind: SequenceKind = ""
    terms: tuple[Expression, ...] = ()
    formula: Expression | None = None
    letter: str = "n"
    first: Expression | None = None
    step: Expression | None = None
    last: Expression | None = None
    sums: Expression | None = None

    def in_words(self) -> str:
        """The statement as it is printed."""
        return "a sequence"


SequenceAsk = Literal[
    "nth term",
    "next",
    "first",
    "term",
    "which",
    "is a term",
    "sum",
    "sum of all",
    "sum to infinity",
    "step",
    "how many",
    "sigma",
]


@dataclass(frozen=True, slots=True)
class OfSequence(TopicTask):
    """Something of a sequence; `sequence` is None where a given states it.

    `count` says how many terms, or which one; `value` is the term that is looked for, or the sum of "how many" terms.
    """

    what: SequenceAsk
    sequence: Sequence | None = None
    kind: SequenceKind = ""
    count: int = 0
    value: Expression | None = None
    letter: str = "n"

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return f"the {self.what} of a sequence"

    def needs_givens(self) -> bool:
        """Whether the sequence itself stands in another sentence."""
        return self.sequence is None


@dataclass(frozen=True, slots=True)
class Sigma(TopicTask):
    """A sum in sigma notation: the terms of a formula in `letter` from `low` to `high`, without end for None."""

    formula: Expression
    letter: str
    low: Expression
    high: Expression | None

    def in_words(self) -> str:
        """What is asked for, as half a sentence."""
        return "a sum in sigma notation"
