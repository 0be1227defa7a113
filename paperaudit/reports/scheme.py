"""The mark scheme of an audited paper, as PDF, Word, HTML or Markdown."""

from pathlib import Path

from paperaudit.errors import Complaint, InputError
from paperaudit.model.audited import AuditedPaper
from paperaudit.reports.scheme_contents import contents

ENDINGS = (".pdf", ".docx", ".html", ".md")


def render(audited: AuditedPaper, ending: str, template: Path | None = None) -> bytes:
    """The mark scheme as the bytes of a file with that ending, the same bytes for the same paper.

    `template` is a department's own Word template and goes with .docx only. Raises InputError for
    another ending, a template that cannot be used, or a convention that there is no file for.
    """
    if ending not in ENDINGS:
        raise InputError(Complaint(f"a mark scheme cannot end in {ending!r}; expected one of {', '.join(ENDINGS)}"))
    if template is not None and ending != ".docx":
        raise InputError(Complaint(f"a template is for a .docx mark scheme, not for {ending}"))
    sheet = contents(audited)
    if ending == ".pdf":
        from paperaudit.reports.scheme_pages import pdf

        return pdf(sheet)
    if ending == ".docx":
        from paperaudit.reports.scheme_word import docx

        return docx(sheet, template)
    from paperaudit.reports.scheme_text import html, markdown

    return html(sheet) if ending == ".html" else markdown(sheet)
