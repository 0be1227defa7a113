"""Writes a mark scheme as a Word document, from the shipped template or a department's own."""

import io
import re
import zipfile
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from paperaudit.errors import Complaint, InputError
from paperaudit.model.place import Place
from paperaudit.reports.reproducible_zip import reproducible
from paperaudit.reports.scheme_pages import picture
from paperaudit.reports.scheme_sheet import SchemeSheet
from paperaudit.resources import shipped

if TYPE_CHECKING:
    from docxtpl import DocxTemplate

FIGURE_MILLIMETRES = 68
ANSWER_SHADE, NO_SHADE = "EDEDED", "FFFFFF"
_NOT_IN_XML = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")


def docx(sheet: SchemeSheet, template: Path | None = None) -> bytes:
    """The scheme as a .docx. A template is a Word file with fields in double braces (docxtpl).

    It may name every field of `SchemeSheet`; a row has `shade` besides, the colour of its cells, and
    a part's `figure` is a picture. Raises InputError for a template that cannot be read or filled.
    Templates run in Jinja2's sandbox; what the paper says is escaped and never read as a field.
    """
    from jinja2 import StrictUndefined
    from jinja2.sandbox import SandboxedEnvironment

    path = template or shipped("schemes", "templates", "scheme", "scheme.docx")
    document = _opened(path)
    named = _fields(sheet, document)
    environment = SandboxedEnvironment(autoescape=True, undefined=StrictUndefined)
    written = io.BytesIO()
    try:
        document.render(named, environment, autoescape=True)
        document.save(written)
    except Exception as error:
        if template is None:
            raise
        # A template is a program of its writer's: whatever it raises is a fault of that input.
        raise InputError(Complaint(f"the template cannot be filled: {error}", Place(str(path)))) from error
    return reproducible(written.getvalue())


def _opened(path: Path) -> "DocxTemplate":
    from docx.opc.exceptions import OpcError
    from docxtpl import DocxTemplate

    try:
        document = DocxTemplate(io.BytesIO(path.read_bytes()))
        document.init_docx()
    except FileNotFoundError:
        raise InputError(Complaint("there is no such file", Place(str(path)))) from None
    except (OSError, zipfile.BadZipFile, KeyError, ValueError, SyntaxError, OpcError) as error:
        raise InputError(Complaint("not a Word document that can serve as a template", Place(str(path)))) from error
    return document


def _fields(sheet: SchemeSheet, document: "DocxTemplate") -> dict[str, object]:
    """The sheet as names and values, with pictures in place of drawings and a shade for every row."""
    from docx.shared import Mm
    from docxtpl import InlineImage

    def filled(value: object) -> object:
        if isinstance(value, str):
            return _NOT_IN_XML.sub("", value)
        if isinstance(value, tuple):
            return tuple(filled(item) for item in value)
        if not is_dataclass(value) or isinstance(value, type):
            return value
        entry = {field.name: filled(getattr(value, field.name)) for field in fields(value)}
        if "is_answer" in entry:
            entry["shade"] = ANSWER_SHADE if entry["is_answer"] else NO_SHADE
        if entry.get("figure"):
            image = io.BytesIO(picture(str(entry["figure"])))
            entry["figure"] = InlineImage(document, image, width=Mm(FIGURE_MILLIMETRES))
        return entry

    found = filled(sheet)
    return dict(found) if isinstance(found, Mapping) else {}
