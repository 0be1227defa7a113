"""Compares one stated value with one derived answer: unit, accuracy, value, form, in this order."""

from dataclasses import replace
from fractions import Fraction

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.answer_form import form_fault
from paperaudit.maths.approximate import nearest_decimal
from paperaudit.maths.euler import has_euler, with_euler
from paperaudit.maths.measure import UnitClash, bare
from paperaudit.maths.number_forms import decimal_places, form_of
from paperaudit.maths.rounding import accuracy_text, magnitude, nearest_multiple, round_to
from paperaudit.maths.same_value import number_of, same_value
from paperaudit.maths.stated import Stated
from paperaudit.maths.units import MONEY, conversion, same_unit, unit_named
from paperaudit.maths.write import write
from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Agreement, Answer, Comparison
from paperaudit.model.expression import Expression, Measured, Negative, Number, NumberForm, Product

INDISTINGUISHABLE = Fraction(1, 10**40)
TWELVE_FIGURES = Fraction(1, 10**11)
"""Share of itself to which an answer is known that was worked out with rounded numbers."""


def compare_value(stated: Stated, answer: Answer, ask: Ask) -> Comparison:
    """One stated value against one derived answer that has a value, under what the ask says of unit, accuracy and form.

    >>> from paperaudit.model.ask import Find
    >>> derived = Answer("1.5 m", Measured(Number(Fraction(3, 2)), "m"))
    >>> compare_value(Stated(Measured(Number(Fraction(150)), "cm")), derived, Ask(Find(()), "AB")).agreement.value
    'agrees'
    """
    assert answer.value is not None
    if has_euler(answer.value):
        stated = replace(stated, value=with_euler(stated.value))
    if stated.relation is not None:
        return Comparison(Agreement.DIFFERS, f"it is an inequality, the answer is {answer.text}")
    try:
        (ours, our_unit), (theirs, their_unit) = bare(answer.value), bare(stated.value)
    except UnitClash as clash:
        return Comparison(Agreement.CANNOT_TELL, str(clash))
    unit_result = _compare_units(their_unit, our_unit, ask, answer)
    if unit_result is not None:
        return unit_result
    scale = conversion(their_unit or ask.unit or our_unit, our_unit) if our_unit else Fraction(1)
    theirs_scaled = _times(theirs, scale or Fraction(1))
    if ask.accuracy is not None and (rounded := _compare_rounded(theirs_scaled, ours, our_unit, ask)):
        return rounded
    equal = _within_figures(theirs_scaled, ours) if answer.rounded else same_value(theirs_scaled, ours)
    if equal is False and form_of(ours) is NumberForm.PERCENT and form_of(theirs) is not NumberForm.PERCENT:
        # A percentage without its sign is a missing unit, not another number.
        equal = same_value(theirs_scaled, Product((ours, Number(Fraction(100)))))
        return Comparison(Agreement.AGREES if equal else Agreement.DIFFERS, "the sign % is missing")
    if equal is None:
        return Comparison(Agreement.CANNOT_TELL, f"{write(stated.value)} could not be compared with {answer.text}")
    if not equal:
        return _rounded_unasked(theirs, theirs_scaled, ours, our_unit) or Comparison(
            Agreement.DIFFERS, f"{write(stated.value)} is not {answer.text}"
        )
    return _beside_fault(stated, ours, answer) or _compare_forms(stated.value, ask)


def _within_figures(theirs: Expression, ours: Expression) -> bool | None:
    """Whether a stated value is the derived one as far as that is known."""
    exact, stated = number_of(ours), number_of(theirs)
    if exact is None or stated is None:
        return None
    return abs(Fraction(stated) - Fraction(exact)) <= TWELVE_FIGURES * abs(Fraction(exact))


def _times(value: Expression, scale: Fraction) -> Expression:
    if scale == 1:
        return value
    if isinstance(value, Number):
        exact = value.value * scale
        return Number(exact, NumberForm.DECIMAL, decimal_places(exact) or 0)
    return Product((value, Number(scale)), "×")


