"""Equations with a power whose exponent is a fraction: x^(2/3) = 4, both sides raised to the reciprocal exponent."""

from fractions import Fraction

from paperaudit.maths.algebra.logarithms import raised
from paperaudit.maths.algebra.terms import NotTerms, letters_in
from paperaudit.maths.exact import rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Letter, Negative, Power, Relation, letters_of, parts_of
from paperaudit.strands.algebra.absolutes import isolated
from paperaudit.strands.algebra.roots import Roots, solve_polynomial
from paperaudit.strands.algebra.working import Working


def fraction_powers_in(expression: Expression) -> list[Power]:
    """The powers of something with letters whose exponent is a fraction, from left to right."""
    own: list[Power] = []
    if isinstance(expression, Power) and letters_of(expression.base) and not letters_of(expression.exponent):
        exponent = rational_value(expression.exponent)
        own = [expression] if exponent is not None and exponent.denominator > 1 else []
    return [*own, *(one for part in parts_of(expression) for one in fraction_powers_in(part))]


def solve_fraction_power(relation: Relation, letter: str, working: Working) -> Roots:
    """The lines to the roots. Raises NotTerms where the form is another."""
    working.given(relation)
    powers = list(dict.fromkeys((*fraction_powers_in(relation.left), *fraction_powers_in(relation.right))))
    if len(powers) != 1:
        raise NotTerms(f"{write(relation)}, with several such powers")
    (power,) = powers
    front, rest = isolated(relation, power, letter)
    if letters_in(rest):
        raise NotTerms(f"{write(relation)}, with {letter} outside the power")
    exponent = rational_value(power.exponent) or Fraction(1)
    value = (rest[0].coefficient if rest else Fraction(0)) / front
    working.say(Relation(power, "=", whole_or_fraction(value)))
    even_root, even_power = exponent.denominator % 2 == 0, exponent.numerator % 2 == 0
    if value < 0 and (even_root or even_power):
        working.say(f"{write(power)} is never negative, so there are no real solutions")
        return Roots()
    if not value:
        raise NotTerms(f"{write(power)} = 0")
    size = raised(whole_or_fraction(abs(value)), 1 / exponent)
    values: list[Expression] = [Negative(size) if value < 0 else size]
    sign = "±" if even_power else ""
    amount = write(Power(whole_or_fraction(value), whole_or_fraction(1 / exponent)))
    working.say(f"{write(power.base)} = {sign}{amount}")
    if even_power:
        values.append(Negative(size))
    found: list[Expression] = []
    for one in values:
        if power.base == Letter(letter):
            working.say(f"{letter} = {sign}{write(size)}" if even_power else f"{letter} = {write(one)}")
            found.append(_plain(one))
            continue
        found.extend(solve_polynomial(Relation(power.base, "=", _plain(one)), letter, working).values)
    return Roots(found)


def _plain(value: Expression) -> Expression:
    size = rational_value(value)
    return value if size is None else whole_or_fraction(size)
