"""Expressions of the first degree expanded, simplified and factorised, line by line."""

from collections.abc import Sequence
from fractions import Fraction
from functools import reduce
from math import gcd, lcm

from paperaudit.maths.linear_moves import Style, collect, expand_innermost, expression_of_side, flat, scaled
from paperaudit.maths.linear_terms import Bracket, NotLinear, Side, Term, multiplied, needs_working, side_of
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.ask import Command
from paperaudit.model.expression import (
    Expression,
    Negative,
    Number,
    NumberForm,
    Product,
    Quotient,
    Sum,
    leaves,
)


def rewritten_lines(expression: Expression, command: Command) -> tuple[Expression, ...]:
    """The expression without units, then what it becomes line by line under a command.

    Raises NotLinear where it is not of the first degree, or where nothing can be taken out; NoValue
    for a division by nought.

    >>> from paperaudit.maths.parse import read_expression
    >>> [write(line) for line in rewritten_lines(read_expression("3(x + 2) - 2(x - 1)"), "simplify")]
    ['3(x + 2) − 2(x − 1)', '3x + 6 − 2x + 2', 'x + 8']
    """
    style = Style(_in_decimals(expression))
    work = _Rewriting(expression, style)
    if command == "factorise":
        work.factorise()
    else:
        work.expand(keep_fraction=command == "simplify")
    return tuple(work.lines)


