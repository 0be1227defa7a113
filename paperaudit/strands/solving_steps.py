"""Linear equations solved in steps and confirmed by putting the values back."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.simultaneous import solve_simultaneous
from paperaudit.maths.solving import in_decimals, solve_linear, unit_of_constants
from paperaudit.maths.write import write
from paperaudit.model.derivation import Step, StepKind
from paperaudit.model.expression import Expression, Measured, Number, Relation
from paperaudit.strands.equation_checks import confirm_lines, confirm_values, letters_in, solutions
from paperaudit.strands.equation_steps import solution_steps, with_values
from paperaudit.strands.finishing import ChecksDisagree

LINEAR = "linear equations"
SIMULTANEOUS = "simultaneous equations"


@dataclass(frozen=True, slots=True)
class Solved:
    """Steps to the values of the letters asked for, and `unit`, which all of them carry.

    `values` is "none" for equations that clash and "all" for ones that leave a letter free.
    """

    steps: tuple[Step, ...]
    values: dict[str, Fraction] | Literal["none", "all"]
    unit: str = ""
    decimals: bool = False

    def value(self, letter: str) -> Expression:
        """A letter's value as it is printed, with its unit."""
        assert isinstance(self.values, dict)
        value = self.values[letter]
        number: Number = (as_decimal(value) if self.decimals else None) or whole_or_fraction(value)
        return Measured(number, self.unit) if self.unit else number


def solved(relations: Sequence[Relation], asked: Sequence[str], texts: Sequence[str] = ()) -> Solved:
    """Solve for the letters asked for; `texts` are the givens that the equations stand in.

    Raises NotLinear, NoValue, UnitClash, BudgetExceeded, and ChecksDisagree where the second way,
    exact evaluation of the equations as given and of every line, gives something else.
    """
    unit = unit_of_constants(*relations)
    decimals = any(in_decimals(relation, unit) for relation in relations)
    letters = tuple(dict.fromkeys(name for relation in relations for name in letters_in(relation)))
    single = len(relations) == 1 and len(letters) == 1
    values: dict[str, Fraction] | Literal["none", "all"]
    moves: tuple[str, ...]
    if single:
        one = solve_linear(relations[0], letters[0], unit)
        lines, moves = one.lines, one.moves
        values = one.value if isinstance(one.value, str) else {letters[0]: one.value}
    else:
        several = solve_simultaneous(relations, asked, unit)
        lines, moves = several.lines, several.moves
        values = several.values if isinstance(several.values, str) else {write(key): v for key, v in several.values}
    steps = solution_steps(lines, moves, LINEAR if single else SIMULTANEOUS, texts)
    if isinstance(values, str):
        if solutions(relations, letters, unit) != values:
            raise ChecksDisagree("the lines and the equations taken at points differ on whether there is a solution")
        return Solved(steps, values, unit, decimals)
    confirm_lines(lines, confirm_values(relations, values, unit), unit)
    result = Solved(steps, values, unit, decimals)
    forms = [f"{letter} = {write(result.value(letter))}" for letter in values]
    return Solved(with_values(steps, forms), values, unit, decimals)


def closing_step(found: Solved) -> tuple[str, Step]:
    """For equations without a single solution: the answer in words, and the line that says why."""
    last = found.steps[-1].statement.rpartition(": ")[2] if found.steps else ""
    if found.values == "none":
        text, why = "no solution", f"{last} is false, so there is no solution"
    else:
        text, why = "infinitely many solutions", f"{last} always holds, so there are infinitely many solutions"
    before = (found.steps[-1].statement,) if found.steps else ()
    skill = found.steps[-1].skill if found.steps else LINEAR
    return text, Step(why, StepKind.CONCLUSION, None, before, text, skill or LINEAR)
