"""Puts statements together again that YAML took apart at their commas, as in `[segments AB, CD]` without quotes."""

import re

from paperaudit.readers.tree import Entries, Items, Node, Scalar

_LISTS = ("figure", "given")
_BARE = re.compile(r"(?:and\s+)?([A-Z]{1,4})(?:\s+and\s+[A-Z]{1,4})?")
"""Points or paths alone are no statement: they belong to a neighbour."""
_GOES_ON = re.compile(_BARE.pattern + r"\s+(?:are|in\s+order|lie|meet|intersect|cross)\b")
"""How a statement ends whose first names were taken off: "C are collinear", "OD in order round O"."""
_TWO = re.compile(
    r"(?P<name>[A-Z]{1,4})\s+and\s+[A-Z]{1,4}\s+"
    r"(?!are\s+(?:all\s+)?(?:collinear|concurrent|in\s+order|on\s+(?:a|one|the\s+same)\s)|in\s+order"
    r"|lie\s+(?:on\s+(?:a|one|the\s+same)\s+(?:straight\s+)?line|in\s+order))"
)
"""Two names that have all they need by themselves: "AB and EF intersect at G"; two points are no line."""
_LIST = re.compile(r"(?:[a-z]+\s+)+(?:[A-Z]{1,4}(?:,|\s+and)\s+)*(?P<name>[A-Z]{1,4})")
"""A list of names that more may follow: "segments AB"."""
_WHOLE = re.compile(
    r"(?:.*[ ,])?(?:(?P<corners>[A-Z]{3,})"
    r"|(?:(?:and|point)\s+)*[A-Z]\s+(?:(?:is|lies)\s+)?(?:on|(?:the\s+)?mid-?point\s+of)\s+(?:[a-z]+\s+)*[A-Z]{2})"
)
"""A statement that no path goes on: "triangle ABC", "D on AB"; a path after it is one that is drawn."""


def rejoined(node: Node) -> Node:
    """The tree with the unquoted statements under `figure` and `given` made whole.

    >>> from paperaudit.model.place import Place
    >>> parts = [Scalar(text, Place()) for text in ("segments AB", "CD", "A", "E", "B are collinear")]
    >>> [one.text for one in joined_statements(parts)]
    ['segments AB, CD', 'A, E, B are collinear']
    """
    match node:
        case Items(values):
            return Items(tuple(rejoined(value) for value in values), node.place)
        case Entries(pairs):
            changed: list[tuple[Scalar, Node]] = []
            for key, value in pairs:
                if key.text in _LISTS and isinstance(value, Items):
                    changed.append((key, Items(tuple(joined_statements(list(value.values))), value.place)))
                else:
                    changed.append((key, rejoined(value)))
            return Entries(tuple(changed), node.place)
    return node


def joined_statements(values: list[Node]) -> list[Node]:
    """A list's statements with the bare names put to the statement behind them or, else, before them."""
    whole: list[Node] = []
    names: list[Scalar] = []
    for value in values:
        if isinstance(value, Scalar) and not value.quoted and _BARE.fullmatch(value.text):
            names.append(value)
            continue
        ahead = _taken_ahead(names, value, whole[-1] if whole else None)
        _append(whole, names[: len(names) - ahead])
        whole.append(_together([*names[len(names) - ahead :], value]) if ahead and isinstance(value, Scalar) else value)
        names = []
    _append(whole, names)
    return whole


def _taken_ahead(names: list[Scalar], value: Node, before: Node | None) -> int:
    """How many of the bare names, counted from the last, belong to the statement behind them.

    They name things of one kind: points have one letter, paths have two. A statement that is whole
    by itself takes none from a list that they may end.
    """
    if not isinstance(value, Scalar) or value.quoted:
        return 0
    if before is None:
        return len(names)
    if names and _TWO.match(value.text) and _is_list_of(before, names[0]):
        return 0
    goes_on = _GOES_ON.match(value.text)
    if goes_on is None:
        return 0
    length = len(goes_on.group(1))
    count = 0
    for name in reversed(names):
        bare = _BARE.fullmatch(name.text)
        if bare is None or len(bare.group(1)) != length:
            break
        count += 1
    return count


def _is_list_of(before: Node, name: Scalar) -> bool:
    """Whether a statement is a list of names of the same kind: "segments AB", before CD."""
    found = _LIST.fullmatch(before.text.strip()) if isinstance(before, Scalar) and not before.quoted else None
    bare = _BARE.fullmatch(name.text)
    return found is not None and bare is not None and len(found.group("name")) == len(bare.group(1))


def _is_apart(before: Scalar, name: Scalar) -> bool:
    """Whether a path begins a statement of its own: DE, after "E on AC"."""
    bare = _BARE.fullmatch(name.text)
    return bare is not None and len(bare.group(1)) == 2 and _WHOLE.fullmatch(before.text.strip()) is not None


def _append(whole: list[Node], names: list[Scalar]) -> None:
    """Bare names end the statement before them; without one that they could end they stay as they are."""
    if not names:
        return
    before = whole[-1] if whole else None
    if isinstance(before, Scalar) and not before.quoted and not _is_apart(before, names[0]):
        whole[-1] = _together([before, *names])
    else:
        whole.extend(names)


def _together(parts: list[Scalar]) -> Scalar:
    return Scalar(", ".join(part.text for part in parts), parts[0].place)