class _Rewriting:
    """The terms of an expression being rewritten, and the lines so far."""

    def __init__(self, expression: Expression, style: Style) -> None:
        self.side = side_of(expression)
        self.style = style
        self.lines: list[Expression] = [expression]
        if needs_working(expression):
            self.write(expression_of_side(self.side, style))

    def write(self, line: Expression) -> None:
        """Add a line, unless it reads like the one before; a mere other spelling takes its place."""
        if write(line) != write(self.lines[-1]):
            self.lines.append(line)

    def expand(self, keep_fraction: bool) -> None:
        """Multiply out and collect; with `keep_fraction`, fractions are brought over one denominator."""
        over = self._common_denominator() if keep_fraction else 1
        if over > 1:
            self.side = scaled(self.side, Fraction(over))
            self.write(self._over(over))
        while any(isinstance(term, Bracket) for term in self.side):
            if keep_fraction and over == 1 and _is_one_fraction(self.side):
                self.side = _in_lowest_terms(self.side)
                self.write(self._over(1))
                return
            self.side = expand_innermost(self.side)
            self.write(self._over(over))
            inner = tuple(_collected_inside(term) for term in self.side)
            if inner != self.side:
                self.side = inner
                self.write(self._over(over))
        self.side = collect(self.side)
        self._finish(over)

    def _finish(self, over: int) -> None:
        self.side = tuple(sorted(self.side, key=lambda term: isinstance(term, Term) and term.unknown is None))
        rest = lcm(*(term.coefficient.denominator for term in flat(self.side)))
        if over > 1 and rest > 1:
            self.side = scaled(self.side, Fraction(rest))
            over *= rest
        common = gcd(over, *(abs(term.coefficient.numerator) for term in flat(self.side)))
        if over > 1 and len(self.side) > 1 and common < over:
            self.write(self._over(over))
            self.side = scaled(self.side, Fraction(1, common))
            self.write(self._over(over // common))
            return
        self.side = scaled(self.side, Fraction(1, over))
        self.write(expression_of_side(self.side, self.style))

    def _over(self, over: int) -> Expression:
        above = expression_of_side(self.side, self.style)
        return Quotient(above, Number(Fraction(over))) if over > 1 else above

    def _common_denominator(self) -> int:
        """The denominator that like terms are added over, 1 where they need none."""
        if self.style.decimals:
            return 1
        fractional = [term for term in self.side if _factor(term).denominator > 1]
        broken = [term for term in fractional if isinstance(term, Bracket) and not _is_whole((term,))]
        like = [term.unknown for term in fractional if isinstance(term, Term) and term.unknown is not None]
        nested = any(isinstance(term, Bracket) and not _has_whole_factors(term.inside) for term in self.side)
        if (broken and len(self.side) > 1) or len(set(like)) < len(like) or nested:
            expanded = (term.coefficient.denominator for term in flat(self.side))
            return lcm(*(_factor(term).denominator for term in self.side), *expanded)
        return 1

    def factorise(self) -> None:
        """Collect where that is needed, then take the common factor out of the terms."""
        terms = collect(tuple(flat(self.side)))
        if terms != self.side:
            self.expand(keep_fraction=False)
        known = [term for term in self.side if isinstance(term, Term)]
        factor = _common_factor(known)
        if abs(factor) == 1 or len(known) < 2:
            raise NotLinear(f"{write(expression_of_side(self.side, self.style))}, which has no common factor")
        inside: Side = tuple(multiplied(term, 1 / factor) for term in known)
        self.write(_spelled_out(factor, inside, self.style))
        self.write(expression_of_side((Bracket(factor, inside),), self.style))


def _factor(term: Term | Bracket) -> Fraction:
    return term.coefficient if isinstance(term, Term) else term.factor


def _is_whole(side: Side) -> bool:
    return all(term.coefficient.denominator == 1 for term in flat(side))


def _has_whole_factors(side: Side) -> bool:
    """Whether no fraction stands before a letter or bracket, or as a number, at any depth."""
    return all(
        _factor(term).denominator == 1 and (isinstance(term, Term) or _has_whole_factors(term.inside)) for term in side
    )


def _is_one_fraction(side: Side) -> bool:
    """Whether a single bracket over a denominator stands there, which simplifying leaves alone: (3x + 1)/2."""
    return (
        len(side) == 1
        and _factor(side[0]).denominator > 1
        and not _is_whole(side)
        and (not isinstance(side[0], Bracket) or collect(side[0].inside) == side[0].inside)
    )


def _in_lowest_terms(side: Side) -> Side:
    """A bracket over a number, with what both have in common divided out: (2x + 2)/4 is (x + 1)/2."""
    bracket = side[0]
    if not isinstance(bracket, Bracket):
        return side
    common = reduce(gcd, (term.coefficient.numerator for term in flat(bracket.inside)), bracket.factor.denominator)
    inside = tuple(multiplied(term, Fraction(1, common)) for term in bracket.inside)
    return (Bracket(bracket.factor * common, inside),)


def _collected_inside(term: Term | Bracket) -> Term | Bracket:
    return Bracket(term.factor, collect(term.inside)) if isinstance(term, Bracket) else term


def _common_factor(terms: Sequence[Term]) -> Fraction:
    """The largest number that divides every coefficient, negative where the first is."""
    above = reduce(gcd, (term.coefficient.numerator for term in terms), 0)
    below = reduce(lcm, (term.coefficient.denominator for term in terms), 1)
    size = Fraction(above or 1, below)
    return -size if terms and terms[0].coefficient < 0 else size


def _spelled_out(factor: Fraction, inside: Side, style: Style) -> Expression:
    """The line that shows the common factor in every term: 3 × 2x + 3 × 3."""
    size = (as_decimal(abs(factor)) if style.decimals else None) or whole_or_fraction(abs(factor))
    terms: list[Expression] = []
    for term in inside:
        signed = multiplied(term, Fraction(1 if factor > 0 else -1))
        negative = _factor(signed) < 0
        other = expression_of_side((multiplied(signed, Fraction(-1 if negative else 1)),), style)
        product = Product((size, other), "×")
        terms.append(Negative(product) if negative else product)
    return Sum(tuple(terms))


def _in_decimals(expression: Expression) -> bool:
    forms = {leaf.form for leaf in leaves(expression) if isinstance(leaf, Number)}
    return NumberForm.DECIMAL in forms and NumberForm.FRACTION not in forms
