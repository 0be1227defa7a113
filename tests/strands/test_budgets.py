"""Questions that would take for ever get a clear refusal at once, through the whole of `paperaudit check`."""

import gc
import io
import time
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.audit import audit_read
from paperaudit.errors import InputError
from paperaudit.readers.question_file import read_question_file

SECONDS = 1.0
"""Of processor time, for reading and auditing one part."""


def asked(text: str) -> dict[str, Any]:
    return {"ask": text}


def told(text: str) -> dict[str, Any]:
    return {"text": text}


LETTERS = "abcdfghjklmnpqrstuvwxyz"
REFUSED: dict[str, dict[str, Any]] = {
    "a tower of powers": asked("calculate 9^9^9^9"),
    "a tower in brackets": asked("calculate 2^(2^(2^(2^(2^2))))"),
    "a tower of letters": asked("simplify x^(y^(z^(x^(y^z))))"),
    "a negative tower": asked("calculate 10^-10^10^10"),
    "a huge exponent": asked("calculate 7^123456789"),
    "a huge exponent of a decimal": asked("calculate 1.0000001^1000000000"),
    "a huge exponent of a fraction": asked("calculate (1/3)^(99999999)"),
    "powers of powers": asked("calculate (((((9^99)^99)^99)^99)^99)^99"),
    "a power of a sum of surds": asked("simplify (√2 + √3)^500"),
    "a quotient of large powers": asked("calculate (2^900 + 3^900)/(7^899 + 1) + (5^900 + 11^900)/(13^899 + 1)"),
    "a huge factorial": asked("calculate 100000!"),
    "a factorial of a factorial": asked("calculate ((10!)!)!"),
    "huge combinations": asked("calculate 100000C50000"),
    "a shelf of a hundred thousand books": told("In how many ways can 100000 books be arranged on a shelf?"),
    "a committee of hundreds of thousands": told(
        "In how many ways can a committee of 400000 be chosen from 1000000 people?"
    ),
    "a word of four hundred letters": told(
        f"How many arrangements of the letters of the word {'ABCDEFGHIJ' * 40} are there?"
    ),
    "five thousand tosses": told("A coin is tossed 5000 times. Find the probability of getting exactly 2500 heads."),
    "forty dice": told("Forty dice are thrown. Find the probability that the sum is 140."),
    "a bag of thousands": told(
        "A bag contains 30000 red, 40000 blue and 50000 green balls. 900 balls are taken without replacement."
        " Find the probability that all are red."
    ),
    "a hundred thousand kicks": told(
        "The probability that Leo scores is 0.7. He takes 100000 kicks."
        " Find the probability that he scores 70000 times."
    ),
    "degree fifty, factorised": asked(
        "factorise fully " + " + ".join(f"{place * 37 % 101 + 1}x^{50 - place}" for place in range(50)) + " + 7"
    ),
    "degree fifty, solved": asked("solve x^50 − 3x^49 + 7x^13 − 5 = 0"),
    "degree fifty, drawn": asked("find the stationary points of y = x^50 − 3x^49 + 7x^13 − 5x"),
    "degree fifty, in an inequality": asked("solve x^50 − 3x^49 + 7x^13 − 5 > 0"),
    "three letters to the fiftieth": asked("expand (x + 2y − 3)^50"),
    "brackets to the fiftieth": asked("expand (x + 1)^50 (x − 1)^50 (x² + 3)^50"),
    "four letters to the thousandth": asked("expand (x + y + z + w)^1000"),
    "five brackets of five letters": asked(
        "expand (a+b+c+d+e)(f+g+h+j+k)(l+m+n+p+q)(r+s+t+u+v)(w+x+y+z+1)"
    ),
    "sixty factors in an inequality": asked("solve (x-1)" + "".join(f"(x-{one})" for one in range(2, 60)) + " > 0"),
    "forty fractions": asked("simplify " + " + ".join(f"1/(x+{one})" for one in range(1, 40))),
    "a remainder of a huge degree": asked("find the remainder when x^999 + 3x^7 − 1 is divided by x² − 3x + 1"),
    "five thousand digits": asked(f"calculate {'7' * 5000} × {'3' * 5000}"),
    "a hundred digits": asked(f"calculate {'7' * 100} × {'3' * 100}"),
    "a root of hundreds of digits": asked(f"calculate √{'7' * 400}"),
    "a product of large primes": asked(
        "write 340282366920938463463374607431768211457 as a product of its prime factors"
    ),
    "a large prime": asked("Is 1000000000000000000000000000057 a prime number?"),
    "primes to ten million": asked("List the prime numbers less than 10000000."),
    "multiples to a hundred million": asked("List the multiples of 3 less than 100000000."),
    "an endless cycle": asked("Write 1/999983 as a recurring decimal."),
    "brackets three thousand deep": asked(f"calculate {'(' * 3000}1{')' * 3000}"),
    "brackets sixty deep": asked(f"calculate {'(' * 60}1{')' * 60}"),
    "logarithms forty deep": asked(f"solve {'log(' * 40}x{')' * 40} = 1"),
    "bars sixty deep": asked(f"solve {'|' * 60}x{'|' * 60} = 3"),
    "a sentence of a hundred and sixty thousand letters": told(
        "The boat sails " + "and the wind blows over the sea " * 5000 + ". How far does it go?"
    ),
    "a sentence of four thousand letters": told("The boat sails " + "and the wind blows " * 200 + ". Find the speed."),
    "twice three hundred times": told("The sum of " + "twice " * 300 + "a number and 3 is 7. Find the number."),
    "a mean of fifty thousand numbers": told(
        f"Find the mean of {', '.join(str(one % 97) for one in range(50000))}."
    ),
    "a table of five thousand columns": {
        "text": "Find the mean.", "table": {f"c{one}": ["1", "2"] for one in range(5000)},
    },
    "a table of twenty thousand rows": {
        "text": "Find the equation of the regression line.",
        "table": {"x": [str(one) for one in range(20000)], "y": [str(one * one % 1013) for one in range(20000)]},
    },
    "a sum of a hundred million terms": asked("Calculate Σ_{k=1}^{100000000} k²."),
    "a million angles": asked("Solve sin(1000x) = 0.5 for 0° ≤ x ≤ 360000°."),
    "a sine of many letters": asked("expand sin(" + "x + " * 60 + "x)"),
    "interest for a million years": told(
        "R5000 is invested at 8% per year compound interest for 1000000 years. Find the final amount."
    ),
}  # fmt: skip

