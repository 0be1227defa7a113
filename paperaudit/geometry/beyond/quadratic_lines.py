"""The lines in which a pupil solves an equation that a figure gives: quadratics, roots rejected with the reason."""

from fractions import Fraction
from math import gcd, lcm

from paperaudit.errors import PaperauditError
from paperaudit.geometry.beyond.amounts import Value, as_fraction
from paperaudit.geometry.beyond.further_texts import Texts
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.values import Solved, Values
from paperaudit.geometry.figure.notation import number
from paperaudit.maths.cancelling import fraction_expression, is_number
from paperaudit.maths.linear_terms import NotLinear
from paperaudit.maths.polynomial import AlgebraicFraction, Polynomial
from paperaudit.maths.solving import solve_linear
from paperaudit.maths.surd import Surd
from paperaudit.maths.write import write
from paperaudit.model.derivation import Step, StepKind
from paperaudit.model.expression import Expression, Letter, Negative, Number, Power, Product, Quotient, Relation, Sum


def solving_lines(fact: Fact, values: Values, texts: Texts) -> tuple[str, list[Step]]:
    """The text of a letter's value, and the steps from its equations to it."""
    letter = fact.subject
    assert isinstance(letter, Letter)
    solved, value = values.solved[id(fact)], values.of(fact)
    skill = "quadratic equations" if _degree(solved) == 2 else "linear equations"
    last = texts.value_claim(fact, values)
    lines = _linear_lines(fact, letter, values, texts) if _degree(solved) == 1 and not solved.squared else ()
    lines = lines or tuple(line for line in (_tidy(solved, letter), *_factors(solved, letter)) if line)
    lines = (*_squaring(solved, texts), *lines)
    steps = [Step(line, StepKind.ALGEBRA, None, (), "", skill) for line in dict.fromkeys(lines) if line != last]
    others = [other for other in solved.others if other.fraction != value.fraction]
    if others:
        both = f"{last} or {letter.name} = {texts.value(others[0], letter)}"
        steps.append(Step(both, StepKind.ALGEBRA, None, (), "", skill))
        steps.append(
            Step(f"{last} ({_rejection(others[0], letter, texts)})", StepKind.CONCLUSION, None, (both,), last, skill)
        )
    else:
        steps.append(Step(last, StepKind.ALGEBRA, None, (), last.split("= ")[-1], skill))
    return last, steps


def _squaring(solved: Solved, texts: Texts) -> tuple[str, ...]:
    """The lines that set a length by itself and square both sides: HO = t − 1, (t − 1)² = t² − 9."""
    if solved.squared is None:
        return ()
    size, alone, square = solved.squared
    side = fraction_expression(alone)
    named = write(texts.named(size))
    squares = Power(side, Number(Fraction(2))), fraction_expression(square)
    return f"{named} = {write(side)}", " = ".join(map(write, squares))


def _linear_lines(fact: Fact, letter: Letter, values: Values, texts: Texts) -> tuple[str, ...]:
    """The lines of an equation of the first degree, fractions multiplied out first; () where it is not plain enough."""
    equations = [before for before in fact.inputs if before.kind == "equation"]
    if len(equations) != 1 or equations[0].source is None:
        return ()
    left, right = texts.equation_sides(equations[0], values)
    match left, right:
        case Quotient(a, b), Quotient(c, d):
            relation = Relation(_times(a, d), "=", _times(c, b))
        case Quotient(a, b), other:
            relation = Relation(a, "=", _times(other, b))
        case other, Quotient(a, b):
            relation = Relation(_times(other, b), "=", a)
        case _:
            relation = Relation(left, "=", right)
    try:
        lines = solve_linear(relation, letter.name).lines
    except (NotLinear, PaperauditError):
        return ()
    return lines if isinstance(left, Quotient) or isinstance(right, Quotient) else lines[1:]


def _times(one: Expression, other: Expression) -> Expression:
    """A product as it is written: the number first, 9(t + 2)."""
    if isinstance(other, Number) and not isinstance(one, Number):
        one, other = other, one
    if one == Number(Fraction(1)):
        return other
    return Product((one, other), "×" if isinstance(other, Number) else "")


def _rejection(other: Value, letter: Letter, texts: Texts) -> str:
    """Why a root is left aside: what a figure with it would be, or that it leads to nothing else.

    Roots that could be a size have been tried on figures: had one led to another answer, there would be several.
    """
    said = f"{letter.name} = {texts.value(other, letter)}"
    if letter.name not in texts.arrangement.figure.letters and is_number(other.fraction) and other.number > 0:
        return f"{said} leads to no other answer"
    return f"{said} does not fit: it would make a length of the figure negative or nought, or break its order"


def _degree(solved: Solved) -> int:
    return max(solved.equation) - min(solved.equation)


def _tidy(solved: Solved, letter: Letter) -> str:
    """The equation with everything on one side in whole numbers: 2x² + 2x − 24 = 0; "" where it is not rational."""
    shares = _whole(solved)
    if shares is None:
        parts = {power: fraction for power, fraction in solved.equation.items() if fraction.above.terms}
        whole = Polynomial({})
        for power, fraction in parts.items():
            if fraction.below.constant is None:
                return ""
            whole = whole + fraction.above * Polynomial({((letter, power),) if power else (): Surd.rational(1)})
        return f"{write(fraction_expression(AlgebraicFraction(whole)))} = 0"
    if _degree(solved) == 1:
        return f"{write(_term(shares[1], letter, 1))} = {write(number(-shares[0]))}"
    terms = [_term(share, letter, power) for power, share in sorted(shares.items(), reverse=True) if share]
    return f"{write(Sum(tuple(terms)) if len(terms) > 1 else terms[0])} = 0"


def _term(share: Fraction, letter: Letter, power: int) -> Number | Negative | Product | Letter:
    polynomial = Polynomial({((letter, power),) if power else (): Surd.rational(share)})
    return fraction_expression(AlgebraicFraction(polynomial))  # type: ignore[return-value]


def _whole(solved: Solved) -> dict[int, Fraction] | None:
    """The coefficients as whole numbers without a common factor, the first one positive; None if not rational."""
    least = min(solved.equation)
    shares: dict[int, Fraction] = {}
    for power, part in solved.equation.items():
        rational = as_fraction(Value(part))
        if rational is None:
            return None
        shares[power - least] = rational
    multiple = lcm(*(share.denominator for share in shares.values()))
    common = gcd(*(int(share * multiple) for share in shares.values())) if max(shares) > 1 else 1
    way = -1 if shares[max(shares)] < 0 else 1
    found = {power: share * multiple / common * way for power, share in shares.items()}
    return {0: Fraction(0), **found}


def _factors(solved: Solved, letter: Letter) -> tuple[str, ...]:
    """The factors of a quadratic with rational roots: (x + 4)(x − 3) = 0."""
    shares = _whole(solved)
    if shares is None or _degree(solved) != 2 or not shares.get(1):
        return ()
    roots = [as_fraction(root) for root in (solved.chosen, *solved.others)]
    if any(root is None for root in roots) or len(roots) != 2:
        return ()
    brackets = ""
    for root in sorted(root for root in roots if root is not None):
        linear = Polynomial({((letter, 1),): Surd.rational(root.denominator), (): Surd.rational(-root.numerator)})
        inside = fraction_expression(AlgebraicFraction(linear))
        brackets += f"({write(inside)})" if root else letter.name
    return (f"{brackets} = 0",)
