"""What stops a derivation, as an outcome with a reason that a teacher understands."""

from collections.abc import Callable

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue, PaperauditError
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.measure import UnitClash
from paperaudit.model.derivation import Impossible, NotDetermined, NotRead, Outcome
from paperaudit.strands.finishing import ChecksDisagree


class Faulty(PaperauditError):
    """A fault of the question that shows only while a part is worked out, with its outcome."""

    def __init__(self, outcome: Impossible | NotDetermined) -> None:
        super().__init__("a fault of the question")
        self.outcome = outcome


def impossible(clash: tuple[str, ...], *why: str, suggestion: str = "") -> Faulty:
    """Nothing satisfies the question: the statements that clash, and the lines that show it, last the false one."""
    return Faulty(Impossible(tuple(dict.fromkeys(clash)), why, suggestion))


def or_not_read(work: Callable[[], Outcome]) -> Outcome:
    """The outcome of a derivation, or NotRead with what stopped it."""
    try:
        return work()
    except Faulty as fault:
        return fault.outcome
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
