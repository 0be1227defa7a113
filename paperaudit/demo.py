"""The demonstration: audits the shipped faulty paper and writes every output into a folder."""

from paperaudit.audit import audit_read
from paperaudit.model.audited import AuditedPaper
from paperaudit.model.finding import Severity
from paperaudit.other_ways import with_other_ways
from paperaudit.readers.question_file import read_question_file
from paperaudit.reports.output import made_folder, write_all
from paperaudit.resources import shipped

PAPER = "sail-loft-draft"
"""The shipped paper that is shown; its faults are planted, and its ORIGIN.md lists them."""
NAMES = ("Adeola Keel", "Bram Halyard", "Chandra Reef", "Dineo Mast", "Eilidh Tiller", "Farid Spinnaker")
"""An invented class."""

_OUTPUTS = {
    "report.html": "the audit as a web page: the verdict, each part with its working, each finding with its why",
    "audit.json": "the audit for other programs",
    "scheme.pdf": "the mark scheme",
    "scheme.docx": "the mark scheme for Word",
    "scheme.html": "the mark scheme as a web page",
    "scheme.md": "the mark scheme as plain text",
    "grid.xlsx": "marks by skill, strand and level, against the blueprint",
    "marks.xlsx": "the marks template of a class",
}


def run_demo(folder: str) -> str:
    """Writes the outputs into `folder`, which is made, and returns a short guide to them.

    Everything is worked out before the first file is written. Raises OutputError.
    """
    target = made_folder(folder)
    source = shipped("papers", PAPER, "paper.yaml")
    text = source.read_text(encoding="utf-8")
    audited = audit_read(read_question_file(text, "paper.yaml"))
    origin = source.with_name("ORIGIN.md").read_text(encoding="utf-8")
    contents = {"paper.yaml": text, "ORIGIN.md": origin, **_rendered(audited)}
    write_all(target, contents)
    return _guide(audited, str(target), list(contents))


def _rendered(audited: AuditedPaper) -> dict[str, bytes | str]:
    """Every output by the name of its file."""
    from paperaudit.reports import grid, json_report, marks, page, scheme
    from paperaudit.reports.drawn import drawn_questions

    marked = with_other_ways(audited)
    contents: dict[str, bytes | str] = {
        "report.html": page.render(audited),
        "audit.json": json_report.render(audited),
        **{f"scheme{ending}": scheme.render(marked, ending) for ending in (".pdf", ".docx", ".html", ".md")},
        "grid.xlsx": grid.render(audited),
        "marks.xlsx": marks.render(audited, NAMES),
    }
    return contents | {f"figure-{number}.svg": drawn for number, drawn in drawn_questions(audited)}


def _guide(audited: AuditedPaper, folder: str, names: list[str]) -> str:
    counts = {severity: sum(one.severity is severity for one in audited.findings) for severity in Severity}
    told = ", ".join(f"{count} {severity.value}{'' if count == 1 else 's'}" for severity, count in counts.items())
    figures = [name for name in names if name.endswith(".svg")]
    width = max(len(name) for name in names)
    lines = [
        f"Audited “{audited.paper.title}”: {len(audited.parts)} parts, {told}.",
        f"Written to {folder}:",
        f"  {'paper.yaml':<{width}}  the question file, with faults planted for this demonstration",
        f"  {'ORIGIN.md':<{width}}  the planted faults",
        *(f"  {name:<{width}}  {what}" for name, what in _OUTPUTS.items()),
        *(f"  {name:<{width}}  a question's figure" for name in figures),
        "Start with report.html. To audit a paper of your own:",
        "  paperaudit blank paper.xlsx     (or write a question file like paper.yaml)",
        "  paperaudit check paper.xlsx",
    ]
    return "\n".join(lines) + "\n"
