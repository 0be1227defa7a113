"""Binomial expansions: keys and derivations broken on purpose."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest

from paperaudit.maths.algebra import binomial
from paperaudit.model.derivation import NotRead
from paperaudit.model.expression import Number
from paperaudit.strands.algebra import expansions
from paperaudit.strands.algebra.roots import Roots
from tests.strands.asked import derived, judged_key, refusal_when_broken

POSITIVE = "given that the coefficient of x² in the expansion of (1 + kx)^5 is 40, find the positive value of k"
POSSIBLE = "given that the coefficient of x² in the expansion of (1 + kx)^5 is 40, find the possible values of k"
UP_TO = "find the expansion of (1 + 2x)^8 in ascending powers of x, up to and including the term in x³"
FIRST = "find the first three terms, in ascending powers of x, of the expansion of (1 + 3x)^7"

KEYS = [
    ("expand (1 + 2x)^5", "1 + 10x + 40x² + 80x³ + 80x⁴ + 32x⁵", "agrees"),
    ("expand (1 + 2x)^5", "32x⁵ + 80x⁴ + 80x³ + 40x² + 10x + 1", "agrees"),
    ("expand (1 + 2x)^5", "1 + 10x + 20x² + 20x³ + 10x⁴ + 2x⁵", "differs"),
    (FIRST, "1 + 21x + 189x² + …", "agrees"),
    (FIRST, "1 + 21x + 189x² + ...", "agrees"),
    (FIRST, "1 + 21x + 63x²", "differs"),
    (FIRST, "1 + 21x", "differs"),
    ("find the coefficient of x³ in the expansion of (2 + x)^6", "160", "agrees"),
    ("find the coefficient of x³ in the expansion of (2 + x)^6", "20", "differs"),
    ("find the coefficient of x⁵ in (1 + 2x)^9", "4032", "agrees"),
    ("find the term in x⁴ in the expansion of (3 − 2x)^7", "15120x⁴", "agrees"),
    ("find the term in x⁴ in the expansion of (3 − 2x)^7", "−15120x⁴", "differs"),
    ("find the term independent of x in the expansion of (x² − 1/x)^6", "15", "agrees"),
    ("find the constant term in the expansion of (x + 1/x²)^7", "0", "agrees"),
    (POSSIBLE, "k = ±2", "agrees"),
    (POSITIVE, "2", "agrees"),
    (UP_TO, "1 + 16x + 112x² + 448x³", "agrees"),
]  # fmt: skip


@pytest.mark.parametrize(("ask", "key", "expected"), KEYS)
def test_keys(ask: str, key: str, expected: str) -> None:
    assert judged_key(key, ask) == expected


MUTATIONS: list[tuple[str, Any, str, Callable[[Any], Any]]] = [
    ("expand (1 + 2x)^5", binomial, "comb", lambda comb: lambda n, k: comb(n, k) + (k == 2)),
    ("find the coefficient of x³ in the expansion of (2 + x)^6", binomial, "comb", lambda comb: lambda n, k: n),
    ("find the constant term in the expansion of (x + 2/x)^6", expansions, "_with_power",
     lambda find: lambda *arguments: []),
    (POSITIVE, expansions,
     "solve_polynomial", lambda _: lambda *arguments: Roots([Number(Fraction(3))])),
]  # fmt: skip


@pytest.mark.parametrize(("ask", "module", "name", "breaks"), MUTATIONS)
def test_a_broken_derivation_is_caught(
    ask: str, module: Any, name: str, breaks: Callable[[Any], Any], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert "disagree" in refusal_when_broken(monkeypatch, module, name, breaks, ask)


@pytest.mark.parametrize("ask", ["expand (1 + x)^500 using the binomial theorem", "expand (1 + x)^50"])
def test_long_expansions_are_refused(ask: str) -> None:
    assert isinstance(derived(ask)[1], NotRead)
