"""Expressions written in a form with letters to be found, above all the completed square."""

from fractions import Fraction

from paperaudit.maths.algebra.logarithms import has_logarithm
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Term,
    Terms,
    added,
    coefficients,
    degree,
    expression_of,
    from_coefficients,
    letters_in,
    negated,
    scaled,
    terms_of,
    value_at,
    written,
)
from paperaudit.maths.answer_kinds.square_form import is_completed
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import CompletedSquare, InForm, LeastValue
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import (
    Expression,
    Letter,
    Number,
    Power,
    letters_of,
    parts_of,
    with_leaves,
)
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.comparing import by_coefficients, coefficient_of, with_values
from paperaudit.strands.algebra.confirming import EVALUATED, confirm_equal
from paperaudit.strands.algebra.logarithm_laws import in_logarithm_form
from paperaudit.strands.algebra.roots import roots_of
from paperaudit.strands.algebra.single_powers import as_form, is_single_power
from paperaudit.strands.algebra.squares import bracketed, fronted, square_form, text
from paperaudit.strands.algebra.tidied import tidied
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree, answer_of

SKILL = "completing the square"


def completed_square(task: CompletedSquare, reading: Reading) -> Derived:
    """ax² + bx + c as a(x + p)² + q."""
    working = Working(SKILL)
    form, _ = _completed(task.expression, working)
    confirm_equal((task.expression, form))
    return working.derived(Answer(write(form), form, kind="completed square"), confirmed_by=EVALUATED)


def _completed(expression: Expression, working: Working) -> tuple[Expression, list[Fraction]]:
    """The lines to the completed square, and the coefficients, lowest first."""
    terms = terms_of(expression)
    letters = letters_in(terms)
    if len(letters) != 1 or degree(terms) != 2:
        raise NotTerms(f"{write(expression)}, which is not quadratic in one letter")
    letter = letters[0]
    numbers = coefficients(terms, letter)
    c, b, a = numbers
    half = b / (2 * a)
    if is_completed(expression):
        working.say(write(expression), write(expression))
        return expression, numbers
    lines: list[str] = []
    pure = from_coefficients([Fraction(0), b / a, Fraction(1)], letter)
    tail = f" {'−' if c < 0 else '+'} {text(abs(c))}" if c else ""
    opened = f"{write(fronted(a, expression_of(pure)))}{tail}"
    if a != 1:
        lines.append(opened)
    if half:
        square = f"{written((Term(Fraction(1), ((letter, 1),)), Term(half)))}"
        inner = f"({square})² − {bracketed(abs(half))}²"
        front = "" if a == 1 else text(a) if a != -1 else "−"
        lines.append(f"{front}[{inner}]{tail}" if front else f"{inner}{tail}")
        if a != 1:
            rest = -a * half * half
            lines.append(f"{front}({square})² {'−' if rest < 0 else '+'} {text(abs(rest))}{tail}")
    form = square_form(numbers, letter)
    start = write(expression)
    shown = [line for line in [*lines, write(form)] if line != start]
    for place, line in enumerate(dict.fromkeys(shown)):
        working.say(f"{start} = {line}" if not place else f"= {line}", line)
    if not shown:
        working.say(start, start)
    return form, numbers


def least_value(task: LeastValue, reading: Reading) -> Derived:
    """The least or greatest value of a quadratic, from its completed square."""
    working = Working(SKILL)
    form, numbers = _completed(task.expression, working)
    confirm_equal((task.expression, form))
    c, b, a = numbers
    (letter,) = letters_in(terms_of(task.expression))
    at, size = -b / (2 * a), c - b * b / (4 * a)
    if task.greatest is not None and task.greatest == (a > 0):
        raise NotTerms(f"{write(task.expression)}, which has no {'greatest' if task.greatest else 'least'} value")
    word = "least" if a > 0 else "greatest"
    terms = terms_of(task.expression)
    beside = [value_at(terms, {letter: at + shift}) for shift in (Fraction(-1, 7), Fraction(1, 7))]
    if value_at(terms, {letter: at}) != size or any((value > size) != (a > 0) for value in beside):
        raise ChecksDisagree(f"the {word} value of {write(task.expression)}")
    working.say("the square is never negative, and it is 0 where " + f"{letter} = {text(at)}")
    found = answer_of(whole_or_fraction(at), "", letter) if task.at else answer_of(whole_or_fraction(size))
    working.conclude(found.text if task.at else f"{word} value {found.text}", found.text)
    return working.derived(found, confirmed_by="evaluated there and on both sides")


