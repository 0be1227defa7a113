"""Functions among the givens put into the equations that name their values: x = d(4) where d(j) = 2j² + 2j − 31."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Term,
    Terms,
    collected,
    expression_of,
    letters_in,
    terms_of,
    value_at,
    written,
)
from paperaudit.maths.exact import rational_value
from paperaudit.maths.parts import with_parts
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Letter, Power, Product, Quantity, Relation, leaves, letters_of
from paperaudit.model.fact import Given, Holds
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.substitution import substituted
from paperaudit.strands.unknowns import Stated

_DEEPEST = 6
_NEAR, _CLOSE = Fraction(1, 10**15), Fraction(1, 10**9)
Formulas = Mapping[str, tuple[str, Expression, str]]
"""By the name of a function: its letter, its formula, the text of the given."""


def equations_with_functions(givens: Sequence[Given]) -> tuple[tuple[Stated, ...], tuple[str, ...]] | None:
    """The equations that the givens state, values of given functions worked in, and the texts of those functions.

    None where some given is neither an equation nor a function with a formula, or where none is a function.
    """
    formulas: dict[str, tuple[str, Expression, str]] = {}
    equations: list[Stated] = []
    for given in givens:
        for fact in given.facts:
            if isinstance(fact, Holds):
                equations.append(Stated(fact.relation, given.text))
                continue
            # Loaded where a given is no equation: a paper without functions does not wait for them.
            from paperaudit.model.function_task import Function

            if not isinstance(fact, Function) or fact.formula is None:
                return None
            derived = _derived(fact.formula, fact.letter, fact.order)
            if derived is None or fact.name in formulas or len(fact.name) != 1:
                return None
            formulas[fact.name] = (fact.letter, derived, given.text)
    if not formulas or any(_names_again(one.relation, formulas) for one in equations):
        return None
    try:
        found = tuple(_stated(one, formulas) for one in equations)
    except _NotApplied:
        return None
    return found, tuple(text for _, _, text in formulas.values())


class _NotApplied(Exception):
    """A function without what it is taken of."""


def _derived(formula: Expression, letter: str, order: int) -> Expression | None:
    """The derivative of a polynomial, None for other formulas."""
    if not order:
        return formula
    try:
        terms = terms_of(formula)
    except (NotTerms, NoValue, BudgetExceeded):
        return None
    for _ in range(order):
        slopes = collected(_slope(term, letter) for term in terms if term.exponent(letter))
        _confirm_slopes(terms, slopes)
        terms = slopes
    return expression_of(terms)


def _confirm_slopes(terms: Terms, slopes: Terms) -> None:
    """Each slope against the chord of two very near points; raises ChecksDisagree."""
    for at in (Fraction(3, 2), Fraction(-5, 3), Fraction(7)):
        low, high, slope = (
            value_at(one, dict.fromkeys(letters_in((*terms, *slopes)), where))
            for one, where in ((terms, at - _NEAR), (terms, at + _NEAR), (slopes, at))
        )
        if abs((high - low) / (2 * _NEAR) - slope) > _CLOSE * max(abs(slope), Fraction(1)):
            raise ChecksDisagree(f"the derivative of {written(terms)}")


def _slope(term: Term, letter: str) -> Term:
    exponent = term.exponent(letter)
    rest = tuple((name, count - (name == letter)) for name, count in term.powers)
    return Term(term.coefficient * exponent, tuple((name, count) for name, count in rest if count))


def _names_again(relation: Relation, formulas: Formulas) -> bool:
    """Whether an equation gives a function's letter a value, so that it is no function there."""
    sides = (relation.left, relation.right)
    if any(isinstance(leaf, Quantity) for side in sides for leaf in leaves(side)):
        return True
    return any(isinstance(side, Letter) and side.name in formulas for side in sides)


def _stated(one: Stated, formulas: Formulas) -> Stated:
    relation = _relation(one.relation, formulas)
    return Stated(relation, one.text, relation != one.relation)


def _relation(relation: Relation, formulas: Formulas) -> Relation:
    return Relation(_applied(relation.left, formulas, 0), relation.sign, _applied(relation.right, formulas, 0))


def _applied(expression: Expression, formulas: Formulas, depth: int) -> Expression:
    """The expression with k(5) as the formula of k for 5; k × 5 cannot be told from it, and no paper means that."""
    if depth > _DEEPEST:
        raise _NotApplied
    if isinstance(expression, Letter) and expression.name in formulas:
        raise _NotApplied
    if isinstance(expression, Product):
        return _product(list(expression.factors), expression, formulas, depth)
    return with_parts(expression, lambda part: _applied(part, formulas, depth))


def _product(factors: list[Expression], whole: Product, formulas: Formulas, depth: int) -> Expression:
    kept: list[Expression] = []
    while factors:
        factor = factors.pop(0)
        if isinstance(factor, Letter) and factor.name in formulas:
            if not factors or isinstance(factors[0], Power) or whole.sign:
                raise _NotApplied
            letter, formula, _ = formulas[factor.name]
            argument = _applied(factors.pop(0), formulas, depth)
            put_in = substituted(formula, {letter: argument})
            _confirm_put_in(formula, letter, argument, put_in)
            kept.append(_applied(put_in, formulas, depth + 1))
        else:
            kept.append(_applied(factor, formulas, depth))
    return kept[0] if len(kept) == 1 else Product(tuple(kept), whole.sign)


def _confirm_put_in(formula: Expression, letter: str, argument: Expression, put_in: Expression) -> None:
    """A number put in by hand against the formula worked out with the letter's value."""
    if letters_of(argument) or set(letters_of(formula)) - {letter}:
        return
    value = rational_value(argument)
    if value is not None and rational_value(formula, {letter: value}) != rational_value(put_in):
        raise ChecksDisagree(f"{write(formula)} for {letter} = {write(argument)}")
