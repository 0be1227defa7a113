"""Files are written whole or not at all."""

import os
import stat
from pathlib import Path

import pytest

from paperaudit.errors import OutputError
from paperaudit.reports.output import checked_target, made_folder, write, write_all


def test_an_existing_file_is_replaced_whole_and_keeps_its_permissions(tmp_path: Path) -> None:
    path = tmp_path / "out.md"
    path.write_text("old and longer")
    path.chmod(0o640)
    write(path, "new −")
    assert path.read_bytes() == "new −".encode()
    assert stat.S_IMODE(path.stat().st_mode) == 0o640
    assert [one.name for one in tmp_path.iterdir()] == ["out.md"]


def test_a_failure_leaves_the_old_file_and_nothing_beside_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "out.md"
    path.write_text("old")

    def fail(handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", fail)
    with pytest.raises(OutputError, match="No space left"):
        write(path, "new")
    assert path.read_text() == "old"
    assert [one.name for one in tmp_path.iterdir()] == ["out.md"]


def test_a_link_is_followed(tmp_path: Path) -> None:
    (tmp_path / "real.md").write_text("old")
    (tmp_path / "link.md").symlink_to(tmp_path / "real.md")
    write(checked_target(str(tmp_path / "link.md"), (".md",)), "new")
    assert (tmp_path / "real.md").read_text() == "new"
    assert (tmp_path / "link.md").is_symlink()


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("out.txt", r"the ending \.txt was read, expected one of \.pdf, \.md"),
        ("out", "no ending was read, expected one of"),
        ("folder.md", "this is a folder"),
        ("new/", "this is a folder"),
        ("missing/out.md", "is not there"),
        ("file/out.md", "is not there"),
        ("pipe.md", "no ordinary file"),
        ("a\0b.md", "the name cannot be used"),
    ],
)
def test_targets_that_are_refused_beforehand(tmp_path: Path, name: str, expected: str) -> None:
    (tmp_path / "folder.md").mkdir()
    (tmp_path / "file").write_text("")
    os.mkfifo(tmp_path / "pipe.md")
    with pytest.raises(OutputError, match=expected):
        checked_target(f"{tmp_path}/{name}", (".pdf", ".md"))


def test_folders_are_made_with_what_is_above_them(tmp_path: Path) -> None:
    write_all(made_folder(str(tmp_path / "a" / "b")), {"one.md": "1", "two.bin": b"\0"})
    assert (tmp_path / "a" / "b" / "two.bin").read_bytes() == b"\0"
    with pytest.raises(OutputError, match="cannot be made"):
        made_folder(str(tmp_path / "a" / "b" / "one.md" / "c"))
    with pytest.raises(OutputError, match="cannot be made"):
        made_folder(str(tmp_path / "a" / "b" / "one.md"))
