"""A formula rearranged so that another letter stands alone, one move a line."""

from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.algebra.factorising import factors_of
from paperaudit.maths.algebra.fractions import fraction_lines
from paperaudit.maths.algebra.ratios import has_letters_below
from paperaudit.maths.algebra.terms import (
    NotTerms,
    Term,
    Terms,
    added,
    collected,
    expression_of,
    negated,
    scaled,
    terms_of,
)
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.number_forms import whole_or_fraction
from paperaudit.maths.write import write
from paperaudit.model.derivation import Answer, Derived
from paperaudit.model.expression import (
    Expression,
    Letter,
    Negative,
    Number,
    NumberForm,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    leaves,
    letters_of,
    parts_of,
)
from paperaudit.strands.algebra.cleared import clear_fractions
from paperaudit.strands.algebra.confirming import number_at, points
from paperaudit.strands.algebra.working import Working
from paperaudit.strands.finishing import ChecksDisagree

CONFIRMED = "put back into the formula at many positive numbers for the other letters"
_ONE = Number(Fraction(1))
_THIRTY_FIGURES = Fraction(1, 10**30)


def change_subject(relation: Relation, letter: str, used: tuple[str, ...] = ()) -> Derived:
    """The letter alone on the left. Raises NotTerms where the school moves do not lead there."""
    if relation.sign != "=":
        raise NotTerms(f"{write(relation)}, which is no formula")
    if letter not in (*letters_of(relation.left), *letters_of(relation.right)):
        raise NotTerms(f"{write(relation)}, in which {letter} does not occur")
    working = Working("changing the subject", used)
    working.given(relation)
    occurring = [sum(leaf == Letter(letter) for leaf in leaves(side)) for side in (relation.left, relation.right)]
    several = sum(_fractions_below(side) for side in (relation.left, relation.right)) > 1
    once = sum(occurring) == 1 and not several
    value = _unwrapped(relation, letter, working) if once else _gathered(relation, letter, working)
    both_signs = any("±" in step.statement for step in working.steps)
    text = f"{letter} = {'±' if both_signs else ''}{write(value)}"
    working.conclude(text)
    _confirm(relation, letter, value, both_signs)
    return working.derived(Answer(text, value, letter, kind="formula"), confirmed_by=CONFIRMED)


def _fractions_below(expression: Expression) -> int:
    """How many fractions with letters below there are."""
    own = isinstance(expression, Quotient) and bool(letters_of(expression.denominator))
    return own + sum(map(_fractions_below, parts_of(expression)))


def _has(expression: Expression, letter: str) -> bool:
    return letter in letters_of(expression)


def _unwrapped(relation: Relation, letter: str, working: Working) -> Expression:
    """The operations round the letter undone from the outside in."""
    left, right = relation.left, relation.right
    if _has(right, letter):
        left, right = right, left
    for _ in range(20):
        if left == Letter(letter):
            return right
        left, right, sign = _one_move(left, right, letter)
        if sign == "±" and left != Letter(letter):
            raise NotTerms(f"{write(relation)}, where a square root has two values on the way")
        working.say(f"{write(left)} = {sign}{write(right)}")
    raise BudgetExceeded("a formula that takes dozens of lines")


def _one_move(left: Expression, right: Expression, letter: str) -> tuple[Expression, Expression, str]:
    match left:
        case Sum(terms):
            inner = next(term for term in terms if _has(term, letter))
            others = [term for term in terms if term is not inner]
            right = total((right, *(opposite(term) for term in others)))
            return (inner.operand, opposite(right), "") if isinstance(inner, Negative) else (inner, right, "")
        case Negative(operand):
            return operand, opposite(right), ""
        case Product(factors):
            inner = next(factor for factor in factors if _has(factor, letter))
            return inner, divided(right, tuple(factor for factor in factors if factor is not inner)), ""
        case Quotient(above, below):
            if _has(above, letter):
                return above, times(right, below), ""
            return below, divided(above, (right,)), ""
        case Root(radicand, degree):
            return radicand, Power(right, Number(Fraction(degree))), ""
        case Power(base, Number(count)) if count.denominator == 1 and 1 < count <= 9:
            return base, Root(right, int(count)), "" if count % 2 else "±"
    raise NotTerms(f"{write(left)}, from which {letter} is not set free")


