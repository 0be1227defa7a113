"""Mathematical expressions as they stand on the page: exact, immutable, never evaluated as code."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from typing import Literal, TypeAlias

from paperaudit.model.quantity import (
    AngleAt as AngleAt,
)
from paperaudit.model.quantity import (
    AngleOf as AngleOf,
)
from paperaudit.model.quantity import (
    ArcLengthOf as ArcLengthOf,
)
from paperaudit.model.quantity import (
    ArcOf as ArcOf,
)
from paperaudit.model.quantity import (
    AreaOf as AreaOf,
)
from paperaudit.model.quantity import (
    BearingOf as BearingOf,
)
from paperaudit.model.quantity import (
    CircleKind as CircleKind,
)
from paperaudit.model.quantity import (
    CircleSize as CircleSize,
)
from paperaudit.model.quantity import (
    DistanceOf as DistanceOf,
)
from paperaudit.model.quantity import (
    LengthOf as LengthOf,
)
from paperaudit.model.quantity import (
    PerimeterOf as PerimeterOf,
)
from paperaudit.model.quantity import (
    Quantity as Quantity,
)
from paperaudit.model.quantity import (
    RoundSize as RoundSize,
)
from paperaudit.model.quantity import (
    SectorOf as SectorOf,
)
from paperaudit.model.quantity import (
    SegmentOf as SegmentOf,
)


class NumberForm(Enum):
    """How a number was written, so that it can be printed back as the setter wrote it."""

    INTEGER = "integer"
    DECIMAL = "decimal"
    FRACTION = "fraction"
    MIXED = "mixed"
    PERCENT = "percent"


@dataclass(frozen=True, slots=True)
class Number:
    """An exact number. `value` of 65% is 65/100; `places` counts the decimals that were written."""

    value: Fraction
    form: NumberForm = NumberForm.INTEGER
    places: int = 0


@dataclass(frozen=True, slots=True)
class Letter:
    """An unknown or a variable, such as x."""

    name: str


@dataclass(frozen=True, slots=True)
class Negative:
    """The opposite of `operand`; a − b is Sum((a, Negative(b)))."""

    operand: "Expression"


@dataclass(frozen=True, slots=True)
class Sum:
    """Two or more terms in the order written."""

    terms: "tuple[Expression, ...]"


@dataclass(frozen=True, slots=True)
class Product:
    """Two or more factors in the order written; `sign` is "" where they stand side by side (3x)."""

    factors: "tuple[Expression, ...]"
    sign: Literal["", "×"] = ""


@dataclass(frozen=True, slots=True)
class Quotient:
    """`numerator` over `denominator`; `sign` tells a fraction bar from a division sign."""

    numerator: "Expression"
    denominator: "Expression"
    sign: Literal["/", "÷"] = "/"


@dataclass(frozen=True, slots=True)
class Power:
    """`base` to the `exponent`."""

    base: "Expression"
    exponent: "Expression"


@dataclass(frozen=True, slots=True)
class Root:
    """The principal `degree`-th root of `radicand`."""

    radicand: "Expression"
    degree: int = 2


@dataclass(frozen=True, slots=True)
class Of:
    """A share of a whole, as in "65% of 240 litres" or "3/4 of 20"."""

    share: "Expression"
    whole: "Expression"


@dataclass(frozen=True, slots=True)
class Measured:
    """`amount` of a unit, by its symbol: "°", "cm", "cm²", "litre", "R". Money stands before."""

    amount: "Expression"
    unit: str


FunctionName: TypeAlias = Literal["sin", "cos", "tan", "sin⁻¹", "cos⁻¹", "tan⁻¹"]


@dataclass(frozen=True, slots=True)
class Function:
    """The sine, cosine or tangent of an angle, or the angle that has one: sin 40°, cos ∠ABC, tan⁻¹ (3/4)."""

    name: "FunctionName"
    argument: "Expression"


@dataclass(frozen=True, slots=True)
class Euler:
    """The number e = 2.718…, the base of ln; the letter of a paper becomes it where that is what it must be."""


@dataclass(frozen=True, slots=True)
class Logarithm:
    """The logarithm of `argument`: log₂ 8, log x with base 10, ln x with base e."""

    argument: "Expression"
    base: "Expression"


@dataclass(frozen=True, slots=True)
class Absolute:
    """The size of `operand` without its sign: |x − 3|."""

    operand: "Expression"


@dataclass(frozen=True, slots=True)
class AnswerTo:
    """What an earlier part of the same question found, by that part's printed number: "a"."""

    part: str


