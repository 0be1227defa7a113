"""Our elimination, sympy and z3 on the linear systems that geometry theories come out with.

Each must say the same of a system: whether it holds together, which sizes it settles, and their values.
"""

import random
import time
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import islice

import sympy
import z3
from sympy.polys.domains import QQ
from sympy.polys.matrices import DomainMatrix

from paperaudit.geometry.figure.build import FigureBuilder
from paperaudit.geometry.linear.examine import examine
from paperaudit.maths.linear import Elimination, LinearForm
from paperaudit.model.ask import Find
from paperaudit.model.expression import AngleOf, Letter
from paperaudit.model.paper import Line, Part, Question
from paperaudit.wording import read
from tests.geometry.random_circles import random_circle_question
from tests.geometry.random_figures import RandomQuestion, random_question

Form = LinearForm[object]
CASES = 500
FORMS = 8
"""Sizes that are asked for in each system, besides every letter."""
SECONDS = 240
"""What the run may take; it takes a fifth of it on the machine that it was written on."""


@dataclass(frozen=True)
class System:
    """Forms that are 0, and forms whose values are asked for."""

    rows: tuple[Form, ...]
    asked: tuple[Form, ...]

    @property
    def keys(self) -> list[object]:
        return list(dict.fromkeys(key for form in (*self.rows, *self.asked) for key in form.terms))


Verdict = list[Fraction | None] | None
"""The value of each form asked for, None where it is open; None for a system that contradicts itself."""


def by_elimination(system: System) -> Verdict:
    rows: Elimination[object, int] = Elimination()
    for number, row in enumerate(system.rows):
        if rows.add(row, number):
            return None
    return [rows.value(form) for form in system.asked]


def by_sympy(system: System) -> Verdict:
    keys = system.keys
    matrix = DomainMatrix(
        [[QQ(*_ratio(row.coefficient(key))) for key in keys] + [QQ(*_ratio(row.constant))] for row in system.rows],
        (len(system.rows), len(keys) + 1),
        QQ,
    )
    reduced, pivots = matrix.rref()
    if len(keys) in pivots:
        return None
    rows = reduced.to_Matrix()
    found: list[Fraction | None] = []
    for form in system.asked:
        left = sympy.Matrix([[sympy.Rational(*_ratio(form.coefficient(key))) for key in keys] + [_rational(form)]])
        for number, pivot in enumerate(pivots):
            left = left - left[pivot] * rows.row(number)
        *coefficients, constant = list(left)
        found.append(None if any(coefficients) else Fraction(int(constant.p), int(constant.q)))
    return found


def by_z3(system: System) -> Verdict:
    names = {key: z3.Real(f"k{number}") for number, key in enumerate(system.keys)}

    def written(form: Form) -> z3.ArithRef:
        terms = [z3.RealVal(value) * names[key] for key, value in form.terms.items()]
        return z3.Sum([*terms, z3.RealVal(form.constant)])

    solver = z3.Solver()
    solver.set("timeout", 10_000)
    solver.add([written(row) == 0 for row in system.rows])
    state = solver.check()
    assert state != z3.unknown
    if state == z3.unsat:
        return None
    model = solver.model()
    found: list[Fraction | None] = []
    for form in system.asked:
        value = model.eval(written(form), model_completion=True).as_fraction()
        solver.push()
        solver.add(written(form) != z3.RealVal(value))
        other = solver.check()
        assert other != z3.unknown
        found.append(Fraction(value) if other == z3.unsat else None)
        solver.pop()
    return found


def _ratio(value: Fraction) -> tuple[int, int]:
    return value.numerator, value.denominator


def _rational(form: Form) -> sympy.Rational:
    return sympy.Rational(*_ratio(form.constant))


def theory_of(question: RandomQuestion, chance: random.Random) -> System | None:
    """The rows of the theory of a question's figure, and some of its angles; None where no figure is drawn."""
    part = Part("1", "1", ask=Line(question.ask))
    sketch = tuple((name, x, y) for name, (x, y) in question.sketch.items())
    lines = [tuple(map(Line, statements)) for statements in (question.figure, question.given)]
    reading = read(Question("1", (part,), figure=lines[0], given=lines[1], sketch=sketch), part)
    assert reading.ask is not None and isinstance(reading.ask.task, Find)
    builder = FigureBuilder(reading.givens, reading.ask.task.wanted)
    settled = examine(builder.figure(sketch, reading.ask.task.wanted), []).settled
    if not settled:
        return None
    theory = settled[0].theory
    sizes = dict.fromkeys(size for instance in settled[0].found for size in instance.relation.terms)
    angles = [size for size in sizes if isinstance(size, AngleOf)]
    some = chance.sample(angles, min(FORMS, len(angles)))
    asked = [settled[0].arrangement.directions(LinearForm.of(size)) for size in some]
    letters = [LinearForm.of(key) for row in theory.entries for key in row.terms if isinstance(key, Letter)]
    return System(tuple(theory.entries), tuple(dict.fromkeys([*asked, *letters])))


def systems() -> Iterator[System]:
    """Each theory as it is, with a row left out, and with a row that says something else."""
    chance = random.Random(20_261_125)
    makes: Sequence[Callable[[int], RandomQuestion]] = (
        random_question,
        lambda seed: random_question(seed, letters=True),
        random_circle_question,
    )
    seed = 0
    while True:
        system = theory_of(makes[seed % 3](90_000 + seed), chance)
        seed += 1
        if system is None or not system.rows:
            continue
        yield system
        for _ in range(2):
            left_out = chance.randrange(len(system.rows))
            yield System(system.rows[:left_out] + system.rows[left_out + 1 :], system.asked)
            altered = chance.choice(system.rows) + LinearForm.number(Fraction(chance.randrange(1, 40), 2))
            yield System((*system.rows, altered), system.asked)
            place = chance.randrange(len(system.rows))
            shifted = system.rows[place] + LinearForm.number(chance.randrange(1, 20))
            yield System((*system.rows[:place], shifted, *system.rows[place + 1 :]), system.asked)


def test_elimination_sympy_and_z3_agree() -> None:
    start, seen = time.process_time(), Counter[str]()
    for system in islice(systems(), CASES):
        ours = by_elimination(system)
        assert ours == by_sympy(system) == by_z3(system), system
        seen["systems"] += 1
        if ours is None:
            seen["contradictions"] += 1
        else:
            seen["settled"] += sum(value is not None for value in ours)
            seen["open"] += ours.count(None)
        assert time.process_time() - start < SECONDS, seen
    assert seen["systems"] == CASES
    assert min(seen["contradictions"], seen["settled"], seen["open"]) >= 100, seen


def test_a_wrong_elimination_would_be_noticed() -> None:
    """x + y = 10 and x − y = 4: one row wrong by 1 gives other values in all three."""
    x, y = LinearForm[object].of("x"), LinearForm[object].of("y")
    right = System((x + y - LinearForm.number(10), x - y - LinearForm.number(4)), (x, y))
    wrong = System((right.rows[0], right.rows[1] + LinearForm.number(1)), (x, y))
    for way in (by_elimination, by_sympy, by_z3):
        assert way(right) == [7, 3]
        assert way(wrong) == [Fraction(13, 2), Fraction(7, 2)]
        assert way(System(right.rows[:1], (x, x + y))) == [None, 10]
        assert way(System((*right.rows, *wrong.rows), (x,))) is None
