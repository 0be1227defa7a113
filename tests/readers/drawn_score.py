"""How much of a figure was read: what is right, missing, invented, of points, lines, circles and statements.

The truth is the `figures` list of a draft's truth.yaml: points, lines ("A-D-B", "AB"), circles ("circle with centre O
through A, B and C"), given ("∠ABC = 40°"), may (statements that are right and need not be read). Statements are
compared by what they say: ∠ABC and ∠CBD are one angle where B-D-A is a line.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations
from typing import Any

from paperaudit.readers.draft.drawing.drawn_figure import DrawnFigure

_LETTER = r"[A-Z](?:[₀-₉]|′)*"


@dataclass
class DrawnScore:
    """Each list has texts of the truth (`missing`) or of the reading (`invented`); `right` counts."""

    right: int = 0
    missing: list[str] = field(default_factory=list)
    invented: list[str] = field(default_factory=list)
    unread: str = ""

    @property
    def exact(self) -> bool:
        """Everything right and nothing invented."""
        return not self.missing and not self.invented and not self.unread


def score(read: DrawnFigure | None, truth: Mapping[str, Any]) -> DrawnScore:
    """A reading beside the truth; a truth with `unread`, `raster` or a `kind` wants it declined,
    one that is `unlettered` wants no letters but the reader's own."""
    found = DrawnScore()
    if must_be_declined(truth):
        if read is not None and not read.unread:
            found.invented.append("a reading of a figure that must be declined")
        else:
            found.right += 1
        return found
    if truth.get("unlettered") and read is not None and not read.unread:
        strays = [name for name, *_ in read.points if name not in read.named_here]
        found.invented += strays
        found.right += not strays
        return found
    if read is None or read.unread:
        found.unread = read.unread if read is not None else "not found"
        found.missing = [*truth.get("points", ()), *truth.get("lines", ()), *truth.get("given", ())]
        return found
    read_lines, read_circles, read_others = _drawn([fact.text for fact in read.figure])
    true_lines = [_letters(line) for line in truth.get("lines", ())]
    rows = [line for line in [*true_lines, *read_lines] if len(line) > 2]
    given = [fact.text for fact in read.given]
    may = [*truth.get("may", ())]
    may_lines, may_circles, may_others = _drawn(may)
    _compare(found, {name for name, *_ in read.points}, set(truth.get("points", ())), set())
    _compare(found, set(map(_line, read_lines)), set(map(_line, true_lines)), set(map(_line, may_lines)))
    _, true_circles, _ = _drawn(truth.get("circles", ()))
    _compare(found, set(map(_circle, read_circles)), set(map(_circle, true_circles)), set(map(_circle, may_circles)))
    true_facts = set(_facts(truth.get("given", ()), rows))
    read_facts = set(_facts([*given, *read_others], rows))
    _compare(found, read_facts, true_facts, set(_facts(may_others, rows)))
    if read.not_to_scale != bool(truth.get("not_to_scale", False)):
        (found.invented if read.not_to_scale else found.missing).append("not to scale")
    if truth.get("caption") and read.caption != truth["caption"]:
        found.missing.append(truth["caption"])
    return found


def must_be_declined(truth: Mapping[str, Any]) -> bool:
    """Whether a figure is a picture of dots or of another kind than plane geometry."""
    return bool(truth.get("unread") or truth.get("raster") or truth.get("kind"))


def _compare(found: DrawnScore, read: set[str], true: set[str], may: set[str]) -> None:
    found.right += len(read & true)
    found.missing += sorted(true - read)
    found.invented += sorted(read - true - may)


def _letters(text: str) -> list[str]:
    return re.findall(_LETTER, text)


