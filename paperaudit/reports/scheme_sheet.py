"""A mark scheme as values: what every template shows, and what a department's own may name."""

from dataclasses import dataclass

CAUTIONS = (
    "Confidential until the test has been written.",
    "The judgement of the examiner and the moderator prevails over this scheme, "
    "and so does the marking policy of the school and the examining authority.",
)


@dataclass(frozen=True, slots=True)
class PrintedMark:
    """A mark as printed (M1) with its note (ft), "" where it has none."""

    mark: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Row:
    """One line of working with its marks, none at a line that bears none.

    `source` says where a line without marks was reached and marked already ("as in (a)"), or "".
    """

    statement: str
    reason: str
    marks: tuple[PrintedMark, ...]
    source: str = ""
    is_answer: bool = False


@dataclass(frozen=True, slots=True)
class Alternative:
    """Another way to the answer, marked alike."""

    rows: tuple[Row, ...]
    has_reasons: bool


@dataclass(frozen=True, slots=True)
class PartSheet:
    """One part: what it asks, its lines, its answer, and what an examiner should know.

    `label` is "" for a question's only part, whose marks stand at the question already. `ruled` counts
    empty lines to write on where nothing could be derived. `warning` says what the audit found, "" at
    a sound part. `figure` is an SVG drawing, "" where none is due.
    """

    label: str
    text: str
    statements: str
    options: tuple[str, ...]
    marks: str
    rows: tuple[Row, ...]
    has_reasons: bool
    answer: str
    remarks: tuple[str, ...]
    warning: str
    alternatives: tuple[Alternative, ...]
    ruled: int
    figure: str


@dataclass(frozen=True, slots=True)
class QuestionSheet:
    """One question with its parts. `section` is the heading printed above it, "" where none is due.

    `table` has the names of its columns in its first row; `marks` is "" where no part has any.
    """

    number: str
    section: str
    text: str
    statements: str
    marks: str
    warning: str
    parts: tuple[PartSheet, ...]
    table: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class LegendEntry:
    """A letter or a note of the convention, and what it means."""

    code: str
    means: str


@dataclass(frozen=True, slots=True)
class SchemeSheet:
    """The whole mark scheme. `facts` are the cover's lines, a name with a value each."""

    title: str
    facts: tuple[tuple[str, str], ...]
    convention: str
    about: str
    legend: tuple[LegendEntry, ...]
    notes: tuple[LegendEntry, ...]
    warning: str
    questions: tuple[QuestionSheet, ...]
    cautions: tuple[str, ...] = CAUTIONS
