"""Lays a setter's key on the tree of a draft, so that one question file holds both."""

from collections.abc import Iterator, Mapping

from paperaudit.errors import Complaint
from paperaudit.readers.answers import KeyEntry, KeyRead, matched
from paperaudit.readers.complaints import bound_id
from paperaudit.readers.tree import Entries, Items, Node, Scalar


def answered(tree: Entries, key: KeyRead) -> tuple[Entries, tuple[Complaint, ...]]:
    """The tree with each answer, split and the key's own marks at their part, and what could not be laid on."""
    ids = [name for name, _ in _leaves(tree)]
    found, complaints = matched(key, ids)
    return _laid_on(tree, found), (*key.complaints, *complaints)


def _leaves(tree: Entries) -> Iterator[tuple[str, Entries]]:
    """Every part without parts of its own, with its id."""
    for section in (tree, *tree.listed("sections")):
        if isinstance(section, Entries):
            for question in section.listed("questions"):
                yield from _below(question, "")


def _below(node: Node, above: str) -> Iterator[tuple[str, Entries]]:
    if not isinstance(node, Entries):
        return
    name = _id(node, above)
    inner = list(node.listed("parts"))
    if not inner:
        yield name, node
    for part in inner:
        yield from _below(part, name)


def _id(node: Entries, above: str) -> str:
    number = node.text("number")
    return bound_id(above, [number]) if above else number


def _laid_on(node: Entries, found: Mapping[str, KeyEntry], above: str | None = None) -> Entries:
    """The same entries; `above` is the id of what holds them, None above the questions."""
    pairs: list[tuple[Scalar, Node]] = []
    name = None if above is None else _id(node, above)
    for key, value in node.pairs:
        if key.text in ("sections", "questions", "parts") and isinstance(value, Items):
            inside = None if key.text == "sections" else "" if key.text == "questions" else name
            laid = [_laid_on(item, found, inside) if isinstance(item, Entries) else item for item in value.values]
            pairs.append((key, Items(tuple(laid), value.place)))
        else:
            pairs.append((key, value))
    entry = found.get(name) if name and node.get("parts") is None else None
    return Entries((*pairs, *_said(entry)) if entry else tuple(pairs), node.place)


def _said(entry: KeyEntry) -> Iterator[tuple[Scalar, Node]]:
    place = entry.place
    if entry.answer:
        yield Scalar("answer", place), Scalar(entry.answer.text, entry.answer.place, quoted=True)
    if entry.split:
        yield Scalar("split", place), Items(tuple(Scalar(mark, place, quoted=True) for mark in entry.split), place)
    if entry.marks is not None:
        yield Scalar("key_marks", place), Scalar(str(entry.marks), place)
