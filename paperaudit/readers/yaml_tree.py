"""Reads YAML text into a tree, refusing whatever a question file has no use for and an attacker has.

The parser's events are used and never its constructor, so no tag can build an object and no alias can
multiply a value; depth and size are counted while the events come in.
"""

from collections.abc import Iterator
from typing import Any

from paperaudit.errors import Complaint
from paperaudit.model.place import Place
from paperaudit.readers.tree import Entries, Items, Node, Scalar, holds_control

DEEPEST = 12
"""Levels of nesting; a part of a part of a question of a section, with its options, needs ten."""
MOST_VALUES = 20_000
"""Values in a file; a paper of a hundred parts has about two thousand."""


class _Refused(Exception):
    """Reading cannot go on behind this complaint."""

    def __init__(self, complaint: Complaint) -> None:
        super().__init__(complaint.message)
        self.complaint = complaint


def read_tree(text: str, file: str) -> tuple[Node | None, tuple[Complaint, ...]]:
    """The tree of the single YAML document in `text`, and the complaints about it; `file` names it in places.

    There is no tree for what is not YAML, for anchors, aliases, tags, a second document, and for files
    beyond `DEEPEST` and `MOST_VALUES`. Repeated and merge keys are complained of and left out.
    """
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    for number, line in enumerate(text.split("\n"), start=1):
        if holds_control(line):
            message = "a control character was read, expected plain text; is this a question file?"
            return None, (Complaint(message, Place(file=file, line=number)),)
    builder = _Builder(file)
    try:
        tree = builder.build(YAML(typ="safe", pure=True).parse(text))
    except _Refused as refused:
        return None, (*builder.complaints, refused.complaint)
    except MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        place = Place(file=file, line=mark.line + 1, column=mark.column + 1) if mark else Place(file=file)
        reason = " ".join(str(error.problem or error.context or "").split())
        return None, (*builder.complaints, Complaint(f"this is not YAML: {_plain_words(reason)}", place))
    except (YAMLError, ValueError, RecursionError) as error:
        return None, (*builder.complaints, Complaint(f"this is not YAML: {str(error)[:120]}", Place(file=file)))
    if tree is None and not builder.complaints:
        return None, (Complaint("the file is empty, expected a question file", Place(file=file)),)
    return tree, tuple(builder.complaints)


def _plain_words(reason: str) -> str:
    """The parser's reason with what most often mends it."""
    if "mapping values are not allowed" in reason or reason.endswith("but got ':'"):
        return "a colon was read inside a value, expected quotes round a value that holds a colon"
    if "cannot start any token" in reason:
        return f"{reason[:120]}, expected quotes round a value that begins with this character"
    return reason[:160]


class _Builder:
    """Puts the parser's events together, without recursion."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.complaints: list[Complaint] = []
        self._values = 0
        self._open: list[tuple[Any, list[Node]]] = []

    def build(self, events: Iterator[Any]) -> Node | None:
        """The tree of the first document, or None for a file without one."""
        from ruamel.yaml import events as kinds

        top: Node | None = None
        documents = 0
        for event in events:
            if isinstance(event, kinds.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    raise _Refused(
                        Complaint("a second document was read (---), expected one paper a file", self._place(event))
                    )
                if event.tags:
                    raise _Refused(Complaint("a %TAG line was read, expected plain YAML", self._place(event)))
                continue
            if isinstance(event, kinds.NodeEvent):
                self._refuse_extras(event)
            if isinstance(event, kinds.CollectionStartEvent):
                self._descend(event)
                continue
            if isinstance(event, kinds.ScalarEvent):
                node: Node = self._scalar(event)
            elif isinstance(event, kinds.CollectionEndEvent):
                start, inside = self._open.pop()
                mapping = isinstance(start, kinds.MappingStartEvent)
                node = self._entries(start, inside) if mapping else Items(tuple(inside), self._place(start))
            else:
                continue
            if self._open:
                self._open[-1][1].append(node)
            else:
                top = node
        return None if isinstance(top, Scalar) and top.absent else top

    def _place(self, event: Any) -> Place:
        return Place(file=self.file, line=event.start_mark.line + 1, column=event.start_mark.column + 1)

    def _scalar(self, event: Any) -> Scalar:
        """A single value; an escape such as "\\x1b" brings in what the text itself may not hold."""
        place = self._place(event)
        if holds_control(event.value):
            self.complaints.append(Complaint("an escaped control character was read, expected plain text", place))
        return Scalar(event.value, place, quoted=event.style is not None)

    def _refuse_extras(self, event: Any) -> None:
        """An anchor, alias or tag ends the reading; so does a file that grows beyond the limit."""
        from ruamel.yaml.events import AliasEvent

        if isinstance(event, AliasEvent):
            raise _Refused(
                Complaint(
                    f"the alias *{event.anchor} was read, expected the value itself "
                    "(put quotes round a value that begins with *)",
                    self._place(event),
                )
            )
        if event.anchor is not None:
            raise _Refused(
                Complaint(
                    f"the anchor &{event.anchor} was read, expected a plain value "
                    "(put quotes round a value that begins with &)",
                    self._place(event),
                )
            )
        if event.ctag is not None:
            raise _Refused(
                Complaint(
                    f"the tag {event.ctag} was read, expected a plain value "
                    "(put quotes round a value that begins with !)",
                    self._place(event),
                )
            )
        self._values += 1
        if self._values > MOST_VALUES:
            raise _Refused(
                Complaint(f"more than {MOST_VALUES} values were read, expected at most that many", self._place(event))
            )

    def _descend(self, event: Any) -> None:
        if len(self._open) >= DEEPEST:
            raise _Refused(
                Complaint(
                    f"values nested more than {DEEPEST} deep were read, expected fewer levels", self._place(event)
                )
            )
        self._open.append((event, []))

    def _entries(self, start: Any, inside: list[Node]) -> Entries:
        """Keys and values that came in turn; a key that is no text, repeated or `<<` is complained of."""
        pairs: dict[str, tuple[Scalar, Node]] = {}
        for key, value in zip(inside[::2], inside[1::2], strict=True):
            if not isinstance(key, Scalar):
                self.complaints.append(Complaint("a list or mapping was read as a key, expected a word", key.place))
            elif key.text == "<<":
                self.complaints.append(Complaint("the merge key << was read, expected plain keys", key.place))
            elif key.text in pairs:
                first = pairs[key.text][0].place.line
                self.complaints.append(
                    Complaint(
                        f"the key '{key.text[:40]}' was read twice, expected it once (it stands at line {first} too)",
                        key.place,
                    )
                )
            else:
                pairs[key.text] = (key, value)
        return Entries(tuple(pairs.values()), self._place(start))
