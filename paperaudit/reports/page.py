"""The audit as one self-contained HTML page: verdict, table of parts, findings, workings, cautions."""

from paperaudit.model.audited import AuditedPaper
from paperaudit.reports.account import STANDING_SIGNS, summary
from paperaudit.reports.page_contents import cover, finding_shown, parts
from paperaudit.reports.page_pictures import pictures
from paperaudit.resources import shipped

CAUTIONS = (
    "Confidential: this page is about a draft test and shows its answers.",
    "It does not replace the judgement of the examiner and the moderator.",
    "Where it differs from the marking policy of the school or the examining authority, that policy prevails.",
    "Skills and levels that the paper does not state are proposals.",
)


def render(audited: AuditedPaper, draft: bytes = b"") -> str:
    """The page. It needs no script and no other file, and shows what the paper says as text only.

    `draft` is the PDF that was audited, if it was one: its pages are shown with a frame around each finding.
    """
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    environment = Environment(
        loader=FileSystemLoader(shipped("schemes", "templates", "page")),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    verdict = summary(audited)
    return environment.get_template("page.html").render(
        title=audited.paper.title or "Untitled test",
        cover=cover(audited),
        summary=verdict,
        sign=STANDING_SIGNS[verdict.standing],
        parts=parts(audited),
        findings=[finding_shown(finding, audited, number) for number, finding in enumerate(audited.findings, start=1)],
        pages=pictures(draft, audited.findings) if draft else (),
        cautions=CAUTIONS,
    )
