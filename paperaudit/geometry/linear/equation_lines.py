"""The lines in which a pupil solves the equations that a figure gives."""

from collections.abc import Callable
from fractions import Fraction
from typing import TypeAlias

from paperaudit.geometry.figure.notation import Notation
from paperaudit.geometry.linear.derive import Node
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.solving import solve_linear
from paperaudit.maths.write import write
from paperaudit.model.derivation import Reason, Step, StepKind
from paperaudit.model.expression import Expression, Letter, Relation, Sum, letters_of

Term: TypeAlias = tuple[Fraction, LinearForm[Letter]]
"""A multiple and the form that it multiplies."""

Sides: TypeAlias = tuple[list[Term], list[Term]]
"""The terms on the left and on the right of an equation."""


def letter_steps(node: Node, sides: Callable[[Node], Sides], notation: Notation, about_angles: bool) -> list[Step]:
    """The lines from the equations behind a letter's node to its value; at least one.

    Letters whose values are behind it too are put into the equations first.
    """
    letter = node.subject
    assert isinstance(letter, Letter)
    unit = "°" if about_angles and not notation.bare_letters else ""
    solved = {before.subject: before.form for before in node.inputs if isinstance(before.subject, Letter)}
    equations = [before for before in node.inputs if before.kind == "equation"]
    relations = [_relation(_put_into(sides(equation), solved), notation) for equation in equations]
    if len(relations) == 1 and set(letters_of(relations[0].left) + letters_of(relations[0].right)) != {letter.name}:
        lines = ("", *solve_linear(_without_others(sides(equations[0]), letter, notation), letter.name, unit).lines)
        skill = "linear equations"
    elif len(relations) == 1:
        lines = solve_linear(relations[0], letter.name, unit).lines
        skill = "linear equations"
    else:
        from paperaudit.maths.simultaneous import solve_simultaneous

        lines = solve_simultaneous(tuple(relations), unit=unit).lines
        skill = "simultaneous equations"
    last = f"{letter.name} = {write(notation.letter_value(Fraction(node.form.constant), about_angles))}"
    written_before = len(relations) == 1 and not solved
    shown = [line for line in (lines[1:] if written_before else lines) if line != last]
    reason = Reason("simultaneous") if len(relations) > 1 else None
    steps = [Step(line, StepKind.ALGEBRA, reason, (), "", skill) for line in shown]
    return [*steps, Step(last, StepKind.ALGEBRA, reason, (), last.split(" = ")[1], skill)]


def _put_into(both: Sides, solved: dict[Letter, LinearForm[Letter]]) -> Sides:
    left, right = ([(times, form.replaced(solved)) for times, form in side] for side in both)
    return left, right


def _relation(both: Sides, notation: Notation) -> Relation:
    left, right = ([_plain(term, notation) for term in side] for side in both)
    return Relation(_sum(left), "=", _sum(right))


def _without_others(both: Sides, letter: Letter, notation: Notation) -> Relation:
    """The equation with like terms collected and the letters that cancel taken off both sides."""
    left, right = (sum_of(side) for side in both)
    others: LinearForm[Letter] = LinearForm({key: value for key, value in right.terms.items() if key != letter})
    return Relation(notation.value(left - others, ""), "=", notation.value(right - others, ""))


def sum_of(side: list[Term]) -> LinearForm[Letter]:
    """The terms of one side added up."""
    total: LinearForm[Letter] = LinearForm()
    for times, form in side:
        total = total.plus(form, times)
    return total


def _plain(term: Term, notation: Notation) -> Expression:
    times, form = term
    return notation.value(form.times(times), "")


def _sum(terms: list[Expression]) -> Expression:
    flat: list[Expression] = []
    for term in terms:
        flat.extend(term.terms if isinstance(term, Sum) else (term,))
    if not flat:
        return Notation().value(LinearForm(), "")
    return flat[0] if len(flat) == 1 else Sum(tuple(flat))
