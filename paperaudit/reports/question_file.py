"""Writes a tree that was read from a draft as a question file, a comment at everything that is doubtful."""

import io
import re
from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

from paperaudit.readers.tree import Entries, Items, Node, Scalar

if TYPE_CHECKING:
    from ruamel.yaml.comments import CommentedMap, CommentedSeq

_COUNTS: Final = frozenset({"marks", "total", "minutes", "pages", "questions"})
"""Keys whose single value is a number, which must not be quoted."""
_IN_ONE_LINE: Final = frozenset({"sketch", "split", "cover"})
"""Keys whose value is short enough for one line."""
_WIDTH: Final = 110
_WHOLE = re.compile(r"[0-9]{1,6}")
_DECIMAL = re.compile(r"-?[0-9]{1,7}\.[0-9]{1,6}")
_DOUBTS: Final = "doubts"
HEAD: Final = """\
Read from {file}. Look through it beside the printed pages, and mend here what was read wrongly.
A part with "doubts" is not audited: mend it, then take its "doubts" away."""


def render(tree: Entries, file: str) -> str:
    """The question file that holds what `tree` does, whose reading gives the same tree but for the places.

    `file` is the draft that it was read from. Each list of doubts has a comment in front with its page.
    """
    from ruamel.yaml import YAML
    from ruamel.yaml.representer import RoundTripRepresenter

    yaml = YAML(typ="safe", pure=True)
    # Of the ways to write, only this one keeps comments and the order of keys; nothing is loaded with it.
    yaml.Representer = RoundTripRepresenter
    yaml.default_flow_style = False
    yaml.width = _WIDTH
    yaml.allow_unicode = True
    yaml.indent(mapping=2, sequence=4, offset=2)
    whole = _entries(tree, 0)
    whole.yaml_set_start_comment(HEAD.format(file=" ".join(file.split())))
    out = io.StringIO()
    yaml.dump(whole, out)
    return out.getvalue()


def doubtful(tree: Node) -> Iterator[tuple[str, int]]:
    """Every doubt of a tree in the order of print, with its page."""
    if isinstance(tree, Entries):
        for key, value in tree.pairs:
            if key.text == _DOUBTS and isinstance(value, Items):
                yield from ((item.text, item.place.page) for item in value.values if isinstance(item, Scalar))
            else:
                yield from doubtful(value)
    elif isinstance(tree, Items):
        for item in tree.values:
            yield from doubtful(item)


def _entries(node: Entries, depth: int) -> "CommentedMap":
    from ruamel.yaml.comments import CommentedMap

    written = CommentedMap()
    for key, value in node.pairs:
        written[key.text] = _value(key.text, value, depth)
        if key.text == _DOUBTS:
            page = value.place.page
            where = f" on page {page} of the draft" if page else ""
            written.yaml_set_comment_before_after_key(key.text, f"Doubtful{where}:", indent=depth)
    return written


def _value(key: str, node: Node, depth: int) -> object:
    match node:
        case Entries():
            entries = _entries(node, depth + 2)
            if key in _IN_ONE_LINE:
                entries.fa.set_flow_style()
            return entries
        case Items(values):
            return _items(key, values, depth)
        case Scalar(text, _, quoted):
            return text if quoted else _scalar(key, text)


def _items(key: str, values: tuple[Node, ...], depth: int) -> "CommentedSeq":
    from ruamel.yaml.comments import CommentedSeq

    # A list is indented by two, its dash and space take two more.
    written = CommentedSeq([_value("", value, depth + 2) for value in values])
    numbers = all(isinstance(value, Scalar) and _DECIMAL.fullmatch(value.text) for value in values)
    if key in _IN_ONE_LINE or (numbers and len(values) == 2):
        written.fa.set_flow_style()
    return written


def _scalar(key: str, text: str) -> object:
    """A single value of the kind that the shape expects under this key; what else it is stays text."""
    if (key in _COUNTS or (key == "number" and not text.startswith("0"))) and _WHOLE.fullmatch(text):
        return int(text)
    if not key and _DECIMAL.fullmatch(text):
        return float(text)
    if key == "drawn" and text in ("true", "false"):
        return text == "true"
    return text
