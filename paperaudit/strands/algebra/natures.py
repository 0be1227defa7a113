"""Discriminants: their value, what they say about roots, and letters for which roots are equal or real."""

from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.algebra.intervals import text_of
from paperaudit.maths.algebra.roots import count_real_roots
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Terms,
    added,
    coefficients,
    degree,
    expression_of,
    letters_in,
    product,
    scaled,
    terms_of,
    value_at,
    written,
)
from paperaudit.maths.exact import rational_value, whole_root
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import Discriminant, RootsFor
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Negative, Number, Relation, RelationSign, Sum
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.confirming import number_at, put_in
from paperaudit.strands.algebra.forms import quadratic_of, roots_in
from paperaudit.strands.algebra.inequalities import solve_inequalities
from paperaudit.strands.algebra.squares import bracketed, text
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree, answer_of

SKILL = "discriminant"
_ZERO = Number(Fraction(0))
_SIGNS: dict[str, RelationSign] = {"equal": "=", "real": "≥", "different": ">", "none": "<"}
_COUNTED = "the number of real roots counted by Sturm's theorem"


def discriminant(task: Discriminant, reading: Reading) -> Derived:
    """b² − 4ac of an equation with numbers, and the nature or the number of its roots."""
    whole = Sum((task.relation.left, Negative(task.relation.right)))
    terms = terms_of(whole)
    letters = letters_in(terms)
    if len(letters) != 1 or degree(terms) != 2:
        raise NotTerms(f"{write(task.relation)}, which is not quadratic in one letter")
    numbers = coefficients(terms, letters[0])
    c, b, a = numbers
    size = b * b - 4 * a * c
    working = Working(SKILL)
    working.given(task.relation)
    if task.relation.right != _ZERO:
        working.say(Relation(expression_of(terms), "=", _ZERO))
    working.say(f"b² − 4ac = {bracketed(b)}² − 4 × {bracketed(a)} × {bracketed(c)}")
    working.say(f"= {text(size)}", text(size))
    count = 0 if size < 0 else 1 if not size else 2
    if count != count_real_roots(numbers):
        raise ChecksDisagree("the discriminant and the count of real roots")
    if task.asked == "value":
        return working.derived(answer_of(whole_or_fraction(size)), confirmed_by=_COUNTED)
    if task.asked == "count":
        working.conclude(f"{_shown(size)}, so there {_there_are(count)}", str(count))
        return working.derived(answer_of(Number(Fraction(count))), confirmed_by=_COUNTED)
    words = _nature(size)
    working.conclude(f"{_shown(size)}, so the roots are {words}", words)
    return working.derived(Answer(words, kind="nature"), confirmed_by=_COUNTED)


def _shown(size: Fraction) -> str:
    return f"{text(size)} {'<' if size < 0 else '>'} 0" if size else "b² − 4ac = 0"


def _there_are(count: int) -> str:
    return "is 1 real root" if count == 1 else f"are {count or 'no'} real roots"


def _nature(size: Fraction) -> str:
    if size < 0:
        return "not real"
    square = whole_root(size.numerator, 2) is not None and whole_root(size.denominator, 2) is not None
    kind = "rational" if square else "irrational"
    if not size:
        return "real, rational and equal"
    return f"real, {kind} and unequal"


def roots_for(task: RootsFor, reading: Reading) -> Derived:
    """The values of a letter for which a quadratic equation has roots of a kind."""
    whole = Sum((task.relation.left, Negative(task.relation.right)))
    a, b, c = quadratic_of(whole, task.unknown)
    size = added(product(b, b), scaled(product(a, c), -4))
    if letters_in(size) != (task.letter,):
        raise NotTerms(f"{write(task.relation)}, whose discriminant has other letters")
    sign = _SIGNS[task.wanted]
    working = Working(SKILL)
    working.given(task.relation)
    names = {
        "equal": "equal roots",
        "real": "real roots",
        "different": "two different real roots",
        "none": "no real roots",
    }
    working.say(f"{names[task.wanted]}: b² − 4ac {sign} 0")
    working.say(f"{_squared(b)} − 4 × {_in_brackets(a)} × {_in_brackets(c)} {sign} 0")
    working.say(Relation(expression_of(size), sign, _ZERO))
    if sign == "=":
        return _equal(task, size, a, working, whole)
    if letters_in(a):
        raise NotTerms(f"{write(task.relation)}, which is quadratic for some values only")
    found = solve_inequalities((Relation(expression_of(size), sign, _ZERO),), task.letter)
    for step in found.derivations[0].steps:
        working.say(step.statement, step.value, kind=step.kind)
    _confirm_set(task, found.answers[0].text, a, b, c)
    return working.derived(found.answers[0], confirmed_by=_COUNTED)


def _squared(terms: Terms) -> str:
    return f"{_in_brackets(terms)}²" if len(terms) != 1 or not terms[0].powers else (
        f"{written(terms)}²" if terms[0].coefficient == 1 and terms[0].degree == 1 else f"({written(terms)})²"
    )  # fmt: skip


def _in_brackets(terms: Terms) -> str:
    plain = len(terms) == 1 and terms[0].coefficient > 0 and terms[0].coefficient.denominator == 1
    return written(terms) if plain else f"({written(terms)})"


def _equal(task: RootsFor, size: Terms, a: Terms, working: Working, whole: Expression) -> Derived:
    values = sorted(dict.fromkeys(roots_in(size, task.letter, working)), key=lambda one: number_at(one, {}))
    kept = []
    for value in values:
        number = rational_value(value)
        leading = value_at(a, {task.letter: number}) if number is not None and letters_in(a) else Fraction(1)
        if not leading:
            working.say(f"{task.letter} = {write(value)} is rejected: the equation is then not quadratic")
            continue
        kept.append(value)
        _confirm_equal_roots(task, whole, value)
    if not kept:
        raise NoValue(f"no value of {task.letter} gives equal roots")
    answers = [answer_of(value, "", task.letter) for value in kept]
    working.conclude(" or ".join(f"{task.letter} = {write(value)}" for value in kept))
    return working.derived(*answers, confirmed_by=_COUNTED)


def _confirm_equal_roots(task: RootsFor, whole: Expression, value: Expression) -> None:
    """The left side at −1, 0 and 1 of the unknown gives its coefficients again; their discriminant must be 0."""
    with_value = put_in(whole, task.letter, value)
    low, middle, high = (number_at(with_value, {task.unknown: Fraction(at)}) for at in (-1, 0, 1))
    a, b = (Fraction(high) + Fraction(low)) / 2 - Fraction(middle), (Fraction(high) - Fraction(low)) / 2
    size = b * b - 4 * a * Fraction(middle)
    if abs(size) > (b * b + 1) / 10**30:
        raise ChecksDisagree(f"{task.letter} = {write(value)} does not give equal roots")


def _confirm_set(task: RootsFor, answer: str, a: Terms, b: Terms, c: Terms) -> None:
    from paperaudit.maths.answer_kinds.solution_set import read_set

    found = read_set(answer, task.letter)
    wanted = {"real": (1, 2), "different": (2,), "none": (0,)}[task.wanted]
    for place in range(-60, 61):
        at = Fraction(place, 3)
        numbers = [value_at(part, {task.letter: at}) for part in (c, b, a)]
        if (count_real_roots(numbers) in wanted) != any(interval.holds(at) for interval in found):
            raise ChecksDisagree(f"{task.letter} = {text(at)} decides against {text_of(found, task.letter)}")
