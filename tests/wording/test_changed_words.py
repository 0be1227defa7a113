"""A statement with a word changed, denied or put in never amounts to the same facts as before."""

import re
from collections.abc import Iterator

from ruamel.yaml import YAML

from paperaudit.model.fact import Given
from paperaudit.resources import shipped
from paperaudit.wording import read_statement
from tests.wording.compact import fact_line

SAID = [
    said
    for case in YAML(typ="safe").load(shipped("fixtures", "questions", "wording.yaml"))["statements"]
    for said in case["said"]
]
PAIRS = (
    "minor major, parallel perpendicular, inside outside, externally internally, external internal, same opposite, "
    "radius diameter, area perimeter, median altitude, medians altitudes, midpoint foot, bisects trisects, twice half, "
    "more less, equal unequal, isosceles scalene, equilateral scalene, regular irregular, tangent secant, "
    "chord diameter, sin cos, sine cosine, inscribed circumscribed, incentre centroid, circumcentre orthocentre, "
    "elevation depression, east west, north south, sum difference, complementary supplementary, congruent similar, "
    "right acute, acute obtuse, reflex obtuse, square cube, arc chord, sector segment, hypotenuse base, "
    "longer shorter, larger smaller, circumference area, bearing distance, trapezium kite, rhombus rectangle"
)
OTHER = [pair.split() for pair in PAIRS.split(", ")]
DENIED = (
    (" is ", " is not "),
    (" are ", " are not "),
    (" lies ", " does not lie "),
    (" lie ", " never lie "),
    (" = ", " ≠ "),
    (" bisects ", " does not bisect "),
    (" has ", " has no "),
    (" touches ", " does not touch "),
    (" meet ", " never meet "),
    (" meets ", " never meets "),
    (" all ", " some "),
)
PUT_IN = ("not", "nearly", "twice", "half", "except", "about", "produced", "every")
HARMLESS = {
    "minor arc AB",  # which of the two arcs is drawn does not matter where nothing is said of it
    "arc AB of circle O subtends an angle of 80° at the centre",  # so does its chord
    "chord AB of circle O subtends an angle of 80° at O",
    "chord AB of circle O subtends an angle of 80° at the centre O",
    "chord AB of circle O subtends 80° at the centre",
    "chord AB subtends an angle of 100° at the centre",
    "chord AB subtends an angle of 100° at the centre.",
    "In the diagram, chord AB subtends an angle of 100° at the centre.",
}


def facts_of(said: str) -> list[str] | None:
    found = read_statement(said)
    return sorted(map(fact_line, found.facts)) if isinstance(found, Given) else None


def changed(said: str) -> Iterator[str]:
    for one, other in (*OTHER, *(pair[::-1] for pair in OTHER)):
        for spot in re.finditer(rf"(?<![A-Za-z-]){one}(?![A-Za-z-])", said):
            yield said[: spot.start()] + other + said[spot.end() :]


def denied(said: str) -> Iterator[str]:
    for words, others in DENIED:
        for spot in re.finditer(re.escape(words), said):
            yield said[: spot.start()] + others + said[spot.end() :]


def put_in(said: str, number: int) -> Iterator[str]:
    """A word at two places of each statement, each word at each place of some."""
    spots = [spot.start() for spot in re.finditer(" ", said)]
    for step in range(min(2, len(spots))):
        word, spot = PUT_IN[(number + step) % len(PUT_IN)], spots[(number // len(PUT_IN) + step) % len(spots)]
        yield f"{said[:spot]} {word}{said[spot:]}"


def test_a_changed_word_changes_the_facts() -> None:
    tried = 0
    for said in SAID:
        for other in changed(said):
            tried += 1
            found = facts_of(other)
            assert said in HARMLESS or found is None or found != facts_of(said), other
    assert tried > 900


def test_a_denied_statement_is_not_the_statement() -> None:
    tried = 0
    for said in SAID:
        for other in denied(said):
            tried += 1
            found = facts_of(other)
            assert found is None or found != facts_of(said), other
    assert tried > 900


def test_a_word_put_in_is_not_passed_over() -> None:
    for number, said in enumerate(SAID):
        for other in put_in(said, number):
            found = facts_of(other)
            assert found is None or found != facts_of(said), other
