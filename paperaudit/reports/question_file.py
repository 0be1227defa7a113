"""Writes a tree that was read from a draft as a question file, a comment at everything that is doubtful."""

import io
import re
from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

from paperaudit.checks.grounds.words import counted
from paperaudit.readers.tree import Entries, Items, Node, Scalar
from paperaudit.reports.terminal import plain

if TYPE_CHECKING:
    from ruamel.yaml.comments import CommentedMap, CommentedSeq

_COUNTS: Final = frozenset(
    {"marks", "key_marks", "total", "minutes", "pages", "questions", "page", "space", "figure_page"}
)
"""Keys whose single value is a whole number, which must not be quoted."""
_DECIMALS: Final = frozenset({"smallest", "faintest", "sketch"})
"""Keys below which numbers with a point are meant as such."""
_FLAGS: Final = frozenset({"drawn", "numbered"})
_IN_ONE_LINE: Final = frozenset({"sketch", "split", "cover", "captions"})
"""Keys whose value is short enough for one line."""
_PRINTED: Final = "printed"
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


def summary(tree: Entries, target: str) -> str:
    """What was written, for the terminal, with a line for each doubt."""
    doubts = list(doubtful(tree))
    count = "no doubtful reading" if not doubts else counted(len(doubts), "doubtful reading")
    lines = [f"{target}: {count}"]
    lines += [f"  page {page}: {text}" if page else f"  {text}" for text, page in doubts]
    return "\n".join(plain(line) for line in lines) + "\n"


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


def _entries(node: Entries, depth: int, above: str = "") -> "CommentedMap":
    from ruamel.yaml.comments import CommentedMap

    written = CommentedMap()
    for key, value in node.pairs:
        # What stands under the letters of a sketch are places as well.
        written[key.text] = _value(above if above == "sketch" else key.text, value, depth)
        if key.text == _DOUBTS:
            page = value.place.page
            where = f" on page {page} of the draft" if page else ""
            written.yaml_set_comment_before_after_key(key.text, f"Doubtful{where}:", indent=depth)
    if above in _IN_ONE_LINE or above == _PRINTED:
        written.fa.set_flow_style()
    return written


def _value(key: str, node: Node, depth: int) -> object:
    match node:
        case Entries():
            return _entries(node, depth + 2, key)
        case Items(values):
            return _items(key, values, depth)
        case Scalar(text, _, quoted):
            return text if quoted else _scalar(key, text)


def _items(key: str, values: tuple[Node, ...], depth: int) -> "CommentedSeq":
    from ruamel.yaml.comments import CommentedSeq

    # A list is indented by two, its dash and space take two more.
    inside = key if key in (_PRINTED, "sketch") else ""
    written = CommentedSeq([_value(inside, value, depth + 2) for value in values])
    if key in _IN_ONE_LINE:
        written.fa.set_flow_style()
    return written


def _scalar(key: str, text: str) -> object:
    """A single value of the kind that the shape expects under this key; what else it is stays text."""
    if (key in _COUNTS or (key == "number" and not text.startswith("0"))) and _WHOLE.fullmatch(text):
        return int(text)
    if key in _DECIMALS and _DECIMAL.fullmatch(text):
        return float(text)
    if key in _FLAGS and text in ("true", "false"):
        return text == "true"
    return text
