"""The habits of the house: documents, names, sizes, layers, and what may never be called."""

import ast
import doctest
import importlib
import re
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from importlinter.cli import EXIT_STATUS_SUCCESS, lint_imports

from paperaudit import checks, cli

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "paperaudit"
MODULES = sorted(PACKAGE.rglob("*.py"))
LONGEST_MODULE = 300
EMPTY_NAMES = {"utils", "util", "helpers", "helper", "manager", "data", "misc", "common", "base", "tools"}
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "paperaudit", "schemes", "tests", "fixtures"}
NEVER_CALLED = {"eval", "exec", "sympify", "parse_expr", "__import__", "system", "popen", "literal_eval"}
NEVER_IMPORTED = {
    "pickle",
    "marshal",
    "shelve",
    "yaml",
    "subprocess",
    "socket",
    "http",
    "urllib",
    "ftplib",
    "smtplib",
    "requests",
    "httpx",
    "aiohttp",
    "ctypes",
}


TREES = {path: ast.parse(path.read_text(encoding="utf-8")) for path in MODULES}


def where(path: Path) -> str:
    return str(path.relative_to(ROOT))


def nodes() -> Iterator[tuple[str, ast.AST]]:
    for path, tree in TREES.items():
        for node in ast.walk(tree):
            yield where(path), node


def test_there_is_something_to_look_at() -> None:
    assert len(MODULES) > 100


def test_a_module_says_in_one_sentence_what_it_is_for() -> None:
    first_lines = {where(path): (ast.get_docstring(tree) or "").split("\n")[0] for path, tree in TREES.items()}
    sentence = re.compile(r"[^a-z\s](?!.*[.] ).*[.]")
    assert {name: line for name, line in first_lines.items() if not sentence.fullmatch(line)} == {}


def test_modules_are_short() -> None:
    lengths = {where(path): len(path.read_text(encoding="utf-8").splitlines()) for path in MODULES}
    assert {name: length for name, length in lengths.items() if length > LONGEST_MODULE} == {}


def test_names_say_what_is_meant() -> None:
    assert [where(path) for path in MODULES if {path.stem, path.parent.name} & EMPTY_NAMES] == []


def public(body: list[ast.stmt]) -> Iterator[ast.FunctionDef | ast.ClassDef]:
    for node in body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from public(node.body)


def test_public_names_are_documented() -> None:
    found = [
        f"{where(path)}: {node.name}"
        for path, tree in TREES.items()
        for node in public(tree.body)
        if not ast.get_docstring(node)
    ]
    assert found == []


def test_examples_in_docstrings_hold() -> None:
    names = [".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__") for path in MODULES]
    results = {
        name: doctest.testmod(importlib.import_module(name)) for name in names if not name.endswith("__main__")
    }  # importing that runs the command line
    assert [name for name, result in results.items() if result.failed] == []
    assert sum(result.attempted for result in results.values()) > 50


def called(node: ast.Call) -> str:
    return node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")


def test_nothing_that_is_read_can_run() -> None:
    calls = [(name, node) for name, node in nodes() if isinstance(node, ast.Call)]
    assert [(name, called(node)) for name, node in calls if called(node) in NEVER_CALLED] == []
    loaders = [node for _, node in calls if called(node) == "YAML"]
    options = [{word.arg: ast.unparse(word.value) for word in node.keywords} for node in loaders]
    assert options and all(one == {"typ": "'safe'", "pure": "True"} for one in options)


def test_nothing_leaves_the_machine_and_no_other_program_runs() -> None:
    imported = []
    for name, node in nodes():
        if isinstance(node, ast.Import):
            imported += [(name, one.name.split(".")[0]) for one in node.names]
        elif isinstance(node, ast.ImportFrom):
            imported.append((name, (node.module or "").split(".")[0]))
    assert [one for one in imported if one[1] in NEVER_IMPORTED] == []


def test_markup_lives_in_templates() -> None:
    markup = re.compile(r"</[a-z]|(?<!\?P)<[a-z]+( [a-z-]+=|/?>)")
    texts = [
        (name, node.value) for name, node in nodes() if isinstance(node, ast.Constant) and isinstance(node.value, str)
    ]
    assert [one for one in texts if markup.search(one[1])] == []


def test_the_layers_hold(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    assert lint_imports(config_filename=str(ROOT / "pyproject.toml"), no_cache=True) == EXIT_STATUS_SUCCESS


def test_the_top_of_the_project_is_tidy() -> None:
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False)
    if listed.returncode == 0:
        names = {line.split("/")[0].strip('"') for line in listed.stdout.splitlines()}
    else:  # unpacked from an archive
        names = {path.name for path in ROOT.iterdir()}
    assert {name for name in names if not name.startswith(".")} == TOP_LEVEL


@pytest.mark.parametrize("name", checks.names())
def test_a_check_lives_in_its_own_file_and_shows_its_fault(name: str) -> None:
    check = checks.discovered()[name]
    assert (PACKAGE / "checks" / f"{name.replace('-', '_')}.py").is_file()
    assert check.faulty.strip() and check.clean.strip()
    assert check.faulty != check.clean
    assert all(text.strip().endswith(".") for text in (check.meaning, check.matters, check.mend))


PAPERS = sorted(path for path in (ROOT / "fixtures" / "papers").iterdir() if path.is_dir())


@pytest.mark.parametrize("folder", PAPERS, ids=lambda path: path.name)
def test_a_paper_of_the_fixtures_says_where_it_comes_from(folder: Path) -> None:
    assert {path.name for path in folder.iterdir()} >= {"paper.yaml", "expected.json", "ORIGIN.md"}


def commands() -> dict[str, set[str]]:
    """Every command of the program with its options."""
    (subparsers,) = (one for one in cli.parser()._subparsers._group_actions)  # type: ignore[union-attr]
    return {
        name: {option for action in parser._actions for option in action.option_strings}
        for name, parser in subparsers.choices.items()  # type: ignore[union-attr,attr-defined]
    }


def test_the_readme_names_every_command_and_no_option_that_is_not_there() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    known = commands()
    lines = re.findall(r"(?:^|[\s`/])paperaudit ([a-z]+)([^`\n]*)", "\n".join(re.findall(r"`+[^`]+`+", readme)))
    assert {name for name, _ in lines} == set(known)
    for name, rest in lines:
        assert set(re.findall(r"(?<![\w-])--?[a-z]+", rest)) <= known[name]
