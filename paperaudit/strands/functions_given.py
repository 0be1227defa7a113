"""Functions among the givens, put into what names their values: x = d(4) where d(j) = 2j² + 2j − 31."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from paperaudit.maths.algebra.terms import (
    Term,
    Terms,
    collected,
    expression_of,
    letters_in,
    terms_of,
    value_at,
    written,
)
from paperaudit.maths.parts import with_parts
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Letter, Power, Product, Quantity, Relation, leaves, letters_of
from paperaudit.model.fact import Given, Holds
from paperaudit.strands.finishing import ChecksDisagree
from paperaudit.strands.substitution import substituted
from paperaudit.strands.unknowns import Stated

_DEEPEST = 6
_NEAR, _CLOSE = Fraction(1, 10**15), Fraction(1, 10**9)


_CALL = re.compile(r"(?<![A-Za-z])(?:(?=[fgh])|(?=[a-z] ?\( ?[a-z] ?\)))([a-z]) ?\(")
"""What is printed as the value of a function: f(x + 1), r(t)."""


@dataclass(frozen=True, slots=True)
class Formula:
    """A function by its letter and its formula, which is to be differentiated `order` times; `text` states it."""

    letter: str
    formula: Expression
    order: int = 0
    text: str = ""

    @property
    def others(self) -> tuple[str, ...]:
        """The letters of the formula, and the functions in it, besides its own letter."""
        return tuple(name for name in letters_of(self.formula) if name not in (self.letter, "π"))


Formulas = Mapping[str, Formula]
"""By the name of a function."""


class NotApplied(Exception):
    """A function that is not known yet, or without what it is taken of."""


def equations_and_functions(
    givens: Sequence[Given], wanted: frozenset[str] = frozenset()
) -> tuple[tuple[Stated, ...], dict[str, Formula]] | None:
    """The equations and the functions that the givens state; None where some given is something else.

    Of a function stated twice, the formula is the statement that has its own letter in it: f(x) = 3x + 2, and
    f(k) = 11 is an equation; f(a) = 2a too where a is `wanted`.
    """
    equations: list[Stated] = []
    said: dict[str, list[Formula]] = {}
    for given in givens:
        for fact in given.facts:
            if isinstance(fact, Holds):
                called = called_in(fact.relation, given.text)
                if called is None:
                    equations.append(Stated(fact.relation, given.text))
                else:
                    said.setdefault(called[0], []).append(called[1])
                continue
            # Loaded where a given is no equation: a paper without functions does not wait for them.
            from paperaudit.model.function_task import Function

            if not isinstance(fact, Function) or fact.formula is None or len(fact.name) != 1:
                return None
            said.setdefault(fact.name, []).append(Formula(fact.letter, fact.formula, fact.order, given.text))
    functions: dict[str, Formula] = {}
    for name, statements in said.items():
        defining = statements if len(statements) == 1 else [one for one in statements if _is_definition(one)]
        if len(defining) > 1:
            defining = [one for one in defining if one.letter not in wanted]
        if len(defining) != 1:
            return None
        functions[name] = defining[0]
        for one in statements:
            if one is not defining[0]:
                value = Product((Letter(name), Letter(one.letter)))
                equations.append(Stated(Relation(value, "=", one.formula), one.text))
    if any(_names_again(one.relation, functions) for one in equations):
        return None
    if any(call[1] not in functions for given in givens for call in _CALL.finditer(given.text)):
        return None
    return tuple(equations), functions


def called_in(relation: Relation, text: str) -> tuple[str, Formula] | None:
    """The function that a clause of a longer sentence states: f(x) = 3x + 2, which as letters alone is fx."""
    left = relation.left
    if relation.sign != "=" or not isinstance(left, Product) or left.sign or len(left.factors) != 2:
        return None
    name, letter = left.factors
    if not (isinstance(name, Letter) and isinstance(letter, Letter)):
        return None
    if not re.search(rf"(?<![A-Za-z0-9]){name.name} ?\( ?{letter.name} ?\) ?=", text):
        return None
    return name.name, Formula(letter.name, relation.right, 0, text)


def _is_definition(one: Formula) -> bool:
    return one.order > 0 or one.letter in letters_of(one.formula)


def _names_again(relation: Relation, functions: Formulas) -> bool:
    """Whether an equation is about a figure, or gives a function's letter a value, so that it is no function there."""
    sides = (relation.left, relation.right)
    if any(isinstance(leaf, Quantity) for side in sides for leaf in leaves(side)):
        return True
    return any(isinstance(side, Letter) and side.name in functions for side in sides)


