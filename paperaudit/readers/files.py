"""Gets the bytes of an input file or of standard input, within a limit, or says what is in the way."""

import difflib
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TypeAlias

from paperaudit.errors import Complaint, InputError
from paperaudit.model.place import Place

STANDARD_INPUT = "-"
LARGEST_TEXT = 1_000_000
"""Bytes of a question file; a paper of a hundred parts has about twenty thousand."""
LARGEST_WORKBOOK = 5_000_000
"""Bytes of a workbook as it lies on the disk."""
LARGEST_DRAFT = 30_000_000
"""Bytes of a draft PDF with its fonts and pictures."""

Told: TypeAlias = Callable[[int, int], None]
"""Is told which page of a draft is read now, and of how many."""
_CLOSE = 0.75
"""How alike two names must be for one to be a slip of the other."""


def name_of(source: str) -> str:
    """How places and complaints name an input."""
    return "standard input" if source == STANDARD_INPUT else source


def read_bytes(source: str, largest: int, expected: str = "a question file") -> bytes:
    """The content of the file `source`, or of standard input for "-".

    Raises InputError for what is not there, is a folder, cannot be opened, is empty, or is larger than
    `largest` bytes; no more than that is ever held. `expected` says what should have been in an empty one.
    """
    try:
        if source == STANDARD_INPUT:
            content = sys.stdin.buffer.read(largest + 1)
        else:
            path = Path(source)
            if path.is_dir():
                raise refused(source, "this is a folder, expected a file")
            with path.open("rb") as stream:
                content = stream.read(largest + 1)
    except FileNotFoundError:
        raise refused(source, f"there is no such file{_near_file(Path(source))}") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name cannot be used"
        raise refused(source, f"the file cannot be read: {reason}") from None
    if len(content) > largest:
        raise refused(source, f"the file is larger than {largest:,} bytes, expected a smaller one")
    if not content:
        raise refused(source, f"the file is empty, expected {expected}")
    return content


def text_of(content: bytes, source: str) -> str:
    """The text that UTF-8 `content` holds, a byte order mark left off; raises InputError for other encodings."""
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise refused(source, "UTF-16 text was read, expected UTF-8; save the file as UTF-8")
    try:
        return content.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        message = f"the byte {content[error.start]:#04x} was read, expected UTF-8 text; save the file as UTF-8"
        raise InputError(Complaint(message, Place(file=name_of(source), line=line))) from None


def refused(source: str, message: str) -> InputError:
    """The error of an input that is no use as a whole."""
    return InputError(Complaint(message, Place(file=name_of(source))))


def _near_file(path: Path) -> str:
    """A file in the same folder, of the same kind and with nearly the same name, that may have been meant."""
    try:
        names = sorted(entry.name for entry in path.parent.iterdir() if entry.is_file())[:1000]
    except (OSError, ValueError):
        return ""
    stems = {Path(name).stem: name for name in names if Path(name).suffix.lower() == path.suffix.lower()}
    found = difflib.get_close_matches(path.stem, list(stems), n=1, cutoff=_CLOSE)
    if found:
        return f"; did you mean '{stems[found[0]]}'?"
    others = [name for name in names if Path(name).stem == path.stem]
    return f"; did you mean '{others[0]}'?" if others else ""
