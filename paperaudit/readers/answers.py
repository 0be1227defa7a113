"""Reads a setter's own answers, marks and splits from a file of their own and lays them on the paper."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from paperaudit.errors import Complaint
from paperaudit.model.paper import Line, Paper, Part
from paperaudit.model.place import NOWHERE, Place
from paperaudit.readers.complaints import complaint, did_you_mean, from_shape_error, nearest
from paperaudit.readers.question_file import PaperRead, in_order, paper_of_tree
from paperaudit.readers.tree import Entries, Items, Node, Scalar, place_of, plain, shown
from paperaudit.readers.workbook_cells import Sheet

_FIELDS = ("answer", "marks", "split")
_NAMES = ("id", "question", "number", "part")
"""Keys or headings that hold a part's number; several of them are its levels, outermost first."""


@dataclass(frozen=True, slots=True)
class KeyEntry:
    """What the key says about one part; `name` is the part's number as the key writes it, joined by dots."""

    name: str
    answer: Line | None = None
    marks: int | None = None
    split: tuple[str, ...] = ()
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class KeyRead:
    """A setter's key as far as it could be read, and what could not."""

    entries: tuple[KeyEntry, ...] = ()
    complaints: tuple[Complaint, ...] = ()


def key_of_tree(tree: Node) -> KeyRead:
    """The key in a YAML file: a paper with answers, or ids with answers, under `answers:` or at the top.

    Under an id stands the answer alone, or `answer`, `marks` and `split`; the parts of a question may stand
    under its number. A list of mappings with an `id` serves as well.
    """
    if isinstance(tree, Entries) and (tree.get("questions") or tree.get("sections")):
        return key_of_paper(paper_of_tree(tree))
    held = tree
    extra: tuple[Complaint, ...] = ()
    if isinstance(tree, Entries) and (answers := tree.get("answers")):
        held = answers
        extra = tuple(
            Complaint(f"the unknown key '{key.text[:40]}' was read, expected answers alone", key.place)
            for key, _ in tree.pairs
            if key.text not in ("answers", "title")
        )
    if isinstance(held, Scalar):
        message = f"{shown(held)} was read, expected answers by part, such as 1.a: 68°"
        return KeyRead(complaints=(complaint(held, (), message),))
    key = _key_of_parts(Items(tuple(_parts_of(held)), held.place))
    return replace(key, complaints=extra + key.complaints)


def key_of_sheets(sheets: tuple[Sheet, ...]) -> KeyRead | None:
    """The key in a workbook with the columns Part, Answer, Marks, Split; None where no sheet is like that."""
    for sheet in sheets:
        headings = {at: cell.text.strip().lower() for at, cell in (sheet.rows[0] if sheet.rows else {}).items()}
        if "answer" in headings.values() and {*headings.values()} <= {*_NAMES, *_FIELDS}:
            rows = tuple(_part_of_row(row, headings) for row in sheet.rows[1:] if row)
            place = Place(file=next(iter(sheet.rows[0].values())).place.file)
            return _key_of_parts(Items(rows, place))
    return None


def key_of_paper(read: PaperRead) -> KeyRead:
    """The key in a file that is shaped like the paper itself: its answers, marks and splits."""
    if read.complaints or read.paper is None:
        return KeyRead(complaints=read.complaints)
    return KeyRead(
        tuple(
            KeyEntry(part.id, part.answer, part.marks, part.split, part.place)
            for _, part in read.paper.parts()
            if part.answer or part.marks is not None or part.split
        )
    )


def with_answers(read: PaperRead, key: KeyRead) -> PaperRead:
    """The paper with the key's answers and splits in place of its own, and the key's marks beside the paper's.

    Parts that the paper has not, and parts that the key names twice, are complaints, as are the key's own.
    """
    if read.paper is None:
        return PaperRead(None, read.complaints + key.complaints)
    found, faults = matched(key, [part.id for _, part in read.paper.parts()])
    return PaperRead(_laid_on(read.paper, found), read.complaints + key.complaints + faults)


def matched(key: KeyRead, ids: list[str]) -> tuple[dict[str, KeyEntry], tuple[Complaint, ...]]:
    """What the key says about each of a paper's parts, and complaints about parts that it has not or names twice."""
    found: dict[str, KeyEntry] = {}
    faults: list[Complaint] = []
    for entry in key.entries:
        name = _match(entry.name, ids)
        if name is None:
            listed = ", ".join(ids[:12]) + (", …" if len(ids) > 12 else "")
            message = f"the part '{entry.name[:20]}' was read, expected one of {listed}{did_you_mean(entry.name, ids)}"
            faults.append(Complaint(message, entry.place))
        elif name in found:
            faults.append(Complaint(f"the part '{entry.name[:20]}' was read twice, expected it once", entry.place))
        else:
            found[name] = entry
    return found, tuple(faults)


