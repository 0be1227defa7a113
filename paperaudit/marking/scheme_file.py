"""Reads the YAML files of a folder under schemes/, where a department may put its own beside the shipped ones."""

from collections.abc import Mapping
from difflib import get_close_matches
from pathlib import Path

from paperaudit.errors import Complaint, InputError
from paperaudit.model.place import Place
from paperaudit.resources import shipped

LARGEST_BYTES = 200_000
"""Ten times the longest shipped file: a file beyond it is no scheme."""


def names_in(folder: str) -> tuple[str, ...]:
    """The names of the files in a folder of schemes/, without their ending, sorted.

    >>> names_in("conventions")
    ('method-accuracy', 'statement-reason')
    """
    return tuple(sorted(path.stem for path in shipped("schemes", folder).glob("*.yaml")))


def chosen(folder: str, name: str, what: str) -> Path:
    """The file of that name in a folder of schemes/; `what` says what it is ("marking convention").

    Raises InputError that lists the known names, the nearest first, where there is none.
    """
    known = names_in(folder)
    if name in known:
        return shipped("schemes", folder) / f"{name}.yaml"
    near = get_close_matches(name, known, n=1, cutoff=0.5)
    hint = f"did you mean {near[0]!r}? " if near else ""
    raise InputError(Complaint(f"there is no {what} {name!r}; {hint}Known: {', '.join(known)}"))


def mapping_of(path: Path) -> Mapping[str, object]:
    """The top-level mapping of a YAML file, read safely.

    Raises InputError for a file that is too long, is no YAML or holds no mapping of names.
    """
    from ruamel.yaml import YAML
    from ruamel.yaml.error import YAMLError

    place = Place(file=str(path))
    if path.stat().st_size > LARGEST_BYTES:
        raise InputError(Complaint(f"longer than the {LARGEST_BYTES // 1000} kB that a scheme file may have", place))
    try:
        content = YAML(typ="safe", pure=True).load(path.read_text(encoding="utf-8"))
    except (YAMLError, UnicodeDecodeError) as error:
        raise InputError(Complaint(f"not readable as YAML: {' '.join(str(error).split())}", place)) from error
    return names_and_values(content, place, "the file")


def names_and_values(content: object, place: Place, what: str) -> Mapping[str, object]:
    """`content` as a mapping with texts for names; InputError that names `what` where it is none."""
    if not isinstance(content, dict) or not all(isinstance(name, str) for name in content):
        raise InputError(Complaint(f"{what}: expected names with values, one a line", place))
    return content


def text_of(content: object, place: Place, what: str) -> str:
    """`content` as a text; InputError that names `what` where it is none."""
    if not isinstance(content, str):
        raise InputError(Complaint(f"{what}: is {content!r}, expected a text", place))
    return content


def texts_of(content: object, place: Place, what: str) -> tuple[str, ...]:
    """`content` as a list of texts; InputError that names `what` where it is none."""
    if not isinstance(content, list):
        raise InputError(Complaint(f"{what}: is {content!r}, expected a list", place))
    return tuple(text_of(item, place, what) for item in content)
