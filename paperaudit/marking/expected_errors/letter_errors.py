"""Errors with what a letter, an equals sign and the rule of a sequence mean."""

from collections.abc import Iterator
from fractions import Fraction

from paperaudit.marking.expected_errors.algebra_errors import line_of
from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion, rewritten
from paperaudit.maths.exact import rational_value
from paperaudit.model.expression import Expression, Letter, Number, Product, Sum, letters_of, with_leaves
from paperaudit.model.fact import Holds


def _digits_side_by_side(occasion: Occasion) -> Iterator[Expression]:
    """3x with x = 4 as 34."""
    values = _values(occasion)
    if occasion.expression is None or not values:
        return

    def joined(part: Expression) -> Iterator[Expression]:
        match part:
            case Product((Number(share), Letter(name)), "") if name in values and share.denominator == 1 and share > 0:
                yield Number(Fraction(int(f"{share}{values[name]}")))

    def known(leaf: Expression) -> Expression:
        return Number(values[leaf.name]) if isinstance(leaf, Letter) and leaf.name in values else leaf

    for wrong in rewritten(occasion.expression, joined):
        yield with_leaves(wrong, known)


def _values(occasion: Occasion) -> dict[str, Fraction]:
    """The whole numbers that the givens put in place of letters."""
    found: dict[str, Fraction] = {}
    for given in occasion.part.reading.givens:
        for fact in given.facts:
            if isinstance(fact, Holds) and fact.relation.sign == "=" and isinstance(fact.relation.left, Letter):
                value = None if letters_of(fact.relation.right) else rational_value(fact.relation.right)
                if value is not None and value.denominator == 1 and value >= 0:
                    found[fact.relation.left.name] = value
    return found


def _answer_after_equals(occasion: Occasion) -> Iterator[Expression]:
    """8 + 4 = □ + 5 with 12 or 17 in the box."""
    equation = occasion.equation
    if equation is None or letters_of(equation.left) or line_of(equation) is None:
        return
    match equation.left, equation.right:
        case Sum(), Sum((Letter(), Number(added))) | Sum((Number(added), Letter())):
            total = rational_value(equation.left)
            if total is not None:
                yield from (Number(total), Number(total + added))


def _rule_to_the_next(occasion: Occasion) -> Iterator[Expression]:
    """5, 8, 11, … as n + 3."""
    if occasion.part.strand != "sequences" or occasion.answer is None:
        return
    from paperaudit.model.sequence_task import OfSequence

    task = occasion.task
    if isinstance(task, OfSequence) and task.what == "nth term":
        match occasion.answer.value:
            case Sum((Product((Number(step), Letter() as place)), *_)) | Product((Number(step), Letter() as place)):
                yield Sum((place, Number(step)))


LETTER_ERRORS = (
    ExpectedError(
        "digits side by side",
        23,
        "writes the value of the letter behind its coefficient",
        "Küchemann in Hart 1981; MacGregor and Stacey 1997",
        _digits_side_by_side,
        {"ask": "3x", "given": ["x = 4"]},
        "34",
    ),
    ExpectedError(
        "answer after the equals sign",
        29,
        "takes the equals sign for the request to write the answer",
        "Falkner, Levi and Carpenter 1999",
        _answer_after_equals,
        {"ask": "solve 8 + 4 = x + 5"},
        "12",
    ),
    ExpectedError(
        "rule to the next term",
        37,
        "writes the step to the next term for the formula of the nth term",
        "Ryan and Williams 2007",
        _rule_to_the_next,
        {"ask": "nth term of 5, 8, 11, 14"},
        "n + 3",
    ),
)
"""Rows 23, 29 and 37 of the table of documented errors."""
