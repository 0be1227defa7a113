"""Puts a question with its printed answer through the whole audit, as a paper of one part."""

from collections.abc import Mapping
from typing import Any

from paperaudit.audit import audit
from paperaudit.model.audited import AuditedPart
from paperaudit.model.paper import Line, Paper, Part, Question, Section

PLACES = {"nearest tenth": "1 decimal place", "nearest hundredth": "2 decimal places"}


def audited(case: Mapping[str, Any], answer: str | None) -> AuditedPart:
    """The part of a case (figure, given, ask, perhaps sketch and accuracy) audited with this stated answer."""
    rounding = [words for name, words in PLACES.items() if name in case.get("accuracy", "")]
    text = f"Give your answer correct to {rounding[0]}." if rounding else ""
    part = Part("1", "1", Line(text) if text else None, ask=Line(case["ask"]), answer=Line(answer) if answer else None)
    taken = ["Take π = 3.14"] if "π = 3.14" in case.get("accuracy", "") else []
    question = Question(
        "1",
        (part,),
        figure=tuple(map(Line, case.get("figure", ()))),
        given=tuple(map(Line, [*case.get("given", ()), *taken])),
        sketch=tuple((name, float(x), float(y)) for name, (x, y) in (case.get("sketch") or {}).items()),
    )
    return audit(Paper("One question", (Section((question,)),))).parts[0]