def in_form(task: InForm, reading: Reading) -> Derived:
    """The letters of a form by comparing coefficients, and the expression in it."""
    if has_logarithm(task.expression):
        return in_logarithm_form(task)
    if is_single_power(task.form):
        return as_form(task)
    working = Working("comparing coefficients")
    own = letters_of(task.expression)
    unknown = tuple(name for name in letters_of(task.form) if name not in own)
    if not unknown or len(unknown) > 6 or set(own) - set(letters_of(task.form)):
        raise NotTerms(f"{write(task.expression)} in the form {write(task.form)}")
    values = _square_values(task, own, unknown, working)
    if values is None:
        values = by_coefficients(task, own, unknown, working)
    form = _put_in(task.form, values)
    confirm_equal((task.expression, form))
    if not (working.steps and working.steps[-1].statement.endswith(f"= {write(form)}")):
        working.say(f"{write(task.expression)} = {write(form)}", write(form))
    if not task.values:
        kind = "completed square" if _is_square_form(task.form) else ""
        return working.derived(Answer(write(form), form, kind=kind), confirmed_by=EVALUATED)
    answers = [answer_of(values[name], "", name) for name in task.values]
    working.conclude(", ".join(answer.text for answer in answers))
    return working.derived(*answers, confirmed_by=EVALUATED)


def _put_in(form: Expression, values: dict[str, Expression]) -> Expression:
    """The form with its values, signs and noughts tidied: (x + −3)² + 0 is (x − 3)²."""
    return tidied(with_leaves(form, lambda leaf: values.get(leaf.name, leaf) if isinstance(leaf, Letter) else leaf))


def _is_square_form(form: Expression) -> bool:
    own = isinstance(form, Power) and form.exponent == Number(Fraction(2))
    return own or any(map(_is_square_form, parts_of(form)))


def _square_values(
    task: InForm, own: tuple[str, ...], unknown: tuple[str, ...], working: Working
) -> dict[str, Expression] | None:
    """Forms a(x + p)² + q by completing the square; None for other forms."""
    if len(own) != 1 or not _is_square_form(task.form):
        return None
    letter = own[0]
    terms = terms_of(task.expression)
    if degree(terms) != 2:
        return None
    inner = Working(SKILL)
    found = _matched(task, letter, unknown)
    if found is None:
        return None
    _completed(task.expression, inner)
    working.steps.extend(inner.steps)
    return found


def _matched(task: InForm, letter: str, unknown: tuple[str, ...]) -> dict[str, Expression] | None:
    """Values of the letters of a form that is quadratic in another letter, found one after the other.

    The coefficient of x² gives a, that of x then p, the constant q: each is linear in one letter that is left.
    """
    rest = list(unknown)
    form, target = terms_of(task.form), terms_of(task.expression)
    values: dict[str, Fraction] = {}
    for exponent in range(max(degree(form), degree(target)), -1, -1):
        equation = added(coefficient_of(form, letter, exponent), negated(coefficient_of(target, letter, exponent)))
        equation = with_values(equation, values)
        open_letters = letters_in(equation)
        if not open_letters:
            if equation:
                return None
            continue
        if len(open_letters) > 1 or degree(equation) > 1:
            continue
        (name,) = open_letters
        numbers = coefficients(equation, name)
        values[name] = -numbers[0] / numbers[1]
        rest.remove(name)
    return None if rest else {name: whole_or_fraction(value) for name, value in values.items()}


def quadratic_of(expression: Expression, letter: str) -> tuple[Terms, Terms, Terms]:
    """a, b and c of an expression that is quadratic in a letter, each in the other letters."""
    terms = terms_of(expression)
    if max((term.exponent(letter) for term in terms), default=0) != 2:
        raise NotTerms(f"{write(expression)}, which is not quadratic in {letter}")
    return coefficient_of(terms, letter, 2), coefficient_of(terms, letter, 1), coefficient_of(terms, letter, 0)


def roots_in(terms: Terms, letter: str, working: Working) -> list[Expression]:
    """The real roots of terms in one letter, with their lines."""
    whole = scaled(terms, -1) if terms[0].coefficient < 0 else terms
    return roots_of(whole, letter, working).values
