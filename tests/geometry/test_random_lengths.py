"""Questions whose answers are known from coordinates: lengths, circles, similarity, trigonometry, areas.

No answer may be wrong. What the program declines is counted by family, not failed: the tables of
`python -m tests.geometry.school_table` and `random_table` are the list of what is missing.
"""

from collections.abc import Callable
from dataclasses import replace

import pytest

from paperaudit.model.derivation import Derived, Impossible, NotDetermined, NotRead
from tests.geometry.asked import outcome
from tests.geometry.judged_keys import keys_of, misjudged
from tests.geometry.judged_lengths import (
    CRASHED,
    DECLINED,
    OPEN,
    SEVERAL,
    SOLVED,
    UNREAD,
    WRONG,
    Table,
    amount_of,
    contradicted,
    judge,
    judge_contradicted,
    judge_open,
    judged,
    outcome_of,
)
from tests.geometry.measuring import all_hold
from tests.geometry.random_lengths import random_lengths
from tests.geometry.random_similar import random_similar
from tests.geometry.random_trigonometry import random_trigonometry
from tests.geometry.school_families import FAMILIES, REGISTER, drawn
from tests.geometry.school_impossible import IMPOSSIBLE, impossible_question
from tests.geometry.school_sheet import SchoolQuestion, exact_text, open_question, set_question

BATCH = 50
DRAWN = range(0, 1200, BATCH)
GROWN = range(0, 200, BATCH)
OPENED = range(0, 150, BATCH)
CONTRADICTED = range(0, 150, BATCH)
GROWERS = (random_lengths, random_similar, random_trigonometry)


def check(table: Table) -> None:
    assert not table.total()[WRONG] + table.total()[CRASHED], "\n".join(table.wrong())


@pytest.mark.parametrize("start", DRAWN)
def test_school_questions(start: int) -> None:
    table = Table()
    for seed in range(start, start + BATCH):
        question = drawn(seed)
        table.add(question.family, question, judge(question))
    check(table)
    assert table.total()[SOLVED] > BATCH // 2, "\n".join(table.lines())


@pytest.mark.parametrize("start", GROWN)
@pytest.mark.parametrize("make", GROWERS)
def test_random_figures(make: Callable[[int], SchoolQuestion], start: int) -> None:
    table = Table()
    for seed in range(start, start + BATCH):
        question = make(seed)
        table.add(make.__name__, question, judge(question))
    check(table)
    assert table.total()[SOLVED] > BATCH // 4, "\n".join(table.lines())


@pytest.mark.parametrize("start", OPENED)
def test_a_needed_given_left_out(start: int) -> None:
    """Two figures with different answers are known, so there is no answer."""
    table = Table()
    for seed in range(start, start + BATCH):
        family, _ = REGISTER[FAMILIES[seed % len(FAMILIES)]]
        pair = open_question(family, seed)
        if pair is not None:
            table.add(family.__name__, pair[0], judge_open(*pair))
    check(table)
    assert table.total()[OPEN] > BATCH // 3, "\n".join(table.lines())


@pytest.mark.parametrize("start", CONTRADICTED)
def test_a_given_that_contradicts(start: int) -> None:
    """What is asked is given as well, 15% off: flagged, or declined, never answered."""
    table = Table()
    for seed in range(start, start + BATCH):
        question = set_question(REGISTER[FAMILIES[seed % len(FAMILIES)]][0], seed)
        if not question.loose and question.ask not in question.letters:
            other = contradicted(question, 0.15)
            table.add(question.family, other, judge_contradicted(other))
    check(table)


@pytest.mark.parametrize("name", IMPOSSIBLE)
def test_nothing_satisfies_it(name: str) -> None:
    table = Table()
    for seed in range(3):
        question = impossible_question(name, seed)
        table.add(name, question, judge_contradicted(question))
    check(table)


def test_stated_answers() -> None:
    """A right answer is never said to differ, a wrong one never to agree, in whatever form they are written."""
    found, keys = [], 0
    for name in FAMILIES[::3]:
        question = set_question(REGISTER[name][0], 7)
        result = outcome_of(question)
        if isinstance(result, Derived) and judged(question, result).verdict == SOLVED:
            keys += len(list(keys_of(question, 7)))
            found += misjudged(question, result, 7)
    assert not found, "\n".join(found)
    assert keys > 200


