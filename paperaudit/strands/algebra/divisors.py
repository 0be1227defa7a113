"""Polynomials divided: remainder and factor theorem, quotients, and coefficients from a remainder."""

from fractions import Fraction

from paperaudit.maths.algebra.division import divided
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Terms,
    added,
    coefficients,
    degree,
    expression_of,
    from_coefficients,
    letters_in,
    negated,
    product,
    terms_of,
    written,
)
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.algebra_task import CoefficientFor, DividedBy
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import Expression, Letter, Number, Relation, with_leaves
from paperaudit.model.reading import Reading
from paperaudit.strands.algebra.confirming import confirm_equal
from paperaudit.strands.algebra.forms import roots_in
from paperaudit.strands.algebra.squares import text
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.calculating import calculated
from paperaudit.strands.finishing import ChecksDisagree, answer_of

SKILL = "remainder and factor theorem"
_LONG = "divided in full; divisor times quotient plus remainder gives the polynomial again"


def divided_by(task: DividedBy, reading: Reading) -> Derived:
    """A remainder, a quotient, or whether a polynomial has a factor."""
    whole, by = terms_of(task.dividend), terms_of(task.divisor)
    letters = letters_in(by)
    if len(letters) != 1 or letters_in(whole) != letters or degree(by) > degree(whole):
        raise NotTerms(f"{write(task.dividend)} divided by {write(task.divisor)}")
    (letter,) = letters
    quotient, rest = divided(coefficients(whole, letter), coefficients(by, letter))
    shares = from_coefficients(quotient, letter)
    left = from_coefficients(rest, letter)
    again = added(product(by, shares), left)
    confirm_equal((task.dividend, expression_of(again)))
    working = Working(SKILL)
    if degree(by) > 1 or task.asked == "quotient":
        return _in_full(task, by, shares, left, working)
    at = _root(by, letter)
    value = _at(task.dividend, letter, at, working)
    if value != (rest[0] if rest else 0):
        raise ChecksDisagree("the value at the root of the divisor and the remainder")
    if task.asked == "remainder":
        working.conclude(f"the remainder is {text(value)}", text(value))
        return working.derived(answer_of(whole_or_fraction(value)), confirmed_by=_LONG)
    return _verdict(task, value, working)


def _verdict(task: DividedBy, value: Fraction, working: Working) -> Derived:
    name = write(task.divisor)
    if task.asked == "show factor":
        if value:
            working.conclude(f"{text(value)} is not 0, so {name} is no factor", "false")
            return working.derived(Answer("false"), confirmed_by=_LONG)
        working.conclude(f"so {name} is a factor", "proved")
        return working.derived(Answer("proved"), confirmed_by=_LONG)
    word = "no" if value else "yes"
    why = f"{text(value)} is not 0, so {name} is no factor" if value else f"so {name} is a factor"
    working.conclude(why, word)
    return working.derived(Answer(word), confirmed_by=_LONG)


def _in_full(task: DividedBy, by: Terms, shares: Terms, left: Terms, working: Working) -> Derived:
    divisor = f"({written(by)})" if len(by) > 1 else written(by)
    tail = "" if not left else f" {'−' if left[0].coefficient < 0 else '+'} " + written(
        negated(left) if left[0].coefficient < 0 else left
    )  # fmt: skip
    working.say(f"{write(task.dividend)} = {divisor}({written(shares)}){tail}")
    if task.asked in ("factor", "show factor"):
        return _verdict(task, Fraction(1) if left else Fraction(0), working)
    found = shares if task.asked == "quotient" else left
    working.conclude(f"the {task.asked} is {written(found)}", written(found))
    return working.derived(answer_of(expression_of(found)), confirmed_by=_LONG)


def _root(by: Terms, letter: str) -> Fraction:
    numbers = coefficients(by, letter)
    return -numbers[0] / numbers[1]


def _at(dividend: Expression, letter: str, at: Fraction, working: Working) -> Fraction:
    """The line with the root of the divisor put in."""
    put_in = with_leaves(dividend, lambda leaf: whole_or_fraction(at) if leaf == Letter(letter) else leaf)
    lines = calculated(put_in)
    working.say(f"{letter} = {text(at)}: {' = '.join(write(line) for line in dict.fromkeys(lines))}")
    value = rational_value(lines[-1])
    if value is None:
        raise NotTerms(write(lines[-1]))
    return value


def coefficient_for(task: CoefficientFor, reading: Reading) -> Derived:
    """A letter among the coefficients from the remainder of a division by a linear divisor."""
    by = terms_of(task.divisor)
    letters = [name for name in letters_in(by) if name != task.letter]
    if len(letters) != 1 or degree(by) != 1 or task.letter in letters_in(by):
        raise NotTerms(f"a division by {write(task.divisor)}")
    (letter,) = letters
    at = _root(by, letter)
    put_in = with_leaves(task.dividend, lambda leaf: whole_or_fraction(at) if leaf == Letter(letter) else leaf)
    terms = added(terms_of(put_in), negated(terms_of(task.remainder)))
    if letters_in(terms) != (task.letter,):
        raise NotTerms(f"{write(put_in)}, which has not the letter {task.letter} alone")
    working = Working(SKILL)
    working.say(f"{letter} = {text(at)}: {write(Relation(put_in, '=', task.remainder))}")
    working.say(Relation(expression_of(terms), "=", Number(Fraction(0))))
    values = roots_in(terms, task.letter, working)
    if not values:
        raise NotTerms(f"{written(terms)} = 0, which has no real root")
    for value in values:
        number = rational_value(value)
        if number is None:
            raise NotTerms(f"{task.letter} = {write(value)}")
        _confirm(task, letter, number)
    working.conclude(" or ".join(f"{task.letter} = {write(value)}" for value in values))
    return working.derived(*(answer_of(value, "", task.letter) for value in values), confirmed_by=_LONG)


def _confirm(task: CoefficientFor, letter: str, number: Fraction) -> None:
    """With the value found, long division must leave the remainder."""
    whole = with_leaves(task.dividend, lambda leaf: whole_or_fraction(number) if leaf == Letter(task.letter) else leaf)
    _, rest = divided(coefficients(terms_of(whole), letter), coefficients(terms_of(task.divisor), letter))
    if from_coefficients(rest, letter) != terms_of(task.remainder):
        raise ChecksDisagree(f"{task.letter} = {text(number)} leaves another remainder")
