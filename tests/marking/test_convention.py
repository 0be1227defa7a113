"""Conventions as data: what is shipped holds together, what does not is refused with its reason."""

from pathlib import Path

import pytest

from paperaudit.errors import InputError
from paperaudit.marking import convention
from paperaudit.resources import shipped


@pytest.mark.parametrize("name", convention.conventions())
def test_every_mark_of_the_tariff_has_its_place_in_the_legend(name: str) -> None:
    found = convention.load(name)
    for table in (found.with_reasons, found.without_reasons):
        for tariff in table.values():
            assert {*tariff.least, *tariff.usual, *tariff.most} <= set(found.kinds)
    for kind in found.kinds.values():
        assert {*kind.needs, *([kind.alone] if kind.alone else [])} <= set(found.kinds)


# Glossary of mark types, Cambridge International's help page; IB Mathematics HL markscheme, May 2007.
@pytest.mark.parametrize("name", convention.conventions())
def test_accuracy_depends_on_method(name: str) -> None:
    assert convention.load(name).kinds["A"].needs == ("M",)


# South African statement-and-reason legend, from memory: R only where its statement is right.
def test_a_reason_depends_on_the_statement_on_its_line() -> None:
    reason = convention.load("statement-reason").kinds["R"]
    assert "S" in reason.needs
    assert reason.where == "on its line"


def test_an_unknown_convention_names_the_nearest() -> None:
    with pytest.raises(InputError, match="did you mean 'method-accuracy'"):
        convention.load("method-acuracy")


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (lambda text: text.replace("| M A |", "| Q |"), "Q not among the marks"),
        (lambda text: text.replace("where: before", "where: behind"), "where is 'behind'"),
        (lambda text: text.replace("    algebra:\n", "    sums:\n"), "not known, expected one of"),
        (lambda text: text.replace("A | A R | M A R", "A A A | A | A"), "no more at least than usually"),
        (lambda text: text.replace("A | A R | M A R", "A | A R"), "expected codes at least . usually . at most"),
        (lambda text: text.replace("notes:", "nots:"), "notes: missing"),
        (lambda text: "- a list", "expected names with values"),
        (lambda text: "title: !!python/object:os.system {}", "not readable as YAML"),
        (lambda text: "title: [", "not readable as YAML"),
    ],
)
def test_a_faulty_file_says_what_is_wrong(tmp_path: Path, change: object, message: str) -> None:
    text = shipped("schemes", "conventions", "method-accuracy.yaml").read_text(encoding="utf-8")
    path = tmp_path / "ours.yaml"
    path.write_text(change(text), encoding="utf-8")  # type: ignore[operator]
    with pytest.raises(InputError, match=message):
        convention.read("ours", path)
