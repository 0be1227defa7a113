"""The seeded questions that times are taken on, and each way of answering them."""

import random
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

import sympy
import z3

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.figure.figure import Size
from paperaudit.geometry.figure.sizes import linear_form
from paperaudit.geometry.linear.examine import Settled, derive_targets, examine
from paperaudit.geometry.linear.theory import close
from paperaudit.geometry.theorems.theorem import Instance, Predicate, Stated
from paperaudit.maths.linear import LinearForm
from paperaudit.model.ask import Find
from paperaudit.model.expression import AngleOf, ArcOf, LengthOf
from paperaudit.model.paper import Line, Part, Question
from paperaudit.strands.geometry import GeometryStrand
from paperaudit.wording import read
from tests.geometry.random_figures import RandomQuestion, random_question

FIRST_SEED = 60_000


@dataclass(frozen=True)
class Derivable:
    """A question whose answer follows from its linear theory, with its figure drawn and its instances found."""

    question: RandomQuestion
    settled: Settled
    target: Size
    value: Fraction

    @property
    def form(self) -> LinearForm[Size]:
        return LinearForm.of(self.target)


def derivable(count: int) -> list[Derivable]:
    """So many seeded questions, every second one in letters, that the linear theory answers."""
    found: list[Derivable] = []
    seed = FIRST_SEED
    while len(found) < count:
        question = random_question(seed, letters=bool(seed % 2))
        seed += 1
        drawn = _drawn(question)
        if drawn is not None and derive_targets(drawn.settled, (drawn.target,)) is not None:
            found.append(drawn)
    return found


def _drawn(question: RandomQuestion) -> Derivable | None:
    reading = read(_as_question(question), Part("1", "1", ask=Line(question.ask)))
    assert reading.ask is not None and isinstance(reading.ask.task, Find)
    builder = FigureBuilder(reading.givens, reading.ask.task.wanted)
    wanted = builder.resolved(reading.ask.task.wanted[0])
    form = linear_form(wanted, builder.unit)
    settled = examine(builder.figure(reading.question.sketch, reading.ask.task.wanted), [form]).settled
    if len(settled) != 1 or settled[0].values[0] is None:
        return None
    (target,) = settled[0].arrangement.canonical_form(form).terms
    return Derivable(question, settled[0], target, settled[0].values[0])


def _as_question(question: RandomQuestion) -> Question:
    sketch = tuple((name, x, y) for name, (x, y) in question.sketch.items())
    figure, given = (tuple(map(Line, lines)) for lines in (question.figure, question.given))
    return Question("1", (Part("1", "1", ask=Line(question.ask)),), figure=figure, given=given, sketch=sketch)


def answered(question: RandomQuestion) -> object:
    """The whole way from the statements to the outcome."""
    whole = _as_question(question)
    return GeometryStrand().derive(read(whole, whole.parts[0]))


# The derivation, and sympy on the same instances


def by_search(case: Derivable) -> Fraction:
    """Our derivation: the lines that lead to the size."""
    reached = derive_targets(case.settled, (case.target,))
    assert reached is not None
    return reached.nodes[0].form.constant


class Solvable:
    """The relations of a question's instances whose premises hold, for sympy; building them is not timed."""

    def __init__(self, case: Derivable) -> None:
        theory = case.settled.theory
        forms = [
            instance.relation
            for instance in case.settled.found
            if instance.conclusion is None
            and all(isinstance(premise, Stated) or premise in theory.predicates for premise in instance.premises)
        ]
        sizes = dict.fromkeys(size for form in forms for size in form.terms)
        self.symbols = {size: sympy.Symbol(f"s{number}") for number, size in enumerate(sizes)}
        self.equations = [
            sum((_rational(share) * self.symbols[size] for size, share in form.terms.items()), _rational(form.constant))
            for form in forms
        ]
        self.target = self.symbols[case.target]

    def solve(self) -> Any:
        """What sympy.solve says the size asked for is."""
        found = sympy.solve(self.equations, list(self.symbols.values()), dict=True)
        return found[0][self.target] if found else None


def _rational(value: Fraction) -> sympy.Rational:
    return sympy.Rational(value.numerator, value.denominator)


# Existence and uniqueness, and z3 on the same question


def by_theory(case: Derivable) -> Fraction | None:
    """Whether the instances hold together and settle the size: our elimination, closed under every premise."""
    known = case.settled.arrangement
    theory = close(Arrangement(known.figure, known.drawing), case.settled.found)  # nothing remembered from before
    assert theory.clash is None
    return theory.value(case.form)


class Satisfiable:
    """The same instances for z3, with premises as truth values and positive sizes; building them is not timed."""

    def __init__(self, case: Derivable) -> None:
        self.sizes: dict[Size, z3.ArithRef] = {}
        self.truths: dict[Predicate, z3.BoolRef] = {}
        self.statements = [self._statement(instance) for instance in case.settled.found]
        for size, name in self.sizes.items():
            if isinstance(size, AngleOf | ArcOf | LengthOf):
                self.statements.append(name > 0)
            if isinstance(size, AngleOf):
                self.statements.append(name < 360)
        self.target = self._size(case.target)

    def _size(self, size: Size) -> z3.ArithRef:
        return self.sizes.setdefault(size, z3.Real(f"s{len(self.sizes)}"))

    def _statement(self, instance: Instance) -> z3.BoolRef:
        terms = [z3.RealVal(share) * self._size(size) for size, share in instance.relation.terms.items()]
        relation = z3.Sum([*terms, z3.RealVal(instance.relation.constant)]) == 0
        premises = [
            self.truths.setdefault(premise, z3.Bool(f"p{len(self.truths)}"))
            for premise in instance.premises
            if not isinstance(premise, Stated)
        ]
        if instance.conclusion is None:
            return z3.Implies(z3.And(premises), relation)
        holds = self.truths.setdefault(instance.conclusion, z3.Bool(f"p{len(self.truths)}"))
        return z3.Implies(z3.And([*premises, relation]), holds)

    def value(self) -> Fraction | None:
        """The size in a model, if no other value has one."""
        solver = z3.Solver()
        solver.set("timeout", 20_000)
        solver.add(self.statements)
        assert solver.check() == z3.sat
        value = solver.model().eval(self.target, model_completion=True).as_fraction()
        solver.add(self.target != z3.RealVal(value))
        return Fraction(value) if solver.check() == z3.unsat else None


def shuffled(cases: Sequence[Derivable]) -> list[Derivable]:
    """In an order of their own, so that a slow stretch of the machine falls on all kinds alike."""
    order = list(cases)
    random.Random(1).shuffle(order)
    return order
