"""Pictures of a draft's pages: the right pages, a frame where something was found, nothing without a page."""

import base64
import io
from pathlib import Path

import pytest

from paperaudit.audit import audit
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.place import Place
from paperaudit.readers.question_file import read_question_file
from paperaudit.reports import page
from paperaudit.reports.page_pictures import pictures

DRAFT = Path(__file__).resolve().parents[2] / "fixtures" / "drafts" / "latex-brackets" / "draft.pdf"
BOX = (72.0, 100.0, 300.0, 120.0)


def found(severity: Severity, at: int, box: tuple[float, float, float, float] | None = BOX) -> Finding:
    return Finding("answer-differs", severity, "It differs.", place=Place(file="draft.pdf", page=at, box=box))


def test_a_page_is_shown_where_something_was_found_with_a_frame_of_its_gravest_finding() -> None:
    findings = [
        found(Severity.ERROR, 1),
        found(Severity.NOTE, 1),
        found(Severity.NOTE, 2, None),
        found(Severity.NOTE, 0),
    ]
    first, second = pictures(DRAFT.read_bytes(), findings)
    assert (first.number, second.number) == (1, 2)
    (frame,) = first.frames
    assert frame.numbers == (1, 2) and frame.severity == "error"
    assert second.frames == ()
    assert first.picture.startswith("data:image/png;base64,")


def test_frames_lie_where_the_boxes_are() -> None:
    from PIL import Image

    (shown,) = pictures(DRAFT.read_bytes(), [found(Severity.ERROR, 1)])
    (frame,) = shown.frames
    picture = Image.open(io.BytesIO(base64.b64decode(shown.picture.split(",")[1])))
    assert picture.size == (shown.width, shown.height)
    points = shown.width / 1.5
    assert frame.left == pytest.approx(100 * (BOX[0] - 3) / points, abs=0.1)
    assert frame.width == pytest.approx(100 * (BOX[2] - BOX[0] + 6) / points, abs=0.1)


def test_a_page_that_is_not_there_is_no_picture() -> None:
    assert pictures(DRAFT.read_bytes(), [found(Severity.ERROR, 999)]) == ()


def test_the_report_shows_the_pages_and_links_both_ways() -> None:
    paper = read_question_file("questions: [{number: 1, ask: 2 + 2, answer: '5', marks: 1}]", "t.yaml").whole()
    audited = audit(paper)
    shown = page.render(audited, DRAFT.read_bytes())
    assert 'id="pages"' not in shown  # a question file's findings have no page
    from dataclasses import replace

    placed = replace(audited, findings=(found(Severity.ERROR, 1),))
    shown = page.render(placed, DRAFT.read_bytes())
    assert 'id="page-1"' in shown and 'href="#finding-1"' in shown and 'id="finding-1"' in shown
    assert 'href="#page-1"' in shown
    assert page.render(placed, DRAFT.read_bytes()) == shown
