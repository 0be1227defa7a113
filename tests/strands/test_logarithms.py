"""Logarithms and absolute values: keys, derivations broken on purpose, wordings that must not be read."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from paperaudit.errors import ExpressionNotRead
from paperaudit.maths.parse import read_expression
from paperaudit.maths.write import write
from paperaudit.model.derivation import Derived
from paperaudit.model.expression import Expression, Number, Sum
from paperaudit.strands.algebra import (
    absolute_inequalities,
    absolutes,
    exponents_by_logarithms,
    logarithm_equations,
    logarithm_laws,
    logarithms,
    logarithms_given,
    solving,
)
from paperaudit.strands.algebra.roots import Roots
from tests.strands.asked import derived, judged_key, refusal_when_broken

KEYS = [
    ("solve 2^x = 7", (), "x = log₂ 7", "agrees"),
    ("solve 2^x = 7", (), "x = 2.81", "agrees"),
    ("solve 2^x = 7", (), "x = ln 7/ln 2", "agrees"),
    ("solve 2^x = 7", (), "x = log 7 − log 2", "differs"),
    ("solve 2^x = 7", (), "x = 3.5", "differs"),
    ("solve ln x = 2", (), "x = e²", "agrees"),
    ("solve ln x = 2", (), "x = e^2", "agrees"),
    ("solve ln x = 2", (), "x = 7.39", "agrees"),
    ("solve ln x = 2", (), "x = 2e", "differs"),
    ("solve ln (2x + 1) = 3", (), "x = (e^3 − 1)/2", "agrees"),
    ("solve e^x = 5", (), "ln 5", "agrees"),
    ("solve e^(2x) − 5e^x + 6 = 0", (), "x = ln 2 or x = ln 3", "agrees"),
    ("solve e^(2x) − 5e^x + 6 = 0", (), "x = 2 or x = 3", "differs"),
    ("solve log x + log (x − 3) = 1", (), "x = 5", "agrees"),
    ("solve log x + log (x − 3) = 1", (), "x = 5 or x = −2", "differs"),
    ("solve 3^(x + 1) = 5^(2x)", (), "x = log 3/log (25/3)", "agrees"),
    ("solve 3^(x + 1) = 5^(2x)", (), "x = 0.518", "agrees"),
    ("write 2 log x + 3 log y as a single logarithm", (), "log x²y³", "agrees"),
    ("write 2 log x + 3 log y as a single logarithm", (), "log (xy)^5", "cannot tell"),
    ("write 2 log x + 3 log y as a single logarithm", (), "log (6xy)", "differs"),
    ("write 2 log x + 3 log y as a single logarithm", (), "log x² + log y³", "differs"),
    ("write log 5 + log 4 as a single logarithm", (), "log 20", "agrees"),
    ("write log 5 + log 4 as a single logarithm", (), "log 9", "differs"),
    ("expand log (x²y/z)", (), "2log x + log y − log z", "agrees"),
    ("expand log (x²y/z)", (), "log x² + log y − log z", "differs"),
    ("expand log (x²y/z)", (), "2 log x + log y + log z", "differs"),
    ("express log 12 in terms of p and q", ("log 2 = p", "log 3 = q"), "2p + q", "agrees"),
    ("express log 12 in terms of p and q", ("log 2 = p", "log 3 = q"), "p²q", "differs"),
    ("evaluate log₂ 8", (), "3", "agrees"),
    ("evaluate log₂ 8", (), "4", "differs"),
    ("solve |x − 3| = 5", (), "x = 8 or x = −2", "agrees"),
    ("solve |x − 3| = 5", (), "x = 8", "differs"),
    ("solve |2x + 1| < 7", (), "−4 < x < 3", "agrees"),
    ("solve |2x + 1| < 7", (), "x < 3", "differs"),
    ("evaluate log₂ 10, correct to 3 significant figures", (), "3.32", "agrees"),
    ("evaluate ln e³", (), "3", "agrees"),
    ("solve log₂ (x − 5) = log₂ (3 − x)", (), "no solution", "agrees"),
    ("solve log₂ (x − 5) = log₂ (3 − x)", (), "x = 4", "differs"),
]  # fmt: skip


@pytest.mark.parametrize(("ask", "givens", "key", "expected"), KEYS)
def test_keys(ask: str, givens: tuple[str, ...], key: str, expected: str) -> None:
    assert judged_key(key, ask, givens) == expected


SPELLINGS = [
    ("log₂ 8", "log₂ 8"), ("log_2 8", "log₂ 8"), ("log_{2}(8)", "log₂ 8"), ("log2(8)", "log₂ 8"), ("log₂8", "log₂ 8"),
    ("log base 2 of 8", "log₂ 8"), ("log 8 to base 2", "log₂ 8"), ("the logarithm of 8 to the base 2", "log₂ 8"),
    ("log₁₀ x", "log x"), ("logₐ x", "log_a x"), ("2log3", "2 log 3"), ("log x/log y", "(log x)/(log y)"),
    ("log (x + 1)", "log(x + 1)"), ("ln 3x", "ln 3x"), ("log x²y", "log(x²y)"), ("|2x − 1|", "|2x − 1|"),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "printed"), SPELLINGS)
def test_spellings(typed: str, printed: str) -> None:
    value = read_expression(typed)
    assert write(value) == printed
    assert read_expression(printed) == value


@pytest.mark.parametrize(
    "doubtful",
    ["log x/y", "log 2 × 3", "log (x + 1)²", "log (x + 1)(x − 1)", "log₂ x(x + 1)", "log² x", "|2|x| − 1|x", "log2x"],
)
def test_what_can_be_read_in_two_ways_is_refused(doubtful: str) -> None:
    with pytest.raises(ExpressionNotRead):
        read_expression(doubtful)


def one_more(find: Callable[..., Expression]) -> Callable[..., Expression]:
    return lambda *arguments: Sum((find(*arguments), Number(Fraction(1))))


def without_last(solve: Callable[..., Roots]) -> Callable[..., Roots]:
    return lambda *arguments: Roots(solve(*arguments).values[:-1])


def as_found(solve: Callable[..., Roots]) -> Callable[..., Roots]:
    return lambda relation, letter, found, working: found


def another(count: Callable[..., Any]) -> Callable[..., Any]:
    return lambda *arguments: Fraction(7)


def first_alone(find: Callable[..., Any]) -> Callable[..., Any]:
    return lambda *arguments: find(*arguments)[:1]


MUTATIONS: list[tuple[str, tuple[str, ...], Any, str, Callable[[Any], Any]]] = [
    ("evaluate log₂ 8", (), logarithms, "worked_out", another),
    ("evaluate log 5 + log 20", (), logarithms, "single_argument", one_more),
    ("write log 5 + log 4 as a single logarithm", (), logarithm_laws, "single_argument", one_more),
    ("expand log (x²y/z)", (), logarithm_laws, "parted", first_alone),
    ("express log 12 in terms of p and q", ("log 2 = p", "log 3 = q"), logarithms_given, "total_of", one_more),
    ("solve log x + log (x − 3) = 1", (), logarithm_equations, "_tried", as_found),
    ("solve log₅ (2x + 1) = 2", (), logarithm_equations, "raised", one_more),
    ("solve 5^(2x − 1) = 12", (), exponents_by_logarithms, "_freed", one_more),
    ("solve 3^(x + 1) = 5^(2x)", (), exponents_by_logarithms, "_sum_of", one_more),
    ("solve e^(2x) − 5e^x + 6 = 0", (), solving, "by_logarithms", without_last),
    ("solve |x − 3| = 5", (), absolutes, "solve_polynomial", lambda _: lambda *arguments: Roots([Number(Fraction(8))])),
    ("solve |x − 1| = 2x − 5", (), absolutes, "_tried", as_found),
    ("solve |x − 1| + |x + 2| = 5", (), absolutes, "_by_intervals", without_last),
    ("solve |2x − 1| > 5", (), absolute_inequalities, "joined", first_alone),
]  # fmt: skip


@pytest.mark.parametrize(("ask", "givens", "module", "name", "breaks"), MUTATIONS)
def test_a_broken_derivation_is_caught(
    ask: str,
    givens: tuple[str, ...],
    module: Any,
    name: str,
    breaks: Callable[[Any], Any],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    assert "disagree" in refusal_when_broken(monkeypatch, module, name, breaks, ask, givens)


def test_e_is_a_letter_where_it_may_be_one() -> None:
    assert isinstance(derived("expand (e + 1)(e − 1)")[1], Derived)
    assert isinstance(derived("solve e² = 9")[1], Derived)
