"""Text is too faint to be read with ease."""

from collections.abc import Iterator
from typing import Final

from paperaudit.checks.check import Check
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Finding, Severity

LEAST_CONTRAST: Final = 4.5
"""The contrast of text with its ground that WCAG 2.1 asks for (success criterion 1.4.3)."""


def contrast_with_white(lightness: float) -> float:
    """The contrast ratio of a grey on white, from 1 to 21, as WCAG 2.1 defines it; `lightness` is 0 for black.

    >>> round(contrast_with_white(0.0), 1), round(contrast_with_white(0.4667), 2)
    (21.0, 4.48)
    """
    light = lightness / 12.92 if lightness <= 0.04045 else ((lightness + 0.055) / 1.055) ** 2.4
    return 1.05 / (light + 0.05)


def find(audited: AuditedPaper) -> Iterator[Finding]:
    """One finding a page whose faintest text is too faint."""
    for page in audited.paper.printed:
        if page.faintest is None:
            continue
        ratio = contrast_with_white(page.faintest)
        if ratio < LEAST_CONTRAST:
            yield CHECK.found(
                f"Page {page.number} has text in a grey with a contrast of {ratio:.1f} to 1; "
                f"at least {LEAST_CONTRAST:g} to 1 is read with ease.",
                places=(page.faint, page.place),
                suggestion="Print it in black.",
            )


CHECK = Check(
    name="faint-print",
    severity=Severity.NOTE,
    title="Text is faint",
    meaning="A line of text is printed in a grey, or a light colour, whose contrast with the paper is under 4.5 to 1.",
    matters="On a copy of a copy it is gone. What is lost may be a condition or a unit.",
    mend="Print text in black. Keep grey for shading.",
    faulty="""
printed: [{page: 1, faintest: 0.7}]
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
""",
    clean="""
printed: [{page: 1, faintest: 0.2}]
questions:
  - {number: 1, ask: 12 + 5, answer: "17", marks: 1}
""",
    find=find,
)
