"""Identities shown by multiplying out both sides, or refuted by a number."""

from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.expanding import expanded_lines
from paperaudit.maths.algebra.fractions import fraction_lines
from paperaudit.maths.algebra.ratios import has_letters_below
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.postfix import agree, decimal_value
from paperaudit.maths.same_value import same_value
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import Identity
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, letters_of
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.confirming import EVALUATED, confirm_equal, number_at, points, same_number
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.substitution import substituted

SKILL = "algebraic proof"


def show_identity(task: Identity, reading: Reading) -> Derived:
    """Both sides brought to one form; an equation that some number contradicts is refuted by it."""
    refuted = _counter_example(task)
    working = Working(SKILL)
    if refuted is not None:
        working.conclude(refuted, "false")
        return working.derived(Answer(f"false: {refuted}"), confirmed_by="evaluated exactly")
    names = ("left side", "right side")
    ends: list[Expression] = []
    for name, side in zip(names, (task.left, task.right), strict=True):
        lines = fraction_lines(side) if has_letters_below(side) else expanded_lines(side)
        confirm_equal(lines)
        if len(lines) > 1 or name == "left side":
            first = f"{name} = {' = '.join(write(line) for line in lines[:2])}"
            working.say(first, write(lines[min(1, len(lines) - 1)]), uses=())
            for line in lines[2:]:
                working.say(f"= {write(line)}", write(line))
        ends.append(lines[-1])
    if same_value(ends[0], ends[1]) is not True:
        raise ChecksDisagree("the two sides, brought to one form")
    confirm_equal((task.left, task.right))
    working.conclude("left side = right side", "proved")
    return working.derived(Answer("proved"), confirmed_by=EVALUATED)


def _agree_in_decimals(task: Identity, values: dict[str, Fraction]) -> bool:
    """Whether the two sides are equal at these numbers, on eighty figures."""
    numbers: dict[str, Expression] = {name: whole_or_fraction(value) for name, value in values.items()}
    return agree(*(decimal_value(substituted(side, numbers)) for side in (task.left, task.right)))


def _counter_example(task: Identity) -> str | None:
    letters = tuple(dict.fromkeys((*letters_of(task.left), *letters_of(task.right))))
    for values in points(letters):
        try:
            left, right = number_at(task.left, values), number_at(task.right, values)
        except (NoValue, NotSurd, BudgetExceeded):
            continue
        if not same_number(left, right):
            if _agree_in_decimals(task, values):
                raise ChecksDisagree("the two sides, evaluated in two ways")
            said = ", ".join(f"{name} = {write(whole_or_fraction(value))}" for name, value in values.items())
            return f"for {said} the two sides differ"
    return None
