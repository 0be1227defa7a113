"""School questions whose answers are known from coordinates: lengths, circles, similarity, trigonometry, areas.

No answer may be wrong. What the program declines is counted by family, not failed: the table of
`python -m tests.geometry.school_table` is the list of what is missing.
"""

from dataclasses import replace

import pytest

from paperaudit.model.derivation import Impossible, NotRead
from tests.geometry.judged_lengths import DECLINED, OPEN, SOLVED, UNREAD, WRONG, Table, judge, judged, outcome_of
from tests.geometry.school_families import FAMILIES, REGISTER, drawn
from tests.geometry.school_sheet import exact_text, open_question, set_question

BATCH = 40
DRAWN = range(0, 400, BATCH)


@pytest.mark.parametrize("start", DRAWN)
def test_drawn_by_weight(start: int) -> None:
    table = Table()
    for seed in range(start, start + BATCH):
        question = drawn(seed)
        table.add(question.family, question, judge(question))
    assert not table.total()[WRONG], "\n".join(table.wrong())
    assert table.total()[SOLVED] > BATCH // 3, "\n".join(table.lines())


def test_there_are_many_families() -> None:
    assert len(FAMILIES) >= 60


@pytest.mark.parametrize("name", FAMILIES)
def test_a_family_settles_what_it_asks(name: str) -> None:
    """Its statements hold on its figure (`set_question` measures them) and leave what is asked no freedom."""
    for seed in range(2):
        question = set_question(REGISTER[name][0], seed)
        assert question.settled(), question.as_yaml()


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
    assert judged(replace(question, given=question.given[:-1]), result).verdict == WRONG
    assert judged(question, Impossible(("AB = 3",), ())).verdict == WRONG
    assert judged(question, NotRead("anything")).verdict == DECLINED
    assert judge(replace(question, given=("AB frobs CD",))).verdict == UNREAD
    open_one = replace(question, given=question.given[:-1])
    assert judge(open_one).verdict in (OPEN, DECLINED)


def test_exact_texts() -> None:
    assert [exact_text(value) for value in (5.0, 7.25, 45**0.5, 0.75**0.5, 2 / 3)] == [
        "5",
        "7.25",
        "3√5",
        "√3/2",
        "2/3",
    ]
