"""Tells rows that speak to the learner about the paper from the rows of its questions."""

import re
from typing import Final

_INSTRUCTION: Final = re.compile(
    r"(?:\W*)(?:answer|show|write\s+(?:your|all|neatly|legibly|clearly)|you\s+(?:may|must|should)|use\s+(?:a\s+)?(?:blue|black|calc)"
    r"|calculators?|(?:all|the)\s+(?:necessary\s+)?(?:working|questions)|number\s+(?:the|your)|good\s+luck|do\s+not|check"
    r"|start\s+each|round\s+off\s+all|circle|tick|choose|select|shade\s+the\s+(?:letter|circle)|each\s+question)\b",
    re.IGNORECASE,
)
_CAPTION: Final = re.compile(
    r"(?:figure|fig\.?|diagram|sketch|table|graph)\s*\d+(?:\.\d+)*\s*(?:[:.–—-]\s*(?:[^\s.?=]+\s*){0,8})?[.]?",
    re.IGNORECASE,
)
_SEVERAL: Final = re.compile(r"\bquestions\s+\d+\s*(?:to|and|–|-|—)\s*\d+", re.IGNORECASE)
_CLOSING: Final = re.compile(
    r"\W*(?:formula(?:e|s)?(?:\s+sheet)?|information\s+sheet|list\s+of\s+formula(?:e|s)|answer\s+sheet|rough\s+work(?:ing)?"
    r"|(?:diagram|answer)\s+sheet|extra\s+(?:space|paper|page).*)\W*",
    re.IGNORECASE,
)
_END: Final = re.compile(
    r"\W*(?:(?:this\s+is\s+the\s+)?end\s+of\s+(?:the\s+)?(?:paper|test|exam(?:ination)?|questions?|section\s+\w+)"
    r"|the\s+end|end|good\s+luck|blank\s+page|(?:please\s+)?turn\s+over|p\.?t\.?o\.?)\W*",
    re.IGNORECASE,
)
_PROMPT: Final = re.compile(
    r"(?:answers?|ans|working|solution|reason)\s*[:.=]?\s*(?:\w{1,3}\s*=)?\s*(?:[a-z°%²³/]{1,4})?", re.IGNORECASE
)
_BLANK: Final = re.compile(r"(?:[∠△]?\w{1,4}(?:\(\w\))?\s*=)?\s*(?:\w\s*=\s*)?(?:[a-z°%²³/£$€]{1,5})?", re.IGNORECASE)
_FIELD: Final = re.compile(
    r"(?:(?:your|full|first|last|family|learner|student|pupil|candidate)(?:['’]?s)?['’]?\s+)*"
    r"(?:names?|surname|class|date|teacher|learner|student|pupil|candidate|school|centre|seat|number|signature|examiner"
    r"|moderator|score|results?|marks?|total|grade|form|group|set|section|period|id)(?:\s+(?:no\.?|number|and\s+\w+))?\s*[:_.…]",
    re.IGNORECASE,
)
_RANGE: Final = re.compile(r"\bquestions\s+(\d+)\s*(?:to|and|–|-|—)\s*(\d+)", re.IGNORECASE)


def is_prompt(text: str, led: bool) -> bool:
    """Whether a row only asks for the answer to be written: "Answer:", and before a leader (`led`) "x =".

    >>> is_prompt("Answer: x =", False), is_prompt("x =", True), is_prompt("x =", False), is_prompt("Solve x =", True)
    (True, True, False, False)
    >>> is_prompt("Reason:", False), is_prompt("reason.", False)
    (True, False)
    """
    sentence = text[:1].islower() and not led and ":" not in text and "=" not in text
    return (bool(_PROMPT.fullmatch(text.strip())) and not sentence) or (led and bool(_BLANK.fullmatch(text.strip())))


def questions_meant(text: str) -> tuple[int, int] | None:
    """The first and the last question that a row is meant for: "In questions 1 to 3, …"."""
    match = _RANGE.search(text)
    return (int(match.group(1)), int(match.group(2))) if match else None


def is_instruction(text: str) -> bool:
    """Whether a row says how to answer rather than what: "Answer all questions."."""
    return bool(_INSTRUCTION.match(text.strip()))


def is_field(text: str) -> bool:
    """Whether a cell begins with a field that the learner fills in.

    >>> is_field("Name:"), is_field("Candidate number: ____"), is_field("Simplify:")
    (True, True, False)
    """
    return bool(_FIELD.match(text.strip()))


def is_for_several(text: str) -> bool:
    """Whether rows before a question are meant for several: "Solve for x:", "Questions 4 to 6 are about …"."""
    return text.rstrip().endswith(":") or bool(_SEVERAL.search(text))


def is_closing(text: str) -> bool:
    """Whether a row heads what is no question any more: a formula sheet, room for rough work."""
    return bool(_CLOSING.fullmatch(text))


def is_end(text: str) -> bool:
    """Whether a row only says that the paper or a page ends."""
    return bool(_END.fullmatch(text))


def is_caption(text: str) -> bool:
    """Whether a row is the caption of a figure or a table: "Figure 2", "Table 1: Masses of parcels"."""
    return bool(_CAPTION.fullmatch(text.strip(" ()[]")))