Expression: TypeAlias = (
    Number
    | Letter
    | Negative
    | Sum
    | Product
    | Quotient
    | Power
    | Root
    | Of
    | Measured
    | Function
    | Euler
    | Logarithm
    | Absolute
    | AnswerTo
    | Quantity
)

RelationSign: TypeAlias = Literal["=", "≠", "<", ">", "≤", "≥"]


@dataclass(frozen=True, slots=True)
class Relation:
    """Two expressions and the sign between them: 3(x − 4) = 2x + 5."""

    left: Expression
    sign: RelationSign
    right: Expression


def parts_of(expression: Expression) -> tuple[Expression, ...]:
    """The expressions directly inside one, in the order written; a leaf has none.

    >>> parts_of(Sum((Letter("x"), Letter("y"))))
    (Letter(name='x'), Letter(name='y'))
    """
    match expression:
        case Negative(operand) | Absolute(operand):
            return (operand,)
        case Logarithm(argument, base):
            return (argument, base)
        case Sum(terms):
            return terms
        case Product(factors):
            return factors
        case Quotient(numerator, denominator):
            return (numerator, denominator)
        case Power(base, exponent):
            return (base, exponent)
        case Root(radicand):
            return (radicand,)
        case Of(share, whole):
            return (share, whole)
        case Measured(amount):
            return (amount,)
        case Function(_, argument):
            return (argument,)
        case _:
            return ()


def leaves(expression: Expression) -> tuple[Expression, ...]:
    """Every leaf of an expression from left to right, repeats kept."""
    inside = parts_of(expression)
    if not inside:
        return (expression,)
    return tuple(leaf for part in inside for leaf in leaves(part))


def letters_of(expression: Expression) -> tuple[str, ...]:
    """The letters that occur, each once, in order of appearance."""
    return tuple(dict.fromkeys(leaf.name for leaf in leaves(expression) if isinstance(leaf, Letter)))


def with_leaves(expression: Expression, change: Callable[[Expression], Expression]) -> Expression:
    """The same expression with every leaf put through `change`.

    >>> with_leaves(Negative(Letter("x")), lambda leaf: Letter("y"))
    Negative(operand=Letter(name='y'))
    """
    match expression:
        case Negative(operand):
            return Negative(with_leaves(operand, change))
        case Sum(terms):
            return Sum(tuple(with_leaves(term, change) for term in terms))
        case Product(factors, sign):
            return Product(tuple(with_leaves(factor, change) for factor in factors), sign)
        case Quotient(numerator, denominator, bar):
            return Quotient(with_leaves(numerator, change), with_leaves(denominator, change), bar)
        case Power(base, exponent):
            return Power(with_leaves(base, change), with_leaves(exponent, change))
        case Root(radicand, degree):
            return Root(with_leaves(radicand, change), degree)
        case Of(share, whole):
            return Of(with_leaves(share, change), with_leaves(whole, change))
        case Measured(amount, unit):
            return Measured(with_leaves(amount, change), unit)
        case Function(name, argument):
            return Function(name, with_leaves(argument, change))
        case Logarithm(argument, base):
            return Logarithm(with_leaves(argument, change), with_leaves(base, change))
        case Absolute(operand):
            return Absolute(with_leaves(operand, change))
        case _:
            return change(expression)
