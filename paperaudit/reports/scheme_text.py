"""Writes a mark scheme as a self-contained HTML page or as Markdown, with Jinja2 templates."""

import base64
import re
from dataclasses import fields
from typing import TYPE_CHECKING

from paperaudit.reports.scheme_sheet import SchemeSheet
from paperaudit.resources import shipped

if TYPE_CHECKING:
    from jinja2 import Environment

_MARKDOWN = re.compile(r"([\\`*_{}\[\]<>#|~&!$])")
_LINE_START = re.compile(r"^(\s*)([-+=])|^(\s*\d+)([.)])")


def html(sheet: SchemeSheet) -> bytes:
    """The scheme as one HTML file: style and drawings inside it, what the paper says as text only."""
    environment = _environment(escaped=True)
    environment.filters["base64"] = lambda drawing: base64.b64encode(drawing.encode()).decode()
    return _rendered(environment, "scheme.html", sheet)


def markdown(sheet: SchemeSheet) -> bytes:
    """The scheme as Markdown with tables; drawings are left out."""
    environment = _environment(escaped=False)
    environment.filters["plain"] = plain
    return _rendered(environment, "scheme.md", sheet)


def plain(text: str) -> str:
    r"""A text with whatever Markdown would take for markup escaped, on one line.

    >>> plain("*x* | [y](z)")
    '\\*x\\* \\| \\[y\\](z)'
    """
    escaped = _MARKDOWN.sub(r"\\\1", " ".join(text.split()))
    return _LINE_START.sub(lambda found: f"{found[1] or found[3] or ''}\\{found[2] or found[4]}", escaped)


def fields_of(sheet: SchemeSheet) -> dict[str, object]:
    """What a template may name: the sheet's fields."""
    return {field.name: getattr(sheet, field.name) for field in fields(sheet)}


def _environment(escaped: bool) -> "Environment":
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    return Environment(
        loader=FileSystemLoader(shipped("schemes", "templates", "scheme")),
        autoescape=escaped,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )


def _rendered(environment: "Environment", template: str, sheet: SchemeSheet) -> bytes:
    return environment.get_template(template).render(fields_of(sheet)).encode("utf-8")
