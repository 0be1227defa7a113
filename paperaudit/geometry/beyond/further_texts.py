"""The texts of lines that are not linear: names, values put in, and what comes out."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import get_args

from paperaudit.geometry.beyond.amounts import Value, as_fraction, fraction_of
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.rows import Source
from paperaudit.geometry.beyond.spelled import as_bearing, equals_sign, size_unit, spelled
from paperaudit.geometry.beyond.values import Values
from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.canonical import as_printed
from paperaudit.geometry.figure.circle_texts import circle_text
from paperaudit.geometry.figure.figure import Angular, Size
from paperaudit.geometry.figure.notation import Notation, number
from paperaudit.geometry.linear.line_writer import equal_segments_text
from paperaudit.geometry.theorems.theorem import (
    AngleIs,
    AnglesEqual,
    Balanced,
    Concyclic,
    Equation,
    Greater,
    Instance,
    IsDiameter,
    OnOneLine,
    Predicate,
    Proportional,
    SegmentsEqual,
    Touches,
    TrianglesAlike,
)
from paperaudit.maths.approximate import decimal_beside
from paperaudit.maths.cancelling import fraction_expression, is_number
from paperaudit.maths.parts import with_parts
from paperaudit.maths.write import write
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    BearingOf,
    Expression,
    Function,
    LengthOf,
    Letter,
    Measured,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    with_leaves,
)

SQUARE = Number(Fraction(2))


@dataclass(frozen=True, slots=True)
class Texts:
    """The texts of one arrangement's lines in the paper's own notation."""

    arrangement: Arrangement
    notation: Notation

    def named(self, expression: Expression) -> Expression:
        """The expression with every angle and length under the name that the paper uses."""
        return with_leaves(expression, self._named)

    def _named(self, leaf: Expression) -> Expression:
        if isinstance(leaf, AngleOf | ArcOf | LengthOf):
            return self.arrangement.name(leaf)
        return as_printed(leaf, self.arrangement)

    def name(self, size: Size) -> str:
        """A size as the paper names it."""
        return write(self.named(size))

    def unit(self, size: Expression) -> str:
        """The unit of a size's value: °, the paper's unit of length, or that squared."""
        return size_unit(size, self.notation.length_unit)

    def amount(self, value: Value) -> Expression:
        """A value as it is put into a line: exact, or rounded to four figures."""
        if value.approx:
            return decimal_beside(Decimal(repr(value.number)))
        rational = as_fraction(value)
        return number(rational) if rational is not None else fraction_expression(value.fraction)

    def value(self, value: Value, size: Expression) -> str:
        """A value with its unit, an irrational one with its decimal behind it: 3√5 cm ≈ 6.708 cm."""
        unit = self.unit(size)
        text = spelled(value, unit)
        return as_bearing(text) if isinstance(size, BearingOf) else text

    def value_claim(self, fact: Fact, values: Values) -> str:
        """∠ABC = 68°, AC ≈ 5.162 cm; AC² = 169 − t² for a length that is known by its square."""
        value = values.of(fact)
        if fact.size in values.squares and fact.kind == "size":
            return f"{self.name(fact.size)}² = {write(fraction_expression(values.squares[fact.size]))}"
        size = fact.size
        return f"{self.name(size)} {equals_sign(value)} {self.value(value, size)}"

    def put_in(self, expression: Expression, given: dict[Size, Value]) -> Expression:
        """The expression with the values of known sizes put in."""
        known: dict[Expression, Value] = {size: value for size, value in given.items()}  # noqa: C416

        def leaf_value(leaf: Expression) -> Expression:
            value = known.get(leaf)
            if value is None:
                return self.named(leaf)
            amount = self.amount(value)
            return Measured(amount, "°") if isinstance(leaf, get_args(Angular)) else amount

        return with_leaves(expression, leaf_value)

    def size_lines(self, fact: Fact, values: Values) -> list[str]:
        """The lines from a theorem's own form to the value of the one size in it that was not known."""
        source, unknown = fact.source, fact.size
        assert source is not None
        left, right = sides_for(source, unknown)
        given = values.given(fact)
        names = f"{write(self.named(left))} = {write(self.named(right))}"
        claim = self.value_claim(fact, values)
        put_left, put_right = write(self.put_in(left, given)), write(self.put_in(right, given))
        value = values.of(fact)
        if left == unknown:
            said = (write(self.named(right)), write(self.amount(value)), self.value(value, unknown))
            worked = f" = {put_right}" if put_right not in said else ""
            return [f"{names}{worked} {equals_sign(value)} {self.value(value, unknown)}"]
        if unknown in values.squares:
            square_text = write(fraction_expression(values.squares[unknown]))
            put = f"{put_left} = {put_right}"
            return [names, put, f"{self.name(unknown)}² = {square_text}"]
        if left == Power(unknown, SQUARE):
            square = Value(value.fraction * value.fraction, value.approx)
            total = write(self.amount(square))
            worked = f" {equals_sign(square)} {total}" if total != put_right else ""
            root = write(Root(self.amount(square)))
            plain = write(self.amount(value))
            middle = f" = {root}" if root != plain and not value.exact else ""
            return [
                f"{names} = {put_right}{worked}",
                f"{self.name(unknown)}{middle} {equals_sign(value)} {self.value(value, unknown)}",
            ]
        if isinstance(left, Function) and left.argument == unknown:
            worked = f" = {put_right}" if put_right != write(self.named(right)) else ""
            return [f"{names}{worked}", claim]
        lines = [names]
        if (put := f"{put_left} = {put_right}") != names:
            lines.append(put)
        return [*lines, claim]

    def equation_sides(self, fact: Fact, values: Values) -> tuple[Expression, Expression]:
        """The two sides of an equation in letters with the known values put in."""
        assert fact.source is not None
        given = values.given(fact)
        left, right = sides_for(fact.source, None)
        return self._squares_in(self.put_in(left, given), values), self._squares_in(self.put_in(right, given), values)

    def _squares_in(self, expression: Expression, values: Values) -> Expression:
        """AD² replaced by 169 − t² where a length is known by its square."""

        if isinstance(expression, Power) and expression.exponent == SQUARE and expression.base in values.squares:
            return fraction_expression(values.squares[expression.base])
        return with_parts(expression, lambda part: self._squares_in(part, values))

    def equation_lines(self, fact: Fact, values: Values) -> list[str]:
        """The theorem's own form, and the equation in letters that its values give."""
        if fact.source is None:
            one, two = (values.of(before) for before in fact.inputs[:2])
            return [f"{write(self.amount(one))} = {write(self.amount(two))}"]
        left, right = sides_for(fact.source, None)
        names = f"{write(self.named(left))} = {write(self.named(right))}"
        put = " = ".join(write(side) for side in self.equation_sides(fact, values))
        return [put] if put == names else [names, put]

    def substitution(self, fact: Fact, values: Values) -> str:
        """AB = x + 3 = 12 + 3 = 15 cm."""
        form, *letters = fact.inputs
        found: dict[Size, Value] = {letter.size: values.of(letter) for letter in letters}
        before = self.amount(values.of(form)) if form.subject not in values.squares else None
        value = values.of(fact)
        size = fact.size
        if before is None:
            square = fraction_expression(values.squares[size])
            put = write(self.put_in(square, found))
            worked = f"{write(Root(square))} = √({put})"
            return f"{self.name(size)} = {worked} {equals_sign(value)} {self.value(value, size)}"
        put = write(self.put_in(before, found))
        said = self.value(value, size)
        middle = f" = {put}" if put != write(self.amount(value)) else ""
        return f"{self.name(size)} = {write(before)}{middle} {equals_sign(value)} {said}"

    def claim(self, predicate: Predicate, source: Source | None = None) -> str:
        """What a predicate says: ∠ABC = ∠DEF, AB = DE, △ABC ∼ △DEF."""
        match predicate:
            case SegmentsEqual():
                return equal_segments_text(predicate)
            case AnglesEqual(first, second):
                return f"{self.name(first)} = {self.name(second)}"
            case AngleIs(size, degrees):
                return f"{self.name(size)} = {write(number(degrees))}°"
            case TrianglesAlike(first_corners, second_corners, congruent):
                if source is not None:
                    return source.about
                sign = "≡" if congruent else "∼"
                return f"△{''.join(first_corners)} {sign} △{''.join(second_corners)}"
            case Balanced(left, right):
                return f"{write(self.named(left))} = {write(self.named(right))}"
            case Greater(left, right):
                return f"{write(self.named(left))} > {write(self.named(right))}"
            case Proportional((a, b, c, d)):
                if isinstance(source, Equation):
                    return f"{write(self.named(source.left))} = {write(self.named(source.right))}"
                return f"{self.name(a)}/{self.name(b)} = {self.name(c)}/{self.name(d)}"
            case Concyclic() | IsDiameter() | Touches():
                return circle_text(self.arrangement, predicate)
            case OnOneLine(points):
                return f"{', '.join(points)} are on one straight line"
        return source.about if source is not None else ""

    def _worked_side(self, side: Expression, given: dict[Size, Value]) -> str:
        """PA × PB = 4 × 9 = 36; without the last part where that is not exact."""
        put = write(self.put_in(side, given))
        value = fraction_of(side, given)
        whole = spelled(value, "") if is_number(value.fraction) and not value.approx else put
        return f"{write(self.named(side))} = {put}" + (f" = {whole}" if whole != put and "≈" not in whole else "")

    def observed(self, fact: Fact, values: Values) -> str:
        """An equality that holds because the values agree: ∠ABC = ∠DEF = 40°, AB/DE = 3/6 = BC/EF."""
        found = {
            before.subject: values.of(before)
            for before in fact.inputs
            if before.kind in ("size", "substituted", "let", "linear")
        }
        match fact.subject:
            case AnglesEqual(first, second) | SegmentsEqual(first, second):
                if fact.inputs and all(isinstance(before.subject, AnglesEqual) for before in fact.inputs):
                    return self.claim(fact.subject)
                value = found.get(first) or found.get(second)
                said = f" {equals_sign(value)} {self.value(value, first)}" if value else ""
                return f"{self.name(first)} = {self.name(second)}{said}"
            case Greater(left, right):
                given = values.given(fact)
                one, two = (write(self.put_in(side, given)) for side in (left, right))
                return f"{write(self.named(left))} = {one} > {two} = {write(self.named(right))}"
            case Balanced(left, right):
                sides = [self._worked_side(side, values.given(fact)) for side in (left, right)]
                return f"{sides[0]} and {sides[1]}"
            case Proportional((a, b, c, d)):
                pairs = [(one, two) for one, two in ((a, b), (c, d)) if one in found and two in found and one != two]
                ratios = [
                    f"{self.name(one)}/{self.name(two)} = "
                    f"{write(Quotient(self.amount(found[one]), self.amount(found[two])))}"
                    for one, two in pairs
                ]
                return " and ".join(ratios) or self.claim(fact.subject)
        return ""