def _match(name: str, ids: list[str]) -> str | None:
    """The id that a key's way of writing it stands for: 1.a, 1(a), 1a; None where it is none or one of several."""
    if name in ids:
        return name
    candidates = [one for one in ids if _squeezed(one) == _squeezed(name)]
    return candidates[0] if len(candidates) == 1 else None


def _squeezed(name: str) -> str:
    return re.sub(r"[\W_]+", "", name).casefold()


def _laid_on(paper: Paper, found: Mapping[str, KeyEntry]) -> Paper:
    def answered(part: Part) -> Part:
        entry = found.get(part.id)
        if entry is None:
            return part
        answer, split = entry.answer or part.answer, entry.split or part.split
        return replace(part, answer=answer, key_marks=entry.marks, split=split)

    sections = []
    for section in paper.sections:
        questions = [replace(one, parts=tuple(answered(part) for part in one.parts)) for one in section.questions]
        sections.append(replace(section, questions=tuple(questions)))
    return replace(paper, sections=tuple(sections))


def _key_of_parts(parts: Items) -> KeyRead:
    """The key whose parts are mappings with `number`, `answer`, `marks` and `split`."""
    from paperaudit.readers.shape import KeyShape, shape_of

    tree = Entries(((Scalar("parts", parts.place), parts),), parts.place)
    shape, errors = shape_of(KeyShape, plain(tree))
    if shape is None:
        return KeyRead(complaints=in_order(from_shape_error(tree, error) for error in errors))
    return KeyRead(
        tuple(
            KeyEntry(
                part.number,
                Line(part.answer, place_of(tree, ("parts", at, "answer"))) if part.answer else None,
                part.marks,
                tuple(part.split),
                place_of(tree, ("parts", at)),
            )
            for at, part in enumerate(shape.parts)
        )
    )


def _parts_of(held: Entries | Items) -> Iterator[Node]:
    """Ids with what stands under them as parts with a number; ids may stand under the number of their question."""
    if isinstance(held, Items):
        for value in held.values:
            yield _named_by_one(value) if isinstance(value, Entries) else value
        return
    for name, value in held.pairs:
        if isinstance(value, Entries) and _holds_parts(value):
            inner = Entries(tuple((_below(name, key), answer) for key, answer in value.pairs), value.place)
            yield from _parts_of(inner)
            continue
        number = (Scalar("number", name.place), _respaced(name))
        below = value.pairs if isinstance(value, Entries) else ((Scalar("answer", name.place), value),)
        yield Entries((number, *below), name.place)


def _holds_parts(value: Entries) -> bool:
    """Whether parts stand under a key, and not what is said about one part, rightly spelt or not."""
    return bool(value.pairs) and not any(nearest(key.text, _FIELDS) for key, _ in value.pairs)


def _below(above: Scalar, name: Scalar) -> Scalar:
    return Scalar(f"{above.text}.{name.text}", name.place)


def _respaced(name: Scalar) -> Scalar:
    """A number with a point for each space between its levels, and without the word in front: "Question 2 (b)"."""
    bare = re.sub(r"^\s*(?:question|part|q)\b\.?\s*", "", name.text, flags=re.IGNORECASE)
    return Scalar(re.sub(r"(?<=\w)\s+(?=\w)", ".", re.sub(r"\s*([().])\s*", r"\1", bare.strip())), name.place)


def _named_by_one(part: Entries) -> Entries:
    """A part whose number stands under `id` or in two keys, with it under `number`."""
    levels = [value for name in _NAMES for key, value in part.pairs if key.text == name and isinstance(value, Scalar)]
    others = tuple(pair for pair in part.pairs if pair[0].text not in _NAMES)
    if not levels:
        return part
    number = Scalar(".".join(level.text for level in levels), levels[0].place)
    return Entries(((Scalar("number", number.place), number), *others), part.place)


def _part_of_row(row: dict[int, Scalar], headings: dict[int, str]) -> Node:
    pairs: list[tuple[Scalar, Node]] = []
    for at, cell in row.items():
        value: Node = cell
        if headings.get(at) == "split":
            value = Items(tuple(Scalar(mark, cell.place) for mark in re.findall(r"[^\s,;+]+", cell.text)), cell.place)
        pairs.append((Scalar(headings.get(at, "?"), cell.place), value))
    return _named_by_one(Entries(tuple(pairs), next(iter(row.values())).place))
