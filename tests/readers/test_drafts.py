"""Drafts of real producers are read as their truth tells; the floors rise with the reader and never fall."""

from functools import cache

import pdfplumber
import pytest

from paperaudit.readers.source import read_paper
from tests.readers.draft_measures import Measured, Share, compared
from tests.readers.draft_table import figures_right
from tests.readers.draft_truth import DRAFTS, Truth, perfectly_read, truths

LARGEST = 150_000
"""Bytes of one committed PDF."""
PRODUCERS = ("pdfTeX", "LibreOffice", "Skia/PDF", "Typst")
FLOORS = {"parts": 100, "cover": 100, "texts": 100, "expressions": 100, "faults": 100, "answers": 87}
"""Per cent of all drafts together, as reached; DEVELOPERS.md has the table."""
MOST_WRONG = 0
MOST_FALSE_ERRORS = 0


@cache
def _read(name: str) -> Measured:
    truth = truths([name])[0]
    return compared(truth, read_paper(str(truth.draft)))


NAMES = [truth.folder.name for truth in truths()]


def test_the_drafts_are_various_enough() -> None:
    drafts = truths()
    assert len(drafts) >= 8
    assert sum(len(one.listed("parts")) for one in drafts) >= 150
    assert sum(len(one.listed("figures")) for one in drafts) >= 60
    made = " ".join(_producer(one) for one in drafts)
    assert [name for name in PRODUCERS if name not in made] == []


def _producer(truth: Truth) -> str:
    with pdfplumber.open(truth.draft) as pdf:
        return " ".join(str(pdf.metadata.get(key, "")) for key in ("Producer", "Creator"))


@pytest.mark.parametrize("name", NAMES)
def test_a_draft_has_its_source_its_origin_and_a_small_pdf(name: str) -> None:
    folder = DRAFTS / name
    assert any((folder / f"draft{ending}").is_file() for ending in (".tex", ".html", ".fodt", ".odt", ".docx", ".typ"))
    assert (folder / "ORIGIN.md").is_file()
    assert all(file.stat().st_size <= LARGEST for file in folder.glob("*.pdf"))


@pytest.mark.parametrize("name", NAMES)
def test_the_measures_find_everything_in_a_perfect_reading(name: str) -> None:
    truth = truths([name])[0]
    found = compared(truth, perfectly_read(truth))
    assert [found.parts.missed, found.added, found.cover.missed, found.texts.missed] == [[], [], [], []]
    assert found.expressions.missed == []
    assert found.wrong == [], "an answer in truth.yaml is not the one that is derived"


def test_the_measures_notice_what_is_wrong() -> None:
    truth, other = truths(["latex-brackets"])[0], truths(["latex-choices"])[0]
    found = compared(truth, perfectly_read(other))
    assert found.parts.right < found.parts.whole / 4
    assert found.expressions.right < found.expressions.whole / 4
    assert "3: question-total-differs" in found.faults.missed
    assert found.added != []


@pytest.mark.parametrize("name", NAMES)
def test_no_reading_becomes_a_wrong_answer(name: str) -> None:
    assert len(_read(name).wrong) <= MOST_WRONG, _read(name).wrong


@pytest.mark.parametrize("name", NAMES)
def test_every_figure_has_everything_right_and_nothing_invented(name: str) -> None:
    figures = figures_right(truths([name])[0])
    assert figures is not None and figures.missed == []


@pytest.mark.parametrize("name", NAMES)
def test_sound_parts_have_no_errors(name: str) -> None:
    assert len(_read(name).false_errors) <= MOST_FALSE_ERRORS, _read(name).false_errors


@pytest.mark.parametrize("measure", list(FLOORS))
def test_the_drafts_are_read_as_well_as_before(measure: str) -> None:
    whole = sum((getattr(_read(name), measure) for name in NAMES), Share())
    assert 100 * whole.right >= FLOORS[measure] * whole.whole, whole.missed