def opposite(expression: Expression) -> Expression:
    """An expression with its sign turned, brackets resolved."""
    match expression:
        case Negative(operand):
            return operand
        case Number(value, form, places) if value < 0 or form is NumberForm.INTEGER:
            return Number(-value, form, places) if value < 0 else Negative(expression)
        case Sum(terms):
            turned = tuple(opposite(term) for term in terms)
            first = next((term for term in turned if not isinstance(term, Negative)), turned[0])
            return Sum((first, *(term for term in turned if term is not first)))
    return Negative(expression)


def total(terms: tuple[Expression, ...]) -> Expression:
    """A sum of terms that are no sums themselves; noughts left out."""
    flat = tuple(inner for term in terms for inner in (term.terms if isinstance(term, Sum) else (term,)))
    flat = tuple(term for term in flat if term != Number(Fraction(0)))
    return Sum(flat) if len(flat) > 1 else flat[0] if flat else Number(Fraction(0))


def divided(right: Expression, by: tuple[Expression, ...]) -> Expression:
    """An expression over factors; a fraction among them goes above upside down."""
    above, below = Fraction(1), Fraction(1)
    others: list[Expression] = []
    for factor in by:
        if isinstance(factor, Number):
            above *= factor.value.denominator
            below *= factor.value.numerator
        elif isinstance(factor, Quotient):
            right = times(right, factor.denominator)
            others.append(factor.numerator)
        else:
            others.append(factor)
    reduced = above / below
    if reduced < 0:
        right, reduced = opposite(right), -reduced
    top = times(right, Number(Fraction(reduced.numerator)))
    bottom = [*([Number(Fraction(reduced.denominator))] if reduced.denominator != 1 else []), *others]
    if not bottom:
        return top
    if isinstance(top, Quotient):
        inner = top.denominator
        bottom = [*(inner.factors if isinstance(inner, Product) else (inner,)), *bottom]
        top = top.numerator
    flat = tuple(one for piece in bottom for one in (piece.factors if isinstance(piece, Product) else (piece,)))
    return Quotient(top, flat[0] if len(flat) == 1 else Product(flat))


def times(expression: Expression, by: Expression) -> Expression:
    """A product with the number in front, fractions multiplied above."""
    if by == _ONE:
        return expression
    if expression == _ONE:
        return by
    if isinstance(expression, Number) and isinstance(by, Number):
        return whole_or_fraction(expression.value * by.value)
    if isinstance(expression, Quotient):
        if expression.denominator == by:
            return expression.numerator
        return Quotient(times(expression.numerator, by), expression.denominator)
    if isinstance(expression, Negative):
        return Negative(times(expression.operand, by))
    flat = [inner for one in (by, expression) for inner in (one.factors if isinstance(one, Product) else (one,))]
    size = Fraction(1)
    for one in flat:
        size *= one.value if isinstance(one, Number) else 1
    rest = [one for one in flat if not isinstance(one, Number)]
    rest.sort(key=lambda one: isinstance(one, Sum))
    pieces = [*([whole_or_fraction(size)] if size != 1 else []), *rest]
    return pieces[0] if len(pieces) == 1 else Product(tuple(pieces))


