"""The faults that an audit looks for, one file each; what is found is sorted as the paper is printed."""

import pkgutil
from functools import cache
from importlib import import_module

from paperaudit.checks.check import Check
from paperaudit.errors import Complaint, InputError
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity

_GRAVEST_FIRST = (Severity.ERROR, Severity.WARNING, Severity.NOTE)
_PAGE_WIDTH = 80


@cache
def discovered() -> dict[str, Check]:
    """Every check by its name, in alphabetical order: each module of this folder that holds a `CHECK`."""
    modules = sorted(module.name for module in pkgutil.iter_modules(__path__) if not module.ispkg)
    loaded = (import_module(f"{__name__}.{module}") for module in modules)
    return {module.CHECK.name: module.CHECK for module in loaded if hasattr(module, "CHECK")}


def names() -> tuple[str, ...]:
    """The names of all findings, in alphabetical order."""
    return tuple(discovered())


def find_all(audited: AuditedPaper) -> tuple[Finding, ...]:
    """Everything that the checks find, in order of print, then the gravest first, then by name.

    What concerns the whole paper comes first, a question's own findings before those of its parts.
    """
    rank = _order_of_print(audited)
    found = [finding for check in discovered().values() for finding in check.find(audited)]
    return tuple(
        sorted(found, key=lambda one: (rank.get(one.part, -1), _GRAVEST_FIRST.index(one.severity), one.name))
    )


def explain(name: str) -> str:
    """The page of a finding: what it means, why it matters, an example, how to mend it.

    Raises InputError, with the nearest name there is, where no finding has this name.
    """
    import textwrap

    check = discovered().get(name)
    if check is None:
        raise InputError(Complaint(_no_such_finding(name)))
    sections = (
        ("What it means", _wrapped(check.meaning)),
        ("Why it matters", _wrapped(check.matters)),
        ("An example with this fault", textwrap.indent(check.faulty.strip(), "    ")),
        ("How to mend it", _wrapped(check.mend)),
        ("The example, mended", textwrap.indent(check.clean.strip(), "    ")),
    )
    head = f"{check.name} ({check.severity.value})\n{check.title}\n"
    return head + "".join(f"\n{title}\n{body}\n" for title, body in sections)


def _order_of_print(audited: AuditedPaper) -> dict[str, int]:
    """Where each question's number and each part's id is printed: the first place of a repeated number."""
    printed: dict[str, int] = {}
    for question in audited.paper.questions():
        for number in (question.number, *(part.id for part in question.parts)):
            printed.setdefault(number, len(printed))
    return printed


def _no_such_finding(name: str) -> str:
    import difflib

    close = difflib.get_close_matches(name.strip().lower(), names(), n=1, cutoff=0.5)
    hint = f"; did you mean '{close[0]}'?" if close else "."
    return f"there is no finding named '{name}'{hint} The findings are: {', '.join(names())}."


def _wrapped(text: str) -> str:
    import textwrap

    return textwrap.fill(" ".join(text.split()), _PAGE_WIDTH, initial_indent="  ", subsequent_indent="  ")
