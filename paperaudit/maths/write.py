"""Expressions and relations written as a pupil writes them: 3x, 2(x − 4), x², √5, 7.5 cm, ∠ABC."""

from fractions import Fraction
from itertools import pairwise

from paperaudit.maths.number_forms import decimal_places
from paperaudit.maths.parts import is_function
from paperaudit.maths.quantity_names import UNNAMED, quantity_name
from paperaudit.maths.units import MONEY, unit_text
from paperaudit.model.expression import (
    Absolute,
    AngleAt,
    AngleOf,
    AnswerTo,
    ArcLengthOf,
    ArcOf,
    AreaOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    Euler,
    Expression,
    Function,
    LengthOf,
    Letter,
    Logarithm,
    Measured,
    Negative,
    Number,
    NumberForm,
    Of,
    PerimeterOf,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    SectorOf,
    SegmentOf,
    Sum,
)

MINUS = "−"
_RAISED = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_ROOT_SIGNS = {2: "√", 3: "∛", 4: "∜"}

# How tightly a piece of writing holds together, loosest first.
_SUM, _TERM, _FRACTION, _SIDE_BY_SIDE, _POWER, _ATOM = range(6)


def write(written: Expression | Relation) -> str:
    """The text of an expression or relation, with brackets exactly where the meaning needs them.

    Minus is U+2212; a product side by side has no sign; money stands before its amount.

    >>> write(Product((Number(Fraction(2)), Sum((Letter("x"), Negative(Number(Fraction(4))))))))
    '2(x − 4)'
    """
    if isinstance(written, Relation):
        return f"{_text(written.left)} {written.sign} {_text(written.right)}"
    return _text(written)


def number_text(number: Number) -> str:
    """The text of a number in its own form; a form that its value does not have falls back to a fraction.

    >>> number_text(Number(Fraction(47, 10), NumberForm.MIXED))
    '4 7/10'
    """
    sign = MINUS if number.value < 0 else ""
    size = abs(number.value)
    if number.form is NumberForm.PERCENT:
        return f"{sign}{_plain(size * 100, number.places)}%"
    if number.form is NumberForm.MIXED and size > 1 and size.denominator > 1:
        whole, over = divmod(size.numerator, size.denominator)
        return f"{sign}{whole} {over}/{size.denominator}"
    if number.form is NumberForm.DECIMAL:
        return sign + _plain(size, number.places)
    return f"{sign}{size}"


