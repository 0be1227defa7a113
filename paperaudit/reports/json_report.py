"""The audit as JSON, for other programs: the same input gives the same bytes."""

import json
from pathlib import PurePath
from typing import Any

from paperaudit.checks.grounds.words import as_printed
from paperaudit.model.audited import AuditedPaper, AuditedPart
from paperaudit.model.derivation import Step
from paperaudit.model.finding import Finding
from paperaudit.model.place import Place
from paperaudit.reports.account import asked, derived, reason_of, rederived, stopped_by


def render(audited: AuditedPaper) -> str:
    """The audit as JSON text: `paper`, `parts` in order of print, and `findings`, with a newline at the end.

    Places hold `page`, `box`, `file`, `line` and `cell` only where they are known; a part that was not
    audited has a `message`.
    """
    paper = audited.paper
    report = {
        "paper": {
            "title": paper.title,
            "total": paper.total,
            "marks_sum": paper.marks_sum(),
            "parts": len(audited.parts),
            "rederived": rederived(audited),
        },
        "parts": [_part(part, paper.reasons) for part in audited.parts],
        "findings": [_finding(finding) for finding in audited.findings],
    }
    return json.dumps(report, ensure_ascii=False, indent=2) + "\n"


def _part(part: AuditedPart, system: str) -> dict[str, Any]:
    derivation = part.derivation()
    told: dict[str, Any] = {
        "id": as_printed(part.part.id),
        **_page(part.part.place),
        "marks": part.part.marks,
        "ask": asked(part),
        "verdict": part.verdict,
    }
    if part.verdict == "not-read":
        told["message"] = stopped_by(part)
    return told | {
        "derived": list(derived(part)),
        "stated": part.part.answer.text if part.part.answer else None,
        "steps": [_step(step, system) for step in derivation.steps] if derivation else [],
        "skills": list(part.skills),
        "level": part.level,
    }


def _step(step: Step, system: str) -> dict[str, Any]:
    return {
        "statement": step.statement,
        "reason": reason_of(step, system),
        "uses": list(step.uses),
        "value": step.value,
    }


def _finding(finding: Finding) -> dict[str, Any]:
    box = {"box": [round(edge, 1) for edge in finding.place.box]} if finding.place.box else {}
    return {
        "name": finding.name,
        "severity": finding.severity.value,
        "part": as_printed(finding.part),
        **_page(finding.place),
        **box,
        "message": finding.message,
        "because": list(finding.because),
        "suggestion": finding.suggestion,
        **_source(finding.place),
    }


def _source(place: Place) -> dict[str, str | int]:
    """The file by its bare name, and the spot in it, as far as they are known."""
    told: dict[str, str | int] = {"file": PurePath(place.file).name, "line": place.line, "cell": place.cell}
    return {name: value for name, value in told.items() if value}


def _page(place: Place) -> dict[str, int]:
    return {"page": place.page} if place.page else {}
