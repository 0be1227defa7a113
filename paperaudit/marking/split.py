"""The setter's own split of a part's marks (M1 A1 R1), read and laid along the lines of the derivation."""

import re
from functools import cache

from paperaudit.marking.mark import Allocation, Mark
from paperaudit.marking.tariff import Earning
from paperaudit.model.audited import AuditedPart

_CODE = re.compile(r"\(?d?(S/R|[A-Z])\)?\s*(\d{0,2})\s*(ft|CA|cao|oe|AG|soi)?\)?", re.IGNORECASE)
_NOTES = {"ca": "ft"}
_REASON_CODES = frozenset({"R", "S/R", "C", "E"})
_LONGEST = 40
"""Marks in one part's split; beyond it the split is not believed."""


def read_split(split: tuple[str, ...]) -> tuple[Mark, ...]:
    """The marks of a split in the setter's order, not yet at a line; none where one of them is not read.

    >>> [mark.printed() for mark in read_split(("M2", "A1 cao"))]
    ['M2', 'A1']
    >>> read_split(("three",))
    ()
    """
    marks = []
    for text in split[:_LONGEST]:
        code = _CODE.fullmatch(text.strip())
        if code is None or code[2] == "0":
            return ()
        note = (code[3] or "").lower()
        marks.append(Mark(code[1].upper(), 0, _NOTES.get(note, note), int(code[2] or 1)))
    return tuple(marks) if len(split) <= _LONGEST else ()


def placed(split: tuple[Mark, ...], lines: tuple[Earning, ...], part: AuditedPart) -> Allocation:
    """A split laid along the lines in order, so that it suits them best.

    Of all ways that keep the setter's order the best covers most lines, has reason marks at lines
    with a reason and the last mark for a value at the answer.
    """
    derivation = part.derivation()
    if not lines or derivation is None:
        return Allocation()
    reasoned = frozenset(line.step for line in lines if derivation.steps[line.step].reason is not None)
    at = _best(tuple(mark.kind for mark in split), tuple(line.step for line in lines), reasoned)
    return Allocation(tuple(Mark(mark.kind, step, mark.note, mark.worth) for mark, step in zip(split, at, strict=True)))


def _best(codes: tuple[str, ...], steps: tuple[int, ...], reasoned: frozenset[int]) -> tuple[int, ...]:
    """The steps for the codes, found from the end backwards over (code, line)."""
    last_value = max((at for at, code in enumerate(codes) if code not in _REASON_CODES), default=-1)

    @cache
    def onwards(mark: int, line: int, fresh: bool) -> tuple[int, tuple[int, ...]]:
        """The best score and steps of the codes from `mark` on; `fresh` says that `line` has no mark yet."""
        if mark == len(codes):
            return 0, ()
        score, rest = onwards(mark + 1, line, False)
        step = steps[line]
        here = (
            score
            + _suits(codes[mark], step in reasoned, mark == last_value, line == len(steps) - 1)
            + (3 if fresh else 0),
            (step, *rest),
        )
        if line + 1 == len(steps):
            return here
        later = onwards(mark, line + 1, True)
        return max(here, later, key=lambda found: found[0])

    return onwards(0, 0, True)[1]


def _suits(code: str, has_reason: bool, is_last_value: bool, is_answer: bool) -> int:
    """How well a code sits at a line."""
    if code in _REASON_CODES:
        return 2 if has_reason else 0
    return 2 if is_last_value and is_answer else 0
