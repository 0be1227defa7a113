"""The command line: every command, its exit status, its complaints, and what it leaves behind."""

import json
import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from paperaudit.cli import NOT_BUILT, main
from paperaudit.resources import shipped

SOUND = str(shipped("papers", "sail-loft-term-test", "paper.yaml"))
DRAFT = str(shipped("papers", "sail-loft-draft", "paper.yaml"))
ROOT = Path(__file__).resolve().parent.parent

HEAVY = ("sympy", "pandas", "openpyxl", "typst", "docxtpl", "docx", "jinja2", "pdfplumber", "z3", "matplotlib")
"""What the audit itself has no use for."""


def run(*arguments: str, read: bytes = b"", code: str = "") -> subprocess.CompletedProcess[bytes]:
    """A process of its own, as a user starts it."""
    start = ["-c", code] if code else ["-m", "paperaudit"]
    return subprocess.run(
        [sys.executable, *start, *arguments],
        input=read,
        capture_output=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )


def paper(tmp_path: Path, text: str, name: str = "paper.yaml") -> str:
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    return str(path)


# Exit status and output of check


def test_a_sound_paper_gives_nought_and_a_faulty_one_gives_one(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", SOUND]) == 0
    assert "No error found" in capsys.readouterr().out
    assert main(["check", DRAFT]) == 1
    out = capsys.readouterr()
    assert "answer-differs" in out.out and out.err == ""


@pytest.mark.parametrize("name", ["sail-loft-term-test", "sail-loft-draft"])
def test_the_stored_results_still_hold(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    main(["check", "--json", str(shipped("papers", name, "paper.yaml"))])
    stored = shipped("papers", name, "expected.json").read_text(encoding="utf-8")
    assert capsys.readouterr().out == stored


def test_the_sound_paper_is_confirmed_throughout_and_each_planted_fault_is_found() -> None:
    sound = json.loads(shipped("papers", "sail-loft-term-test", "expected.json").read_text(encoding="utf-8"))
    assert {part["verdict"] for part in sound["parts"]} <= {"confirmed", "derived"}
    assert [one for one in sound["findings"] if one["severity"] != "note"] == []
    draft = json.loads(shipped("papers", "sail-loft-draft", "expected.json").read_text(encoding="utf-8"))
    found = {(one["name"], one["part"]) for one in draft["findings"]}
    assert found >= {
        ("answer-differs", "1.b"),
        ("reasons-not-rewarded", "2.a"),
        ("question-total-differs", "2"),
        ("answer-differs", "3"),
        ("marks-missing", "4.b"),
        ("impossible-givens", "5.a"),
        ("not-determined", "7"),
        ("two-correct-options", "8"),
        ("unused-given", "8"),
        ("paper-total-differs", ""),
        ("level-off-target", ""),
    }
    assert {"numbering-gap", "cover-differs"} <= {name for name, _ in found}


def test_the_same_paper_gives_the_same_bytes_in_another_process() -> None:
    first = run("check", "--json", DRAFT)
    second = run("check", "--json", DRAFT)
    assert first.returncode == second.returncode == 1
    assert first.stdout == second.stdout == Path(DRAFT).with_name("expected.json").read_bytes()


def test_standard_input_is_read() -> None:
    done = run("check", "--json", "-", read=Path(SOUND).read_bytes())
    assert (done.returncode, done.stderr) == (0, b"")
    stored = Path(SOUND).with_name("expected.json").read_text(encoding="utf-8")
    assert done.stdout.decode() == stored.replace('"file": "paper.yaml"', '"file": "standard input"')


def test_several_papers_give_a_list_and_the_worst_status(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert main(["check", "--json", SOUND, DRAFT]) == 1
    assert [len(one["parts"]) for one in json.loads(capsys.readouterr().out)] == [14, 11]
    assert main(["check", "--json", SOUND, str(tmp_path / "none.yaml")]) == 2
    out = capsys.readouterr()
    assert len(json.loads(out.out)) == 1
    assert "there is no such file" in out.err


def test_answers_of_the_setter_are_laid_on_the_paper(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    source = paper(tmp_path, "questions: [{number: 1, ask: solve x + 2 = 5, marks: 2}]")
    key = paper(tmp_path, "answers: {1: x = 4}", "key.yaml")
    assert main(["check", source]) == 0
    assert main(["check", "--json", source, "--answers", key]) == 1
    out = capsys.readouterr().out
    audit = json.loads(out[out.index("{") :])
    assert (audit["parts"][0]["verdict"], audit["parts"][0]["stated"]) == ("differs", "x = 4")


def test_the_report_is_written_beside_the_printed_audit(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "report.html"
    assert main(["check", DRAFT, "--report", str(target)]) == 1
    assert target.read_text(encoding="utf-8").startswith("<!")
    assert "answer-differs" in capsys.readouterr().out


# Bad input


UNREADABLE = {
    "empty": ("", "the file is empty"),
    "not YAML": ("a: [1", "this is not YAML"),
    "a tag": ("title: !!python/object:os.system x", "the tag tag:yaml.org,2002:python/object:os.system"),
    "an anchor": ("a: &a [1, 2]\nb: [*a, *a]", "the anchor &a"),
    "a wrong type": ("questions: [{number: 1, marks: three}]", "question 1: marks is 'three', expected a whole number"),
    "an unknown key": ("questions: [{number: 1, makrs: 3}]", "did you mean 'marks'?"),
    "a duplicate number": ("questions: [{number: 1, parts: [{number: a}, {number: a}]}]", "'a' was read twice"),
    "ten megabytes": ("# rope\n" * 1_450_000, "larger than"),
    "an unreadable ask": ("questions: [{number: 1, ask: solve 3(x − = 4, marks: 2}]", "part 1: ask: 'solve 3(x − = 4'"),
    "an unreadable given": (
        "questions: [{number: 1, figure: [triangle ABC], given: [AB glorps AC], ask: ∠ABC}]",
        "question 1: given: 'AB glorps AC' was not understood",
    ),
    "an expression a kilometre long": (
        "questions: [{number: 1, ask: calculate " + "1 + " * 50_000 + "1}]",
        "expected at most",
    ),
    "a tower of powers": ("questions: [{number: 1, ask: calculate 9^9^9^9^9^9}]", "part 1"),
    "brackets without end": ("questions: [{number: 1, ask: calculate " + "(" * 200 + "1" + ")" * 200 + "}]", "nested"),
}


@pytest.mark.parametrize(("text", "expected"), UNREADABLE.values(), ids=UNREADABLE)
def test_what_cannot_be_read_gives_two_and_says_why(
    text: str, expected: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    source, target = paper(tmp_path, text), tmp_path / "scheme.md"
    assert main(["check", source]) == 2
    out = capsys.readouterr()
    assert out.out == ""
    assert out.err.startswith(f"paperaudit: {source}") and expected in out.err
    assert len(out.err) < 1000
    assert main(["scheme", source, "-o", str(target)]) == 2
    assert sorted(one.name for one in tmp_path.iterdir()) == ["paper.yaml"]


def test_all_complaints_come_at_once_those_about_statements_too(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    source = paper(
        tmp_path,
        """\
title: x
questions:
  - number: 1
    makrs: 3
    ask: solve 3(x − = 4
  - number: 2
    marks: three
    figure: [triangel ABC]
    ask: ∠ABC
""",
    )
    assert main(["check", source]) == 2
    lines = capsys.readouterr().err.splitlines()
    assert [line.split(": ")[1] for line in lines] == [f"{source}, line {number}" for number in (4, 5, 7, 8)]
    assert "did you mean 'triangle'?" in lines[3]


def test_no_file_a_folder_and_a_workbook_that_is_none(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    workbook = tmp_path / "paper.xlsx"
    workbook.write_bytes(b"PK\x03\x04 nothing")
    for source, expected in (
        (str(tmp_path / "none.yaml"), "there is no such file"),
        (str(tmp_path), "this is a folder"),
        (str(workbook), "this is not a workbook"),
    ):
        assert main(["check", source]) == 2
        assert capsys.readouterr().err.startswith(f"paperaudit: {source}: {expected}")


# Outputs


COMMANDS = {
    "scheme": (["scheme", DRAFT], "scheme.pdf"),
    "grid": (["grid", DRAFT], "grid.xlsx"),
    "marks": (["marks", DRAFT], "marks.xlsx"),
    "figure": (["figure", DRAFT, "--question", "1"], "figure.svg"),
}


@pytest.mark.parametrize(("command", "name"), COMMANDS.values(), ids=COMMANDS)
def test_a_command_writes_its_file_whole_over_an_old_one(command: list[str], name: str, tmp_path: Path) -> None:
    target = tmp_path / name
    target.write_bytes(b"old" * 1_000_000)
    assert main([*command, "-o", str(target)]) == 0
    first = target.read_bytes()
    assert first and not first.startswith(b"old")
    assert main([*command, "-o", str(target)]) == 0
    assert target.read_bytes() == first, "the same paper gives the same bytes"
    assert [one.name for one in tmp_path.iterdir()] == [name]


@pytest.mark.parametrize(("command", "name"), COMMANDS.values(), ids=COMMANDS)
def test_an_output_that_cannot_be_written_gives_two(
    command: list[str], name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "file").write_text("")
    (tmp_path / "folder").with_suffix(Path(name).suffix).mkdir()
    for target, expected in (
        (tmp_path / "file" / name, "is not there"),
        (tmp_path / "missing" / name, "is not there"),
        ((tmp_path / "folder").with_suffix(Path(name).suffix), "this is a folder"),
        (tmp_path / "out.txt", "expected one of ." + name.split(".")[1]),
    ):
        assert main([*command, "-o", str(target)]) == 2
        assert expected in capsys.readouterr().err
    assert sorted(one.name for one in tmp_path.iterdir()) == sorted(["file", f"folder{Path(name).suffix}"])


def test_the_blank_workbook_goes_over_nothing_that_is_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "paper.xlsx"
    assert main(["blank", str(target)]) == 0
    assert main(["check", str(target)]) == 0
    filled = target.read_bytes()
    assert main(["blank", str(target)]) == 2
    assert "the file is there already" in capsys.readouterr().err
    assert main(["grid", str(target), "-o", str(target)]) == 2
    assert "this is the paper itself" in capsys.readouterr().err
    assert target.read_bytes() == filled


@pytest.mark.parametrize("ending", [".pdf", ".docx", ".html", ".md"])
def test_the_ending_picks_the_kind_of_scheme(ending: str, tmp_path: Path) -> None:
    target = tmp_path / f"scheme{ending}"
    assert main(["scheme", SOUND, "-o", str(target)]) == 0
    begins = {".pdf": b"%PDF", ".docx": b"PK", ".html": b"<!", ".md": b"#"}
    assert target.read_bytes().startswith(begins[ending])


def test_names_that_cannot_be_read_stop_the_marks_template(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    names = tmp_path / "names.csv"
    names.write_bytes("Name\nZo\xeb\n".encode("latin-1"))
    assert main(["marks", SOUND, "--names", str(names), "-o", str(tmp_path / "marks.xlsx")]) == 2
    assert "expected UTF-8" in capsys.readouterr().err
    assert not (tmp_path / "marks.xlsx").exists()


def test_a_figure_is_asked_for_by_a_number_that_is_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = str(tmp_path / "figure.svg")
    assert main(["figure", SOUND, "--question", "1.b", "-o", target]) == 0
    assert main(["figure", SOUND, "--question", "11", "-o", target]) == 2
    assert "expected one of 1, 1.a" in capsys.readouterr().err
    assert main(["figure", SOUND, "--question", "3", "-o", target]) == 2
    assert "no figure that can be drawn" in capsys.readouterr().err


def test_the_demonstration_writes_everything(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    folder = tmp_path / "new" / "demo"
    assert main(["demo", str(folder)]) == 0
    names = {one.name for one in folder.iterdir()}
    assert names >= {
        "paper.yaml",
        "ORIGIN.md",
        "report.html",
        "audit.json",
        "scheme.pdf",
        "scheme.docx",
        "scheme.html",
        "scheme.md",
        "grid.xlsx",
        "marks.xlsx",
        "figure-1.svg",
    }
    assert all(one.stat().st_size for one in folder.iterdir())
    told = capsys.readouterr().out
    assert all(name in told for name in names)
    assert (folder / "audit.json").read_bytes() == Path(DRAFT).with_name("expected.json").read_bytes()


def test_the_demonstration_needs_a_folder_that_can_be_made(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "file").write_text("")
    assert main(["demo", str(tmp_path / "file" / "demo")]) == 2
    assert "the folder cannot be made" in capsys.readouterr().err


# Commands as such


def test_explain_prints_the_page_of_a_finding_or_the_nearest_name(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "answer-differs"]) == 0
    assert capsys.readouterr().out.startswith("answer-differs")
    assert main(["explain", "anser-differs"]) == 2
    said = capsys.readouterr().err
    assert "did you mean 'answer-differs'?" in said and "unit-clash" not in said
    assert main(["explain", "mast"]) == 2
    assert "unit-clash" in capsys.readouterr().err


@pytest.mark.parametrize("words", [["Answer-Differs"], ["answer differs"], ["ANSWER_DIFFERS"], ["answer", "differs"]])
def test_explain_takes_a_name_however_it_is_written(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", *words]) == 0
    assert capsys.readouterr().out.startswith("answer-differs")


@pytest.mark.parametrize(
    ("question", "said"),
    [
        ("5.a", "no figure satisfies the givens of question 5.a; what was drawn is not to scale"),
        ("7", "the givens of question 7 leave several figures open"),
        ("1", ""),
    ],
)
def test_a_figure_that_is_not_the_only_one_is_written_with_a_word_on_it(
    question: str, said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    target = tmp_path / "figure.svg"
    assert main(["figure", DRAFT, "--question", question, "-o", str(target)]) == 0
    err = capsys.readouterr().err
    assert target.exists() and (said in err if said else err == "")


def test_the_blank_workbook_is_a_clean_paper(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = str(tmp_path / "blank.xlsx")
    assert main(["blank", target]) == 0
    assert main(["check", "--json", target]) == 0
    assert json.loads(capsys.readouterr().out)["findings"] == []


@pytest.mark.parametrize("command", NOT_BUILT)
def test_commands_to_come_say_so_and_are_not_in_the_help(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([command, "x"]) == 2
    assert f"the command {command} is not built yet" in capsys.readouterr().err
    with pytest.raises(SystemExit) as stopped:
        main(["--help"])
    assert stopped.value.code == 0
    assert f"\n    {command} " not in capsys.readouterr().out


@pytest.mark.parametrize("arguments", [[], ["chekc", "x"], ["check"], ["scheme", SOUND], ["check", SOUND, "--colour"]])
def test_a_wrong_command_gives_two(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(arguments)
    assert stopped.value.code == 2
    assert "usage: paperaudit" in capsys.readouterr().err


def test_answers_and_report_go_with_one_paper(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", SOUND, DRAFT, "--report", "out.html"]) == 2
    assert "go with one paper" in capsys.readouterr().err


def test_a_fault_of_our_own_is_told_in_a_line(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fail(name: str) -> str:
        raise ZeroDivisionError

    monkeypatch.setattr("paperaudit.checks.explain", fail)
    assert main(["explain", "answer-differs"]) == 2
    assert "internal error (ZeroDivisionError)" in capsys.readouterr().err


def test_mathematics_is_printed_whatever_the_locale() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "paperaudit", "check", SOUND],
        capture_output=True,
        check=False,
        env={**os.environ, "PYTHONPATH": str(ROOT), "LC_ALL": "C", "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"},
    )
    assert done.returncode == 0 and "∠ABC".encode() in done.stdout


def test_progress_is_shown_on_a_terminal_only() -> None:
    controller, terminal = pty.openpty()
    done = subprocess.run(
        [sys.executable, "-m", "paperaudit", "check", SOUND],
        stdout=subprocess.PIPE,
        stderr=terminal,
        check=False,
        env={**os.environ, "PYTHONPATH": str(ROOT), "TERM": "xterm"},
    )
    os.close(terminal)
    shown = os.read(controller, 10_000)
    os.close(controller)
    assert b"auditing" in shown
    assert b"auditing" not in done.stdout
    assert run("check", SOUND).stderr == b""


def test_a_reader_that_stops_reading_is_no_fault() -> None:
    code = f"import sys; from paperaudit.cli import main; sys.exit(main(['check', '--json', {DRAFT!r}]))"
    process = subprocess.Popen(
        [sys.executable, "-c", code],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )
    assert process.stdout and process.stderr
    process.stdout.close()
    errors = process.stderr.read()
    process.wait(60)
    process.stderr.close()
    assert errors == b""


def test_the_audit_imports_nothing_that_it_does_not_need() -> None:
    code = f"""
import io, sys
from paperaudit.cli import main
sys.stdout = io.TextIOWrapper(io.BytesIO())
main(["check", "--json", {DRAFT!r}])
main(["check", {DRAFT!r}])
print([name for name in {HEAVY!r} if name in sys.modules], file=sys.stderr)
"""
    assert run(code=code).stderr == b"[]\n"


def test_help_imports_no_engine() -> None:
    code = """
import io, sys
from paperaudit.cli import main
sys.stdout = io.StringIO()
try:
    main(["--help"])
except SystemExit:
    pass
print([name for name in ("numpy", "pydantic", "rich", "ruamel", "paperaudit.audit") if name in sys.modules],
      file=sys.stderr)
"""
    assert run(code=code).stderr == b"[]\n"
