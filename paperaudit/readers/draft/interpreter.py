"""Runs the commands of a page, within a budget, and looks at its fonts before they are unpacked."""

import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final

from pdfminer.pdfinterp import PDFContentParser, PDFPageInterpreter, PDFResourceManager
from pdfminer.pdftypes import PDFStream, list_value, resolve1, stream_value
from pdfminer.psexceptions import PSEOF
from pdfminer.psparser import PSKeyword, keyword_name

from paperaudit.readers.draft.bounded import TooMuch
from paperaudit.readers.draft.fonts import with_names

MOST_COMMANDS: Final = 300_000
"""Commands and their numbers on a page; a full page of text and figures has some 20,000."""
_DEEPEST: Final = 12
"""Drawings within drawings."""
_MOST_DRAWINGS: Final = 4_000
"""Drawings kept as objects of their own that a page may show."""
_MOST_CODES: Final = 400_000
"""Codes that the tables of one font may name; all of Unicode has fewer letters in use."""
_SPELLED: Final = {"*": "_a", '"': "_w", "'": "_q"}
_PICTURES: Final = ("EI", "Do")
"""Commands that may print a stencil, for which the device has to know the colour."""
_RANGES: Final = re.compile(rb"begin(?:bf|cid|notdef)range(.*?)end", re.DOTALL)
_RANGE: Final = re.compile(
    rb"<\s*([0-9A-Fa-f]{1,16})\s*>\s*<\s*([0-9A-Fa-f]{1,16})\s*>\s*(?:<[^>]*>|\[[^\]]*\]|[0-9]+)"
)


class Budget:
    """What a page may still do."""

    def __init__(self) -> None:
        self.commands = MOST_COMMANDS
        self.drawings = _MOST_DRAWINGS


class CarefulResources(PDFResourceManager):
    """Refuses fonts whose tables name more codes than there are letters, and keeps the names of glyphs without one."""

    def get_font(self, objid: object, spec: Mapping[str, object]) -> Any:
        """The font of a description, once its tables are seen to be of a sound size."""
        if not (objid and objid in self._cached_fonts):
            codes = _codes_of_widths(spec.get("W")) + _codes_of_widths(spec.get("W2"))
            codes += _codes_of_map(spec.get("ToUnicode")) + _codes_of_map(spec.get("Encoding"))
            if codes > _MOST_CODES:
                raise TooMuch(f"a font with more than {_MOST_CODES:,} codes was read")
        return with_names(super().get_font(objid, spec), spec)


class CarefulInterpreter(PDFPageInterpreter):
    """pdfminer's interpreter with a budget of commands, of drawings and of their depth."""

    def __init__(
        self, resources: PDFResourceManager, device: Any, budget: Budget | None = None, depth: int = 0
    ) -> None:
        super().__init__(resources, device)
        self._budget = budget or Budget()
        self._depth = depth
        self._commands: dict[str, tuple[Callable[..., object] | None, int]] = {}

    def subinterp(self) -> "CarefulInterpreter":
        """The interpreter of a drawing within this one."""
        self._budget.drawings -= 1
        if self._budget.drawings < 0 or self._depth >= _DEEPEST:
            raise TooMuch("drawings within drawings without end were read")
        inner = CarefulInterpreter(self.rsrcmgr, self.device, self._budget, self._depth + 1)
        inner.parent_stream_ids.update(self.parent_stream_ids)
        inner.parent_stream_ids.update(self.stream_ids)
        return inner

    def execute(self, streams: Sequence[object]) -> None:
        """Runs the commands of `streams`; one that is being run already is left out."""
        self.stream_ids.clear()
        sound: list[PDFStream] = []
        for one in streams:
            stream = stream_value(one)
            if stream.objid is not None and stream.objid not in self.parent_stream_ids:
                sound.append(stream)
                self.stream_ids.add(stream.objid)
        try:
            parser = PDFContentParser(sound)
            while True:
                self._budget.commands -= 1
                if self._budget.commands < 0:
                    raise TooMuch(f"a page with more than {MOST_COMMANDS:,} commands was read")
                _, token = parser.nextobject()
                if isinstance(token, PSKeyword):
                    self._run(str(keyword_name(token)))
                else:
                    self.push(token)
        except PSEOF:
            return

    def _run(self, name: str) -> None:
        if name not in self._commands:
            spelled = "".join(_SPELLED.get(sign, sign) for sign in name)
            command = getattr(self, f"do_{spelled}", None)
            self._commands[name] = (command, command.__code__.co_argcount - 1 if command else 0)
        command, count = self._commands[name]
        if command is None:
            return
        given = self.pop(count) if count else []
        if len(given) == count:
            if name in _PICTURES:
                self._show_ink()
            command(*given)

    def _show_ink(self) -> None:
        pen: Any = self.device
        pen.ink = self.graphicstate.ncolor


def _codes_of_widths(table: object) -> int:
    """How many codes a table of widths names: lists of widths, and ranges with one width."""
    if table is None:
        return 0
    numbers: list[float] = []
    count = 0
    for one in list_value(table):
        value = resolve1(one)
        if isinstance(value, list):
            count += len(value)
            numbers = []
        elif isinstance(value, (int, float)):
            numbers.append(value)
            if len(numbers) >= 3:
                count += max(0, int(numbers[-2] - numbers[-3]))
                numbers = []
    return count


def _codes_of_map(table: object) -> int:
    """How many codes the ranges of a table from codes to letters name."""
    stream = resolve1(table)
    if not isinstance(stream, PDFStream):
        return 0
    ranges = (found for block in _RANGES.findall(stream.get_data()) for found in _RANGE.findall(block))
    return sum(max(0, int(last, 16) - int(first, 16)) for first, last in ranges)
