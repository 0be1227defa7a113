"""A marking convention: its kinds of mark, the rules that bind them, and what a line of working earns."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Literal, TypeAlias, cast, get_args

from paperaudit.errors import Complaint, InputError
from paperaudit.marking.scheme_file import chosen, mapping_of, names_and_values, names_in, text_of, texts_of
from paperaudit.model.place import Place

Spot: TypeAlias = Literal["on the way", "answer", "only line"]
"""Where a line stands: before the answer, at it, or as the only line that earns anything."""

LineKind: TypeAlias = Literal[
    "given", "statement", "equation", "algebra", "calculation", "arithmetic", "construction", "conclusion"
]
"""The kinds of step, with `arithmetic` for a calculation beside statements about a figure."""


@dataclass(frozen=True, slots=True)
class MarkKind:
    """One letter of the convention's legend.

    A mark that `needs` others is earned only with one of them, earlier or on its own line as `where`
    says; where none of them is awarded it is printed as `alone`.
    """

    code: str
    title: str
    earned_for: str
    needs: tuple[str, ...] = ()
    where: Literal["before", "on its line"] = "before"
    alone: str = ""
    rewards_reason: bool = False


@dataclass(frozen=True, slots=True)
class Tariff:
    """The codes that one line earns: merged to the least, usually, and split to the most."""

    least: tuple[str, ...]
    usual: tuple[str, ...]
    most: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Note:
    """A qualifier behind a mark, as printed ("oe"), and what it means.

    `to_answer` is for follow-through: whether it goes as far as the answer itself.
    """

    printed: str
    means: str
    to_answer: bool = False


Tariffs: TypeAlias = Mapping[tuple[LineKind, Spot], Tariff]


@dataclass(frozen=True, slots=True)
class Convention:
    """A convention as its file in `schemes/conventions` has it."""

    name: str
    title: str
    about: str
    kinds: Mapping[str, MarkKind]
    with_reasons: Tariffs
    without_reasons: Tariffs
    notes: Mapping[str, Note]

    def tariff(self, kind: LineKind, spot: Spot, reasons: bool) -> Tariff:
        """What a line earns; a kind that the table with reasons does not have is in the other."""
        plain = self.without_reasons[kind, spot]
        return self.with_reasons.get((kind, spot), plain) if reasons else plain


def conventions() -> tuple[str, ...]:
    """The names of the conventions that are there, sorted."""
    return names_in("conventions")


@cache
def load(name: str) -> Convention:
    """The convention of that name.

    Raises InputError that lists the known names, the nearest first, or names what is wrong in the file.

    >>> load("method-accuracy").tariff("algebra", "answer", reasons=False).usual
    ('A',)
    """
    return read(name, chosen("conventions", name, "marking convention"))


def read(name: str, path: Path) -> Convention:
    """The convention in that file; InputError where it does not hold together."""
    place = Place(file=str(path))
    content = mapping_of(path)
    missing = [key for key in ("title", "marks", "tariff", "notes") if key not in content]
    if missing:
        raise InputError(Complaint(f"{', '.join(missing)}: missing, expected it here", place))
    kinds = {code: _kind(code, entry, place) for code, entry in _table(content["marks"], place, "marks").items()}
    tariff = _table(content["tariff"], place, "tariff")
    plain = _tariffs(tariff.get("without reasons", {}), kinds, place)
    absent = [f"{kind}, {spot}" for kind in get_args(LineKind) for spot in get_args(Spot) if (kind, spot) not in plain]
    if absent:
        raise InputError(Complaint(f"tariff without reasons: {'; '.join(absent)} missing, expected each kind", place))
    return Convention(
        name,
        title=text_of(content["title"], place, "title"),
        about=text_of(content.get("about", ""), place, "about"),
        kinds=MappingProxyType(kinds),
        with_reasons=_tariffs(tariff.get("with reasons", {}), kinds, place),
        without_reasons=plain,
        notes=MappingProxyType(
            {key: _note(key, entry, place) for key, entry in _table(content["notes"], place, "notes").items()}
        ),
    )


def _table(content: object, place: Place, what: str) -> Mapping[str, object]:
    return names_and_values(content, place, what)


def _kind(code: str, content: object, place: Place) -> MarkKind:
    entry = _table(content, place, f"marks, {code}")
    where = text_of(entry.get("where", "before"), place, f"marks, {code}, where")
    if where not in ("before", "on its line"):
        raise InputError(Complaint(f"marks, {code}: where is {where!r}, expected 'before' or 'on its line'", place))
    return MarkKind(
        code,
        title=text_of(entry.get("title", code), place, f"marks, {code}, title"),
        earned_for=text_of(entry.get("earned for", ""), place, f"marks, {code}, earned for"),
        needs=texts_of(entry.get("needs", []), place, f"marks, {code}, needs"),
        where=cast(Literal["before", "on its line"], where),
        alone=text_of(entry.get("alone", ""), place, f"marks, {code}, alone"),
        rewards_reason=entry.get("rewards reason") is True,
    )


def _tariffs(content: object, kinds: Mapping[str, MarkKind], place: Place) -> Tariffs:
    tariffs: dict[tuple[LineKind, Spot], Tariff] = {}
    for kind, spots in _table(content, place, "tariff").items():
        for spot, entry in _table(spots, place, f"tariff, {kind}").items():
            what = f"tariff, {kind}, {spot}"
            if kind not in get_args(LineKind) or spot not in get_args(Spot):
                known = f"one of {', '.join(get_args(LineKind))} with one of {', '.join(get_args(Spot))}"
                raise InputError(Complaint(f"{what}: not known, expected {known}", place))
            tariffs[cast(LineKind, kind), cast(Spot, spot)] = _tariff(text_of(entry, place, what), kinds, place, what)
    return MappingProxyType(tariffs)


def _tariff(text: str, kinds: Mapping[str, MarkKind], place: Place, what: str) -> Tariff:
    """The three columns of a line such as "none | M | M A"."""
    columns = [tuple(code for code in column.split() if code != "none") for column in text.split("|")]
    if len(columns) != 3:
        raise InputError(Complaint(f"{what}: is {text!r}, expected codes at least | usually | at most", place))
    tariff = Tariff(*columns)
    unknown = sorted({*tariff.least, *tariff.usual, *tariff.most} - set(kinds))
    if unknown:
        raise InputError(Complaint(f"{what}: {', '.join(unknown)} not among the marks {', '.join(kinds)}", place))
    if not len(tariff.least) <= len(tariff.usual) <= len(tariff.most):
        raise InputError(Complaint(f"{what}: expected no more at least than usually, nor usually than at most", place))
    return tariff


def _note(key: str, content: object, place: Place) -> Note:
    entry = _table(content, place, f"notes, {key}")
    printed, means = (text_of(entry.get(column, ""), place, f"notes, {key}") for column in ("printed", "means"))
    return Note(printed, means, entry.get("to the answer") is True)
