"""Figures read from the drawing itself: random ones in many hands, those of the fixture drafts, single cases."""

import math
import random
import time
from dataclasses import replace
from pathlib import Path as FilePath

import pytest

from paperaudit.readers.draft.drawing.drawn_figure import DrawnFact
from paperaudit.readers.draft.drawing.figures import figures_of
from paperaudit.readers.draft.page import DraftPage, Path, Piece, Raster
from paperaudit.wording.statement import read_statement
from tests.readers.drawn_pages import Hand, Plan, drawn
from tests.readers.drawn_score import score
from tests.readers.drawn_table import FOLDERS, scores_of
from tests.readers.random_plans import MAKERS, plan_of

EACH = 25
"""Random figures of each family in a run."""


@pytest.mark.parametrize("family", MAKERS)
def test_random_figures_are_read_exactly(family: str) -> None:
    wrong = {}
    for seed in range(EACH):
        chance = random.Random(f"{family}{seed}")
        plan = plan_of(family, chance)
        figures = figures_of(drawn(plan, chance))
        scored = score(figures[0] if len(figures) == 1 else None, plan.truth())
        if not scored.exact:
            wrong[seed] = scored
    assert wrong == {}


@pytest.mark.parametrize("family", MAKERS)
def test_a_changed_truth_is_told_from_the_reading(family: str) -> None:
    """The score itself: a letter, a line or a statement more or less is seen."""
    chance = random.Random(f"{family}0")
    plan = plan_of(family, chance)
    (read,) = figures_of(drawn(plan, chance))
    truth = plan.truth()
    for key, more in (("points", "Ω"), ("lines", "X-Y"), ("given", "∠XYZ = 1°")):
        assert not score(read, {**truth, key: [*truth[key], more]}).exact
        if truth[key]:
            assert not score(read, {**truth, key: truth[key][1:]}).exact


KNOWN_GAPS: dict[str, int] = {}
"""Figures of a draft that are not read exactly yet; may only go down."""


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_figures_of_the_fixtures(folder: FilePath) -> None:
    scored = scores_of(folder)
    inexact = [(figure, one) for figure, one, _ in scored if not one.exact]
    assert len(inexact) <= KNOWN_GAPS.get(folder.name, 0), inexact


@pytest.mark.parametrize("family", MAKERS)
def test_statements_are_in_the_statement_language(family: str) -> None:
    chance = random.Random(f"{family}7")
    (figure,) = figures_of(drawn(plan_of(family, chance), chance))
    for fact in (*figure.figure, *figure.given):
        assert read_statement(fact.text), fact.text


@pytest.mark.parametrize("family", MAKERS)
def test_figures_drawn_by_hand_are_read_exactly_or_doubted(family: str) -> None:
    """Ends half a point off, labels an eighth of their size."""
    exact = 0
    for seed in range(EACH):
        chance = random.Random(f"{family}{seed}")
        plan = plan_of(family, chance)
        figures = figures_of(drawn(plan, chance, sloppy=0.5))
        scored = score(figures[0] if len(figures) == 1 else None, plan.truth())
        exact += scored.exact
        assert scored.exact or any(figure.doubts for figure in figures), (seed, scored)
    assert exact >= 0.9 * EACH


@pytest.mark.parametrize("seed", range(8))
def test_letters_of_our_own_go_to_the_points_that_have_none(seed: int) -> None:
    """Parallels without any letter: the statements are right once our letters are put back in place."""
    chance = random.Random(f"silent{seed}")
    plan = plan_of("transversal", chance)
    plan.silent = "".join(plan.points)
    (figure,) = figures_of(drawn(plan, chance))
    assert {name for name, *_ in figure.points} == set(figure.named_here)
    assert not any("is called" in doubt for doubt in figure.doubts)
    meant = {name: min(plan.points, key=lambda one: math.dist(plan.points[one], at)) for name, *at in figure.points}
    given = {fact.text.translate(str.maketrans(meant)) for fact in figure.given}
    plan.silent = ""
    truth = {**plan.truth(), "points": [], "lines": plan.truth()["lines"]}
    read = replace(figure, points=(), figure=(), given=tuple(DrawnFact(text, (0, 0, 1, 1)) for text in sorted(given)))
    scored = score(read, truth)
    assert [text for text in scored.missing if "∠" in text or "∥" in text] == []
    assert scored.invented == []


def test_a_picture_of_dots_is_declined_with_the_reason() -> None:
    page = DraftPage(1, 595, 842, rasters=(Raster((100, 100, 300, 250), 800, 600), Raster((0, 0, 20, 20), 9, 9)))
    (figure,) = figures_of(page)
    assert "picture made of dots" in figure.unread


def test_rules_of_fractions_answers_and_tables_are_no_figures() -> None:
    hand = Hand(random.Random(1))
    for height in (100, 130, 160):
        hand.stroke((80, height), (500, height))  # answer lines
    hand.stroke((100, 300), (112, 300))  # a fraction's
    for height in (400, 420, 440):
        hand.stroke((80, height), (300, height))
    for across in (80, 150, 230, 300):
        hand.stroke((across, 400), (across, 440))
    for row, height in enumerate((410, 430)):
        for column, across in enumerate((115, 190, 265)):
            hand.text(str(3 * row + column), (across, height))
    assert figures_of(hand.page()) == ()


def test_drawings_without_end_are_declined_in_time() -> None:
    chance = random.Random(9)

    def anywhere() -> tuple[float, float]:
        return chance.uniform(50, 550), chance.uniform(50, 800)

    for count, reason in ((20_000, "strokes"), (300, "lines")):
        hand = Hand(chance)
        for _ in range(count):
            hand.stroke(anywhere(), anywhere())
        hand.text("A", anywhere())
        started = time.process_time()
        (figure,) = figures_of(hand.page())
        assert reason in figure.unread
        assert time.process_time() - started < 5


def test_a_curve_that_is_no_circle_is_declined() -> None:
    curve = Path((Piece(((100, 300), (150, 80), (200, 420), (300, 200))),), (100, 150, 300, 330), 1)
    (figure,) = figures_of(DraftPage(1, 595, 842, paths=(curve,)))
    assert "curve" in figure.unread


def test_a_note_near_a_figure_says_that_it_is_not_to_scale() -> None:
    plan = Plan({"A": (200, 100), "B": (120, 220), "C": (300, 220)}, ["AB", "BC", "CA"])
    page = drawn(plan, random.Random(3))
    note = Hand(random.Random(4))
    note.text("NOT TO SCALE", (200, 250))
    glyphs = tuple(replace(glyph, index=glyph.index + 1000) for glyph in note.glyphs)
    (figure,) = figures_of(replace(page, glyphs=page.glyphs + glyphs))
    assert figure.not_to_scale
    assert not figures_of(page)[0].not_to_scale


def test_points_without_letters_are_named_only_where_a_mark_needs_them() -> None:
    plan = Plan(
        {"A": (100, 100), "B": (300, 100), "C": (120, 220), "D": (320, 220), "G": (200, 100), "H": (160, 220)},
        ["AGB", "CHD"],
        silent="ABCDGH",
    )
    (figure,) = figures_of(drawn(plan, random.Random(5))) or (None,)
    assert figure is None or figure.points == ()
