"""How much the searches for one part may do."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from paperaudit.errors import BudgetExceeded


@dataclass(slots=True)
class Budget:
    """How many trials of a theorem instance the searches for one part may still make."""

    left: int = 150_000

    def spend(self) -> None:
        """Count one trial; raises BudgetExceeded when there are none left."""
        self.left -= 1
        if self.left < 0:
            raise BudgetExceeded("the figure has more consequences than the search may look at")

    @contextmanager
    def part(self) -> Iterator["Budget"]:
        """A third of what is left for one search; where that is used up the search stops, and others go on.

        >>> whole = Budget(9)
        >>> with whole.part() as part:
        ...     for _ in range(5):
        ...         part.spend()
        >>> whole.left
        6
        """
        part = Budget(self.left // 3)
        start = part.left
        try:
            yield part
        except BudgetExceeded:
            # The whole budget, or the time of the part of the paper, may be used up instead: that ends every search.
            if part.left >= 0:
                raise
        finally:
            self.left -= start - max(part.left, 0)
