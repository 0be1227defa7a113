"""Works a derivation out exactly, line by line: what each size, letter and equation comes to."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from paperaudit.errors import BudgetExceeded, NoValue
from paperaudit.geometry.beyond.amounts import (
    NoExactValue,
    Value,
    amount_in,
    carried,
    form_expression,
    is_rounded,
    replaced,
    rounded_amount,
    whole_amount,
)
from paperaudit.geometry.beyond.reached import Fact
from paperaudit.geometry.beyond.roots import by_powers, eliminated, freed_of_roots, roots_of, rounded_root
from paperaudit.geometry.beyond.rows import Source
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.linear.derive import Node
from paperaudit.geometry.theorems.theorem import Equation, LinesParallel
from paperaudit.maths.angle_values import exact_function, usual_angles
from paperaudit.maths.cancelling import PI, NoRoot, float_value, fraction_expression, is_number, reduced
from paperaudit.maths.polynomial import AlgebraicFraction, Polynomial
from paperaudit.maths.surd import Surd
from paperaudit.model.expression import AngleOf, ArcOf, Expression, Function, FunctionName, Letter

AGREES = 1e-6
"""Share of its size by which a worked value may differ from the drawing."""

FLAT = 1e-3
"""Degrees by which a right angle may be off in a drawing that has it by its sine alone."""

INVERSE: dict[str, FunctionName] = {"sin": "sin⁻¹", "cos": "cos⁻¹", "tan": "tan⁻¹"}

SIZED = ("size", "substituted", "letter", "let", "linear")


@dataclass(frozen=True, slots=True)
class Solved:
    """The values that an equation leaves to its unknown; `chosen` is the one that the figure has.

    `equation` is what is set to 0, by powers of `atom` (the unknown, or a function of it). `squared` is the length
    that stood in it by its square alone, what that length is equal to, and its square.
    """

    chosen: Value
    others: tuple[Value, ...]
    atom: Expression
    equation: dict[int, AlgebraicFraction]
    squared: tuple[Expression, AlgebraicFraction, AlgebraicFraction] | None = None


@dataclass(slots=True)
class Values:
    """The exact values of a derivation's facts, worked out as they are asked for.

    A length whose square alone has an exact form in letters (BD² = 169 − t²) stands for itself, and
    `squares` has its square.
    """

    measured: Callable[[Size], float]
    unknowns: dict[Expression, float]
    solved: dict[int, Solved] = field(default_factory=dict)
    squares: dict[Expression, AlgebraicFraction] = field(default_factory=dict)
    _found: dict[int, Value] = field(default_factory=dict)
    _sizes: list[tuple[Size, Value]] = field(default_factory=list)

    def of(self, fact: Fact) -> Value:
        """The value of a size's or a letter's fact; raises NoExactValue, and where it is not what the drawing has."""
        if id(fact) not in self._found:
            value = carried(self._work_out(fact))
            try:
                said = float_value(value.fraction, self.unknowns)
            except KeyError as left:
                raise NoExactValue(f"{left} is not known") from None
            real = self.real(fact.size)
            if not math.isclose(said, real, rel_tol=AGREES, abs_tol=AGREES):
                raise NoExactValue(f"{fact.subject} comes to {said}, not {real}")
            self._found[id(fact)] = value
            self._sizes.append((fact.size, value))
        return self._found[id(fact)]

    def rounded_lengths(self) -> tuple[Value, ...]:
        """The values of lengths and areas so far that were rounded on the way."""
        return tuple(
            value
            for size, value in self._sizes
            if not isinstance(size, AngleOf | ArcOf) and value.approx and not value.exact
        )

    def real(self, size: Size) -> float:
        """The value of a size or letter in the drawing."""
        return self.unknowns[size] if isinstance(size, Letter) else self.measured(size)

    def given(self, fact: Fact) -> dict[Size, Value]:
        """The values of the sizes and letters that a fact's line rests on."""
        return {
            before.size: self.of(before) for before in fact.inputs if before.kind in SIZED and not is_equality(before)
        }

    def _work_out(self, fact: Fact) -> Value:
        try:
            match fact.kind:
                case "let":
                    (letter,) = fact.slopes
                    return Value(AlgebraicFraction(Polynomial.of(letter)))
                case "linear":
                    assert fact.plain is not None
                    return Value(_of_form(fact.plain))
                case "substituted":
                    return self._substituted(fact)
                case "letter":
                    return self._letter(fact)
                case "size":
                    return self._size(fact)
        except (NoRoot, NoValue, BudgetExceeded, ZeroDivisionError) as obstacle:
            raise NoExactValue(str(obstacle)) from None
        raise NoExactValue(f"a {fact.kind} has no value")

    def _substituted(self, fact: Fact) -> Value:
        form, *letters = fact.inputs
        values: dict[Expression, Value] = {letter.size: self.of(letter) for letter in letters}
        start = self.of(form)
        approx = start.approx or any(value.approx for value in values.values())
        square = self.squares.get(form.size)
        if square is not None and start.fraction.above == Polynomial.of(form.size):
            return rounded_root(replaced(square, values), approx)
        return Value(replaced(start.fraction, values), approx)

    def equation(self, fact: Fact) -> tuple[AlgebraicFraction, bool]:
        """What an equation in letters sets to 0, and whether it holds rounded numbers."""
        given = self.given(fact)
        if fact.source is None:
            one, two = (self.of(before) for before in fact.inputs[:2])
            return self._plain(one.fraction + -two.fraction), any(value.approx for value in given.values())
        return self._difference(fact.source, given, None), _is_rounded(fact.source, given)

    def _letter(self, fact: Fact) -> Value:
        letter = fact.subject
        assert isinstance(letter, Letter)
        equations = [before for before in fact.inputs if before.kind == "equation"]
        values: dict[Expression, Value] = {
            before.size: self.of(before) for before in fact.inputs if before.kind == "letter"
        }
        parts = [self.equation(equation) for equation in equations]
        approx = any(rounded for _, rounded in parts) or any(value.approx for value in values.values())
        left = [replaced(fraction, values).above for fraction, _ in parts]
        polynomial = left[0] if len(left) == 1 else eliminated(left, letter)
        freed, squared = freed_of_roots(polynomial, self.squares)
        solved = replace(self._roots(freed, letter, letter, approx), squared=squared)
        self.solved[id(fact)] = solved
        return solved.chosen

    def _size(self, fact: Fact) -> Value:
        assert fact.source is not None
        unknown = fact.size
        given = self.given(fact)
        approx = _is_rounded(fact.source, given)
        polynomial = self._difference(fact.source, given, unknown).above
        atoms = {
            key
            for monomial in polynomial.terms
            for key, _ in monomial
            if key == unknown or (isinstance(key, Function) and key.argument == unknown)
        }
        if len(atoms) != 1:
            raise NoExactValue("an unknown in two functions")
        (atom,) = atoms
        strangers = {key for monomial in polynomial.terms for key, _ in monomial} - atoms - set(self.unknowns)
        if any(not isinstance(key, Function) and key != PI for key in strangers):
            raise NoExactValue("two sizes that are not known")
        if isinstance(atom, Function):
            solved = self._angle(polynomial, atom, unknown, approx)
        else:
            solved = self._roots(polynomial, atom, unknown, approx)
        self.solved[id(fact)] = solved
        return solved.chosen

    def _difference(self, source: Source, given: Mapping[Size, Value], unknown: Size | None) -> AlgebraicFraction:
        if isinstance(source, Equation):
            left, right = (amount_in(side, given, unknown) for side in (source.left, source.right))
            return self._plain(left + -right)
        return self._plain(amount_in(form_expression(source.relation), given, unknown))

    def _plain(self, fraction: AlgebraicFraction) -> AlgebraicFraction:
        """A fraction with even powers of lengths that stand for themselves replaced by their squares."""
        result = reduced(fraction)
        for size, square in self.squares.items():
            parts = by_powers(result.above, size)
            if set(parts) == {0} or any(power % 2 for power in parts):
                continue
            total = AlgebraicFraction(Polynomial({}))
            for power, part in parts.items():
                term = AlgebraicFraction(part)
                for _ in range(power // 2):
                    term = term * square
                total = total + term
            result = reduced(total * AlgebraicFraction(result.below).reciprocal())
        return result

    def _roots(self, polynomial: Polynomial, atom: Expression, unknown: Size, approx: bool) -> Solved:
        """The roots of a polynomial of at most the second degree in one unknown."""
        by_degree = by_powers(polynomial, atom)
        equation = {power: AlgebraicFraction(part) for power, part in by_degree.items()}
        try:
            roots = roots_of(by_degree, approx)
        except NoRoot:
            if set(by_degree) != {0, 2} or isinstance(unknown, Letter):
                raise
            self.squares[unknown] = reduced(-equation[0] * equation[2].reciprocal())
            self.unknowns[unknown] = self.real(unknown)
            return Solved(Value(AlgebraicFraction(Polynomial.of(unknown)), approx), (), atom, equation)
        real = self.real(unknown)
        roots.sort(key=lambda root: abs(float_value(root.fraction, self.unknowns) - real))
        return Solved(roots[0], tuple(roots[1:]), atom, equation)

    def _angle(self, polynomial: Polynomial, atom: Function, unknown: Size, approx: bool) -> Solved:
        """An angle from its sine, cosine or tangent: exactly where it is one of the usual ones."""
        by_degree = by_powers(polynomial, atom)
        real = self.real(unknown)
        aim = {"sin": math.sin, "cos": math.cos, "tan": math.tan}[atom.name](math.radians(real))
        roots = roots_of(by_degree, approx)
        if not all(is_number(root.fraction) for root in roots):
            raise NoExactValue("an angle from a ratio in letters")
        roots.sort(key=lambda root: abs(root.number - aim))
        ratio = roots[0]
        equation = {power: AlgebraicFraction(part) for power, part in by_degree.items()}
        others = (_supplement(real),) if atom.name == "sin" and abs(real - 90) > AGREES else ()
        for degrees in usual_angles(atom.name):
            exact = exact_function(atom.name, degrees)
            # At 90° the sine hardly changes, so that a drawing has the angle less exactly there.
            near = FLAT if atom.name == "sin" and degrees == 90 else AGREES
            if abs(degrees - real) < near and not ratio.approx and exact == ratio.fraction.above.constant:
                return Solved(whole_amount(Fraction(degrees)), others, atom, equation)
        inverse: FunctionName = INVERSE[atom.name]
        shown = None if ratio.approx else Function(inverse, fraction_expression(ratio.fraction))
        if shown and atom.name == "sin" and real > 90:
            shown = None
        return Solved(Value(rounded_amount(real), True, shown), others, atom, equation)


def is_equality(fact: Fact) -> bool:
    """Whether a fact of the linear search says that two angles are equal or two lines parallel, and has no value."""
    if fact.kind != "linear":
        return False
    return isinstance(fact.subject, LinesParallel) or fact.subject != (fact.plain and fact.plain.subject)


def _is_rounded(source: Source, given: Mapping[Size, Value]) -> bool:
    """Whether what a relation says of known sizes is rounded."""
    if isinstance(source, Equation):
        return is_rounded(source.left, given) or is_rounded(source.right, given)
    return any(value.approx for value in given.values())


def _supplement(degrees: float) -> Value:
    return Value(rounded_amount(180 - degrees), True)


def _of_form(node: Node) -> AlgebraicFraction:
    total = Polynomial.number(Surd.rational(node.form.constant))
    for letter, share in node.form.terms.items():
        total = total + Polynomial.of(letter) * Polynomial.number(Surd.rational(share))
    return AlgebraicFraction(total)
