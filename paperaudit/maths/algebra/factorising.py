"""Sums of terms written as products, line by line, by the methods of school."""

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from paperaudit.errors import BudgetExceeded
from paperaudit.maths.algebra.expanding import expanded_lines
from paperaudit.maths.algebra.splitting import split
from paperaudit.maths.algebra.terms import (
    ONE,
    NotTerms,
    Term,
    Terms,
    collected,
    common_term,
    degree,
    expression_of,
    expression_of_term,
    in_decimals,
    negated,
    number_terms,
    over_term,
    terms_of,
)
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, Power, Product, Quotient, Sum

Line: TypeAlias = Expression | str
"""A line equal to the expression, or a remark such as "f(2) = 0, so x − 2 is a factor"."""

_HIGHEST = 12


class NoFactors(NotTerms):
    """An expression that is no product of simpler ones with rational coefficients."""


@dataclass(frozen=True, slots=True)
class Factorised:
    """A term in front and the factors behind it, each as often as it occurs."""

    front: Term
    factors: tuple[Terms, ...]

    def expression(self) -> Expression:
        """The product as a pupil writes it: 3x(x − 2)²."""
        return product_expression(self.front, self.factors)


def product_expression(front: Term, factors: tuple[Terms, ...]) -> Expression:
    """A term and brackets side by side, equal brackets as a power."""
    pieces: list[Expression] = []
    for factor in dict.fromkeys(factors):
        times = factors.count(factor)
        bracket = expression_of(factor)
        pieces.append(Power(bracket, Number(Fraction(times))) if times > 1 else bracket)
    return _with_front(front, pieces)


def _with_front(front: Term, pieces: list[Expression]) -> Expression:
    size = Term(abs(front.coefficient), front.powers)
    below = size.coefficient.denominator
    top = Term(Fraction(size.coefficient.numerator), size.powers)
    if top != ONE or not pieces:
        first = expression_of_term(top)
        pieces = [*(first.factors if isinstance(first, Product) else (first,)), *pieces]
    result = pieces[0] if len(pieces) == 1 else Product(tuple(pieces))
    if below > 1:
        result = Quotient(result, Number(Fraction(below)))
    return Negative(result) if front.coefficient < 0 else result


def factors_of(terms: Terms) -> Factorised:
    """The complete factors; the terms themselves where there are none."""
    return _Factoring(terms, []).result()


def factorised_lines(expression: Expression) -> tuple[tuple[Line, ...], Factorised]:
    """The lines from the expression to its factors. Raises NoFactors, NotTerms, NoValue and BudgetExceeded.

    >>> from paperaudit.maths.parse import read_expression
    >>> [write(line) for line in factorised_lines(read_expression("2x^2 - 8"))[0]]
    ['2x² − 8', '2(x² − 4)', '2(x² − 2²)', '2(x − 2)(x + 2)']
    """
    terms = terms_of(expression)
    lines: list[Line] = [expression]
    if not (isinstance(expression, Sum) and sorted(_texts(expression.terms)) == sorted(_texts(_sides(terms)))):
        lines = [*expanded_lines(expression)]
    work = _Factoring(terms, lines)
    found = work.result()
    if len(found.factors) + (found.front.powers != ()) + (abs(found.front.coefficient) != 1) < 2:
        raise NoFactors(f"{write(expression_of(terms))} has no factors with rational coefficients")
    if in_decimals(expression):
        raise NoFactors(f"{write(expression)} has decimals")
    return tuple(lines), found


def _texts(terms: tuple[Expression, ...]) -> list[str]:
    return [write(term) for term in terms]


def _sides(terms: Terms) -> tuple[Expression, ...]:
    return tuple(map(expression_of_term, terms))


class _Factoring:
    """A product being taken apart: what stands in front, factors that are done, and those to be looked at."""

    def __init__(self, terms: Terms, lines: list[Line]) -> None:
        if degree(terms) > 2 * _HIGHEST:
            raise BudgetExceeded("a degree beyond any school paper's")
        self.lines = lines
        self.front = ONE
        self.waiting: list[Terms] = [terms]
        self.done: list[Terms] = []
        if terms:
            self._common(terms)
            while self.waiting:
                self._next()

    def result(self) -> Factorised:
        """Factors by degree, then in the order found."""
        return Factorised(self.front, tuple(self.done))

    def _line(self, expression: Line) -> None:
        last = next((line for line in reversed(self.lines) if not isinstance(line, str)), None)
        if last is not None and not isinstance(expression, str) and _same_text(self.lines[0], expression):
            del self.lines[1:]
        elif isinstance(expression, str) or last is None or write(last) != write(expression):
            self.lines.append(expression)

    def _common(self, terms: Terms) -> None:
        if len(terms) == 2 and terms[0].coefficient < 0 < terms[1].coefficient:
            terms = terms[::-1]
        common = common_term(terms)
        if len(terms) == 1:
            self.front, self.waiting = terms[0], []
            return
        self.waiting = [terms]
        if common != ONE:
            self.front = common
            self.waiting = [over_term(terms, common)]
            if common != Term(Fraction(-1)) or len(terms) > 2:
                self._line(self._all())

    def _all(self, instead: Expression | None = None) -> Expression:
        """The whole product; `instead` stands for the factor looked at, which is written last."""
        pieces = [*self.done, *self.waiting]
        if instead is None:
            return product_expression(self.front, tuple(pieces))
        before = product_expression(ONE, tuple(self.done)) if self.done else None
        parts = [*(_parts(before) if before is not None else ()), instead, *map(expression_of, self.waiting)]
        return _with_front(self.front, parts)

    def _next(self) -> None:
        terms = self.waiting.pop(0)
        found = split(terms) if len(terms) > 1 and degree(terms) > 1 else None
        if found is None:
            self.done.append(terms)
            return
        for between in found.between:
            self._line(between if isinstance(between, str) else self._all(between))
        factors = [_positive(factor) for factor in found.factors]
        sign = Fraction(1)
        for turned, factor in zip(factors, found.factors, strict=True):
            sign = -sign if turned != factor else sign
        if sign < 0:
            factors[-1] = negated(factors[-1])
        self.waiting = [*factors, *self.waiting]
        if sign < 0:
            self.waiting[len(factors) - 1] = collected(negated(self.waiting[len(factors) - 1]))
            self.front = Term(-self.front.coefficient, self.front.powers)
        self._line(self._all())


def _same_text(one: Line, other: Expression) -> bool:
    return not isinstance(one, str) and write(one) == write(other)


def _parts(expression: Expression) -> tuple[Expression, ...]:
    return expression.factors if isinstance(expression, Product) else (expression,)


def _positive(terms: Terms) -> Terms:
    return terms if terms[0].coefficient > 0 else collected(negated(terms))


def is_factorised_fully(terms: Terms) -> bool:
    """Whether terms are no product of two others of degree 1 or more."""
    found = factors_of(terms)
    return len(found.factors) + bool(found.front.powers) <= 1


def as_terms(front: Term, factors: tuple[Terms, ...]) -> Terms:
    """A product multiplied out."""
    from paperaudit.maths.algebra.terms import product

    return product(*((front,), *factors)) if front.coefficient else number_terms(0)
