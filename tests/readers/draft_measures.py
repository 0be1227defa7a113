"""What of a draft was read: parts, expressions, figures, planted faults, answers, time."""

import io
import re
import time
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from statistics import median
from typing import Any

import pdfplumber

from paperaudit.audit import audit_read
from paperaudit.errors import InputError
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity
from paperaudit.model.paper import Paper, Part, Question
from paperaudit.readers.answers import key_of_tree, with_answers
from paperaudit.readers.question_file import PaperRead
from paperaudit.readers.source import read_answers, read_paper
from paperaudit.readers.yaml_tree import read_tree
from tests.readers.draft_truth import Truth

_ROUNDS = 5
"""Times are medians of so many pairs of runs, ours and the plain extraction's in turn."""
_MARK = "′"
"""What a number carries that is printed a second time."""


@dataclass
class Share:
    """How many of how many; `missed` says which not."""

    right: int = 0
    whole: int = 0
    missed: list[str] = field(default_factory=list)

    def count(self, right: bool, name: str) -> None:
        """One more of them."""
        self.whole += 1
        self.right += right
        if not right:
            self.missed.append(name)

    def __str__(self) -> str:
        return f"{self.right}/{self.whole}"

    def __add__(self, other: "Share") -> "Share":
        return Share(self.right + other.right, self.whole + other.whole, self.missed + other.missed)


@dataclass
class Measured:
    """The figures of one draft; `complaints` is what kept it from being read or audited.

    `false_errors` are on sound parts, `errors_beside` follow from a planted fault in the same part.

    `seconds` of the processor for reading, and `ratio` to plain extraction of the same file.
    """

    name: str
    parts: Share = field(default_factory=Share)
    added: list[str] = field(default_factory=list)
    cover: Share = field(default_factory=Share)
    expressions: Share = field(default_factory=Share)
    texts: Share = field(default_factory=Share)
    faults: Share = field(default_factory=Share)
    false_errors: list[str] = field(default_factory=list)
    errors_beside: list[str] = field(default_factory=list)
    answers: Share = field(default_factory=Share)
    wrong: list[str] = field(default_factory=list)
    seconds: float = 0.0
    ratio: float = 0.0
    complaints: list[str] = field(default_factory=list)


def measured(truth: Truth, timed: bool = True) -> Measured:
    """Reads a draft, audits it with its own key and once more with the right answers, and compares."""
    read = read_paper(str(truth.draft))
    found = compared(truth, read)
    if timed and read.paper is not None:
        pairs = [
            (_seconds(lambda: read_paper(str(truth.draft))), _seconds(lambda: _plain_text(truth)))
            for _ in range(_ROUNDS)
        ]
        found.seconds = median(ours for ours, _ in pairs)
        found.ratio = median(ours / plain for ours, plain in pairs)
    return found


def compared(truth: Truth, read: PaperRead) -> Measured:
    """A reading beside the truth, with two audits of it; without times."""
    found = Measured(truth.folder.name)
    found.complaints += [one.describe() for one in read.complaints]
    _measure_parts(found, truth, read.paper)
    _measure_totals(found, truth, read.paper)
    _measure_faults(found, truth, read)
    _measure_answers(found, truth, read)
    return found


def _measure_parts(found: Measured, truth: Truth, paper: Paper | None) -> None:
    pairs = list(paper.parts()) if paper is not None else []
    rest = list(pairs)
    for wanted in truth.listed("parts"):
        pair = next((one for one in rest if _name(one[1]) == wanted["id"]), None)
        if pair is not None:
            rest.remove(pair)
        marks, page = (pair[1].marks, pair[1].place.page) if pair else ("no part", 0)
        right = pair is not None and marks == wanted.get("marks") and page in (0, wanted["page"])
        where = f", page {page} for {wanted['page']}"
        found.parts.count(right, f"{wanted['id']}: {marks} for {wanted.get('marks')}{where}")
        said = _worded(_said(pair)) if pair else ""
        found.texts.count(_worded(wanted["text"]).rstrip(".") in said, f"{wanted['id']}: {said[-200:]}")
    for wanted in (*truth.listed("questions"), *truth.listed("leads")):
        name = str(wanted.get("number", wanted.get("id")))
        said = _worded(_all_said(paper, name.split(".")[0])) if paper else ""
        if "text" in wanted:
            found.texts.count(_worded(wanted["text"]).rstrip(".") in said, f"{name}: {said[:200]}")
    found.added = [part.id for _, part in rest]
    for wanted in truth.listed("expressions"):
        text = _plain(_all_said(paper, wanted["part"].split(".")[0])) if paper else ""
        found.expressions.count(_plain(wanted["linear"]) in text, f"{wanted['part']}: {wanted['linear']}")


