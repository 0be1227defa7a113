"""Every module of the strands has a derivation that is broken on purpose, and its second way notices."""

import ast
import inspect
from dataclasses import replace
from importlib import import_module
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.model.derivation import Derived, NotDetermined, NotRead, Several
from paperaudit.strands.ratios.laws import Law
from paperaudit.strands.ratios.motion import MOTION
from paperaudit.strands.registry import derive
from tests.strands.mutants import forget, functions, modules
from tests.strands.told import outcome_of, reading_of

HERE = Path(__file__).parent
BROKEN: list[dict[str, Any]] = YAML(typ="safe", pure=True).load(HERE / "broken_derivations.yaml")

ELSEWHERE = {
    "algebra.induction": "test_proofs_in_steps.py: test_a_wrong_step_of_an_induction_is_caught",
    "algebra.inductive_multiples": "test_proofs_in_steps.py: test_a_wrong_multiple_is_caught",
    "algebra.symmetric": "test_two_sentences.py: test_a_wrong_identity_of_roots_is_caught",
    "algebra.rewriting": "test_algebra.py: test_a_broken_derivation_is_caught",
    "calculating": "test_number.py: test_a_broken_line_is_caught_by_the_second_evaluation",
    "equation_steps": "test_equations.py: test_a_broken_system_is_caught_by_putting_it_back",
    "equations": "test_equations.py: test_a_broken_solution_is_caught_by_putting_it_back",
    "functions_given": "test_equations.py: test_a_function_that_is_put_in_wrongly_is_caught",
    "number": "test_number.py: test_a_broken_rule_of_arithmetic_is_caught",
    "numbers.places": "test_numbers.py: test_wrong_digits_are_caught",
    "ratios.motion": "test_broken_derivations.py: test_a_wrong_law_of_motion_is_caught",
    "solving_steps": "test_equations.py: test_a_broken_solution_is_caught_by_putting_it_back",
    "stories.irrational": "test_stories.py: test_a_wrong_equation_is_caught_by_the_sentences",
    "stories.solving": "test_stories.py: test_a_wrong_equation_is_caught_by_the_sentences",
    "stories.strand": "test_stories.py: test_a_wrong_solution_is_caught",
    "unknowns": "test_equations.py: test_a_solution_that_is_not_the_only_one_is_caught",
    "waves.identities": "test_graphs_and_functions.py: test_a_wrong_reduction_or_formula_is_caught",
}
"""Where the central function of a module is broken by a test of its own."""

DERIVES_NOTHING = {
    "accuracy", "algebra.confirming", "algebra.deriving", "algebra.root_lines", "algebra.strand",
    "algebra.working", "by_task", "chained", "chance.completed", "chance.lines", "chance.strand",
    "chance.words", "each_asked", "earlier", "equation_kinds", "functions.formulas", "functions.strand",
    "functions_checked", "geometry", "left_aside", "limits", "long_decimals", "movements.strand",
    "numbers.strand", "numbers.worked_rows", "numbers.working", "pi_taken", "plane.places", "plane.strand",
    "putting_in", "ratios.ending", "ratios.plain_amounts", "ratios.strand", "reached", "refusals", "registry",
    "sequences.strand", "settling", "statistics.lines", "statistics.strand", "strand", "substitution",
    "verdict", "waves.strand", "written_forms",
}  # fmt: skip
"""Modules that choose a derivation, write its lines or are the second way; geometry is broken in tests/geometry/."""


def broken_code(function: FunctionType, was: str, becomes: str) -> CodeType:
    """The code of a function with one place of its source changed; fails where the place is not there once."""
    module = inspect.getmodule(function)
    assert module is not None
    source, own = inspect.getsource(module), inspect.getsource(function)
    assert own.count(was) == 1, f"{was!r} stands {own.count(was)} times in {function.__qualname__}: mend this line"
    compiled = compile(ast.parse(source.replace(own, own.replace(was, becomes), 1)), module.__file__ or "", "exec")
    waiting = [compiled]
    while waiting:
        code = waiting.pop()
        if code.co_qualname == function.__code__.co_qualname:
            return code
        waiting.extend(inner for inner in code.co_consts if isinstance(inner, CodeType))
    raise AssertionError(function.__qualname__)


@pytest.mark.parametrize("case", BROKEN, ids=[f"{case['in']}: {case['was']}" for case in BROKEN])
def test_a_broken_derivation_is_noticed(case: dict[str, Any], monkeypatch: pytest.MonkeyPatch) -> None:
    module = import_module(f"paperaudit.strands.{case['in']}")
    (function,) = (one for one in functions(module) if one.__qualname__ == case["of"])
    question = {key: case[key] for key in ("text", "part", "ask", "given", "table") if case.get(key)}
    reading = reading_of(question)
    assert reading.ask is not None and not reading.unread
    assert isinstance(derive(reading)[1], Derived | Several | NotDetermined)
    monkeypatch.setattr(function, "__code__", broken_code(function, case["was"], case["becomes"]))
    forget()
    try:
        outcome = derive(reading)[1]
    finally:
        monkeypatch.undo()
        forget()
    assert isinstance(outcome, NotRead), outcome
    assert case.get("why", "disagree") in outcome.why


def test_a_wrong_law_of_motion_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    from paperaudit.strands.ratios import strand

    wrong = replace(MOTION, laws=(Law("s = d × t"), *MOTION.laws[1:]))
    monkeypatch.setitem(strand.DERIVATIONS, "motion", strand.partial(strand.by_laws, wrong))
    outcome = outcome_of({"text": "A car travels 150 km in 2 h 30 min. Find its average speed in km/h."})[1]
    assert isinstance(outcome, NotRead) and "disagree" in outcome.why


def test_every_module_has_a_derivation_that_is_broken() -> None:
    """A new module of a strand needs a line in broken_derivations.yaml, or a test of its own that is named here."""
    known = {case["in"] for case in BROKEN} | ELSEWHERE.keys() | DERIVES_NOTHING
    there = {name.removeprefix("paperaudit.strands.") for name in modules([])}
    assert there - known == set()
    assert known - there == set()


@pytest.mark.parametrize("named", sorted(set(ELSEWHERE.values())))
def test_the_tests_that_are_named_are_there(named: str) -> None:
    file, _, name = named.partition(": ")
    assert f"def {name}(" in (HERE / file).read_text("utf-8")
