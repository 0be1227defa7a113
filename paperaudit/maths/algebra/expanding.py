"""Products of brackets multiplied out and like terms collected, line by line."""

from dataclasses import dataclass
from fractions import Fraction
from typing import TypeAlias

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.terms import (
    ONE,
    NotTerms,
    Term,
    Terms,
    collected,
    expression_of_term,
    in_decimals,
    letters_in,
    multiplied,
    terms_of,
    times,
    whole_exponent,
)
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, Of, Power, Product, Quotient, Sum, parts_of

MAX_LINES = 25


@dataclass(frozen=True, slots=True)
class Brackets:
    """A term in front of one or more brackets: 2x(x + 1)(x − 3)."""

    front: Term
    brackets: "tuple[Side, ...]"


Piece: TypeAlias = Term | Brackets
Side: TypeAlias = tuple[Piece, ...]


def side_of(expression: Expression) -> Side:
    """The expression as terms and brackets in the order written. Raises NotTerms, NoValue, BudgetExceeded."""
    match expression:
        case Negative(operand):
            return tuple(_fronted(Term(Fraction(-1)), piece) for piece in side_of(operand))
        case Sum(terms):
            return tuple(piece for term in terms for piece in side_of(term))
        case Product(factors):
            return _product([side_of(factor) for factor in factors])
        case Of(share, whole):
            return _product([side_of(share), side_of(whole)])
        case Power(base, exponent):
            inside = side_of(base)
            count = whole_exponent(exponent)
            if len(inside) > 1 and count > 12:
                raise BudgetExceeded("a power of a bracket beyond any school paper's")
            return _product([inside] * count)
        case Quotient(above, below):
            divisor = terms_of(below)
            if not divisor:
                raise NoValue("a division by nought")
            if letters_in(divisor):
                raise NotTerms(f"{write(below)} under a fraction bar")
            return _product([(Term(1 / divisor[0].coefficient),), side_of(above)])
    return terms_of(expression)


def _fronted(front: Term, piece: Piece) -> Piece:
    if isinstance(piece, Term):
        return times(front, piece)
    return Brackets(times(front, piece.front), piece.brackets)


def _product(factors: list[Side]) -> Side:
    front, brackets = ONE, []
    for side in factors:
        if not side:
            return ()
        if len(side) > 1:
            brackets.append(side)
        elif isinstance(side[0], Term):
            front = times(front, side[0])
        else:
            front = times(front, side[0].front)
            brackets.extend(side[0].brackets)
    if len(brackets) == 1 and front == ONE:
        return brackets[0]
    return (Brackets(front, tuple(brackets)),) if brackets else (front,)


def expression_of_side(side: Side, decimals: bool = False) -> Expression:
    """Terms and brackets as a pupil writes them."""
    pieces = tuple(_expression_of_piece(piece, decimals) for piece in side)
    return Sum(pieces) if len(pieces) > 1 else pieces[0] if pieces else Number(Fraction(0))


def _expression_of_piece(piece: Piece, decimals: bool) -> Expression:
    if isinstance(piece, Term):
        return expression_of_term(piece, decimals)
    size = Term(abs(piece.front.coefficient), piece.front.powers)
    front: tuple[Expression, ...] = () if size == ONE else (expression_of_term(size, decimals),)
    if front and isinstance(front[0], Quotient):
        top, below = front[0].numerator, front[0].denominator
        above = () if top == Number(Fraction(1)) else (top,)
        inner = (*above, *(expression_of_side(bracket, decimals) for bracket in piece.brackets))
        result: Expression = Quotient(inner[0] if len(inner) == 1 else Product(inner), below)
    else:
        flat = tuple(inner for part in front for inner in (part.factors if isinstance(part, Product) else (part,)))
        result = Product((*flat, *(expression_of_side(bracket, decimals) for bracket in piece.brackets)))
        if len(result.factors) == 1:
            result = result.factors[0]
    return Negative(result) if piece.front.coefficient < 0 else result


def expanded_lines(expression: Expression) -> tuple[Expression, ...]:
    """The expression, then what it becomes line by line until like terms are collected.

    Raises NotTerms, NoValue and BudgetExceeded.

    >>> from paperaudit.maths.parse import read_expression
    >>> [write(line) for line in expanded_lines(read_expression("(x + 3)(x - 5)"))]
    ['(x + 3)(x − 5)', 'x² − 5x + 3x − 15', 'x² − 2x − 15']
    """
    decimals = in_decimals(expression)
    lines: list[Expression] = [expression]

    def add(line: Expression) -> None:
        if write(line) != write(lines[-1]):
            lines.append(line)
        if len(lines) > MAX_LINES:
            raise BudgetExceeded("an expression that takes dozens of lines")

    side = side_of(expression)
    if _has_power_of_bracket(expression):
        add(expression_of_side(side, decimals))
    while any(isinstance(piece, Brackets) for piece in side):
        side = _one_round(side)
        add(expression_of_side(side, decimals))
        inner = tuple(_tidied(piece) for piece in side)
        if inner != side:
            side = inner
            add(expression_of_side(side, decimals))
    final = collected(piece for piece in side if isinstance(piece, Term))
    add(expression_of_side(final, decimals))
    return tuple(lines)


def _has_power_of_bracket(expression: Expression) -> bool:
    if isinstance(expression, Power) and isinstance(expression.base, Sum):
        return True
    return any(map(_has_power_of_bracket, parts_of(expression)))


def _one_round(side: Side) -> Side:
    """Brackets multiplied out once, the innermost first."""
    result: list[Piece] = []
    deep = any(isinstance(piece, Brackets) and not all(map(_is_flat, piece.brackets)) for piece in side)
    for piece in side:
        if isinstance(piece, Term):
            result.append(piece)
        elif deep:
            result.append(Brackets(piece.front, tuple(map(_deeper, piece.brackets))))
        else:
            result.extend(_multiplied_once(piece))
    return tuple(result)


def _deeper(bracket: Side) -> Side:
    return bracket if _is_flat(bracket) else _one_round(bracket)


def _is_flat(bracket: Side) -> bool:
    return all(isinstance(piece, Term) for piece in bracket)


def _multiplied_once(piece: Brackets) -> Side:
    first, *others = (_terms(bracket) for bracket in piece.brackets)
    if not others:
        return multiplied((piece.front,), first)
    joined = multiplied(first, others[0])
    if len(others) == 1 and piece.front == ONE:
        return joined
    return (Brackets(piece.front, (joined, *others[1:])),)


def _terms(bracket: Side) -> Terms:
    return tuple(piece for piece in bracket if isinstance(piece, Term))


def _tidied(piece: Piece) -> Piece:
    """Like terms collected inside the brackets."""
    if isinstance(piece, Term) or not all(map(_is_flat, piece.brackets)):
        return piece
    tidy = tuple(collected(_terms(bracket)) for bracket in piece.brackets)
    if not all(tidy):
        return Term(Fraction(0))
    if all(sorted(map(repr, one)) == sorted(map(repr, other)) for one, other in zip(tidy, piece.brackets, strict=True)):
        return piece
    joined = _product([(piece.front,), *tidy])
    return joined[0] if len(joined) == 1 else Brackets(ONE, tuple(tidy))