def _compare_units(theirs: str, ours: str, ask: Ask, answer: Answer) -> Comparison | None:
    """A wrong unit differs; a missing one does not."""
    if theirs and ask.unit and not same_unit(theirs, ask.unit):
        if conversion(theirs, ask.unit) is not None:
            return Comparison(Agreement.DIFFERS, f"the answer is asked for in {ask.unit}, it is stated in {theirs}")
        if unit_named(theirs) and unit_named(ask.unit):
            return Comparison(Agreement.DIFFERS, f"the unit is {ask.unit}, not {theirs}")
    if not theirs or not ours or conversion(theirs, ours) is not None:
        return None
    if unit_named(theirs) and unit_named(ours):
        return Comparison(Agreement.DIFFERS, f"the unit of {answer.text} is not {theirs}")
    return Comparison(Agreement.CANNOT_TELL, f"{theirs} could not be compared with {ours}")


def _compare_rounded(theirs: Expression, ours: Expression, unit: str, ask: Ask) -> Comparison | None:
    """The stated value against the derived one, rounded as asked; None where the answer is no number."""
    assert ask.accuracy is not None
    exact, stated = number_of(ours), number_of(theirs)
    if exact is None or stated is None:
        return None
    if form_of(ours) is NumberForm.PERCENT:
        # A percentage is rounded as it is written, and its sign may be missing.
        exact = Fraction(exact) * 100
        stated = Fraction(stated) * (100 if form_of(theirs) is NumberForm.PERCENT else 1)
    try:
        rounded = round_to(Fraction(exact), ask.accuracy, unit or ask.unit)
    except ExpressionNotRead as error:
        return Comparison(Agreement.CANNOT_TELL, str(error))
    if stated == rounded.value:
        return Comparison(Agreement.AGREES)
    correct = f"to {accuracy_text(ask.accuracy)} it is {write(rounded)}"
    if abs(Fraction(stated) - Fraction(exact)) < INDISTINGUISHABLE:
        return Comparison(Agreement.DIFFERS, f"it is not rounded: {correct}")
    return Comparison(Agreement.DIFFERS, f"{write(theirs)} is not the answer: {correct}")


def _rounded_unasked(theirs: Expression, scaled: Expression, ours: Expression, unit: str) -> Comparison | None:
    """A decimal that rounds a value with endless decimals, or money to the cent, agrees, and says so."""
    exact, stated = number_of(ours), number_of(scaled)
    form = form_of(theirs)
    if exact is None or not isinstance(stated, Fraction) or form not in (NumberForm.DECIMAL, NumberForm.INTEGER):
        return None
    places = _places(theirs)
    endless = not isinstance(exact, Fraction) or decimal_places(exact) is None
    to_the_cent = unit in MONEY and places == 2
    if not endless and not to_the_cent:
        return None
    enough = places > 0 or (stated and magnitude(stated) > 0)
    nearest = (
        nearest_multiple(exact, Fraction(1, 10**places))
        if isinstance(exact, Fraction)
        else nearest_decimal(exact, places)
    )
    if not enough or nearest != stated:
        return None
    count = "the nearest whole number" if not places else f"{places} decimal place{'s' if places > 1 else ''}"
    return Comparison(Agreement.AGREES, f"rounded to {count}, though no accuracy is asked for")


def _places(value: Expression) -> int:
    match value:
        case Number(places=places):
            return places
        case Negative(inner) | Measured(inner):
            return _places(inner)
    return 0


def _beside_fault(stated: Stated, ours: Expression, answer: Answer) -> Comparison | None:
    """The decimal beside an exact answer must round it."""
    if stated.beside is None:
        return None
    decimal, _ = bare(stated.beside)
    places, exact = _places(decimal), number_of(ours)
    if exact is None:
        return None
    step = Fraction(1, 10**places)
    if number_of(decimal) == nearest_multiple(Fraction(exact), step):
        return None
    return Comparison(Agreement.DIFFERS, f"{write(decimal)} is not {answer.text} rounded")


def _compare_forms(stated: Expression, ask: Ask) -> Comparison:
    try:
        value, _ = bare(stated)
        fault = form_fault(value, ask)
    except UnitClash:
        fault = None
    if fault is None:
        return Comparison(Agreement.CANNOT_TELL, "it is equal, but whether the form is the one asked for was not told")
    return Comparison(Agreement.DIFFERS, f"it is equal, but {fault}") if fault else Comparison(Agreement.AGREES)
