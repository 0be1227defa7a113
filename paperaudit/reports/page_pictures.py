"""Pictures of a draft's pages with a numbered frame wherever something was found."""

import base64
import io
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Final

from paperaudit.model.finding import Finding
from paperaudit.reports.account import SEVERITY_SIGNS

DOTS_PER_POINT: Final = 1.5
"""108 dots an inch: small print can be read, and a page takes some 60 kB."""
MOST_PAGES: Final = 40
"""Pictures in one report, the first pages that have something."""
LARGEST_SIDE: Final = 2400
"""Dots; a poster is drawn smaller."""
_AROUND: Final = 3.0
"""Points between what was found and its frame."""


@dataclass(frozen=True, slots=True)
class FrameShown:
    """A frame in percent of its page; `numbers` are the findings that it stands for, from 1."""

    numbers: tuple[int, ...]
    left: float
    top: float
    width: float
    height: float
    severity: str
    sign: str


@dataclass(frozen=True, slots=True)
class PageShown:
    """A page's picture as a data address, with its frames."""

    number: int
    picture: str
    width: int
    height: int
    frames: tuple[FrameShown, ...]


def pictures(content: bytes, findings: Sequence[Finding]) -> tuple[PageShown, ...]:
    """The pages of the PDF `content` on which something was found; what concerns a whole page has no frame."""
    import pypdfium2  # type: ignore[import-untyped]

    found: dict[int, list[tuple[int, Finding]]] = {}
    for number, finding in enumerate(findings, start=1):
        if finding.place.page:
            found.setdefault(finding.place.page, []).append((number, finding))
    shown = []
    document = pypdfium2.PdfDocument(content)
    try:
        for page in sorted(found)[:MOST_PAGES]:
            if page <= len(document):
                shown.append(_page(document, page, found[page]))
    finally:
        document.close()
    return tuple(shown)


def _page(document: Any, number: int, found: Sequence[tuple[int, Finding]]) -> PageShown:
    page = document[number - 1]
    width, height = page.get_size()
    scale = min(DOTS_PER_POINT, LARGEST_SIDE / max(width, height, 1.0))
    image = page.render(scale=scale, grayscale=True).to_pil()
    stream = io.BytesIO()
    image.save(stream, format="PNG", optimize=True)
    picture = "data:image/png;base64," + base64.b64encode(stream.getvalue()).decode("ascii")
    across, down = image.size
    return PageShown(number, picture, across, down, _frames(found, width, height))


def _frames(found: Sequence[tuple[int, Finding]], width: float, height: float) -> tuple[FrameShown, ...]:
    """One frame a place; several findings of one place share it, and the gravest gives it its look."""
    by_box: dict[tuple[float, float, float, float], list[tuple[int, Finding]]] = {}
    for number, finding in found:
        if finding.place.box is not None:
            by_box.setdefault(finding.place.box, []).append((number, finding))
    frames = []
    for (left, top, right, bottom), here in by_box.items():
        left, top = max(0.0, left - _AROUND), max(0.0, top - _AROUND)
        right, bottom = min(width, right + _AROUND), min(height, bottom + _AROUND)
        # Findings come the gravest first.
        severity = here[0][1].severity
        frames.append(
            FrameShown(
                numbers=tuple(number for number, _ in here),
                left=_percent(left, width),
                top=_percent(top, height),
                width=_percent(right - left, width),
                height=_percent(bottom - top, height),
                severity=severity.value,
                sign=SEVERITY_SIGNS[severity],
            )
        )
    return tuple(frames)


def _percent(part: float, whole: float) -> float:
    return round(100 * part / whole, 2)
