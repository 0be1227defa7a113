"""Coefficients compared: both sides multiplied out, the letters found one after the other, or together."""

from fractions import Fraction

from paperaudit.maths.algebra.expanding import expanded_lines
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Term,
    Terms,
    added,
    coefficients,
    degree,
    expression_of,
    letters_in,
    negated,
    terms_of,
    written,
)
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import InForm
from paperaudit.model.expression import Expression, Power, Product, Quotient, Relation, Sum, letters_of, parts_of
from paperaudit.strands.algebra.squares import text
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.solving_steps import solved


def _has_brackets(form: Expression) -> bool:
    """Whether there is something to multiply out."""
    if isinstance(form, Product | Power) and any(isinstance(part, Sum) for part in parts_of(form)):
        return True
    return any(map(_has_brackets, parts_of(form)))


def coefficient_of(terms: Terms, letter: str, exponent: int) -> Terms:
    """What stands with a power of a letter."""
    return tuple(
        Term(term.coefficient, tuple(pair for pair in term.powers if pair[0] != letter))
        for term in terms
        if term.exponent(letter) == exponent
    )


def with_values(terms: Terms, values: dict[str, Fraction]) -> Terms:
    """Terms with known letters replaced by their numbers."""
    total: Terms = ()
    for term in terms:
        size, powers = term.coefficient, []
        for name, exponent in term.powers:
            if name in values:
                size *= values[name] ** exponent
            else:
                powers.append((name, exponent))
        total = added(total, (Term(size, tuple(powers)),))
    return total


def by_coefficients(
    task: InForm, own: tuple[str, ...], unknown: tuple[str, ...], working: Working
) -> dict[str, Expression]:
    """Both sides multiplied out, coefficients equated, solved one after the other."""
    if len(own) > 1:
        raise NotTerms("a form in several letters")
    if isinstance(task.expression, Quotient) or isinstance(task.form, Quotient):
        raise NotTerms("a form with fractions")
    letter = own[0] if own else ""
    lines = expanded_lines(task.form)
    if len(lines) > 1 and _has_brackets(task.form):
        working.say(f"{write(lines[0])} = {write(lines[-1])}")
    form, target = terms_of(task.form), terms_of(task.expression)
    source = expanded_lines(task.expression)
    if len(source) > 1:
        working.say(f"{write(source[0])} = {write(source[-1])}")
    before = tuple(step.statement for step in working.steps)
    values: dict[str, Fraction] = {}
    exponents = list(range(max(degree(form), degree(target)), -1, -1))
    for _ in range(len(unknown) + 1):
        for exponent in list(exponents):
            left, right = coefficient_of(form, letter, exponent), coefficient_of(target, letter, exponent)
            equation = added(with_values(left, values), negated(right))
            names = letters_in(equation)
            if not names and equation:
                raise NotTerms(f"{write(task.expression)}, which cannot be written as {write(task.form)}")
            if not names:
                exponents.remove(exponent)
            elif len(names) == 1 and degree(equation) == 1:
                power = "constants" if not exponent else f"coefficients of {written(_power(letter, exponent))}"
                shown = Relation(expression_of(left), "=", expression_of(right))
                numbers = coefficients(equation, names[0])
                values[names[0]] = -numbers[0] / numbers[1]
                value = f"{names[0]} = {text(values[names[0]])}"
                reached = write(shown) if write(shown) == value else f"{write(shown)}, so {value}"
                working.say(f"{power}: {reached}", uses=before)
                exponents.remove(exponent)
    if set(values) != set(unknown):
        _together(form, target, letter, exponents, values, working)
    if set(values) != set(unknown):
        raise NotTerms(f"the letters of {write(task.form)}, which do not come one after the other")
    return {name: whole_or_fraction(value) for name, value in values.items()}


def _together(
    form: Terms, target: Terms, letter: str, exponents: list[int], values: dict[str, Fraction], working: Working
) -> None:
    """Letters that stand in several coefficients, from simultaneous equations; raises NotTerms for other equations."""
    relations = []
    for exponent in exponents:
        left = with_values(coefficient_of(form, letter, exponent), values)
        right = coefficient_of(target, letter, exponent)
        if degree(left) > 1:
            raise NotTerms("coefficients with products of letters")
        relations.append(Relation(expression_of(left), "=", expression_of(right)))
        power = "constants" if not exponent else f"coefficients of {written(_power(letter, exponent))}"
        working.say(f"{power}: {write(relations[-1])}", uses=())
    names = tuple(dict.fromkeys(name for one in relations for name in letters_of(one.left)))
    found = solved(relations, names)
    if not isinstance(found.values, str):
        working.steps.extend(found.steps)
        values.update(found.values)


def _power(letter: str, exponent: int) -> Terms:
    return (Term(Fraction(1), ((letter, exponent),)),)
