"""Roots and fractions written as one power of a letter: √(x³)/x as x^(1/2), 5/√x as 5x^(−1/2)."""

from fractions import Fraction

from paperaudit.maths.algebra.indices import index_lines, monomial_of
from paperaudit.maths.algebra.terms import NotTerms
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import InForm
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Letter, Power, Product, letters_of
from paperaudit.strands.algebra.confirming import EVALUATED, confirm_equal
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import answer_of

SKILL = "indices"


def is_single_power(form: Expression) -> bool:
    """Whether a form is x^n or ax^n with letters for what is to be found."""
    power = form.factors[-1] if isinstance(form, Product) and len(form.factors) == 2 else form
    before = form.factors[0] if isinstance(form, Product) else None
    return (
        isinstance(power, Power)
        and isinstance(power.base, Letter)
        and isinstance(power.exponent, Letter)
        and (before is None or isinstance(before, Letter) or not letters_of(before))
    )


def as_form(task: InForm) -> Derived:
    """The expression as x^n or ax^n; raises NotTerms where it is no such power."""
    power = task.form.factors[-1] if isinstance(task.form, Product) else task.form
    before = task.form.factors[0] if isinstance(task.form, Product) else None
    assert isinstance(power, Power) and isinstance(power.base, Letter) and isinstance(power.exponent, Letter)
    result, size, exponent, working = _found(task.expression, power.base.name)
    if before is None and size != 1:
        raise NotTerms(f"{write(task.expression)}, which has a number before the power")
    if isinstance(before, Letter) and {before.name, power.exponent.name} & set(letters_of(task.expression)):
        raise NotTerms("a form with letters of the expression")
    if not task.values:
        return working.derived(Answer(write(result), result, kind="power"), confirmed_by=EVALUATED)
    values = {power.exponent.name: exponent}
    if isinstance(before, Letter):
        values[before.name] = size
    answers = [answer_of(whole_or_fraction(values[name]), "", name) for name in task.values]
    working.conclude(", ".join(answer.text for answer in answers))
    return working.derived(*answers, confirmed_by=EVALUATED)


def as_power_of(expression: Expression, letter: str) -> Derived:
    """The expression as a power of its letter."""
    result, size, _, working = _found(expression, letter)
    if size != 1:
        raise NotTerms(f"{write(expression)}, which has a number before the power")
    return working.derived(Answer(write(result), result, kind="power"), confirmed_by=EVALUATED)


def _found(expression: Expression, letter: str) -> tuple[Expression, Fraction, Fraction, Working]:
    """The power with its number and its exponent, and the lines to it."""
    found = monomial_of(expression)
    powers = dict(found.powers)
    if set(powers) != {letter}:
        raise NotTerms(f"{write(expression)}, which is no power of {letter} alone")
    working = Working(SKILL)
    exponent, size = powers[letter], found.coefficient
    body: Expression = Letter(letter) if exponent == 1 else Power(Letter(letter), whole_or_fraction(exponent))
    result = body if size == 1 else Product((whole_or_fraction(size), body))
    lines = [line for line in index_lines(expression) if write(line) != write(expression)]
    for place, line in enumerate(dict.fromkeys((*map(write, lines), write(result)))):
        working.say(f"{write(expression)} = {line}" if not place else f"= {line}", line)
    confirm_equal((expression, result), positive=True)
    return result, size, exponent, working
