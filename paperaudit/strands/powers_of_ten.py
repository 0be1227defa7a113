"""Numbers and calculations in standard form, line by line."""

from fractions import Fraction

from paperaudit.maths.number_forms import as_decimal
from paperaudit.maths.rounding import magnitude, round_to
from paperaudit.maths.standard_form import parts, power_of_ten, standard_form
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Derivation, Derived, Step, StepKind
from paperaudit.model.expression import Expression, Negative, Number, NumberForm, Power, Product, Quotient
from paperaudit.strands.calculating import CONFIRMED, calculated, confirm, rational

SKILL = "standard form"
_MOST_NOUGHTS = 12


def in_standard_form(expression: Expression, ask: Ask) -> Derived:
    """The value of an expression in standard form, rounded where that is asked for.

    Raises NoValue, BudgetExceeded and ChecksDisagree.
    """
    accuracy = ask.accuracy
    shown, value = _separated(expression) or _worked_out(expression)
    rounded = value if accuracy is None else round_to(value, accuracy).value
    figures = int(accuracy.amount) - 1 if accuracy is not None and accuracy.kind == "significant figures" else 0
    final = standard_form(rounded, figures)
    text = write(final)
    if rounded == value:
        confirm((expression, final))
        shown += [text] if shown[-1] != text else []
    steps = _steps(shown)
    if rounded != value:
        before = (steps[-1].statement,) if steps else ()
        lead = "" if steps else f"{shown[0]} "
        steps.append(Step(f"{lead}≈ {text}", StepKind.CONCLUSION, None, before, text, "rounding"))
    return Derived((Answer(text, final),), (Derivation(tuple(steps), CONFIRMED),))


def _steps(shown: list[str]) -> list[Step]:
    steps: list[Step] = []
    for text in shown[1:]:
        said = f"= {text}" if steps else f"{shown[0]} = {text}"
        before = (steps[-1].statement,) if steps else ()
        steps.append(Step(said, StepKind.CALCULATION, None, before, text, SKILL))
    return steps


def _worked_out(expression: Expression) -> tuple[list[str], Fraction]:
    """The lines of a calculation, and the line that shows how far the point moves: 4.56 × 10 000, 3.2 ÷ 1000."""
    lines = calculated(expression)
    value = rational(lines[-1])
    shown = [write(line) for line in lines]
    exponent = magnitude(value) if value else 0
    first = as_decimal(value / Fraction(10) ** exponent)
    if 0 < abs(exponent) <= _MOST_NOUGHTS and first is not None:
        shown.append(f"{write(first)} {'×' if exponent > 0 else '÷'} {10 ** abs(exponent)}")
    return shown, value


def _separated(expression: Expression) -> tuple[list[str], Fraction] | None:
    """A product or quotient of numbers in standard form: first factors and powers of ten apart, then worked out."""
    if isinstance(expression, Quotient):
        above, below = _apart(expression.numerator), _apart(expression.denominator)
        if above is None or below is None or not (above[1] and below[1]):
            return None
        one, other = _single(above[0]), _single(below[0])
        firsts: Expression = Quotient(one, other, "÷")
        powers: Expression = Quotient(_single(_powers(above[1])), _single(_powers(below[1])), "÷")
        exponent = sum(above[1]) - sum(below[1])
    else:
        found = _apart(expression)
        if found is None or len(found[1]) < 2 or len(found[0]) < 2:
            return _moved(found, expression)
        firsts, powers, exponent = _single(found[0]), _single(_powers(found[1])), sum(found[1])
    apart = Product((firsts, powers), "×")
    confirm((expression, apart))
    value = rational(calculated(firsts)[-1])
    shown = [write(expression), f"{_bracketed(firsts)} × {_bracketed(powers)}"]
    return [*shown, *_brought(value, exponent)], value * Fraction(10) ** exponent


def _moved(
    found: tuple[list[Expression], list[int]] | None, expression: Expression
) -> tuple[list[str], Fraction] | None:
    """One number times one power of ten: 45 × 10⁶ is 4.5 × 10 × 10⁶."""
    if found is None or len(found[0]) != 1 or len(found[1]) != 1:
        return None
    value = rational(found[0][0])
    return [write(expression), *_brought(value, found[1][0])[1:]], value * Fraction(10) ** found[1][0]


def _brought(value: Fraction, exponent: int) -> list[str]:
    """A value times a power of ten, then with the value itself in standard form: 12 × 10³, 1.2 × 10¹ × 10³."""
    power, decimal = write(power_of_ten(exponent)), as_decimal(value)
    if decimal is None:
        return [f"{_cut(value)}… × {power}"]
    if not value or 1 <= abs(value) < 10:
        return [f"{write(decimal)} × {power}"]
    return [f"{write(decimal)} × {power}", f"{write(standard_form(value))} × {power}"]


def _cut(value: Fraction) -> str:
    scaled = abs(value) * 10**5
    text = write(Number(Fraction(scaled.__floor__(), 10**5), NumberForm.DECIMAL, 5))
    return f"−{text}" if value < 0 else text


def _bracketed(expression: Expression) -> str:
    text = write(expression)
    return f"({text})" if isinstance(expression, Quotient) else text


def _single(factors: list[Expression]) -> Expression:
    return factors[0] if len(factors) == 1 else Product(tuple(factors), "×")


def _powers(exponents: list[int]) -> list[Expression]:
    return [power_of_ten(exponent) for exponent in exponents]


def _apart(expression: Expression) -> tuple[list[Expression], list[int]] | None:
    """The plain factors of a product, and the exponents of its powers of ten; None where there is more to it."""
    if isinstance(expression, Number) or (isinstance(expression, Negative) and isinstance(expression.operand, Number)):
        return [expression], []
    power = parts(expression) if isinstance(expression, Power) else None
    if power is not None:
        return [], [power[1]]
    if not isinstance(expression, Product):
        return None
    found = [_apart(factor) for factor in expression.factors]
    known = [one for one in found if one is not None]
    if len(known) < len(found):
        return None
    return [factor for firsts, _ in known for factor in firsts], [one for _, powers in known for one in powers]
