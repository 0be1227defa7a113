"""How much the searches for one part may do."""

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
