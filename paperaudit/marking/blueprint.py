"""Blueprints: the shares of a paper's marks that a department asks for, read from `schemes/blueprints`."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import get_args

from paperaudit.errors import Complaint, InputError
from paperaudit.marking.skills import strands
from paperaudit.model.paper import CognitiveLevel
from paperaudit.model.place import Place
from paperaudit.resources import shipped

LEVELS: tuple[CognitiveLevel, ...] = get_args(CognitiveLevel)
"""The cognitive levels, the easiest first."""

_KEYS = ("title", "levels", "content", "tolerance", "source")


@dataclass(frozen=True, slots=True)
class Share:
    """A target: `percent` of all marks for `members` together, which are levels or strands."""

    name: str
    members: tuple[str, ...]
    percent: Fraction


@dataclass(frozen=True, slots=True)
class Blueprint:
    """A spread of marks to aim at.

    `levels` and `content` each add up to 100 per cent, or are empty where the blueprint says nothing
    of them; one of the two is there. A share is off target when it misses by more than `tolerance`
    percentage points. `source` says where the shares come from.
    """

    name: str
    title: str
    levels: tuple[Share, ...]
    content: tuple[Share, ...]
    tolerance: Fraction
    source: str


def names() -> tuple[str, ...]:
    """The names of all blueprints, sorted."""
    return tuple(sorted(path.stem for path in shipped("schemes", "blueprints").glob("*.yaml")))


@cache
def load(name: str) -> Blueprint:
    """The blueprint of that name.

    Raises InputError: no such blueprint (with the known ones, and the nearest), or its file is faulty.

    >>> [str(share.percent) for share in load("even-spread").levels]
    ['25', '25', '25', '25']
    """
    if name not in names():
        raise InputError(Complaint(_no_such(name)))
    path = shipped("schemes", "blueprints", f"{name}.yaml")
    try:
        text = path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise InputError(Complaint(f"cannot be read as text: {error}", Place(file=str(path)))) from error
    return read(name, text, path)


def read(name: str, text: str, path: Path) -> Blueprint:
    """A blueprint from the text of its file; raises InputError with every complaint about it."""
    from ruamel.yaml import YAML
    from ruamel.yaml.error import YAMLError

    where = Place(file=str(path))
    try:
        contents = YAML(typ="safe", pure=True).load(text)
    except YAMLError as error:
        raise InputError(Complaint(f"this is not YAML: {error}", where)) from error
    if not isinstance(contents, dict):
        raise InputError(Complaint(f"expected a list of keys: {', '.join(_KEYS)}", where))
    complaints = _complaints(contents)
    if complaints:
        raise InputError(*(Complaint(complaint, where) for complaint in complaints))
    return Blueprint(
        name=name,
        title=contents["title"],
        levels=tuple(Share(level, (level,), _exact(share)) for level, share in contents.get("levels", {}).items()),
        content=tuple(
            Share(row["name"], tuple(row["strands"]), _exact(row["share"])) for row in contents.get("content", [])
        ),
        tolerance=_exact(contents["tolerance"]),
        source=contents["source"],
    )


def _no_such(name: str) -> str:
    from difflib import get_close_matches

    near = get_close_matches(name, names(), n=1, cutoff=0.5)
    guess = f" Did you mean {near[0]}?" if near else ""
    return f"there is no blueprint called {name!r}.{guess} The known ones are: {', '.join(names())}"


def _complaints(contents: Mapping[str, object]) -> list[str]:
    found = [f"unknown key {key!r}, expected one of {', '.join(_KEYS)}" for key in contents if key not in _KEYS]
    found += [f"{key} is missing or is no text" for key in ("title", "source") if not _is_text(contents.get(key))]
    if not _is_percent(contents.get("tolerance")):
        found.append(f"tolerance is {contents.get('tolerance')!r}, expected a number of percentage points")
    if not contents.get("levels") and not contents.get("content"):
        found.append("expected shares under levels, under content, or under both")
    found += _complaints_of_levels(contents.get("levels", {}))
    return found + _complaints_of_content(contents.get("content", []))


def _complaints_of_levels(levels: object) -> list[str]:
    if not isinstance(levels, dict):
        return ["levels: expected the levels with their shares"]
    found = [f"levels: {name!r} is no level, expected {', '.join(LEVELS)}" for name in levels if name not in LEVELS]
    found += [f"levels: {name} has no share" for name in LEVELS if levels and name not in levels]
    return found + _complaints_of_shares("levels", list(levels.values()))


def _complaints_of_content(content: object) -> list[str]:
    if not isinstance(content, list) or not all(_is_row(row) for row in content):
        return ["content: expected rows, each with name, strands and share"]
    members = [str(member) for row in content for member in row["strands"]]
    twice = sorted({member for member in members if members.count(member) > 1})
    found = [
        f"content: {name!r} is no strand, expected {', '.join(strands())}" for name in members if name not in strands()
    ]
    found += [f"content: {name!r} stands in two rows" for name in twice]
    return found + _complaints_of_shares("content", [row["share"] for row in content])


def _is_row(row: object) -> bool:
    if not isinstance(row, dict) or set(row) != {"name", "strands", "share"}:
        return False
    return _is_text(row["name"]) and isinstance(row["strands"], list)


def _complaints_of_shares(key: str, shares: list[object]) -> list[str]:
    found = [f"{key}: {share!r} is no share, expected 0 to 100" for share in shares if not _is_percent(share)]
    if found or not shares:
        return found
    total = sum((_exact(share) for share in shares), Fraction(0))
    return [] if total == 100 else [f"{key}: the shares add up to {_shown(total)}, expected 100"]


def _is_text(value: object) -> bool:
    return isinstance(value, str) and bool(value.strip())


def _is_percent(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and 0 <= value <= 100


def _exact(value: object) -> Fraction:
    return Fraction(Decimal(str(value)))


def _shown(value: Fraction) -> str:
    return str(value) if value.denominator == 1 else str(float(value))
