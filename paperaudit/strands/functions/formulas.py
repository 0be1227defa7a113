"""The functions that a question defines, and numbers put into their formulas."""

import re
from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction

from paperaudit.errors import NoValue
from paperaudit.maths.near import near_value
from paperaudit.maths.powers import power_sum, put_in
from paperaudit.model.coordinates_task import Curve
from paperaudit.model.expression import Expression, Letter, letters_of
from paperaudit.model.fact import Fact, Holds
from paperaudit.model.function_task import Function
from paperaudit.model.graph_task import SOLE
from paperaudit.model.reading import Reading
from paperaudit.strands.numbers.working import require
from paperaudit.strands.substitution import substituted

Known = tuple[Function, tuple[str, ...]]


def defined(function: Function, reading: Reading) -> Known:
    """The function with its formula, and the texts of the givens that state it. Raises NoValue without one."""
    if function.formula is not None:
        refuse_letters_of_the_text(function, reading)
        return function, ()
    found = [
        (one, (given.text,)) for given in reading.givens for fact in given.facts
        if (one := _from(fact)) is not None and function.name in (one.name, SOLE, getattr(fact, "name", ""))
    ]  # fmt: skip
    if len(found) != 1:
        many = f"{function.name} is given more than once"
        raise NoValue(many if found else f"no formula is given for {function.name}")
    one, texts = found[0]
    if function.letter and function.letter != one.letter and (function.name, function.letter) != ("y", "x"):
        assert one.formula is not None
        one = Function(one.name, function.letter, put_in(one.formula, one.letter, Letter(function.letter)), one.order)
    refuse_letters_of_the_text(one, reading)
    return _derived(one), texts


def refuse_letters_of_the_text(function: Function, reading: Reading) -> None:
    """Raises NoValue for a letter of the formula, other than its own, that other sentences say something of."""
    others = [name for name in letters_of(formula_of(function)) if name not in (function.letter, "π")]
    stated = (
        ""
        if function.name == ""
        else next((given.text for given in reading.givens if any(_from(fact) == function for fact in given.facts)), "")
    )
    refuse_said(others, reading, stated)


def refuse_said(letters: Iterable[str], reading: Reading, stated: str = "") -> None:
    """Raises NoValue for a letter of which the text says something outside the ask and the given `stated`."""
    lines = (reading.question.text, reading.part.text, *reading.question.given, *reading.part.given)
    text = " ".join(line.text for line in lines if line is not None)
    for known in (reading.ask.text if reading.ask is not None else "", stated):
        text = text.replace(known, " ") if known else text
    for name in letters:
        said = rf"(?<![A-Za-z]){name}(?![A-Za-z])"
        if name == "a":
            said = r"\b(?:[Ll]et|[Ss]uppose) a\b|\ba\s*[-+*=]|[-+*=]\s*a\b"
        if re.search(said, text):
            raise NoValue(f"the text says something of {name} that is not put into the formula")


def _from(fact: Fact) -> Function | None:
    """The function that a given states: f(x) = …, or y = … as the equation of a curve."""
    if isinstance(fact, Function):
        return fact
    if isinstance(fact, Curve | Holds) and isinstance(fact.relation.left, Letter) and fact.relation.sign == "=":
        name, letters = fact.relation.left.name, letters_of(fact.relation.right)
        if len(letters) <= 1 and name not in letters and (letters or name == "y"):
            return Function(name, letters[0] if letters else "x", fact.relation.right)
    return None


def _derived(function: Function) -> Function:
    """A function that is stated as a derivative, with its own formula."""
    if not function.order:
        return function
    assert function.formula is not None
    form = power_sum(function.formula, function.letter)
    for _ in range(function.order):
        form = form.derivative()
    return Function(function.name, function.letter, form.expression(function.letter))


def formula_of(function: Function) -> Expression:
    """The formula of a function that was `defined`."""
    assert function.formula is not None
    return function.formula


def label(function: Function, dashes: int = 0) -> str:
    """How the function is written: f(x), f′(x), y, dy/dx."""
    if function.name in ("", "y") or function.name.isupper():
        mark = "" if dashes == 1 else str(dashes).translate(str.maketrans("23456789", "²³⁴⁵⁶⁷⁸⁹"))
        if not dashes:
            return function.name or "y"
        return f"d{mark}{function.name or 'y'}/d{function.letter}{mark}"
    return f"{function.name}{'′' * dashes}({function.letter})"


def at(function: Function, value: Expression) -> Expression:
    """The formula with a value for its letter, × where numbers come to stand side by side."""
    return substituted(formula_of(function), {function.letter: value})


def numeric(expression: Expression, letter: str, value: Fraction) -> Decimal:
    """The value of a formula at a number, to fifty figures. Raises NoValue without one."""
    return near_value(expression, {letter: value})


_STEP = Fraction(1, 10**15)
_TRIED = (Fraction(1), Fraction(2), Fraction(7, 3), Fraction(-3, 2), Fraction(-4))


def slope_near(expression: Expression, letter: str, value: Fraction) -> Fraction:
    """The gradient of a formula at a number, from its values close by on both sides."""
    left, right = (Fraction(numeric(expression, letter, value + step)) for step in (-_STEP, _STEP))
    return (right - left) / (2 * _STEP)


def confirm_derivative(before: Expression, after: Expression, letter: str) -> None:
    """Compares a derivative with gradients of the formula worked out from values close by."""
    compared = 0
    for value in _TRIED:
        try:
            measured, stated = slope_near(before, letter, value), Fraction(numeric(after, letter, value))
        except NoValue:
            continue
        require(abs(measured - stated) <= Fraction(1, 10**9) * max(Fraction(1), abs(stated)), "the derivative")
        compared += 1
    require(compared >= 2, "the derivative, which could be compared nowhere")