def _drawn(texts: Iterable[str]) -> tuple[list[list[str]], list[str], list[str]]:
    """Lines as letters in order, circles, and what is neither."""
    lines: list[list[str]] = []
    circles: list[str] = []
    others: list[str] = []
    for text in texts:
        match = re.match(r"(?:segments?|lines?|rays?) (.+)", text)
        if match:
            lines += [_letters(part) for part in match.group(1).split(",")]
        elif re.fullmatch(rf"{_LETTER}(?:-{_LETTER})+|{_LETTER}{_LETTER}", text):
            lines.append(_letters(text))
        elif "is a sector" in text:
            continue
        elif "tangent" not in text and "circle" in text:
            circles.append(text)
        else:
            others.append(text)
    return lines, circles, others


def _line(letters: Sequence[str]) -> str:
    return "-".join(min(list(letters), list(reversed(letters))))


def _circle(text: str) -> str:
    centre = re.search(rf"(?:centre|circle) ({_LETTER})(?![A-Z])", text)
    rest = text.split(" through ")[-1]
    on = [letter for letter in _letters(rest) if not centre or letter != centre.group(1)]
    return f"circle {centre.group(1) if centre else '?'}: {' '.join(sorted(on))}"


def _facts(texts: Iterable[str], rows: Sequence[Sequence[str]]) -> Iterator[str]:
    """The statements in one spelling each; equal sides and parallels by pairs, angles by their rays."""
    classes: dict[str, list[set[str]]] = {"=": [], "∥": []}
    for text in texts:
        plain = text.replace(" ", "")
        tangent = re.fullmatch(rf"({_LETTER})({_LETTER})isatangentto(?:thecircle|circle\w)at({_LETTER})", plain)
        if tangent:
            outer = sorted({tangent.group(1), tangent.group(2)})
            yield f"tangent {outer[0]}{outer[1]} at {tangent.group(3)}"
            continue
        parts = re.split("([=∥])", plain)
        sizes, signs = [_size(part, rows) for part in parts[::2]], parts[1::2]
        named = [size for size in sizes if re.fullmatch(rf"(?:reflex)?∠?(?:{_LETTER}){{2,3}}", size)]
        if signs and "∥" in signs:
            _join(classes["∥"], [_parallel(size, rows) for size in sizes])
        elif len(named) == len(sizes) > 1:
            _join(classes["="], named)
        else:
            for name in named:
                yield f"{name} = {sizes[-1]}"
            if not named:
                yield plain
    for sign, groups in classes.items():
        for group in groups:
            for one, other in combinations(sorted(group), 2):
                yield f"{one} {sign} {other}"


def _join(classes: list[set[str]], names: Sequence[str]) -> None:
    new = set(names)
    for group in [group for group in classes if group & new]:
        new |= group
        classes.remove(group)
    classes.append(new)


def _size(text: str, rows: Sequence[Sequence[str]]) -> str:
    text = (
        re.sub(rf"({_LETTER})({_LETTER})̂({_LETTER})", r"∠\1\2\3", text)
        .replace("-", "−")
        .replace("(", "")
        .replace(")", "")
    )
    angle = re.fullmatch(rf"(reflex)?∠({_LETTER})({_LETTER})({_LETTER})", text)
    if angle:
        arms = sorted(_outermost(angle.group(3), arm, rows) for arm in (angle.group(2), angle.group(4)))
        return f"{angle.group(1) or ''}∠{arms[0]}{angle.group(3)}{arms[1]}"
    side = re.fullmatch(rf"({_LETTER})({_LETTER})", text)
    return "".join(sorted(side.groups())) if side else text


def _parallel(text: str, rows: Sequence[Sequence[str]]) -> str:
    one, other = _letters(text)
    for row in rows:
        if one in row and other in row:
            return "".join(sorted((row[0], row[-1])))
    return text


def _outermost(vertex: str, arm: str, rows: Sequence[Sequence[str]]) -> str:
    """The last letter of the ray from a vertex through an arm's letter."""
    for row in rows:
        if vertex in row and arm in row:
            return row[-1] if row.index(arm) > row.index(vertex) else row[0]
    return arm
