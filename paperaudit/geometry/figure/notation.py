"""How a figure's sizes and forms are written in a pupil's lines."""

from dataclasses import dataclass
from fractions import Fraction

from paperaudit.geometry.figure.figure import Angular, Size
from paperaudit.maths.linear import LinearForm
from paperaudit.maths.number_forms import as_decimal, as_mixed
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Letter,
    Measured,
    Negative,
    Number,
    Product,
    Sum,
    letters_of,
    parts_of,
)
from paperaudit.model.fact import Given, Holds


@dataclass(frozen=True, slots=True)
class Notation:
    """The paper's own habits: its unit of length, and whether x is a bare number as in (2x + 10)°."""

    length_unit: str = ""
    bare_letters: bool = False

    def unit_of(self, size: Size) -> str:
        """The unit of a size's value: "°" for angles, the paper's own for lengths."""
        if isinstance(size, Angular):
            return "°"
        if isinstance(size, Letter):
            return ""
        return self.length_unit

    def value(self, form: LinearForm[Letter], unit: str) -> Expression:
        """A form as an expression with its unit: 70°, 2x + 10°, (2x + 10)°, 7.5 cm."""
        if form.is_constant:
            return _measured(number(Fraction(form.constant)), unit)
        terms: list[Expression] = [
            _term(letter, Fraction(form.terms[letter])) for letter in sorted(form.terms, key=lambda letter: letter.name)
        ]
        bare = self.bare_letters or unit != "°"
        if form.constant:
            constant = number(abs(Fraction(form.constant)))
            part = constant if bare else _measured(constant, unit)
            if form.constant > 0 and isinstance(terms[0], Negative):
                terms.insert(0, part)
            else:
                terms.append(part if form.constant > 0 else Negative(part))
        whole = terms[0] if len(terms) == 1 else Sum(tuple(terms))
        return _measured(whole, "°") if bare and unit == "°" else whole

    def letter_value(self, value: Fraction, about_angles: bool) -> Expression:
        """The value of a letter: 20° where letters stand for angles, else the bare number."""
        return _measured(number(value), "°" if about_angles and not self.bare_letters else "")


def number(value: Fraction) -> Number:
    """A number as a school writes it: whole, as an exact decimal, else as a mixed number.

    >>> number(Fraction(75, 2)).form.value
    'decimal'
    """
    decimal = as_decimal(value)
    return decimal if decimal is not None and decimal.places <= 4 else as_mixed(value)


def _measured(amount: Expression, unit: str) -> Expression:
    return Measured(amount, unit) if unit else amount


def _term(letter: Letter, coefficient: Fraction) -> Expression:
    size = abs(coefficient)
    term: Expression = (
        letter if size == 1 else Product((Number(size) if size.denominator == 1 else number(size), letter))
    )
    return Negative(term) if coefficient < 0 else term


def bracketed(expression: Expression) -> str:
    """The text of an expression, in brackets if it is a sum or starts with a minus."""
    text = write(expression)
    return f"({text})" if isinstance(expression, Sum | Negative) or text.startswith("−") else text


def notation_of(unit: str, givens: tuple[Given, ...]) -> Notation:
    """The habits of the paper's own statements: (2x + 10)° makes x a bare number."""
    sides = [
        side
        for given in givens
        for fact in given.facts
        if isinstance(fact, Holds)
        for side in (fact.relation.left, fact.relation.right)
    ]
    return Notation(unit, any(_bare(side) for side in sides))


def _bare(expression: Expression) -> bool:
    if isinstance(expression, Measured) and expression.unit == "°" and letters_of(expression):
        return True
    return any(_bare(part) for part in parts_of(expression))
