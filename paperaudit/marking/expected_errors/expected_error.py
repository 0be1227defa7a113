"""What an expected error is: what the learner does, who documented it, and which wrong answers it gives to a part."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from paperaudit.marking.expected_errors.occasions import Occasion
from paperaudit.model.expression import Expression


@dataclass(frozen=True, slots=True, eq=False)
class ExpectedError:
    """One documented error.

    `row` is its row in the table of 63 documented errors that this package follows; two formulas of one row are two
    ways to fall into it. `says` is what the learner does, as half a sentence after "who". `wrong` gives the bare
    values, in the unit of the right answer, that the error leads to in a part; none where the part gives no
    occasion for it.
    `example` is a small question, as in a question file, with the wrong answer that the error gives.
    """

    name: str
    row: int
    says: str
    source: str
    wrong: Callable[[Occasion], Iterator[Expression]]
    example: dict[str, object]
    gives: str


@dataclass(frozen=True, slots=True)
class WrongAnswer:
    """A wrong answer to a part, and the error that leads to it."""

    error: ExpectedError
    value: Expression
