"""Arithmetic in the lines of a pupil: brackets, then powers and roots, then × and ÷, then + and −."""

from collections.abc import Callable
from fractions import Fraction
from math import lcm, prod
from typing import TypeAlias

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.maths.exact import NotSurd, exact_expression, exact_value, rational_value
from paperaudit.maths.measure import unit_of, without_units
from paperaudit.maths.number_forms import as_decimal, as_mixed, whole_or_fraction
from paperaudit.maths.parts import with_parts
from paperaudit.maths.rational_powers import in_roots
from paperaudit.maths.settled import Numerals, fraction_parts, is_settled, settled_value
from paperaudit.maths.units import conversion
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    Expression,
    Measured,
    Negative,
    Number,
    NumberForm,
    Of,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    with_leaves,
)

MAX_LINES = 40
Rule: TypeAlias = Callable[[Expression], Expression]


def worked_lines(expression: Expression, unit: str = "") -> tuple[Expression, ...]:
    """The expression, then what it becomes line by line, to a number in lowest terms or a simple surd.

    Measures in different units are added up in `unit`, else in that of the first.

    Raises NoValue, UnitClash, NotSurd and BudgetExceeded.

    >>> from paperaudit.maths.parse import read_expression
    >>> [write(line) for line in worked_lines(read_expression("(-3)^2 - 24/(8 - 2)"))]
    ['(−3)² − 24/(8 − 2)', '(−3)² − 24/6', '9 − 24/6', '9 − 4', '5']
    """
    calculation = _Calculation(Numerals.of(expression), unit)
    lines = [expression]
    while (following := calculation.next_line(lines[-1])) is not None:
        if write(following) != write(lines[-1]):
            lines.append(following)
        elif following == lines[-1] or len(lines) > MAX_LINES:
            break
        else:
            lines[-1] = following
        if len(lines) > MAX_LINES:
            raise BudgetExceeded("a calculation of dozens of lines")
    return tuple(lines)