SOLVED: dict[str, dict[str, Any]] = {
    "fractions fifty deep": asked(f"simplify {'1/(1+' * 49}x{')' * 49}"),
    "roots twenty deep": asked(f"simplify {'√(' * 20}2{')' * 20}"),
    "twenty-three equations": asked(
        "solve " + " and ".join(f"{one}+{other}=1" for one, other in pairwise(LETTERS))
    ),
}  # fmt: skip
"""Long, and yet answered or refused in the same time."""


@pytest.fixture(autouse=True)
def of_its_own() -> Iterator[None]:
    """Times are taken without the walks of the garbage collector through what thousands of other tests have left."""
    gc.freeze()
    yield
    gc.unfreeze()


def why_refused(question: dict[str, Any]) -> tuple[str, float]:
    """Why a part is declined ("" where it is answered), and the processor time that it took."""
    text = io.StringIO()
    YAML(typ="safe", pure=True).dump({"questions": [{"number": 1, "marks": 3, **question}]}, text)
    started = time.process_time()
    try:
        part = audit_read(read_question_file(text.getvalue(), "budget.yaml")).parts[0]
        why = str(getattr(part.outcome, "why", "")) if part.verdict == "not-read" else ""
    except InputError as error:
        why = str(error)
    return why, time.process_time() - started


@pytest.mark.parametrize("name", REFUSED)
def test_it_is_refused_at_once_and_says_why(name: str) -> None:
    question = REFUSED[name]
    why, taken = why_refused(question)
    assert why and "internal error" not in why and "seconds" not in why
    if taken > SECONDS:  # what is loaded by need was loaded with it
        _, taken = why_refused(question)
    # A file of megabytes takes its time to be read at all.
    assert taken < SECONDS + len(str(question)) / 200_000


@pytest.mark.parametrize("name", SOLVED)
def test_it_is_settled_at_once(name: str) -> None:
    why, taken = why_refused(SOLVED[name])
    if taken > SECONDS:
        why, taken = why_refused(SOLVED[name])
    assert "internal error" not in why and taken < SECONDS
