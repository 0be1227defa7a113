"""Errors with lengths and areas, by the reason of the line that gives the answer."""

from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import TypeAlias

from paperaudit.marking.expected_errors.expected_error import ExpectedError
from paperaudit.marking.expected_errors.occasions import Occasion
from paperaudit.maths.exact import PI
from paperaudit.maths.same_value import same_value
from paperaudit.model.expression import Expression, Letter, Number, Power, Product, Quotient, Root, Sum

Formula: TypeAlias = Callable[[Expression, tuple[Expression, ...]], Iterator[Expression]]
"""From the right answer and the sizes that its line rests on to wrong answers."""

TWO = Number(Fraction(2))
HALF = Number(Fraction(1, 2))


class _Sizes:
    """The wrong sizes of a part whose answer comes by one of some reasons."""

    def __init__(self, reasons: tuple[str, ...], formula: Formula) -> None:
        self._reasons = reasons
        self._formula = formula

    def __call__(self, occasion: Occasion) -> Iterator[Expression]:
        line = occasion.reasoned
        if occasion.answer is not None and line is not None and line.reason in self._reasons:
            yield from self._formula(line.answer, line.inputs)


def _squares(sizes: tuple[Expression, ...], minus: bool = False) -> Expression:
    one, two = (Power(size, TWO) for size in sizes)
    return Sum((one, Product((Number(Fraction(-1)), two)))) if minus else Sum((one, two))


def _lengths(inputs: tuple[Expression, ...]) -> tuple[Expression, ...]:
    """The two lengths behind a line of Pythagoras; the right angle is not one of them."""
    return tuple(size for size in inputs if size != Number(Fraction(90)))


def _added_for_a_shorter_side(right: Expression, inputs: tuple[Expression, ...]) -> Iterator[Expression]:
    sizes = _lengths(inputs)
    if len(sizes) == 2:
        for one, two in (sizes, sizes[::-1]):
            if same_value(Power(right, TWO), _squares((one, two), minus=True)):
                yield Root(_squares((one, two)))


def _root_of_a_sum(right: Expression, inputs: tuple[Expression, ...]) -> Iterator[Expression]:
    sizes = _lengths(inputs)
    if len(sizes) == 2 and same_value(Power(right, TWO), _squares((sizes[0], sizes[1]))):
        yield Sum(sizes)


def _perimeter_for_area(right: Expression, inputs: tuple[Expression, ...]) -> Iterator[Expression]:
    if len(inputs) == 2 and same_value(right, Product(inputs)):
        yield Product((TWO, Sum(inputs)))


def _without_half(right: Expression, _: tuple[Expression, ...]) -> Iterator[Expression]:
    yield Product((TWO, right))


def _circle_area(right: Expression, inputs: tuple[Expression, ...]) -> Iterator[Expression]:
    pi = Letter(PI)
    for radius in inputs:
        if same_value(right, Product((pi, Power(radius, TWO)))):
            yield Product((TWO, pi, radius))
            yield Product((pi, Power(Product((TWO, radius)), TWO)))
        elif same_value(right, Quotient(Product((pi, Power(radius, TWO))), Number(Fraction(4)))):
            yield Product((pi, Power(radius, TWO)))


def _circumference(right: Expression, inputs: tuple[Expression, ...]) -> Iterator[Expression]:
    pi = Letter(PI)
    for radius in inputs:
        if same_value(right, Product((TWO, pi, radius))):
            yield Product((pi, Power(radius, TWO)))
            yield Product((pi, radius))


def _by_adding(right: Expression, inputs: tuple[Expression, ...]) -> Iterator[Expression]:
    """4 : 6 = 10 : ? as 10 + 2."""
    if len(inputs) != 3:
        return
    for place in range(3):
        b = inputs[place]
        a, c = (inputs[(place + 1) % 3], inputs[(place + 2) % 3])
        for one, two in ((a, c), (c, a)):
            if same_value(Product((right, one)), Product((b, two))):
                yield Sum((b, two, Product((Number(Fraction(-1)), one))))


LENGTH_ERRORS = (
    ExpectedError(
        "similarity by adding",
        18,
        "keeps the difference of the sides where their ratio is to be kept",
        "Hart 1981; Karplus 1983",
        _Sizes(("proportional-intercepts", "similar-proportional-sides", "similar-equal-angles"), _by_adding),
        {
            "figure": ["triangle ABC", "D lies on AB", "E lies on AC", "DE ∥ BC"],
            "given": ["AD = 4 cm", "AB = 6 cm", "DE = 10 cm"],
            "ask": "BC",
        },
        "12 cm",
    ),
    ExpectedError(
        "squares added for a shorter side",
        19,
        "adds the squares where the longest side is given",
        "examiners' reports",
        _Sizes(("pythagoras",), _added_for_a_shorter_side),
        {"figure": ["triangle ABC"], "given": ["∠ABC = 90°", "AB = 5 cm", "AC = 13 cm"], "ask": "BC"},
        "√194 cm",
    ),
    ExpectedError(
        "root of a sum",
        20,
        "adds the sides instead of their squares",
        "Matz 1982",
        _Sizes(("pythagoras",), _root_of_a_sum),
        {"figure": ["triangle ABC"], "given": ["∠ABC = 90°", "AB = 3 cm", "BC = 4 cm"], "ask": "AC"},
        "7 cm",
    ),
    ExpectedError(
        "perimeter for area",
        53,
        "works out the perimeter",
        "Ryan and Williams 2007; Hart 1981",
        _Sizes(("rectangle-area", "square-area"), _perimeter_for_area),
        {"figure": ["rectangle ABCD"], "given": ["AB = 3 cm", "BC = 5 cm"], "ask": "area of ABCD"},
        "16 cm²",
    ),
    ExpectedError(
        "half forgotten",
        54,
        "leaves out the half in the area of a triangle",
        "Ryan and Williams 2007",
        _Sizes(("triangle-area",), _without_half),
        {"figure": ["triangle ABC"], "given": ["∠ABC = 90°", "AB = 5 cm", "BC = 12 cm"], "ask": "area of △ABC"},
        "60 cm²",
    ),
    ExpectedError(
        "circumference for area",
        55,
        "takes the circumference, or the diameter for the radius",
        "examiners' reports",
        _Sizes(("circle-area",), _circle_area),
        {"figure": ["circle with centre O"], "given": ["radius = 3 cm"], "ask": "area of circle O"},
        "36π cm²",
    ),
    ExpectedError(
        "area for circumference",
        55,
        "takes the area, or the radius for the diameter",
        "examiners' reports",
        _Sizes(("circumference",), _circumference),
        {"figure": ["circle with centre O"], "given": ["radius = 3 cm"], "ask": "circumference of circle O"},
        "9π cm",
    ),
)
"""Rows 18 to 20 and 53 to 55 of the table of documented errors."""
