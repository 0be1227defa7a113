"""Times in processor seconds: medians of paired ratios, and how times grow with the size of a figure."""

import math
import statistics
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from paperaudit.geometry.coordinates.arrangement import Arrangement
from paperaudit.geometry.linear.derive import Search
from paperaudit.geometry.theorems import instances
from paperaudit.maths import notation
from paperaudit.wording import statement
from paperaudit.wording.clauses import statement_grammar
from tests.benchmarks.ladder import ladder
from tests.benchmarks.questions import Derivable, Satisfiable, Solvable, answered, by_search, by_theory
from tests.geometry.asked import answers, outcome
from tests.geometry.random_figures import RandomQuestion

SIZES = (5, 10, 20, 50, 100, 200)
HARD = {
    "figure": [
        "circle with centre O through A, B, C and D",
        "quadrilateral ABCD",
        "AC and BD intersect at E",
        "M is the midpoint of AB",
        "segments OM, OA",
        "PA is a tangent to the circle at A",
        "segment OP",
        "AB is produced to Q",
        "AD is produced to R",
    ],
    "given": ["OM = 5 cm", "AB = 24 cm", "OP = 15 cm"],
    "ask": "PA",
    "sketch": {
        "O": (0, 0), "A": (-12, -5), "B": (12, -5), "C": (5, 12), "D": (-10, 8), "E": (-5, 3),
        "M": (0, -5), "P": (-15, 2), "Q": (20, -5), "R": (-9, 15),
    },
}  # fmt: skip
"""A hard question: 10 points, a circle, chords, a tangent, lengths. OA² = 5² + 12², PA² = 15² − OA²."""

HARD_ANSWER = "2√14 cm ≈ 7.483 cm"


def seconds(run: Callable[[], object]) -> float:
    """Processor time of one run."""
    start = time.process_time()
    run()
    return max(time.process_time() - start, 1e-6)


@dataclass(frozen=True)
class Ratio:
    """How many times as long the other way took on the same question: medians over the questions."""

    ours: float
    theirs: float
    ratio: float
    count: int


def compared(pairs: Sequence[tuple[float, float]]) -> Ratio:
    ours, theirs = ([pair[side] for pair in pairs] for side in (0, 1))
    ratios = [other / own for own, other in pairs]
    return Ratio(*map(statistics.median, (ours, theirs, ratios)), len(pairs))


def against_sympy(cases: Sequence[Derivable]) -> Ratio:
    """Our derivation against sympy.solve on the same instances."""
    pairs = []
    for case in cases:
        other = Solvable(case)
        assert by_search(case) is not None
        pairs.append((seconds(lambda case=case: by_search(case)), seconds(other.solve)))  # type: ignore[misc]
    return compared(pairs)


def against_z3(cases: Sequence[Derivable]) -> Ratio:
    """Whether the instances hold together and settle the size: our closure against z3; both give the same value."""
    pairs = []
    for case in cases:
        other = Satisfiable(case)
        values = []
        ours = seconds(lambda case=case, values=values: values.append(by_theory(case)))  # type: ignore[misc]
        theirs = seconds(lambda other=other, values=values: values.append(other.value()))  # type: ignore[misc]
        assert values == [case.value, case.value], case.question
        pairs.append((ours, theirs))
    return compared(pairs)


@dataclass(frozen=True)
class Growth:
    """Times by number of cells, and the exponent of the straight line through their logarithms."""

    times: dict[int, float]

    @property
    def exponent(self) -> float:
        logs = [(math.log(size), math.log(time)) for size, time in self.times.items()]
        return statistics.linear_regression([x for x, _ in logs], [y for _, y in logs]).slope


def growth(repeats: int = 3) -> tuple[Growth, Growth]:
    """How the derivation and how finding the instances grow on a chain of cells; the least of some runs each."""
    search: dict[int, float] = {}
    finding: dict[int, float] = {}
    for size in SIZES:
        for _ in range(repeats):
            arrangement, target = ladder(size)
            fresh = Arrangement(arrangement.figure, arrangement.drawing)
            finding[size] = min(
                finding.get(size, math.inf),
                seconds(lambda fresh=fresh: tuple(instances(fresh))),  # type: ignore[misc]
            )
            wanted = arrangement.canonical(target)
            run = Search(tuple(instances(fresh)))
            search[size] = min(
                search.get(size, math.inf),
                seconds(lambda run=run, wanted=wanted: run.run((wanted,))),  # type: ignore[misc]
            )
            node = run.reached(wanted)
            assert node is not None and math.isclose(float(node.form.constant), fresh.measured(wanted), abs_tol=1e-6)
    return Growth(search), Growth(finding)


def typical(questions: Sequence[RandomQuestion], first_ever: bool = False) -> float:
    """The median time of a question, from its statements to its outcome, as it comes in a run of different ones.

    None of its sentences was read before; whether one of the same shape was is left as it happens in the run,
    unless each question is to be the `first_ever`.
    """
    took = []
    statement_grammar().forget()
    for question in questions:
        statement._tree.cache_clear()
        notation._spelled.cache_clear()
        if first_ever:
            statement_grammar().forget()
        took.append(seconds(lambda question=question: answered(question)))  # type: ignore[misc]
    return statistics.median(took)


def hard(repeats: int = 3) -> float:
    """The time of the hard question, the least of some runs; its answer has to be right."""
    assert answers(outcome(HARD["figure"], HARD["given"], HARD["ask"], HARD["sketch"])) == [HARD_ANSWER]  # type: ignore[arg-type]
    return min(
        seconds(lambda: outcome(HARD["figure"], HARD["given"], HARD["ask"], HARD["sketch"]))  # type: ignore[arg-type]
        for _ in range(repeats)
    )
