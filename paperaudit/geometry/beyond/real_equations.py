"""Equations of a figure put to z3: positive real sizes, sines of known angles between two fractions."""

import math
from dataclasses import dataclass, field
from typing import Any

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.linear.theory import Labels, Theory
from paperaudit.maths.linear import LinearForm
from paperaudit.model.expression import (
    AngleOf,
    ArcOf,
    Expression,
    Function,
    Letter,
    Measured,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
    leaves,
)

MILLISECONDS = 400
"""What one question to z3 may take."""
ENCLOSED = 10**12
"""A sine that is no fraction is enclosed between two with this denominator."""


class NotTold(Exception):
    """An expression that z3 is not told of; caught where equations are stated."""


@dataclass(slots=True)
class Problem:
    """Equations over positive real sizes, each named so that a core can be read off."""

    arrangement: Arrangement
    theory: Theory
    labels: dict[str, Labels] = field(default_factory=dict)
    _names: dict[Expression, Any] = field(default_factory=dict)
    _always: list[Any] = field(default_factory=list)
    _stated: dict[str, Any] = field(default_factory=dict)

    def state(self, name: str, left: Expression, right: Expression, labels: Labels) -> None:
        """Add an equation; what z3 is not told of only makes the proof harder to find."""
        try:
            behind: set[int] = set()
            one, below = self._term(left, behind)
            two, other = self._term(right, behind)
        except NotTold:
            return
        self._stated[name] = one * other == two * below
        self.labels[name] = labels | behind

    def core(self, names: frozenset[str] | None = None) -> frozenset[str] | None:
        """The names of equations that cannot hold together, None where z3 finds none in its time."""
        import z3

        solver = z3.Solver()
        solver.set("timeout", MILLISECONDS)
        for always in self._always:
            solver.add(always)
        for name, equation in self._stated.items():
            if names is None or name in names:
                solver.assert_and_track(equation, name)
        if solver.check() != z3.unsat:
            return None
        return frozenset(str(name) for name in solver.unsat_core())

    def _term(self, expression: Expression, behind: set[int]) -> tuple[Any, Any]:
        """Numerator and denominator of an expression, all denominators positive."""
        import z3

        one = z3.Q(1, 1)
        match expression:
            case Number(value):
                return z3.Q(value.numerator, value.denominator), one
            case Measured(amount):
                return self._term(amount, behind)
            case Negative(operand):
                above, below = self._term(operand, behind)
                return -above, below
            case Sum(terms):
                total, under = z3.Q(0, 1), one
                for term in terms:
                    above, below = self._term(term, behind)
                    total, under = total * below + above * under, under * below
                return total, under
            case Product(factors):
                product, under = one, one
                for factor in factors:
                    above, below = self._term(factor, behind)
                    product, under = product * above, under * below
                return product, under
            case Quotient(numerator, denominator):
                above, below = self._term(numerator, behind)
                other, over = self._term(denominator, behind)
                return above * over, below * other
            case Power(base, Number(exponent)) if exponent in (2, 3):
                above, below = self._term(base, behind)
                return (above * above, below * below) if exponent == 2 else (above**3, below**3)
            case Root(radicand, 2):
                return self._root(expression, radicand, behind), one
            case Function(name, argument):
                return self._function(name, argument, behind), one
            case AngleOf() | ArcOf():
                return self._angle(expression, behind), one
        if leaves(expression) == (expression,):
            return self._size(expression), one
        raise NotTold

    def _size(self, size: Expression) -> Any:
        import z3

        if size not in self._names:
            variable = z3.Real(f"v{len(self._names)}")
            self._names[size] = variable
            if size == Letter("π"):
                self._enclose(variable, math.pi)
            elif not isinstance(size, Letter):
                self._always.append(variable > 0)
        return self._names[size]

    def _angle(self, angle: AngleOf | ArcOf, behind: set[int]) -> Any:
        """The degrees of an angle or arc that the angles alone settle; a positive number where they do not."""
        import z3

        form: LinearForm[Size] = LinearForm.of(angle)
        degrees = self.theory.value(form)
        if degrees is None:
            return self._size(angle)
        behind |= self.theory.support(form)
        return z3.Q(degrees.numerator, degrees.denominator)

    def _of_unknown(self, name: str, angle: AngleOf) -> Any:
        """The sine or cosine of an angle that is open: two numbers whose squares add up to 1, the sine positive."""
        import z3

        if angle.reflex or name not in ("sin", "cos"):
            raise NotTold
        sine, cosine = Function("sin", angle), Function("cos", angle)
        if sine not in self._names:
            s, c = z3.Real(f"v{len(self._names)}"), z3.Real(f"v{len(self._names) + 1}")
            self._names[sine], self._names[cosine] = s, c
            self._always += [s > 0, s * s + c * c == 1]
        return self._names[sine if name == "sin" else cosine]

    def _enclose(self, variable: Any, value: float) -> None:
        import z3

        low = math.floor(value * ENCLOSED) - 1
        self._always += [variable >= z3.Q(low, ENCLOSED), variable <= z3.Q(low + 3, ENCLOSED)]

    def _root(self, expression: Expression, radicand: Expression, behind: set[int]) -> Any:
        import z3

        if expression not in self._names:
            above, below = self._term(radicand, behind)
            variable = z3.Real(f"v{len(self._names)}")
            self._names[expression] = variable
            self._always += [variable >= 0, variable * variable * below == above]
        return self._names[expression]

    def _function(self, name: str, argument: Expression, behind: set[int]) -> Any:
        """The sine, cosine or tangent of an angle that the angles alone settle, between two fractions."""
        import z3

        inside = argument.amount if isinstance(argument, Measured) else argument
        if isinstance(inside, AngleOf):
            form: LinearForm[Size] = LinearForm.of(inside)
            degrees = self.theory.value(form)
            if degrees is None:
                return self._of_unknown(name, inside)
            behind |= self.theory.support(form)
        elif isinstance(inside, Number):
            degrees = inside.value
        else:
            raise NotTold
        key = Function(name, Number(degrees))  # type: ignore[arg-type]
        if key not in self._names:
            variable = z3.Real(f"v{len(self._names)}")
            self._names[key] = variable
            self._enclose(
                variable, {"sin": math.sin, "cos": math.cos, "tan": math.tan}[name](math.radians(float(degrees)))
            )
        return self._names[key]
