"""`paperaudit read`: the question file of a draft says what the draft says, and its audit comes to the same."""

from pathlib import Path

import pytest

from paperaudit.audit import audit_file
from paperaudit.cli import main
from paperaudit.model.audited import AuditedPaper

DRAFTS = Path(__file__).resolve().parents[2] / "fixtures" / "drafts"
SOME = ("latex-brackets", "writer-table", "browser-mathml", "typst-margin")


def told(audited: AuditedPaper) -> list[object]:
    parts = [(part.part.id, part.part.marks, part.verdict, str(part.outcome)) for part in audited.parts]
    return [*parts, *((one.name, one.part, one.message) for one in audited.findings)]


@pytest.mark.parametrize("name", SOME)
def test_the_file_that_is_read_is_audited_like_the_draft(name: str, tmp_path: Path) -> None:
    draft, written = str(DRAFTS / name / "draft.pdf"), tmp_path / "paper.yaml"
    assert main(["read", draft, "-o", str(written)]) == 0
    assert told(audit_file(str(written))) == told(audit_file(draft))
    again = tmp_path / "again.yaml"
    assert main(["read", draft, "-o", str(again)]) == 0
    assert again.read_bytes() == written.read_bytes()


def test_the_answers_are_written_beside_their_parts(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    draft, key = (str(DRAFTS / "latex-brackets" / name) for name in ("draft.pdf", "answers.yaml"))
    written = tmp_path / "paper.yaml"
    assert main(["read", draft, "--answers", key, "-o", str(written)]) == 0
    assert told(audit_file(str(written))) == told(audit_file(draft, key))
    assert capsys.readouterr().out.startswith(f"{written}: ")


def test_only_a_draft_is_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    paper = tmp_path / "paper.yaml"
    paper.write_text("questions: [{number: 1, ask: 2 + 2, marks: 1}]", encoding="utf-8")
    assert main(["read", str(paper), "-o", str(tmp_path / "out.yaml")]) == 2
    assert "a question file was read, expected a draft PDF" in capsys.readouterr().err
    assert main(["read", str(DRAFTS / SOME[0] / "draft.pdf"), "-o", str(tmp_path / "out.pdf")]) == 2
    assert not (tmp_path / "out.yaml").exists()


def test_a_report_shows_the_pages_of_the_draft(tmp_path: Path) -> None:
    report = tmp_path / "report.html"
    main(["check", str(DRAFTS / SOME[0] / "draft.pdf"), "--report", str(report)])
    assert 'id="page-1"' in report.read_text(encoding="utf-8")