def _gathered(relation: Relation, letter: str, working: Working) -> Expression:
    """The letter occurs more than once: without fractions, its terms on one side, taken out, divided."""
    if any(has_letters_below(side) for side in (relation.left, relation.right)):
        relation, _ = clear_fractions(relation, working)
    left, right = terms_of(relation.left), terms_of(relation.right)
    working.say(Relation(expression_of(left), "=", expression_of(right)))
    whole = added(left, negated(right))
    powers = {term.exponent(letter) for term in whole}
    if not powers <= {0, 1} and not powers <= {0, 2}:
        raise NotTerms(f"{write(relation)}, in which {letter} occurs in different powers")
    power = max(powers)
    if not power:
        raise NotTerms(f"{write(relation)}, from which {letter} drops out")
    with_letter = tuple(term for term in whole if term.exponent(letter))
    others = negated(tuple(term for term in whole if not term.exponent(letter)))
    if all(term.coefficient < 0 for term in with_letter) or (with_letter[0].coefficient < 0 and len(others) == 1):
        with_letter, others = negated(with_letter), negated(others)
    working.say(Relation(expression_of(with_letter), "=", expression_of(others)))
    share = _share(with_letter, letter, power)
    alone = Letter(letter) if power == 1 else Power(Letter(letter), Number(Fraction(power)))
    if len(share) > 1:
        working.say(Relation(Product((alone, expression_of(share))), "=", expression_of(others)))
    value = _over(others, share)
    working.say(Relation(alone, "=", value))
    if power == 2:
        value = Root(value)
        working.say(f"{letter} = ±{write(value)}")
    return value


def _over(above: Terms, below: Terms) -> Expression:
    """A quotient of terms, the common number and letters of both cancelled."""
    top, bottom = factors_of(above), factors_of(below)
    if set(top.factors) & set(bottom.factors):
        raise NotTerms("a formula in which a bracket cancels")
    shown = (
        Quotient(expression_of(above), expression_of(below))
        if len(below) > 1 or below[0].coefficient != 1 or below[0].powers
        else expression_of(above)
    )
    if isinstance(shown, Quotient) and (len(below) == 1 or len(above) == 1):
        return fraction_lines(shown)[-1] if len(below) == 1 and len(above) == 1 else shown
    return shown


def _share(terms: Terms, letter: str, power: int) -> Terms:
    return collected(
        Term(term.coefficient, tuple(pair for pair in term.powers if pair[0] != letter)) for term in terms
    ) if power else scaled(terms, 1)  # fmt: skip


def _confirm(relation: Relation, letter: str, value: Expression, both_signs: bool) -> None:
    """The formula must hold with the value put in, and with its opposite where both are given, else not."""
    others = tuple(
        name for name in dict.fromkeys((*letters_of(relation.left), *letters_of(relation.right))) if name != letter
    )
    tried = opposite_holds = 0
    for numbers in points(others, positive=True):
        try:
            size = Fraction(number_at(value, numbers))
            left, right = (number_at(side, {**numbers, letter: size}) for side in (relation.left, relation.right))
        except (NoValue, NotSurd, BudgetExceeded):
            continue
        tried += 1
        if not _close(left, right):
            raise ChecksDisagree(f"{letter} = {write(value)} does not satisfy {write(relation)}")
        opposite_holds += _holds_at(relation, {**numbers, letter: -size})
    if both_signs != (opposite_holds == tried):
        raise ChecksDisagree(f"whether {letter} = −{write(value)} satisfies {write(relation)} as well")
    if tried < 3:
        raise ChecksDisagree(f"{write(relation)} could not be tried at enough numbers")


def _holds_at(relation: Relation, numbers: dict[str, Fraction]) -> bool:
    try:
        left, right = (number_at(side, numbers) for side in (relation.left, relation.right))
    except (NoValue, NotSurd, BudgetExceeded):
        return False
    return _close(left, right)


def _close(one: Fraction | Decimal, other: Fraction | Decimal) -> bool:
    """Whether two values agree to thirty figures."""
    size, apart = abs(Fraction(one)), abs(Fraction(one) - Fraction(other))
    return apart <= (size if size > 1 else 1) * _THIRTY_FIGURES
