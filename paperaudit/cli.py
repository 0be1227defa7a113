"""The command line: reads the arguments, calls what does the work, prints, returns the exit status."""

import argparse
import gc
import logging
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final, Literal

from paperaudit import __version__
from paperaudit.errors import InputError, OutputError

if TYPE_CHECKING:
    from paperaudit.model.audited import AuditedPaper

FINE, ERRORS_FOUND, UNREADABLE = 0, 1, 2
NOT_BUILT: Final = ("analyse", "moderate", "desk")
"""Commands that are promised and not there yet."""
_PAPER_HELP: Final = "a question file (.yaml), a workbook (.xlsx) or a draft (.pdf); - reads standard input"


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command. Returns 0 for no error found, 1 for errors found, 2 for what cannot be read or done."""
    if arguments is None:
        quicken()
    given = list(sys.argv[1:] if arguments is None else arguments)
    _print_utf8()
    if given and given[0] in NOT_BUILT:
        _complain(f"the command {given[0]} is not built yet")
        return UNREADABLE
    options = parser().parse_args(given)
    logging.basicConfig(stream=sys.stderr, level=logging.DEBUG if options.debug else logging.CRITICAL)
    try:
        status: int = options.run(options)
        sys.stdout.flush()
    except InputError as error:
        for complaint in error.complaints:
            _complain(complaint.describe())
        return UNREADABLE
    except OutputError as error:
        _complain(str(error))
        return UNREADABLE
    except BrokenPipeError:
        # Who reads the output has had enough; nothing more can be flushed at the end.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return FINE
    except KeyboardInterrupt:
        return 130
    except Exception as error:
        logging.getLogger(__name__).debug("", exc_info=True)
        _complain(f"internal error ({type(error).__name__}); run the same command with --debug to see where")
        return UNREADABLE
    return status


def parser() -> argparse.ArgumentParser:
    """The commands with their arguments and options."""
    top = argparse.ArgumentParser(
        prog="paperaudit",
        description="Audits a mathematics test before it goes to print.",
        epilog="Exit status: 0 no error found, 1 errors found, 2 the input could not be read or the command was wrong.",
    )
    top.add_argument("--version", action="version", version=f"%(prog)s {__version__}")
    common = argparse.ArgumentParser(add_help=False)
    common.add_argument("--debug", action="store_true", help="print what a developer needs when something goes wrong")
    commands = top.add_subparsers(title="commands", metavar="COMMAND", required=True)

    def command(name: str, does: str, run: object) -> argparse.ArgumentParser:
        added = commands.add_parser(name, help=does, description=does, parents=[common])
        added.set_defaults(run=run)
        return added

    demo = command("demo", "audit the shipped demonstration paper and write every output", _demo)
    demo.add_argument("folder", nargs="?", default="paperaudit-demo", metavar="DIR", help="where to (%(default)s)")

    check = command("check", "audit papers", _check)
    check.add_argument("papers", nargs="+", metavar="PAPER", help=_PAPER_HELP)
    check.add_argument("--answers", metavar="FILE", help="the setter's own answers (.yaml, .xlsx, .pdf), for one paper")
    check.add_argument("--json", action="store_true", help="print JSON; a list of audits for several papers")
    check.add_argument("--report", metavar="OUT.html", help="write the report as a web page too, for one paper")

    read = command("read", "write the question file that a draft amounts to", _read)
    read.add_argument("draft", metavar="DRAFT.pdf", help="a draft; - reads standard input")
    read.add_argument("--answers", metavar="FILE", help="the setter's own answers (.yaml, .xlsx, .pdf)")
    read.add_argument("-o", dest="out", required=True, metavar="OUT.yaml")

    scheme = command("scheme", "write the mark scheme", _scheme)
    scheme.add_argument("paper", metavar="PAPER", help=_PAPER_HELP)
    scheme.add_argument("-o", dest="out", required=True, metavar="OUT", help="a .pdf, .docx, .html or .md file")
    scheme.add_argument("--template", metavar="OWN.docx", help="your own Word template, for a .docx mark scheme")

    grid = command("grid", "write the marks by skill, strand and level", _grid)
    grid.add_argument("paper", metavar="PAPER", help=_PAPER_HELP)
    grid.add_argument("-o", dest="out", required=True, metavar="OUT.xlsx")

    marks = command("marks", "write the marks template for a class", _marks)
    marks.add_argument("paper", metavar="PAPER", help=_PAPER_HELP)
    marks.add_argument("--names", metavar="NAMES.csv", help="the class list: Name, or Name and Surname")
    marks.add_argument("-o", dest="out", required=True, metavar="OUT.xlsx")

    figure = command("figure", "write a question's figure", _figure)
    figure.add_argument("paper", metavar="PAPER", help=_PAPER_HELP)
    figure.add_argument("--question", required=True, metavar="NUMBER", help="a question or part: 1, or 1.a")
    figure.add_argument("-o", dest="out", required=True, metavar="OUT", help="a .svg, .pdf, .docx or .png file")
    figure.add_argument(
        "--triangle-sides",
        action="store_true",
        help="draw the sides of the triangle asked about and their produced parts differently",
    )
    figure.add_argument("--not-to-scale", action="store_true", help="draw a sketch that does not give the answer away")
    figure.add_argument(
        "--cases", action="store_true", help="draw all figures that the givens allow, side by side and true to scale"
    )

    explain = command("explain", "say what a finding means and how to mend it", _explain)
    explain.add_argument("name", nargs="+", metavar="NAME", help="the finding's name, such as answer-differs")

    blank = command("blank", "write an empty workbook to fill in", _blank)
    blank.add_argument("out", metavar="OUT.xlsx")
    return top


def _demo(options: argparse.Namespace) -> int:
    from paperaudit.demo import run_demo

    print(run_demo(options.folder), end="")
    return FINE


def _check(options: argparse.Namespace) -> int:
    from paperaudit.audit import has_errors
    from paperaudit.reports.output import checked_target

    if len(options.papers) > 1 and (options.answers or options.report):
        _complain("--answers and --report go with one paper, several were given")
        return UNREADABLE
    target = checked_target(options.report, (".html",), options.papers) if options.report else None
    audits, unreadable = [], False
    for paper in options.papers:
        try:
            audits.append(_audited(paper, options.answers))
        except InputError as error:
            unreadable = True
            for complaint in error.complaints:
                _complain(complaint.describe())
    if target and audits:
        from paperaudit.readers.source import draft_pages
        from paperaudit.reports import output, page

        output.write(target, page.render(audits[0], draft_pages(options.papers[0])))
    if audits:
        _show(audits, options.json, len(options.papers) > 1)
    if unreadable:
        return UNREADABLE
    return ERRORS_FOUND if any(has_errors(audited) for audited in audits) else FINE


def _audited(source: str, answers: str | None = None) -> "AuditedPaper":
    from paperaudit.audit import audit_file
    from paperaudit.reports.progress import under_way

    with under_way(f"auditing {source}") as told:
        return audit_file(source, answers, told)


def _show(audits: "Sequence[AuditedPaper]", as_json: bool, several: bool) -> None:
    if as_json:
        from paperaudit.reports import json_report

        texts = [json_report.render(audited) for audited in audits]
        print("[\n" + ",\n".join(text.rstrip() for text in texts) + "\n]" if several else texts[0].rstrip())
        return
    from rich.console import Console

    from paperaudit.reports import terminal

    console = Console(highlight=False, soft_wrap=False, emoji=False)
    for at, audited in enumerate(audits):
        if at:
            console.print()
        terminal.show(audited, console)


def _read(options: argparse.Namespace) -> int:
    from paperaudit.reports import output

    target = output.checked_target(options.out, (".yaml", ".yml"), [options.draft])
    from paperaudit.readers.source import draft_tree
    from paperaudit.reports import question_file
    from paperaudit.reports.progress import under_way

    with under_way(f"reading {options.draft}") as told:
        tree = draft_tree(options.draft, options.answers, told)
    output.write(target, question_file.render(tree, options.draft))
    print(question_file.summary(tree, options.out), end="")
    return FINE


def _scheme(options: argparse.Namespace) -> int:
    from paperaudit.reports import output

    target = output.checked_target(options.out, (".pdf", ".docx", ".html", ".md"), [options.paper])
    audited = _audited(options.paper)
    from paperaudit.other_ways import with_other_ways
    from paperaudit.reports import scheme

    template = Path(options.template) if options.template is not None else None
    output.write(target, scheme.render(with_other_ways(audited), target.suffix.lower(), template))
    return FINE


def _grid(options: argparse.Namespace) -> int:
    from paperaudit.reports import output

    target = output.checked_target(options.out, (".xlsx",), [options.paper])
    audited = _audited(options.paper)
    from paperaudit.reports import grid

    output.write(target, grid.render(audited))
    return FINE


def _marks(options: argparse.Namespace) -> int:
    from paperaudit.readers.names import read_names
    from paperaudit.reports import output

    target = output.checked_target(options.out, (".xlsx",), [options.paper])
    names = read_names(options.names) if options.names else ()
    audited = _audited(options.paper)
    from paperaudit.reports import marks

    output.write(target, marks.render(audited, names))
    return FINE


def _figure(options: argparse.Namespace) -> int:
    from paperaudit.reports import output
    from paperaudit.reports.drawn import cases_of, caution, figure_of
    from paperaudit.reports.figure_file import ENDINGS, figure_file

    if options.cases and (options.triangle_sides or options.not_to_scale):
        _complain("--cases was read with --triangle-sides or --not-to-scale, expected it alone")
        return UNREADABLE
    target = output.checked_target(options.out, ENDINGS, [options.paper])
    audited = _audited(options.paper)
    if options.cases:
        output.write(target, figure_file(cases_of(audited, options.question), target.suffix.lower()))
        return FINE
    colours: Literal["", "triangle-sides"] = "triangle-sides" if options.triangle_sides else ""
    drawing = figure_of(audited, options.question, colours, "sketch" if options.not_to_scale else "true")
    output.write(target, figure_file(drawing, target.suffix.lower()))
    if said := caution(audited, options.question):
        _complain(said)
    return FINE


def _explain(options: argparse.Namespace) -> int:
    from paperaudit.checks import explain

    print(explain(" ".join(options.name)).rstrip())
    return FINE


def _blank(options: argparse.Namespace) -> int:
    from paperaudit.reports import output

    target = output.checked_target(options.out, (".xlsx",))
    output.refuse_existing(target)
    from paperaudit.reports.blank import blank_workbook

    output.write(target, blank_workbook())
    return FINE


def quicken() -> None:
    """Sets up a process that is ours alone and soon over: looking for garbage costs a tenth of a short run.

    For figures of ten points threads cost more than they give; without them sums have one order on every machine.
    """
    gc.set_threshold(100_000, 50, 50)
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")


def _complain(message: str) -> None:
    print(f"paperaudit: {message}", file=sys.stderr)


def _print_utf8() -> None:
    """Mathematics needs more letters than some terminals' own encoding has."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="replace")