def _measure_totals(found: Measured, truth: Truth, paper: Paper | None) -> None:
    for key, value in _cover_of(truth.held):
        got = dict(_cover_of(_held(paper))).get(key) if paper is not None else "no paper"
        found.cover.count(_plain(str(got)) == _plain(str(value)), f"{key}: {got} for {value}")
    for section in truth.listed("sections"):
        totals = [one.total for one in paper.sections if one.title] if paper is not None else []
        found.cover.count(section["total"] in totals, f"{section['title']}: {totals}")
    for question in truth.listed("questions"):
        own = next((one for one in paper.questions() if one.number == question["number"]), None) if paper else None
        got = own.total if own else "no question"
        found.cover.count(
            got == question.get("total"), f"{question['number']}: total {got} for {question.get('total')}"
        )


def _held(paper: Paper) -> Mapping[str, Any]:
    return {"title": paper.title, "minutes": paper.minutes, "total": paper.total, "claims": dict(paper.claims)}


def _cover_of(held: Mapping[str, Any]) -> Iterator[tuple[str, object]]:
    """Title, minutes, total and what the cover claims, with None for what it does not say."""
    for key in ("title", "minutes", "total"):
        yield key, held.get(key)
    for key in ("questions", "pages"):
        yield key, (held.get("claims") or {}).get(key)


def _name(part: Part) -> str:
    return part.id.rstrip(_MARK)


def _said(pair: tuple[Question, Part]) -> str:
    question, part = pair
    options = " ".join(f"{letter} {line.text}" for letter, line in part.options)
    return " ".join([question.text.text if question.text else "", part.text.text if part.text else "", options])


def _all_said(paper: Paper, number: str) -> str:
    return " ".join(_said(pair) for pair in paper.parts() if pair[0].number.rstrip(_MARK) == number)


def _plain(text: str) -> str:
    """A text without what does not count: spaces, the kind of a minus, of a parallel, of an apostrophe."""
    for one, other in (("-", "−"), ("–", "−"), ("||", "∥"), ("//", "∥"), ("'", "′"), ("…", "..."), ("·", "⋅")):
        text = text.replace(one, other)
    return re.sub(r"\s+", "", text)


def _worded(text: str) -> str:
    """A text as `_plain` has it, with the spaces between two letters, which make words of them."""
    return _plain(re.sub(r"(?<=[^\W\d_])\s+(?=[^\W\d_])", "_", text)).replace("_", " ")


def _measure_faults(found: Measured, truth: Truth, read: PaperRead) -> None:
    keyed = truth.answers is not None and read.paper is not None
    audited = _audited(found, with_answers(read, read_answers(str(truth.answers))) if keyed else read)
    findings = list(audited.findings) if audited is not None else []
    explained: list[Finding] = []
    for fault in truth.listed("faults"):
        names = [fault["name"], *fault.get("or", ())]
        hits = [one for one in findings if one.name in names and _about(one, str(fault.get("part", "")))]
        found.faults.count(bool(hits), f"{fault.get('part', 'paper')}: {fault['name']}")
        explained += hits
    planted = [str(fault["part"]) for fault in truth.listed("faults") if "part" in fault]
    for one in findings:
        if one.severity is Severity.ERROR and one not in explained:
            beside = any(one.part and _about(one, part) for part in planted)
            (found.errors_beside if beside else found.false_errors).append(f"{one.part}: {one.name}: {one.message}")


def _about(finding: Finding, part: str) -> bool:
    """Whether a finding is about this part, its question or a part of it."""
    own = finding.part.rstrip(_MARK)
    return own == part or own.startswith(part + ".") or (bool(own) and part.startswith(own + "."))


def _measure_answers(found: Measured, truth: Truth, read: PaperRead) -> None:
    right = {part["id"]: part["answer"] for part in truth.listed("parts") if "answer" in part}
    ids = [part["id"] for part in truth.listed("parts")]
    single = {name: answer for name, answer in right.items() if ids.count(name) == 1}
    lines = [f'{name}: "{answer}"' for name, answer in single.items()]
    tree, _ = read_tree("answers:\n" + "\n".join("  " + line for line in lines), "truth")
    assert tree is not None
    audited = _audited(found, with_answers(read, key_of_tree(tree))) if read.paper is not None else None
    verdicts = {one.part.id: one for one in audited.parts} if audited is not None else {}
    for name in single:
        one = verdicts.get(name)
        verdict = one.verdict if one else "no part"
        found.answers.count(verdict == "confirmed", f"{name}: {verdict}")
        if verdict in ("differs", "impossible"):
            found.wrong.append(f"{name}: {verdict}")


def _audited(found: Measured, read: PaperRead) -> AuditedPaper | None:
    try:
        return audit_read(PaperRead(read.paper, read.complaints))
    except InputError as error:
        found.complaints += [one.describe() for one in error.complaints if one.describe() not in found.complaints]
        return None


def _seconds(work: Callable[[], object]) -> float:
    start = time.process_time()
    work()
    return time.process_time() - start


def _plain_text(truth: Truth) -> list[str]:
    with pdfplumber.open(io.BytesIO(truth.draft.read_bytes())) as pdf:
        return [page.extract_text() for page in pdf.pages]
