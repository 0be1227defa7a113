"""The wrong answers that documented errors give to a part, and the errors that its stated answer may come from."""

from dataclasses import replace

from paperaudit.errors import BudgetExceeded, ExpressionNotRead, NoValue
from paperaudit.marking.expected_errors.algebra_errors import ALGEBRA_ERRORS
from paperaudit.marking.expected_errors.angle_errors import ANGLE_ERRORS
from paperaudit.marking.expected_errors.chance_errors import CHANCE_ERRORS
from paperaudit.marking.expected_errors.expected_error import ExpectedError, WrongAnswer
from paperaudit.marking.expected_errors.length_errors import LENGTH_ERRORS
from paperaudit.marking.expected_errors.letter_errors import LETTER_ERRORS
from paperaudit.marking.expected_errors.measure_errors import MEASURE_ERRORS
from paperaudit.marking.expected_errors.number_errors import NUMBER_ERRORS
from paperaudit.marking.expected_errors.occasions import Occasion
from paperaudit.marking.expected_errors.ordering_errors import ORDERING_ERRORS
from paperaudit.marking.expected_errors.story_errors import STORY_ERRORS
from paperaudit.maths.equality import compare
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.same_value import same_value
from paperaudit.maths.write import write
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Agreement
from paperaudit.model.expression import Measured

EXPECTED_ERRORS: tuple[ExpectedError, ...] = (
    *ANGLE_ERRORS,
    *LENGTH_ERRORS,
    *CHANCE_ERRORS,
    *MEASURE_ERRORS,
    *STORY_ERRORS,
    *ORDERING_ERRORS,
    *LETTER_ERRORS,
    *ALGEBRA_ERRORS,
    *NUMBER_ERRORS,
)
"""In the order in which they are looked for: the errors of one topic before those of calculation."""

MOST_WRONG = 24
"""Wrong answers that are worked out for one part."""


def wrong_answers(occasion: Occasion) -> tuple[WrongAnswer, ...]:
    """Every wrong value that an expected error leads to, with the error, each value once an error."""
    found: list[WrongAnswer] = []
    for error in EXPECTED_ERRORS:
        try:
            for value in error.wrong(occasion):
                if len(found) < MOST_WRONG and WrongAnswer(error, value) not in found:
                    found.append(WrongAnswer(error, value))
        except (NotSurd, NoValue, BudgetExceeded, UnitClash):
            continue  # an error that leads to no value leads to no wrong answer
    return tuple(found)


def hidden_errors(part: AuditedPart) -> tuple[ExpectedError, ...]:
    """The errors that lead to the right answer with the numbers of this part."""
    occasion = Occasion(part)
    answer = occasion.answer
    if answer is None or answer.value is None:
        return ()
    right, _ = bare(answer.value)
    hidden = (wrong.error for wrong in wrong_answers(occasion) if same_value(wrong.value, right))
    return tuple(dict.fromkeys(hidden))


def probable_errors(part: AuditedPart) -> tuple[ExpectedError, ...]:
    """The errors that lead to the stated answer, where that is not the right one."""
    occasion = Occasion(part)
    answer = occasion.answer
    if answer is None or answer.value is None or part.part.answer is None or part.reading.ask is None:
        return ()
    right, unit = bare(answer.value)
    found: list[ExpectedError] = []
    for wrong in wrong_answers(occasion):
        if same_value(wrong.value, right) is not False:
            continue
        value = Measured(wrong.value, unit) if unit else wrong.value
        try:
            supposed = (replace(answer, text=write(value), value=value),)
            if compare(part.part.answer.text, supposed, part.reading.ask).agreement is Agreement.AGREES:
                found.append(wrong.error)
        except (ExpressionNotRead, NotSurd, NoValue, BudgetExceeded, UnitClash):
            continue
    return tuple(dict.fromkeys(found))
