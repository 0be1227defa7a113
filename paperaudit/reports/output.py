"""Writes files whole or not at all, and says beforehand what is in the way of one."""

import contextlib
import os
import tempfile
from collections.abc import Iterable, Mapping
from pathlib import Path

from paperaudit.errors import OutputError

_ORDINARY = 0o666
"""The permissions that a new file gets, less the user's umask."""


def checked_target(target: str, endings: Iterable[str], inputs: Iterable[str] = ()) -> Path:
    """The path that an output goes to, if it can be written and has one of `endings`.

    Asked for before the work begins. Raises OutputError for an unknown ending, a folder, a missing or
    unwritable folder above it, and for one of the `inputs`, which would be lost.

    >>> checked_target("scheme.txt", [".pdf", ".md"])
    Traceback (most recent call last):
    paperaudit.errors.OutputError: scheme.txt: the ending .txt was read, expected one of .pdf, .md
    """
    known = tuple(endings)
    try:
        path = Path(os.path.realpath(target))
        is_folder, is_other = path.is_dir(), path.exists() and not path.is_file()
    except (OSError, ValueError):
        raise OutputError(f"{target[:80]!r}: the name cannot be used, expected the name of a file") from None
    if not target or is_folder or target.endswith("/"):
        raise OutputError(f"{target or 'the output'}: this is a folder, expected the name of a file")
    ending = Path(target).suffix.lower()
    if ending not in known:
        read = f"the ending {ending}" if ending else "no ending"
        raise OutputError(f"{target}: {read} was read, expected one of {', '.join(known)}")
    if is_other:
        raise OutputError(f"{target}: this is no ordinary file, expected one that can be replaced")
    if any(_same_file(path, one) for one in inputs):
        raise OutputError(f"{target}: this is the paper itself, expected another file")
    if not path.parent.is_dir():
        raise OutputError(f"{target}: the folder {path.parent} is not there, expected one that is")
    if not os.access(path.parent, os.W_OK | os.X_OK):
        raise OutputError(f"{target}: the folder {path.parent} cannot be written to")
    return path


def refuse_existing(path: Path) -> None:
    """Raises OutputError where `path` is there already: it may be filled in by now."""
    if path.exists():
        raise OutputError(f"{path}: the file is there already, expected a new name")


def _same_file(path: Path, other: str) -> bool:
    try:
        return path.samefile(other)
    except (OSError, ValueError):
        return False


def write(path: Path, content: bytes | str) -> None:
    """Writes `content` to `path`, whole or not at all; a file that is there is replaced. Text becomes UTF-8.

    The content goes to a file beside it first, which then takes its name. Raises OutputError.
    """
    raw = content.encode("utf-8") if isinstance(content, str) else content
    beside = ""
    try:
        path = Path(os.path.realpath(path))
        handle, beside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name[:40]}.", suffix=".part")
        with os.fdopen(handle, "wb") as stream:
            stream.write(raw)
            stream.flush()
            os.fsync(stream.fileno())
        Path(beside).chmod(path.stat().st_mode & 0o7777 if path.exists() else _ORDINARY & ~_umask())
        Path(beside).replace(path)
    except OSError as error:
        raise OutputError(f"{path}: the file cannot be written: {error.strerror or error}") from None
    finally:
        with contextlib.suppress(OSError):
            Path(beside).unlink()


def made_folder(target: str) -> Path:
    """The folder `target`, made with what is missing above it; raises OutputError if that cannot be."""
    try:
        path = Path(target)
        path.mkdir(parents=True, exist_ok=True)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name cannot be used"
        raise OutputError(f"{target[:80]}: the folder cannot be made: {reason}") from None
    if not os.access(path, os.W_OK | os.X_OK):
        raise OutputError(f"{target}: the folder cannot be written to")
    return path


def write_all(folder: Path, contents: Mapping[str, bytes | str]) -> None:
    """Writes several finished files into a folder; raises OutputError at the first that cannot be written."""
    for name, content in contents.items():
        write(folder / name, content)


def _umask() -> int:
    """The user's umask; there is no way to ask for it but to set it."""
    umask = os.umask(0)
    os.umask(umask)
    return umask