def derivative_of(formula: Expression, letter: str) -> Expression:
    """The derivative of a polynomial, other letters being constants; raises NotTerms for other formulas."""
    terms = terms_of(formula)
    slopes = collected(_slope(term, letter) for term in terms if term.exponent(letter))
    _confirm_slopes(terms, slopes, letter)
    return expression_of(slopes)


def _confirm_slopes(terms: Terms, slopes: Terms, letter: str) -> None:
    """Each slope against the chord of two very near points; raises ChecksDisagree."""
    others = {name: Fraction(3 + 2 * place) for place, name in enumerate(letters_in((*terms, *slopes)))}
    for at in (Fraction(3, 2), Fraction(-5, 3), Fraction(7)):
        low, high, slope = (
            value_at(one, {**others, letter: where})
            for one, where in ((terms, at - _NEAR), (terms, at + _NEAR), (slopes, at))
        )
        if abs((high - low) / (2 * _NEAR) - slope) > _CLOSE * max(abs(slope), Fraction(1)):
            raise ChecksDisagree(f"the derivative of {written(terms)}")


def _slope(term: Term, letter: str) -> Term:
    exponent = term.exponent(letter)
    rest = tuple((name, count - (name == letter)) for name, count in term.powers)
    return Term(term.coefficient * exponent, tuple((name, count) for name, count in rest if count))


def applied(expression: Expression, known: Formulas, unknown: frozenset[str] = frozenset()) -> Expression:
    """The expression with k(5) as the formula of k for 5; k × 5 cannot be told from it, and no paper means that.

    Raises NotApplied for a function of `unknown`, and for one that is not taken of anything.
    """
    return _applied(expression, known, unknown, 0)


def _applied(expression: Expression, known: Formulas, unknown: frozenset[str], depth: int) -> Expression:
    if depth > _DEEPEST:
        raise NotApplied
    if isinstance(expression, Letter) and (expression.name in known or expression.name in unknown):
        raise NotApplied
    if isinstance(expression, Product):
        kept = [
            _applied(piece, known, unknown, depth) if name is None else _value(name, piece, known, unknown, depth)
            for name, piece in calls(expression, {*known, *unknown})
        ]
        return kept[0] if len(kept) == 1 else Product(tuple(kept), expression.sign or _sign(kept))
    return with_parts(expression, lambda part: _applied(part, known, unknown, depth))


def _value(name: str, argument: Expression, known: Formulas, unknown: frozenset[str], depth: int) -> Expression:
    if name not in known:
        raise NotApplied
    put_in = substituted(known[name].formula, {known[name].letter: _applied(argument, known, unknown, depth)})
    return _applied(put_in, known, unknown, depth + 1)


def _sign(factors: Sequence[Expression]) -> Literal["", "×"]:
    """× where a value stands behind another number, so that 2 f(3) is no 27."""
    return "×" if any(not letters_of(one) for one in factors[1:]) else ""


def calls(product: Product, names: set[str]) -> list[tuple[str | None, Expression]]:
    """The factors of a product, each call of a function as its name with what it is taken of.

    Raises NotApplied for the name of a function that nothing stands behind, or a power.
    """
    found: list[tuple[str | None, Expression]] = []
    factors = list(product.factors)
    while factors:
        factor = factors.pop(0)
        if not (isinstance(factor, Letter) and factor.name in names):
            found.append((None, factor))
            continue
        if not factors or isinstance(factors[0], Power) or product.sign:
            raise NotApplied
        found.append((factor.name, factors.pop(0)))
    return found


def named(expression: Expression, names: set[str]) -> Expression:
    """The expression with every call as a letter of its own, for print: 3 × u(j), where it is 3 × uj."""
    if isinstance(expression, Product):
        pieces = tuple(
            named(piece, names) if name is None else Letter(f"{name}({write(named(piece, names))})")
            for name, piece in calls(expression, names)
        )
        return pieces[0] if len(pieces) == 1 else Product(pieces, expression.sign)
    return with_parts(expression, lambda part: named(part, names))
