"""Class lists."""

from pathlib import Path

import pytest

from paperaudit.errors import InputError
from paperaudit.readers.names import read_names


def names(tmp_path: Path, content: str | bytes) -> tuple[str, ...]:
    path = tmp_path / "names.csv"
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return read_names(str(path))


@pytest.mark.parametrize(
    ("content", "expected"),
    [
        ("Ann Keel\nBen Mast\n", ("Ann Keel", "Ben Mast")),
        ("Name\nAnn Keel\n\nBen Mast", ("Ann Keel", "Ben Mast")),
        ("\ufeffname;class\r\nAnn;9A\r\nBen;9B\r\n", ("Ann", "Ben")),
        ("Name,Surname\nAnn,Keel\nBen,Mast\n", ("Keel, Ann", "Mast, Ben")),
        ("Class\tSurname\tFirst name\n9A\tKeel\tAnn\n", ("Keel, Ann",)),
        ('Name\n"Keel, Ann"\n', ("Keel, Ann",)),
        ("Name\n=1+1\n@Ann\n-Ben\n", ("=1+1", "@Ann", "-Ben")),
        ("Name\nZoë Bœuf\n", ("Zoë Bœuf",)),
    ],
)
def test_lists_that_are_read(tmp_path: Path, content: str, expected: tuple[str, ...]) -> None:
    assert names(tmp_path, content) == expected


@pytest.mark.parametrize(
    ("content", "expected"),
    [
        ("Name\n", "0 names were read"),
        ("\n\n", "no names were read"),
        ("Keel,Ann\nMast,Ben\n", "expected the heading Name"),
        ("Vorname,Nachname\nAnn,Keel\n", "the first line 'Vorname', 'Nachname' was read, expected the heading Name"),
        ("", "the file is empty, expected one name a line"),
        ("Name,Class\n,9A\n", "line 2: no name was read"),
        ("Zo\xeb\n".encode("latin-1"), "expected UTF-8"),
        ("Name\n" + "x" * 101, "at most 100"),
        ("Name\nAnn\x1b[2J\n", "plain characters"),
        ("Name\n" + "Ann\n" * 1001, "1001 names were read"),
        ('Name\n"Ann\n', "this is no CSV file"),
    ],
)
def test_lists_that_are_refused(tmp_path: Path, content: str | bytes, expected: str) -> None:
    with pytest.raises(InputError, match=expected):
        names(tmp_path, content)
