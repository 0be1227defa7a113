"""The faults that an audit looks for, one file each; what is found is sorted, the gravest first."""

import pkgutil
import re
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
    loaded = [import_module(f"{__name__}.{module}") for module in modules]
    checks: list[Check] = [module.CHECK for module in loaded if hasattr(module, "CHECK")]
    return {check.name: check for check in checks}


def names() -> tuple[str, ...]:
    """The names of all findings that are looked for, in alphabetical order."""
    return tuple(discovered())


def find_all(audited: AuditedPaper) -> tuple[Finding, ...]:
    """Everything that the checks find, the gravest first, then in order of print, then by name.

    Among findings of one severity, what concerns the whole paper comes first, a question's own before those of
    its parts.
    """
    rank = _order_of_print(audited)
    found = [finding for check in discovered().values() for finding in check.find(audited)]
    return tuple(sorted(found, key=lambda one: (_GRAVEST_FIRST.index(one.severity), rank.get(one.part, -1), one.name)))


def explain(name: str) -> str:
    """The page of a finding: what it means, why it matters, an example, how to mend it.

    Raises InputError, with the nearest name there is, where no finding has this name.
    """
    import textwrap

    check = discovered().get("-".join(re.split(r"[\s_-]+", name.strip().lower())))
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
    """Where each question's number and each part's id is printed: the first place of a repeated number.

    The levels of an id that keeps a repeated question apart (1′ of 1′.a) have a place as well.
    """
    printed: dict[str, int] = {}
    for question in audited.paper.questions():
        printed.setdefault(question.number, len(printed))
        for part in question.parts:
            levels = part.id.split(".")
            for depth in range(1, len(levels) + 1):
                printed.setdefault(".".join(levels[:depth]), len(printed))
    return printed


def _no_such_finding(name: str) -> str:
    import difflib

    known = sorted(discovered())
    close = difflib.get_close_matches(name.strip().lower(), known, n=1, cutoff=0.5)
    if close:
        return f"there is no finding named '{name}'; did you mean '{close[0]}'?"
    return f"there is no finding named '{name}'. The findings are: {', '.join(known)}."


def _wrapped(text: str) -> str:
    import textwrap

    return textwrap.fill(" ".join(text.split()), _PAGE_WIDTH, initial_indent="  ", subsequent_indent="  ")
