"""What a pupil does to a side of an equation: multiply out, collect, multiply through; and its writing."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from paperaudit.maths.linear_terms import Bracket, Side, Term, Unknown, multiplied
from paperaudit.maths.number_forms import as_decimal, whole_or_fraction
from paperaudit.model.expression import Expression, Measured, Negative, Number, Product, Quotient, Sum


@dataclass(frozen=True, slots=True)
class Style:
    """How numbers are printed: as decimals or fractions, constants with a unit."""

    decimals: bool = False
    unit: str = ""


PLAIN = Style()


def expression_of_side(side: Side, style: Style = PLAIN) -> Expression:
    """The terms as an expression: 3x/4, 2(x − 4), (x + 1)/2, −5°."""
    terms = [_expression(term, style) for term in side]
    return Sum(tuple(terms)) if len(terms) > 1 else terms[0] if terms else _constant(Fraction(0), style)


def _expression(term: Term | Bracket, style: Style) -> Expression:
    if isinstance(term, Term) and term.unknown is None:
        return _signed(term.coefficient, lambda size: _constant(size, style))
    factor = term.coefficient if isinstance(term, Term) else term.factor
    inside = term.unknown if isinstance(term, Term) else expression_of_side(term.inside, style)
    assert inside is not None
    return _signed(factor, lambda size: _multiple(size, inside, style))


def _signed(value: Fraction, written: Callable[[Fraction], Expression]) -> Expression:
    return written(value) if value >= 0 else Negative(written(-value))


def _constant(size: Fraction, style: Style) -> Expression:
    number = (as_decimal(size) if style.decimals else None) or whole_or_fraction(size)
    return Measured(number, style.unit) if style.unit else number


def _multiple(size: Fraction, inside: Expression, style: Style) -> Expression:
    if size == 1:
        return inside
    decimal = as_decimal(size) if style.decimals else None
    if decimal is not None or size.denominator == 1:
        return Product((decimal or whole_or_fraction(size), inside))
    above = inside if size.numerator == 1 else Product((Number(Fraction(size.numerator)), inside))
    return Quotient(above, Number(Fraction(size.denominator)))


def flat(side: Side) -> Iterator[Term]:
    """The terms of a side with all brackets multiplied out, not collected."""
    for term in side:
        if isinstance(term, Term):
            yield term
        else:
            for inner in flat(term.inside):
                yield Term(term.factor * inner.coefficient, inner.unknown)


def share_of(side: Side, unknown: Unknown | None) -> Fraction:
    """How often an unknown occurs in all, brackets multiplied out; with None, what the numbers add up to."""
    return sum((term.coefficient for term in flat(side) if term.unknown == unknown), Fraction(0))


def expand_innermost(side: Side) -> Side:
    """Every bracket that holds no other multiplied out; brackets round those stay."""
    result: list[Term | Bracket] = []
    for term in side:
        if isinstance(term, Term):
            result.append(term)
        elif any(isinstance(inner, Bracket) for inner in term.inside):
            result.append(Bracket(term.factor, expand_innermost(term.inside)))
        else:
            result.extend(flat((term,)))
    return tuple(result)


def collect(side: Side) -> Side:
    """Like terms added up, inside brackets too, each where its first stood; noughts are dropped."""
    totals: dict[Unknown | None, Fraction] = {}
    for term in side:
        if isinstance(term, Term):
            totals[term.unknown] = totals.get(term.unknown, Fraction(0)) + term.coefficient
    result: list[Term | Bracket] = []
    for term in side:
        if isinstance(term, Bracket):
            inside = collect(term.inside)
            simple = len(inside) == 1 and isinstance(inside[0], Term)
            result.append(multiplied(inside[0], term.factor) if simple else Bracket(term.factor, inside))
        elif term.unknown in totals:
            total = totals.pop(term.unknown)
            if total:
                result.append(Term(total, term.unknown))
    return tuple(result)


def scaled(side: Side, factor: Fraction) -> Side:
    """Every term multiplied, brackets by what stands before them; a bracket that is left alone opens."""
    result: list[Term | Bracket] = []
    for term in side:
        if isinstance(term, Term):
            result.append(Term(term.coefficient * factor, term.unknown))
        elif term.factor * factor == 1:
            result.extend(term.inside)
        else:
            result.append(Bracket(term.factor * factor, term.inside))
    return tuple(result)


def has_brackets(sides: Iterable[Side]) -> bool:
    """Whether any bracket is left."""
    return any(isinstance(term, Bracket) for side in sides for term in side)
