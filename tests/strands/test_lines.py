"""The lines of every small question: no form of a computer algebra system, nothing clumsy, and every equality true."""

import re
from collections.abc import Iterator
from functools import cache
from itertools import pairwise

import pytest

from paperaudit.errors import PaperauditError
from paperaudit.maths.exact import NotSurd
from paperaudit.maths.measure import UnitClash, bare, unit_of
from paperaudit.maths.parse import read_expression
from paperaudit.maths.same_value import same_value
from paperaudit.model.derivation import Derivation, Derived, Several
from paperaudit.model.expression import Expression, letters_of
from tests.strands.mutants import FILES, questions

CLUMSY = {
    "a power with two stars": r"\*\*",
    "a star": r"\*",
    "a name of a program": r"Rational|sqrt|Fraction|Mul|Pow|Add|oo\b|None|True|False",
    "a hyphen for a minus": r"(?<![A-Za-z\d])-(?=[\d(x])",
    "a plus before a minus": r"[+−] ?[−-] ?\d|\+ -",
    "a coefficient of 1": r"(?<![\d.,/\w⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉])1[a-z](?![a-z])",
    "an exponent 0 or 1": r"[a-z)][⁰¹](?![⁰¹²³⁴⁵⁶⁷⁸⁹])",
    "a denominator 1": r"/1(?![\d.(])",
    "brackets in brackets for nothing": r"\[\([^()]*\)\]|\(\([^()]*\)\)",
    "two spaces": r"  ",
    "two equals signs": r"= =",
}


@cache
def derivations() -> tuple[tuple[str, Derivation], ...]:
    """The first derivation of every small question, with its words."""
    found = []
    for put in questions():
        if isinstance(put.outcome, Derived | Several) and put.outcome.derivations:
            found.append((put.words, put.outcome.derivations[0]))
    return tuple(found)


def test_there_are_ten_and_more_of_every_strand() -> None:
    assert len(FILES) >= 16 and len(derivations()) > 1_000


@pytest.mark.parametrize("fault", CLUMSY)
def test_no_line_is_clumsy(fault: str) -> None:
    found = [
        f"{step.statement} | {words}"
        for words, derivation in derivations()
        for step in derivation.steps
        if re.search(CLUMSY[fault], step.statement)
    ]
    assert found == []


def test_no_line_is_said_twice_in_a_row() -> None:
    found = [
        f"{one.statement} | {words}"
        for words, derivation in derivations()
        for one, other in pairwise(derivation.steps)
        if one.statement == other.statement
    ]
    assert found == []


def _value(text: str) -> Expression | None:
    """The number that a piece of a line is; None for words, letters and cut-off decimals."""
    text = re.sub(r" \((?:to |n − 1|n, of|the med)[^()]*\)$", "", text.strip().rstrip(",."))
    if not text or re.search(r"…|\d[CP]\d|log|[A-Z]|[₀-₉]|/1$", text):
        return None
    try:
        found = read_expression(text)
        return None if unit_of(found) or letters_of(found) else bare(found)[0]
    except (PaperauditError, NotSurd, UnitClash):
        return None


def _equalities(derivation: Derivation) -> Iterator[tuple[str, Expression, Expression]]:
    """The equal numbers that the lines say, within a line and from one to the next that goes on with an equals sign."""
    before: Expression | None = None
    for step in derivation.steps:
        if "≈" in step.statement or "→" in step.statement or ":" in step.statement:
            before = None
            continue
        goes_on = step.statement.startswith("= ")
        values = [_value(piece) for piece in step.statement.removeprefix("= ").split(" = ")]
        if goes_on:
            values = [before, *values]
        for one, other in pairwise(values):
            if one is not None and other is not None:
                yield step.statement, one, other
        before = values[-1]


def test_every_equality_of_numbers_is_true() -> None:
    compared, wrong = 0, []
    for words, derivation in derivations():
        every = " ".join(step.statement for step in derivation.steps)
        for line, one, other in _equalities(derivation):
            compared += 1
            if same_value(one, other) is False and not re.search(
                r"false|no (?:real )?solution|infinitely|rejected", every
            ):
                wrong.append(f"{line} | {words}")
    assert compared > 1_000
    assert wrong == []
