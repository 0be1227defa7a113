"""An audited paper as rows for workbooks: a row a part, a row a part and skill, a row a printed total."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Any, Literal

from paperaudit.marking.spread import portions
from paperaudit.model.audited import AuditedPaper, AuditedPart

if TYPE_CHECKING:
    import pandas

SETTER = "setter"
PROPOSED = "proposed"
NOT_CLASSED = ""
"""Stands for the level of a part whose level nobody knows: its cell is left for the setter to fill in."""


@dataclass(frozen=True, slots=True)
class PartRow:
    """One part. `marks` is None where none are printed; a part without skills has "" in `skills_from`."""

    part: str
    question: str
    asked: str
    skills: tuple[str, ...]
    strands: tuple[str, ...]
    level: str
    marks: int | None
    skills_from: str
    level_from: str


@dataclass(frozen=True, slots=True)
class PortionRow:
    """What one skill gets of one part: the part's row counted from 0, and how many skills share it."""

    row: int
    part: str
    skill: str
    strand: str
    sharing: int
    marks: Fraction


@dataclass(frozen=True, slots=True)
class TotalRow:
    """A total over the part rows from `first` to before `behind`; `printed` is None where none is printed."""

    kind: Literal["question", "section", "paper"]
    name: str
    printed: int | None
    first: int
    behind: int


def part_rows(audited: AuditedPaper) -> tuple[PartRow, ...]:
    """A row a part, in order of print."""
    return tuple(_part_row(part) for part in audited.parts)


def portion_rows(audited: AuditedPaper) -> tuple[PortionRow, ...]:
    """A row a part and skill, in order of print; a part without skills has one row, "no skill named"."""
    rows: list[PortionRow] = []
    for row, part in enumerate(audited.parts):
        shared = portions(part)
        rows += [PortionRow(row, part.part.id, held.skill, held.strand, len(shared), held.marks) for held in shared]
    return tuple(rows)


def total_rows(audited: AuditedPaper) -> tuple[TotalRow, ...]:
    """A row a question, each section that has a title or a total behind its questions, the paper last."""
    rows: list[TotalRow] = []
    behind = 0
    for section in audited.paper.sections:
        start = behind
        for question in section.questions:
            first, behind = behind, behind + len(question.parts)
            rows.append(TotalRow("question", question.number, question.total, first, behind))
        if section.title or section.total is not None:
            rows.append(TotalRow("section", section.title, section.total, start, behind))
    return (*rows, TotalRow("paper", "", audited.paper.total, 0, behind))


def frame(rows: Iterable[Any], kind: type) -> "pandas.DataFrame":
    """Rows of one `kind` as a pandas frame with a column a field, also where there are no rows."""
    import dataclasses

    import pandas

    columns = [field.name for field in dataclasses.fields(kind)]
    return pandas.DataFrame([[getattr(row, name) for name in columns] for row in rows], columns=columns, dtype=object)


def _part_row(part: AuditedPart) -> PartRow:
    shared = portions(part)
    skills_from = PROPOSED if "skills" in part.proposed else SETTER
    return PartRow(
        part=part.part.id,
        question=part.question.number,
        asked=_asked(part),
        skills=tuple(held.skill for held in shared),
        strands=tuple(dict.fromkeys(held.strand for held in shared)),
        level=part.level or NOT_CLASSED,
        marks=part.part.marks,
        skills_from=skills_from if part.skills else "",
        level_from=(PROPOSED if "level" in part.proposed else SETTER) if part.level else "",
    )


def _asked(part: AuditedPart) -> str:
    """What the part asks, in the words nearest to the paper's own."""
    if part.part.ask:
        return part.part.ask.text
    if part.reading.ask:
        return part.reading.ask.text
    text = part.part.text or part.question.text
    return text.text if text else ""