def _plain(size: Fraction, places: int) -> str:
    needed = decimal_places(size)
    if needed is None:
        return str(size)
    places = max(places, needed)
    digits = str(size.numerator * 10**places // size.denominator).rjust(places + 1, "0")
    return f"{digits[:-places]}.{digits[-places:]}" if places else digits


def _text(expression: Expression) -> str:
    match expression:
        case Number():
            return number_text(expression)
        case Letter(name):
            return name
        case Negative(operand):
            return MINUS + _unsigned(operand, _TERM)
        case Sum(terms):
            return _sum(terms)
        case Product(factors, "×"):
            following = (_text(one) if _is_apart(one) else _unsigned(one, _FRACTION) for one in factors[1:])
            return " × ".join((_at_least(factors[0], _TERM, first=True), *following))
        case Product(factors):
            return _side_by_side(factors)
        case Quotient():
            return _quotient(expression)
        case Power(Function(name, argument), exponent) if is_function(expression):
            return _applied(name + _exponent(exponent), argument)
        case Power(base, exponent):
            return _at_least(base, _ATOM) + _exponent(exponent)
        case Root(radicand, degree):
            sign = _ROOT_SIGNS.get(degree) or str(degree).translate(_RAISED) + "√"
            return sign + (_text(radicand) if _under_root(radicand) else _bracketed(_text(radicand)))
        case Of(share, whole):
            return f"{_at_least(share, _FRACTION)} of {_unsigned(whole, _FRACTION)}"
        case Measured():
            return _measured(expression)
        case Function(name, argument):
            return _applied(name, argument)
        case Logarithm(argument, base):
            return _applied(_logarithm_name(base), argument, _is_long(argument))
        case Absolute(operand):
            return f"|{_text(operand)}|"
        case Euler():
            return "e"
        case _:
            return quantity_name(expression)


def _is_long(argument: Expression) -> bool:
    """Whether a product is more than a number and a letter, or a power begins with a bracket."""
    if isinstance(argument, Power):
        return _text(argument).startswith("(")
    return isinstance(argument, Product) and (len(argument.factors) > 2 or not isinstance(argument.factors[0], Number))


def _applied(name: str, argument: Expression, bracketed: bool = False) -> str:
    text = _bracketed(_text(argument)) if bracketed else _at_least(argument, _SIDE_BY_SIDE)
    return f"{name} {text}" if text[0] not in "([" else f"{name}{text}"


def _logarithm_name(base: Expression) -> str:
    match base:
        case Euler():
            return "ln"
        case Number(Fraction(numerator=10, denominator=1)):
            return "log"
        case Number(value) if value.denominator == 1 and value > 0:
            return "log" + str(value).translate(_LOWERED)
        case Letter(name):
            return f"log_{name}"
    return f"log_({_text(base)})"


def _is_apart(factor: Expression) -> bool:
    """Whether a factor is written behind the others, with a space."""
    return is_function(factor) or isinstance(factor, Logarithm)


def _sum(terms: tuple[Expression, ...]) -> str:
    text = _at_least(terms[0], _TERM)
    for term in terms[1:]:
        if isinstance(term, Negative):
            text += f" {MINUS} {_unsigned(term.operand, _TERM)}"
        else:
            text += f" + {_unsigned(term, _TERM)}"
    return text


def _side_by_side(factors: tuple[Expression, ...]) -> str:
    plain = tuple(factor for factor in factors if not _is_apart(factor))
    if len(plain) < len(factors) and factors[: len(plain)] == plain:
        # Functions stand last and apart: 12 sin 40°, 2x cos 30°.
        pieces = (
            [_side_by_side(plain)] if len(plain) > 1 else [_at_least(factor, _POWER, first=True) for factor in plain]
        )
        return " ".join((*pieces, *(_text(factor) for factor in factors[len(plain) :])))
    pieces = [_at_least(factor, _POWER, first=not place) for place, factor in enumerate(factors)]
    for place, (piece, following) in enumerate(pairwise(pieces)):
        if following[0].isdigit() or (piece[-1].isupper() and following[0].isupper()):
            pieces[place + 1] = _bracketed(following)
        if piece[0] not in "([" and _runs_on(factors[place]):
            pieces[place] = _bracketed(piece)
    return "".join(pieces)


def _runs_on(factor: Expression) -> bool:
    """Whether what follows a factor would be taken into it: √5 then x, AB then C."""
    return isinstance(factor, Root | LengthOf | AngleOf | AngleAt | Measured) or _is_apart(factor)


def _quotient(quotient: Quotient) -> str:
    if quotient.sign == "÷":
        below = _unsigned(quotient.denominator, _FRACTION)
        if isinstance(quotient.denominator, Product) and not quotient.denominator.sign:
            # 6 ÷ 2(1 + 2) is read in two ways.
            below = _bracketed(below)
        return f"{_at_least(quotient.numerator, _TERM, first=True)} ÷ {below}"
    above = _at_least(quotient.numerator, _SIDE_BY_SIDE, first=True)
    if isinstance(quotient.numerator, Measured) and quotient.numerator.unit not in ("°", *MONEY):
        above = f"({above})"
    top = quotient.numerator
    if isinstance(top, Product) and isinstance(top.factors[-1], Logarithm) and not top.sign:
        above = _bracketed(above)
    if is_function(quotient.denominator):
        above = _text(quotient.numerator) if is_function(quotient.numerator) else above
        return f"{above}/{_text(quotient.denominator)}"
    return f"{above}/{_at_least(quotient.denominator, _POWER)}"


def _exponent(exponent: Expression) -> str:
    if isinstance(exponent, Negative) and isinstance(exponent.operand, Number):
        exponent = Number(-exponent.operand.value, exponent.operand.form, exponent.operand.places)
    if isinstance(exponent, Number) and exponent.value.denominator == 1:
        return str(exponent.value).translate(_RAISED)
    return "^" + (exponent.name if isinstance(exponent, Letter) else _bracketed(_text(exponent)))


def _measured(measured: Measured) -> str:
    amount, unit = measured.amount, measured.unit
    if unit in MONEY:
        if isinstance(amount, Number) and amount.value < 0:
            return MINUS + _measured(Measured(Number(-amount.value, amount.form, amount.places), unit))
        return unit + (_text(amount) if isinstance(amount, Number) else _bracketed(_text(amount)))
    plural = not (isinstance(amount, Number) and 0 < abs(amount.value) <= 1 and amount.form is not NumberForm.DECIMAL)
    text = _text(amount) if isinstance(amount, Number) else _at_least(amount, _SIDE_BY_SIDE, first=True)
    return (_bracketed(text) if isinstance(amount, Measured) else text) + unit_text(unit, plural)


def _under_root(radicand: Expression) -> bool:
    return _holds(radicand) == _ATOM and not isinstance(radicand, AnswerTo | Root)


def _unsigned(expression: Expression, level: int) -> str:
    """The text of what follows a sign: a second sign is put in brackets."""
    text = _at_least(expression, level)
    if text[0] == MINUS and isinstance(expression, Product) and expression.sign:
        # −3 − (−7) × 2: the brackets are round the number with the sign.
        first, rest = expression.factors[0], expression.factors[1:]
        return " × ".join((_bracketed(_text(first)), *(_unsigned(factor, _FRACTION) for factor in rest)))
    return _bracketed(text) if text[0] == MINUS else text


def _at_least(expression: Expression, level: int, first: bool = False) -> str:
    """The text of an expression, in brackets where it holds together less tightly than `level`.

    `first` says that nothing stands before it, so that a negative number needs none; −(−2) does.
    """
    text = _text(expression)
    single = text[0] == MINUS and text[2:3] != MINUS
    leading = first and single and isinstance(expression, Number | Negative)
    return text if _holds(expression) >= level or (leading and _holds_bare(expression) >= level) else _bracketed(text)


def _bracketed(text: str) -> str:
    """The text in brackets, in square ones where it has round ones inside."""
    return f"[{text}]" if "(" in text and "[" not in text else f"({text})"


def _holds_bare(expression: Expression) -> int:
    return _holds(expression.operand) if isinstance(expression, Negative) else _holds_number(expression)


def _holds_number(expression: Expression) -> int:
    if not isinstance(expression, Number):
        return _ATOM
    if expression.value.denominator == 1 or expression.form is NumberForm.DECIMAL:
        return _ATOM
    return _FRACTION if expression.form is NumberForm.FRACTION else _SIDE_BY_SIDE


def _holds(expression: Expression) -> int:
    match expression:
        case Number(value):
            return _TERM if value < 0 else _holds_number(expression)
        case Sum():
            return _SUM
        case Negative() | Of() | Quotient(sign="÷") | Product(sign="×") | Power(Function()):
            return _TERM
        case Quotient():
            return _FRACTION
        case Product() | Measured():
            return _SIDE_BY_SIDE
        case Power() | Root():
            return _POWER
        case AreaOf() | PerimeterOf() | Function() | Logarithm() | DistanceOf() | BearingOf():
            return _TERM
        case CircleSize(kind, "") if kind in UNNAMED:
            return _FRACTION
        case ArcOf() | ArcLengthOf() | CircleSize() | SectorOf() | SegmentOf():
            return _TERM
    return _ATOM
