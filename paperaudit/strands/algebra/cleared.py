"""Equations with letters under fraction bars, multiplied by the lowest common denominator."""

from fractions import Fraction
from math import lcm

from paperaudit.maths.algebra.factorising import Factorised, factors_of
from paperaudit.maths.algebra.fractions import common_denominator, missing_factor, numerator
from paperaudit.maths.algebra.ratios import Ratio, excluded, ratio_of
from paperaudit.maths.algebra.terms import expression_of, scaled
from paperaudit.maths.write import write
from paperaudit.model.expression import Expression, Negative, Number, Relation, Sum
from paperaudit.strands.algebra.working import Working


def clear_fractions(relation: Relation, working: Working) -> tuple[Relation, tuple[Expression, ...]]:
    """The equation without fractions, and the denominators that must not be nought."""
    working.given(relation)
    sides = [_addends(relation.left), _addends(relation.right)]
    ratios = [[(sign, _whole(ratio_of(term))) for sign, term in side] for side in sides]
    below = [factors_of(ratio.below) for side in ratios for _, ratio in side]
    size, common = common_denominator(below)
    whole = Factorised(common.front_of(size), common.brackets)
    forbidden = dict.fromkeys(text for side in sides for _, term in side for text in excluded(term))
    if forbidden:
        working.say(f"the denominators are not 0: {' and '.join(forbidden)}")
    shown: list[Expression] = []
    for side in ratios:
        pieces: list[Expression] = []
        for sign, ratio in side:
            missing = missing_factor(factors_of(ratio.below), size, common)
            piece = numerator(ratio.above, missing) if ratio.above else Number(Fraction(0))
            pieces.append(Negative(piece) if sign < 0 else piece)
        shown.append(pieces[0] if len(pieces) == 1 else Sum(tuple(pieces)))
    cleared = Relation(shown[0], relation.sign, shown[1])
    by = _bracketed(whole)
    by_text = f"({write(by)})" if isinstance(by, Sum) else write(by)
    working.say(f"× {by_text}: {write(cleared)}")
    denominators = tuple(expression_of(ratio.below) for side in ratios for _, ratio in side)
    return cleared, denominators


def _whole(ratio: Ratio) -> Ratio:
    """The same fraction with whole coefficients: 3/2 over 1 as 3 over 2."""
    scale = lcm(*(term.coefficient.denominator for term in (*ratio.above, *ratio.below)))
    return Ratio(scaled(ratio.above, scale), scaled(ratio.below, scale))


def _bracketed(whole: Factorised) -> Expression:
    expression = whole.expression()
    return expression if expression != Number(Fraction(0)) else Number(Fraction(1))


def _addends(side: Expression) -> list[tuple[int, Expression]]:
    terms = side.terms if isinstance(side, Sum) else (side,)
    return [(-1, term.operand) if isinstance(term, Negative) else (1, term) for term in terms]
