"""Sums of powers such as 3 × 7^n + n² − 1 as terms, each power of a number standing for a letter of its own."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.maths.algebra.terms import NotTerms, Terms, coefficients, degree, letters_in, terms_of
from paperaudit.maths.exact import bounded_power, rational_value
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Letter, Number, Power, Product, letters_of, with_leaves

_MARKS = "αβγδ"
_LARGEST_SHIFT = 12


@dataclass(frozen=True, slots=True)
class ExponentialTerms:
    """Terms in a letter and in marks, each of which is a number to the power of the letter."""

    terms: Terms
    letter: str
    bases: Mapping[str, Fraction]

    def expression(self, terms: Terms) -> Expression:
        """Terms as they are written, those with powers of numbers first, these in place of their marks."""
        from paperaudit.maths.algebra.terms import expression_of

        def put_back(leaf: Expression) -> Expression:
            base = self.bases.get(leaf.name) if isinstance(leaf, Letter) else None
            return leaf if base is None else Power(whole_or_fraction(base), Letter(self.letter))

        ordered = sorted(terms, key=lambda term: not any(term.exponent(mark) for mark in self.bases))
        return _with_signs(with_leaves(expression_of(tuple(ordered)), put_back))


def _with_signs(expression: Expression) -> Expression:
    """3 × 7^n, where two numbers come to stand side by side."""
    changed = with_parts(expression, _with_signs)
    if isinstance(changed, Product) and any(isinstance(one, Power) and isinstance(one.base, Number)
                                            for one in changed.factors[1:]):  # fmt: skip
        return Product(changed.factors, "×")
    return changed


def exponential_terms(expression: Expression, letter: str) -> ExponentialTerms:
    """The expression in terms of the letter and of powers of numbers. Raises NotTerms for other exponents.

    >>> from paperaudit.maths.parse import read_expression
    >>> found = exponential_terms(read_expression("2^(n + 1) - n"), "n")
    >>> write(found.expression(found.terms))
    '2 × 2^n − n'
    """
    marks: dict[Fraction, str] = {}

    def replaced(part: Expression) -> Expression:
        if not isinstance(part, Power) or letter not in letters_of(part.exponent):
            return with_parts(part, replaced)
        base = None if letters_of(part.base) else rational_value(part.base)
        exponent = terms_of(part.exponent)
        if not base or letters_in(exponent) != (letter,) or degree(exponent) != 1:
            raise NotTerms(f"the power {write(part)}")
        shift, slope = coefficients(exponent, letter)
        if shift.denominator != 1 or slope.denominator != 1 or slope < 1 or abs(shift) > _LARGEST_SHIFT:
            raise NotTerms(f"the exponent {write(part.exponent)}")
        own = bounded_power(base, int(slope))
        if own not in marks and len(marks) == len(_MARKS):
            raise NotTerms("powers of more than four numbers")
        mark = marks.setdefault(own, _MARKS[len(marks)])
        return Product((whole_or_fraction(bounded_power(base, int(shift))), Letter(mark)), "×")

    terms = terms_of(replaced(expression))
    return ExponentialTerms(terms, letter, {mark: base for base, mark in marks.items()})
