"""The lines between an equation in one letter and its roots, for topics that come to such an equation on their way."""

from collections.abc import Callable
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Number, Relation
from paperaudit.strands.algebra.roots import solve_polynomial
from paperaudit.strands.algebra.working import Working

NOUGHT = Number(Fraction(0))


def say_to_roots(left: Expression, letter: str, say: Callable[[str], object], right: Expression = NOUGHT) -> None:
    """Adds the lines of `lines_to_roots` to a working."""
    for line in lines_to_roots(left, right, letter):
        say(line)


def lines_to_roots(left: Expression, right: Expression, letter: str) -> tuple[str, ...]:
    """What a pupil writes behind the equation, without the roots themselves: factors, or the formula.

    () where the equation has no such lines; the roots are found and checked by the one who asks.

    >>> from paperaudit.maths.parse import read_expression
    >>> lines_to_roots(read_expression("x² − 4x + 3"), read_expression("0"), "x")
    ('(x − 3)(x − 1) = 0',)
    """
    working = Working("")
    relation = Relation(left, "=", right)
    try:
        solve_polynomial(relation, letter, working)
    except (NotTerms, NotSurd, NotLinear, NoValue, BudgetExceeded):
        return ()
    said = tuple(step.statement for step in working.steps)
    lines = said[1:] if said and said[0] == write(relation) else said
    solved = f"{letter} = "
    while lines and lines[-1].startswith(solved) and "[" not in lines[-1] and "±" not in lines[-1]:
        lines = lines[:-1]
    return tuple(line for line in lines if " = 0 or " not in line)
