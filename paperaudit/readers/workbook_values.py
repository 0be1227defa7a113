"""Takes the text of a workbook's cell apart into what the question file would hold in its place."""

import re
from collections.abc import Sequence

from paperaudit.model.place import Place
from paperaudit.readers.tree import Entries, Items, Node, Scalar
from paperaudit.readers.workbook_columns import Column

_LINES = re.compile(r"\s*[\n;]\s*")
_POINT = re.compile(r"([^\s():=,]{1,12})\s*[:=]?\s*[(\[]\s*([^\s,;]{1,12})\s*[,;]\s*([^\s,;]{1,12})\s*[)\]]")


def text(node: Node) -> str:
    """The text of a single value, "" for anything else."""
    return node.text if isinstance(node, Scalar) else ""


def joined(first: Node, second: Node) -> Node:
    """Two lists behind each other, or two texts with a space between them."""
    if isinstance(first, Items) and isinstance(second, Items):
        return Items(first.values + second.values, first.place)
    return Scalar(f"{text(first)} {text(second)}", first.place)


def taken_apart(column: Column, cell: Scalar) -> Node:
    """The content of a cell as the question file would hold it."""
    place = cell.place
    lines = [line for line in _LINES.split(cell.text.strip()) if line]
    match column.kind:
        case "statements" | "names":
            return Items(tuple(Scalar(line, place) for line in lines), place)
        case "marks":
            return Items(tuple(Scalar(mark, place) for mark in re.split(r"[\s,;+]+", cell.text.strip())), place)
        case "options":
            options = [re.split(r"\s*[:.)]\s*", line, maxsplit=1) for line in lines]
            if all(len(option) == 2 for option in options):
                return _entries([(letter, Scalar(option, place)) for letter, option in options], cell)
        case "sketch":
            points = _POINT.findall(cell.text)
            if points and not re.sub(r"[\s,;]", "", _POINT.sub("", cell.text)):
                positions = [(name, Items((Scalar(x, place), Scalar(y, place)), place)) for name, x, y in points]
                return _entries(positions, cell)
        case "table":
            rows = [line.split(":", 1) for line in lines]
            if all(len(row) == 2 for row in rows):
                return _entries([(row[0].strip(), _bar_list(row[1], place)) for row in rows], cell)
        case "one":
            pass
    return Scalar(cell.text.strip(), place)


def _bar_list(values: str, place: Place) -> Items:
    return Items(tuple(Scalar(value.strip(), place) for value in values.split("|")), place)


def _entries(pairs: Sequence[tuple[str, Node]], cell: Scalar) -> Node:
    """Keys with values, or the cell as it is where a key occurs twice, which the shape complains of."""
    if len({key for key, _ in pairs}) < len(pairs):
        return cell
    return Entries(tuple((Scalar(key, cell.place), node) for key, node in pairs), cell.place)
