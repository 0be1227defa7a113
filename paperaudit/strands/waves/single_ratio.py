"""An equation in one sine, cosine or tangent as an equation for its value."""

import re

from paperaudit.maths.exact import ExactValue, NotSurd
from paperaudit.maths.parts import with_parts
from paperaudit.maths.plane_curves import zeros
from paperaudit.maths.polynomial import ONE, algebraic_fraction
from paperaudit.maths.powers import NotPowers, power_sum
from paperaudit.maths.surd import Surd
from paperaudit.maths.trig.angles import functions_in
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Function, Letter, Negative, Relation, Sum, letters_of
from paperaudit.strands.algebra.root_lines import lines_to_roots
from paperaudit.strands.numbers.working import Working


def ratio_values(relation: Relation, letter: str) -> tuple[Function, tuple[ExactValue, ...]]:
    """The one function of an equation and the values that it must have, () where there are none.

    Raises NotSurd for an equation in several functions, or with the angle outside one.
    """
    ratios = {*functions_in(relation.left), *functions_in(relation.right)}
    if len(ratios) != 1:
        raise NotSurd("an equation in more than one function of the angle")
    (ratio,) = ratios
    whole = Sum((as_letter(relation.left), Negative(as_letter(relation.right))))
    if letter in letters_of(whole):
        raise NotSurd("an equation with the angle outside a function")
    return ratio, _values_of(whole)


def say_to_values(relation: Relation, ratio: str, letter: str, working: Working) -> None:
    """The lines from the equation to the values of its function, with a letter for it where it is squared."""
    left, right = (_lettered(side, letter) for side in (relation.left, relation.right))
    lines = lines_to_roots(left, right, letter)
    if not any(letter in letters_of(side) for side in (left, right)) or not lines:
        return
    if "²" in write(Relation(left, "=", right)):
        working.say(f"let {letter} = {ratio}: {write(Relation(left, '=', right))}")
        for line in lines:
            working.say(line)
        return
    for line in lines:
        over = re.sub(rf"(?<![a-z]){letter}(?=/)", f"({ratio})", line)
        working.say(re.sub(rf"(?<=[\d)]){letter}\b", f" {ratio}", over).replace(f"{letter} ", f"{ratio} "))


def _lettered(expression: Expression, letter: str) -> Expression:
    if isinstance(expression, Function):
        return Letter(letter)
    return with_parts(expression, lambda part: _lettered(part, letter))


def as_letter(expression: Expression) -> Expression:
    """The expression with t for its function."""
    if isinstance(expression, Function):
        return Letter("t")
    return with_parts(expression, as_letter)


def _values_of(whole: Expression) -> tuple[ExactValue, ...]:
    """The numbers for which an expression in t is 0; roots may stand in it where it is of the first degree."""
    try:
        return zeros(power_sum(whole, "t"))
    except NotPowers:
        fraction = algebraic_fraction(whole)
    terms = {dict(monomial).get(Letter("t"), 0): share for monomial, share in fraction.above.terms.items()}
    if fraction.below != ONE or len(terms) < len(fraction.above.terms) or terms.keys() - {0, 1} or 1 not in terms:
        raise NotSurd("roots in an equation that is not of the first degree")
    value = -terms.get(0, Surd({})) * terms[1].reciprocal()
    return (value if value.fraction is None else value.fraction,)
