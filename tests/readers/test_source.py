"""Which reader takes a file, and what stands in the way of reading it at all."""

import io
import sys
from pathlib import Path

import pytest

from paperaudit.readers.source import read_answers, read_paper
from paperaudit.reports.blank import blank_workbook

PAPER = b"questions: [{number: 1, marks: 2}]"


def test_content_counts_and_not_the_ending(tmp_path: Path) -> None:
    path = tmp_path / "paper.yaml"
    path.write_bytes(blank_workbook())
    assert read_paper(str(path)).whole().title == "Sail loft test"


@pytest.mark.parametrize("content", [PAPER, b"\xef\xbb\xbf" + PAPER, b"title: x\r\n" + PAPER])
def test_standard_input_and_byte_order_marks(monkeypatch: pytest.MonkeyPatch, content: bytes) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(content)))
    assert read_paper("-").whole().marks_sum() == 2


@pytest.mark.parametrize(
    ("name", "content", "expected"),
    [
        ("empty.yaml", b"", "the file is empty"),
        ("spaces.yaml", b" \n\n", "the file is empty"),
        ("big.yaml", b"# rope\n" * 1_500_000, "larger than 1,000,000 bytes"),
        ("large.yaml", b"# rope\n" * 200_000, "larger than 1,000,000 bytes"),
        ("latin.yaml", "title: Gr\xf6\xdfe\n".encode("latin-1"), "the byte 0xf6 was read, expected UTF-8"),
        ("wide.yaml", "title: x".encode("utf-16"), "UTF-16 text was read"),
        ("picture.yaml", b"\x89PNG\r\n\x1a\n\x00\x00", "expected UTF-8"),
        ("null.yaml", b"title: \x00", "a control character was read"),
        ("not.pdf", b"hello", "the content is no .pdf file"),
        ("not.xlsx", b"hello", "the content is no .xlsx file"),
        ("half.xlsx", b"PK\x03\x04", "this is not a workbook"),
        ("old.xls", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "expected an unprotected .xlsx"),
    ],
)
def test_what_cannot_be_read(tmp_path: Path, name: str, content: bytes, expected: str) -> None:
    path = tmp_path / name
    path.write_bytes(content)
    for found in (read_paper(str(path)).complaints, read_answers(str(path)).complaints):
        assert len(found) == 1
        assert found[0].place.file == str(path)
        assert expected in found[0].message


def test_an_empty_key_is_told_what_belongs_there(tmp_path: Path) -> None:
    (tmp_path / "key.yaml").write_bytes(b"")
    (complaint,) = read_answers(str(tmp_path / "key.yaml")).complaints
    assert complaint.message == "the file is empty, expected answers by part, such as 1.a: 68°"


def test_a_missing_file_is_named_with_a_near_one(tmp_path: Path) -> None:
    (tmp_path / "term-test.yaml").write_bytes(PAPER)
    (complaint,) = read_paper(str(tmp_path / "term-tset.yaml")).complaints
    assert "there is no such file; did you mean 'term-test.yaml'?" in complaint.message
    (complaint,) = read_paper(str(tmp_path / "term-test.yml")).complaints
    assert "did you mean 'term-test.yaml'?" in complaint.message
    (complaint,) = read_paper(str(tmp_path / "mast-rest.yaml")).complaints
    assert complaint.message == "there is no such file"


def test_a_folder_and_a_file_as_a_folder(tmp_path: Path) -> None:
    assert "this is a folder" in read_paper(str(tmp_path)).complaints[0].message
    (tmp_path / "a").write_bytes(PAPER)
    assert "cannot be read" in read_paper(str(tmp_path / "a" / "b.yaml")).complaints[0].message
    assert "its name cannot be used" in read_paper("a\0b").complaints[0].message
