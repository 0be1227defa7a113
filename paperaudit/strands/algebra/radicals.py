"""Equations with the letter under a square root: isolated, squared, and every root tried in the equation."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Term,
    Terms,
    collected,
    degree,
    expression_of,
    negated,
    scaled,
    terms_of,
)
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Quotient, Relation, Root, Sum
from paperaudit.strands.algebra.confirming import number_at, put_in, same_number
from paperaudit.strands.algebra.roots import Roots, solve_polynomial
from paperaudit.strands.algebra.working import Working


def solve_radical(relation: Relation, letter: str, working: Working) -> Roots:
    """The lines to the roots, those that squaring brought in rejected. Raises NotTerms where the form is another."""
    working.given(relation)
    roots, rest = _parted(relation)
    if len(roots) == 1:
        front, radical = roots[0]
        other = scaled(rest, -1 / front)
    elif len(roots) == 2 and not rest and roots[0][0] == -roots[1][0]:
        (front, radical), (_, second) = roots
        working.say(Relation(radical, "=", second))
        working.say(Relation(radical.radicand, "=", second.radicand))
        return _tried(
            relation,
            letter,
            solve_polynomial(Relation(radical.radicand, "=", second.radicand), letter, working),
            working,
        )
    elif len(roots) == 2 and degree(rest) == 0 and all(radical.degree == 2 for _, radical in roots):
        return _tried(relation, letter, _two_roots(roots, rest, letter, working), working)
    else:
        raise NotTerms(f"{write(relation)}, with more than one root")
    right = expression_of(other)
    working.say(Relation(radical, "=", right))
    if not other or degree(other) == 0:
        value = rational_value(right) or Fraction(0)
        if value < 0 and radical.degree % 2 == 0:
            working.say("a square root is never negative, so there are no real solutions")
            return Roots()
        squared: Expression = whole_or_fraction(value**radical.degree)
    else:
        squared = Power(right, Number(Fraction(radical.degree)))
    following = Relation(radical.radicand, "=", squared)
    working.say(following)
    return _tried(relation, letter, solve_polynomial(following, letter, working), working)


def _two_roots(roots: list[tuple[Fraction, Root]], rest: Terms, letter: str, working: Working) -> Roots:
    """√A = c + d√B squared, and the root that is left alone and squared again."""
    (front, radical), (other_front, second) = roots
    share, constant = -other_front / front, -(rest[0].coefficient if rest else Fraction(0)) / front
    size: Expression = second if abs(share) == 1 else Product((whole_or_fraction(abs(share)), second))
    pieces: list[Expression] = [whole_or_fraction(constant)] if constant else []
    pieces.append(Negative(size) if share < 0 else size)
    right = pieces[0] if len(pieces) == 1 else Sum(tuple(pieces))
    working.say(Relation(radical, "=", right))
    if not constant:
        following = Relation(radical.radicand, "=", expression_of(scaled(terms_of(second.radicand), share * share)))
        working.say(following)
        return solve_polynomial(following, letter, working)
    working.say(Relation(radical.radicand, "=", Power(right, Number(Fraction(2)))))
    double = 2 * constant * share
    inside = second.radicand if share * share == 1 else Product((whole_or_fraction(share * share), second.radicand))
    middle = Product((whole_or_fraction(abs(double)), second)) if abs(double) != 1 else second
    square = whole_or_fraction(constant * constant)
    working.say(Relation(radical.radicand, "=", Sum((square, Negative(middle) if double < 0 else middle, inside))))
    left = collected(
        (
            *terms_of(radical.radicand),
            *negated(scaled(terms_of(second.radicand), share * share)),
            Term(-constant * constant),
        )
    )
    other = scaled(left, 1 / double)
    alone = Relation(second, "=", expression_of(other))
    working.say(alone)
    following = Relation(second.radicand, "=", Power(alone.right, Number(Fraction(2))))
    if degree(other) == 0:
        value = other[0].coefficient if other else Fraction(0)
        if value < 0:
            working.say("a square root is never negative, so there are no real solutions")
            return Roots()
        following = Relation(second.radicand, "=", whole_or_fraction(value * value))
    working.say(following)
    return solve_polynomial(following, letter, working)


def _parted(relation: Relation) -> tuple[list[tuple[Fraction, Root]], Terms]:
    """The roots with what stands in front of them, all on the left, and the other terms there."""
    roots: list[tuple[Fraction, Root]] = []
    others: list[Term] = []
    for side, sign in ((relation.left, 1), (relation.right, -1)):
        for term in side.terms if isinstance(side, Sum) else (side,):
            found = _root_of(term)
            if found is None:
                others.extend(terms_of(term) if sign > 0 else negated(terms_of(term)))
            else:
                roots.append((found[0] * sign, found[1]))
    return roots, collected(others)


def _root_of(term: Expression) -> tuple[Fraction, Root] | None:
    match term:
        case Root():
            terms_of(term.radicand)
            return Fraction(1), term
        case Negative(operand):
            found = _root_of(operand)
            return None if found is None else (-found[0], found[1])
        case Product((Number(value), Root() as root)):
            return value, root
        case Quotient(Root() as root, Number(value)):
            return 1 / value, root
    return None


def _tried(relation: Relation, letter: str, found: Roots, working: Working) -> Roots:
    """Every root put into the equation, since squaring may bring in others."""
    kept: list[Expression] = []
    found_at = working.steps[-1].statement
    for value in found.values:
        left, right = (put_in(side, letter, value) for side in (relation.left, relation.right))
        try:
            one, other = number_at(left, {}), number_at(right, {})
        except NoValue:
            working.say(f"{letter} = {write(value)} is rejected: a root of a negative number", uses=(found_at,))
            continue
        shown = [
            write(whole_or_fraction(side)) if isinstance(side, Fraction) else f"{side:.4f}" for side in (one, other)
        ]
        if same_number(one, other):
            kept.append(value)
            working.say(f"{letter} = {write(value)}: left side {shown[0]}, right side {shown[1]}", uses=(found_at,))
        else:
            working.say(
                f"{letter} = {write(value)} is rejected: left side {shown[0]}, right side {shown[1]}", uses=(found_at,)
            )
    return replace(found, values=kept)