class _Calculation:
    """The rules in the order in which a pupil applies them; each is tried on every part at once."""

    def __init__(self, numerals: Numerals, unit: str) -> None:
        self.numerals = numerals
        self.unit = unit

    def next_line(self, expression: Expression) -> Expression | None:
        """The expression after the first rule that changes it, or None where it is finished."""
        if _is_final(expression):
            return None
        rules: tuple[Rule, ...] = (
            self._share_as_factor,
            self._one_kind_of_number,
            self._one_unit,
            self._brackets,
            self._powers,
            self._products,
            self._sums,
        )
        for rule in rules:
            changed = rule(expression)
            if changed != expression:
                return changed
        return self._finish(expression)

    def _share_as_factor(self, expression: Expression) -> Expression:
        """65% of 240 is 65/100 × 240."""
        return _at_once(expression, self._share)

    def _share(self, part: Expression) -> Expression:
        if not isinstance(part, Of):
            return part
        share = part.share
        if isinstance(share, Number) and share.form is NumberForm.PERCENT:
            whole = share.value * 100
            share = (
                _over(whole, 100)
                if whole.denominator == 1 and not _has_decimals(part.whole)
                else as_decimal(share.value) or _over(share.value.numerator, share.value.denominator)
            )
        return Product((share, part.whole), "×")

    def _one_kind_of_number(self, expression: Expression) -> Expression:
        """Mixed numbers and percentages made ready for calculating, fractions and decimals brought together."""
        if is_settled(expression):
            return expression
        percentages = _only_percentages(expression)
        return with_leaves(expression, lambda leaf: leaf if percentages else self._ready(leaf))

    def _ready(self, leaf: Expression) -> Expression:
        if not isinstance(leaf, Number):
            return leaf
        match leaf.form:
            case NumberForm.MIXED if not self.numerals.decimals:
                return _over(leaf.value.numerator, leaf.value.denominator)
            case NumberForm.PERCENT | NumberForm.MIXED | NumberForm.FRACTION if self.numerals.decimals:
                return as_decimal(leaf.value) or leaf
            case NumberForm.DECIMAL | NumberForm.PERCENT if self.numerals.fractions:
                return _over(leaf.value.numerator, leaf.value.denominator)
        return leaf

    def _one_unit(self, expression: Expression) -> Expression:
        """Measures in a sum brought to the unit asked for, else to that of the first."""
        return _at_once(expression, self._in_one_unit)

    def _in_one_unit(self, part: Expression) -> Expression:
        if not isinstance(part, Sum) or len({unit_of(term) for term in part.terms}) < 2:
            return part
        unit = unit_of(part)
        unit = self.unit if self.unit and conversion(unit, self.unit) is not None else unit
        terms = [
            self._signed(term, lambda inner: self.numerals.number(settled_value(inner, unit), unit))
            if is_settled(term) and unit_of(term) not in ("", unit)
            else term
            for term in part.terms
        ]
        return Sum(tuple(terms))

    def _signed(self, term: Expression, change: Rule) -> Expression:
        return Negative(self._signed(term.operand, change)) if isinstance(term, Negative) else change(term)

    def _brackets(self, expression: Expression) -> Expression:
        """Sums inside other calculations."""
        return _inside(expression, self._sum)

    def _sums(self, expression: Expression) -> Expression:
        return self._sum(expression)

    def _sum(self, part: Expression) -> Expression:
        if not isinstance(part, Sum) or not all(map(is_settled, part.terms)):
            return part
        fractions = [fraction_parts(term) for term in part.terms]
        known = [each for each in fractions if each is not None]
        if len(known) < len(fractions) or all(below == 1 for _, below in known):
            return self._value_of(part)
        common = lcm(*(below for _, below in known))
        if any(below not in (1, common) for _, below in known):
            return Sum(tuple(self._signed(term, lambda inner: _in_parts(inner, common)) for term in part.terms))
        total = sum(above * (common // below) for above, below in known)
        return _over(total, common) if total else Number(Fraction(0))

    def _powers(self, expression: Expression) -> Expression:
        return _everywhere(expression, self._power)

    def _power(self, part: Expression) -> Expression:
        match part:
            case Power(base, exponent) if is_settled(base) and is_settled(exponent):
                return in_roots(base, settled_value(exponent), self.numerals.decimals) or self._value_of(part)
            case Root(radicand) if is_settled(radicand):
                return self._value_of(part)
        return part

    def _products(self, expression: Expression) -> Expression:
        return _everywhere(expression, self._product)

    def _product(self, part: Expression) -> Expression:
        match part:
            case Product(factors) if all(map(is_settled, factors)):
                return self._multiplied(part, factors)
            case Quotient(numerator, denominator) if is_settled(numerator) and is_settled(denominator):
                return self._divided(part, numerator, denominator)
        return part

    def _multiplied(self, part: Product, factors: tuple[Expression, ...]) -> Expression:
        fractions = [fraction_parts(factor) for factor in factors]
        known = [each for each in fractions if each is not None]
        value = rational_value(without_units(part, unit_of(part)))
        if len(known) < len(fractions) or value is None or value.denominator == 1 or not self.numerals.fractions:
            return self._value_of(part)
        return _over(prod(above for above, _ in known), prod(below for _, below in known))

    def _divided(self, part: Quotient, numerator: Expression, denominator: Expression) -> Expression:
        divisor = fraction_parts(denominator)
        if is_settled(part):
            return part
        if not settled_value(denominator, unit_of(denominator)):
            raise NoValue("a division by nought")
        above = fraction_parts(numerator)
        if divisor is None or above is None or (divisor[1] == 1 and above[1] == 1):
            return self._value_of(part)
        sign = -1 if divisor[0] < 0 else 1
        return Product((numerator, _over(sign * divisor[1], abs(divisor[0]))), "×")

    def _value_of(self, part: Expression) -> Expression:
        """The value of a part in the calculation's way of writing; itself where it is irrational."""
        unit = unit_of(part)
        try:
            value = rational_value(without_units(part, unit))
        except NotSurd:
            return part
        if value is None:
            return part
        if _only_percentages(part):
            return Number(value, NumberForm.PERCENT)
        return self.numerals.number(value, unit, isinstance(part, Quotient) and part.sign == "÷")

    def _finish(self, expression: Expression) -> Expression | None:
        """Lowest terms, a mixed number where mixed numbers were given, a simple surd."""
        parts = fraction_parts(expression)
        if parts is not None:
            lowest = whole_or_fraction(Fraction(*parts))
            if expression != lowest and (parts[1] != lowest.value.denominator or not self.numerals.mixed):
                return lowest
            mixed = as_mixed(lowest.value) if self.numerals.mixed else lowest
            return mixed if mixed != expression else None
        unit = unit_of(expression)
        exact = exact_expression(exact_value(without_units(expression, unit)))
        final = Measured(exact, unit) if unit else exact
        return final if final != expression else None


def _is_final(expression: Expression) -> bool:
    match expression:
        case Number(value, form):
            return form is not NumberForm.FRACTION or value.denominator > 1
        case Measured(Number()):
            return True
    return False


def _everywhere(expression: Expression, rule: Rule) -> Expression:
    """The rule applied to every part; one that has something changed inside it waits for the next line."""
    inside = _inside(expression, rule)
    return rule(expression) if inside == expression else inside


def _inside(expression: Expression, rule: Rule) -> Expression:
    """The rule applied to everything inside an expression, not to the expression itself."""
    return _rebuilt(expression, lambda part: _everywhere(part, rule))


def _at_once(expression: Expression, rule: Rule) -> Expression:
    """The rule applied to every part in one line, innermost first."""
    return rule(_rebuilt(expression, lambda part: _at_once(part, rule)))


def _rebuilt(expression: Expression, change: Rule) -> Expression:
    """The expression with its direct parts changed; numbers that come to stand side by side get a × sign."""
    if isinstance(expression, Measured) and isinstance(expression.amount, Number):
        return expression
    changed = with_parts(expression, change)
    if isinstance(changed, Product) and changed != expression and all(map(is_settled, changed.factors)):
        return Product(changed.factors, "×")
    return changed


def _over(above: Fraction | int, below: int) -> Expression:
    return Quotient(Number(Fraction(above)), Number(Fraction(below))) if below != 1 else Number(Fraction(above))


def _in_parts(term: Expression, common: int) -> Expression:
    parts = fraction_parts(term)
    assert parts is not None
    return term if parts[1] == 1 else _over(parts[0] * (common // parts[1]), common)


def _has_decimals(expression: Expression) -> bool:
    return Numerals.of(expression).decimals


def _only_percentages(expression: Expression) -> bool:
    match expression:
        case Number(_, form):
            return form is NumberForm.PERCENT
        case Sum(terms):
            return all(map(_only_percentages, terms))
        case Negative(operand):
            return _only_percentages(operand)
    return False
