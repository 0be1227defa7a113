"""Sets a mark scheme as PDF pages with typst, and turns drawings into pictures for Word."""

import json
from dataclasses import asdict
from typing import Literal, cast

from paperaudit.reports.scheme_sheet import SchemeSheet
from paperaudit.resources import shipped

PICTURE_DOTS_PER_INCH = 300.0
"""Fine enough for print."""


def pdf(sheet: SchemeSheet) -> bytes:
    """The scheme as a PDF of A4 pages.

    The sheet goes to typst as JSON, never as source text; only typst's own fonts are used, so that
    every machine sets the same pages, and no date is written.
    """
    return _compiled("scheme.typ", "pdf", {"sheet": json.dumps(asdict(sheet), ensure_ascii=False)})


def picture(drawing: str) -> bytes:
    """An SVG drawing as PNG, in its own size at `PICTURE_DOTS_PER_INCH`."""
    return _compiled("figure.typ", "png", {"drawing": drawing})


def page_of(drawing: str) -> bytes:
    """An SVG drawing as a PDF page of its own size."""
    return _compiled("figure.typ", "pdf", {"drawing": drawing})


def _compiled(template: str, ending: Literal["pdf", "png"], inputs: dict[str, str]) -> bytes:
    import typst

    folder = shipped("schemes", "templates", "scheme")
    compiler = typst.Compiler(folder / template, root=folder, ignore_system_fonts=True, sys_inputs=inputs)
    compiled = compiler.compile(format=ending, ppi=PICTURE_DOTS_PER_INCH)
    return cast(bytes, compiled[0] if isinstance(compiled, list) else compiled)