ONCE_WRONG = (
    # Answered by lengths of the figure: "BG − CG".
    (
        "quadrilateral ABCD; E lies on CD; F is the midpoint of DA",
        "AB ∥ DC; AD ⊥ AB; DF = 4; CD = 3; AB = 6",
        "BC",
        73**0.5,
        {"A": (-1, 0), "B": (28, 51), "C": (99, -6), "D": (86, -30), "E": (90, -22), "F": (43, -15)},
    ),
    (
        "triangle ZBD; U lies on DZ; segment BU",
        "∠ZBD = 90°; BU bisects ∠DBZ; DU = 12√13/5; BD = 12; area of △BDU = 28.8",
        "DZ",
        4 * 13**0.5,
        {"Z": (-8, 55), "B": (0, 0), "D": (82, 12), "U": (28, 38)},
    ),
    # North and east were said to be impossible where the sketch is a little off.
    (
        "triangle PQR",
        "Q is due north of P; R is due east of Q; PQ = 11 km; QR = 12 km",
        "PR",
        265**0.5,
        {"P": (-0.2, -0.2), "Q": (-0.1, 67.6), "R": (73.7, 67.6)},
    ),
)


@pytest.mark.parametrize(("figure", "given", "ask", "truth", "sketch"), ONCE_WRONG)
def test_questions_that_came_out_wrong(
    figure: str, given: str, ask: str, truth: float, sketch: dict[str, tuple[float, float]]
) -> None:
    result = outcome(figure.split("; "), given.split("; "), ask, sketch)
    assert isinstance(result, Derived)
    assert amount_of(result.answers[0]) == pytest.approx(truth, rel=1e-9)


ONCE_FAILED = (
    # A rounded side in letters was to be written as a decimal.
    (103_506, SOLVED),
    # The foot of a height falls within or without a side, which the sketch leaves open.
    (108_106, SEVERAL),
)


@pytest.mark.parametrize(("seed", "verdict"), ONCE_FAILED)
def test_cases_of_the_long_run_that_failed(seed: int, verdict: str) -> None:
    assert judge(GROWERS[seed // 2 % 3](seed)).verdict == verdict


@pytest.mark.long
@pytest.mark.parametrize("half", [0, 1])
def test_long_run_of_lengths(half: int, pytestconfig: pytest.Config) -> None:
    """Half of them school questions, half random figures; in two parts, for two processors."""
    count, table = pytestconfig.getoption("--long") // 2, Table()
    for seed in range(100_000 + half * count, 100_000 + (half + 1) * count):
        question = drawn(seed) if seed % 2 else GROWERS[seed // 2 % 3](seed)
        table.add(question.family, question, judge(question))
    print("\n".join(table.lines()))
    check(table)


# The generators and the judge themselves


def test_there_are_many_families() -> None:
    assert len(FAMILIES) >= 60


@pytest.mark.parametrize("name", FAMILIES)
def test_a_family_settles_what_it_asks(name: str) -> None:
    """Its statements hold on its figure (`set_question` measures them) and leave what is asked no freedom."""
    question = set_question(REGISTER[name][0], 1)
    assert question.settled(), question.as_yaml()


def test_a_changed_number_makes_a_statement_false() -> None:
    """The measure of statements notices a size that is 1% off, in nearly every family."""
    missed = []
    for name in FAMILIES:
        question = set_question(REGISTER[name][0], 1)
        moved = {point: (x * 1.01 + 0.01 * y, y) for point, (x, y) in question.at.items()}
        if not all_hold(question.statements, moved, question.letters):
            missed.append(name)
    assert missed == []


def test_open_questions_have_two_figures() -> None:
    """Most families lose a given that they need, and then two known figures give different answers."""
    pairs = [open_question(REGISTER[name][0], 1) for name in FAMILIES[:30]]
    found = [pair for pair in pairs if pair is not None]
    assert len(found) > 15
    for one, other in found:
        assert one.statements == other.statements
        assert one.truth != pytest.approx(other.truth, rel=0.01)


def test_the_judge_rejects_a_wrong_answer_and_counts_what_is_declined() -> None:
    question = set_question(REGISTER["pythagoras"][0], 1)
    result = outcome_of(question)
    assert judged(question, result).verdict == SOLVED
    assert judged(replace(question, truth=question.truth * 1.001), result).verdict == WRONG
    opened = replace(question, given=question.given[:-1])
    assert judged(opened, result).verdict == WRONG
    assert judged(question, Impossible(("AB = 3",), ())).verdict == WRONG
    assert judged(question, NotRead("anything")).verdict == DECLINED
    assert judge(replace(question, given=("AB frobs CD",))).verdict == UNREAD
    shown = outcome_of(opened)
    assert isinstance(shown, NotDetermined)
    assert judged(opened, shown).verdict == OPEN
    assert judged(question, shown).verdict == WRONG


def test_exact_texts() -> None:
    found = [exact_text(value) for value in (5.0, 7.25, 45**0.5, 0.75**0.5, 2 / 3)]
    assert found == ["5", "7.25", "3√5", "√3/2", "2/3"]
