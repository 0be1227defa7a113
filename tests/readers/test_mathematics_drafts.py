"""Expressions as eight producers set them are read in linear form, and their words word by word."""

import random
from dataclasses import replace

import pytest

from paperaudit.readers.draft.open_pdf import pages_of
from paperaudit.readers.draft.rows import rows_of
from tests.readers.mathematics_table import FOLDER, read_draft, truth

NAMES = sorted(truth()["left_out"])


def test_every_draft_has_its_source_beside_it() -> None:
    for name in NAMES:
        assert len(list(FOLDER.glob(f"{name}.*"))) == 2
    assert sorted(path.stem for path in FOLDER.glob("*.pdf")) == NAMES


@pytest.mark.parametrize("name", NAMES)
def test_expressions_are_linear_and_right(name: str) -> None:
    draft = read_draft(name)
    assert len(draft.wanted) >= 30
    assert draft.wrong == {}


@pytest.mark.parametrize("name", NAMES)
def test_words_of_justified_lines_and_ligatures(name: str) -> None:
    assert read_draft(name).paragraph == truth()["paragraph"]


@pytest.mark.parametrize("name", NAMES)
def test_nothing_that_is_right_is_doubtful(name: str) -> None:
    assert read_draft(name).doubts == ()


@pytest.mark.parametrize("name", NAMES)
def test_the_order_of_printing_changes_nothing_in_real_drafts(name: str) -> None:
    page = pages_of((FOLDER / f"{name}.pdf").read_bytes(), name)[0]
    glyphs, paths = list(page.glyphs), list(page.paths)
    chance = random.Random(7)
    chance.shuffle(glyphs)
    chance.shuffle(paths)
    shuffled = rows_of([replace(glyph, index=at) for at, glyph in enumerate(glyphs)], paths)
    assert [row.text for row in shuffled] == [row.text for row in rows_of(page.glyphs, page.paths)]