def sides_for(source: Source, unknown: Size | None) -> tuple[Expression, Expression]:
    """The two sides of a theorem as they are written down, the unknown alone on the left where it is linear."""
    if isinstance(source, Equation):
        swap = source.right in (unknown, Power(unknown, SQUARE)) if unknown is not None else False
        return (source.right, source.left) if swap else (source.left, source.right)
    assert isinstance(source, Instance)
    form = source.relation
    if unknown is not None:
        share = form.coefficient(unknown)
        terms = [_share(size, -value / share) for size, value in form.terms.items() if size != unknown]
        constant = -form.constant / share
        return unknown, _total(terms, constant, "°" if isinstance(unknown, AngleOf | ArcOf) else "")
    left = [_share(size, Fraction(value)) for size, value in form.terms.items() if value > 0]
    right = [_share(size, Fraction(-value)) for size, value in form.terms.items() if value < 0]
    constant = Fraction(form.constant)
    return _total(left, max(constant, Fraction(0))), _total(right, max(-constant, Fraction(0)))


def _share(size: Size, share: Fraction) -> Expression:
    if abs(share) == 1:
        return size if share > 0 else Negative(size)
    whole = (
        Product((number(abs(share)), size), "×")
        if not isinstance(size, Letter)
        else Product((number(abs(share)), size))
    )
    return whole if share > 0 else Negative(whole)


def _total(terms: list[Expression], constant: Fraction, unit: str = "") -> Expression:
    terms = sorted(terms, key=lambda term: isinstance(term, Negative))
    if constant or not terms:
        shown: Expression = Measured(number(abs(constant)), unit) if unit else number(abs(constant))
        terms = [shown, *terms] if constant >= 0 else [*terms, Negative(shown)]
    return terms[0] if len(terms) == 1 else Sum(tuple(terms))
