"""What a strand of the syllabus is: it recognises the parts that it can take, and derives their answers."""

from typing import Protocol, runtime_checkable

from paperaudit.model.derivation import Outcome
from paperaudit.model.reading import Reading


class Strand(Protocol):
    """A strand of the syllabus. An answer counts as derived only where a second, independent way agrees."""

    @property
    def name(self) -> str:
        """The strand's name in the syllabus."""
        ...

    def recognises(self, reading: Reading) -> bool:
        """Whether the part is of this strand, whatever comes of deriving it."""
        ...

    def derive(self, reading: Reading) -> Outcome:
        """The answer with its lines, or what stands against one; never raises for a fault of the paper."""
        ...


@runtime_checkable
class FindsOtherWays(Protocol):
    """A strand that can look for other derivations of an answer that it has derived."""

    def with_other_ways(self, reading: Reading, outcome: Outcome) -> Outcome:
        """The outcome with really different derivations added, the shortest first."""
        ...
