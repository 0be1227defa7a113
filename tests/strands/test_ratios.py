"""Ratio, percentages, money, rates, measures and solids: small cases, keys, and derivations broken on purpose."""

from dataclasses import replace
from fractions import Fraction
from functools import partial
from typing import Any

import pytest

from paperaudit.maths.equality import compare
from paperaudit.model.derivation import Derived, Impossible, NotRead, Outcome, Several
from paperaudit.model.expression import Number
from paperaudit.model.paper import Line, Part, Question
from paperaudit.model.reading import Reading
from paperaudit.strands.ratios import (
    bodies,
    buys,
    compound_measures,
    exchange,
    further_solids,
    hire,
    interest,
    known_shares,
    measures,
    percents,
    proportions,
    scales,
    similar_solids,
    solids,
    strand,
    two_proportions,
    variation,
)
from paperaudit.strands.ratios.lawful import by_laws
from paperaudit.strands.ratios.laws import Law, chain
from paperaudit.strands.ratios.meshes import mesh_of
from paperaudit.strands.registry import derive
from paperaudit.wording.reading import read
from paperaudit.wording.topics.registry import TOPICS, topic_named
from tests.strands.asked import cases, statements, texts
from tests.strands.told import keyed

CASES = [case for name in ("ratios", "money", "solids", "measures-told") for case in cases(name)]
READ = [case for case in CASES if case.get("verdict") != "unread"]
KEYED = keyed(CASES)


def words_of(case: dict[str, Any]) -> str:
    return str(case.get("text") or case["ask"])


def reading_of(case: dict[str, Any]) -> Reading:
    text, ask = case.get("text"), case.get("ask")
    part = Part(id="1", number="", text=Line(text) if text else None, ask=Line(ask) if ask else None)
    return read(Question("1", (part,)), part)


def derived(words: str) -> Outcome:
    reading = reading_of({"text": words})
    assert not reading.unread, reading.unread
    return derive(reading)[1]


@pytest.mark.parametrize("case", READ, ids=words_of)
def test_small_cases(case: dict[str, Any]) -> None:
    reading = reading_of(case)
    assert not reading.unread and reading.ask is not None, reading.unread
    name, outcome = derive(reading)
    assert name == "ratio and measures"
    match case.get("verdict"):
        case "not-read":
            assert isinstance(outcome, NotRead) and case["why"] in outcome.why
            return
        case "impossible":
            assert isinstance(outcome, Impossible) and list(outcome.clash) == case["clash"]
            assert outcome.why[-1] == case["why"] and "false" in outcome.why[-1]
            return
        case "several":
            assert isinstance(outcome, Several) and texts(outcome) == case["derived"] and len(outcome.cases) > 1
            return
    assert texts(outcome) == case["derived"]
    assert statements(outcome) == case["lines"]
    assert reading.ask.read_as == case.get("read_as", "")
    assert not any(sign in line for line in statements(outcome) for sign in ("**", "sqrt", "Rational", "*"))


@pytest.mark.parametrize("case", [case for case in CASES if case.get("verdict") == "unread"], ids=words_of)
def test_what_is_not_read(case: dict[str, Any]) -> None:
    reading = reading_of(case)
    assert reading.unread or reading.ask is None


@pytest.mark.parametrize(("case", "key", "agreement"), KEYED, ids=lambda value: value if isinstance(value, str) else "")
def test_keys(case: dict[str, Any], key: str, agreement: str) -> None:
    reading = reading_of(case)
    outcome = derive(reading)[1]
    assert isinstance(outcome, Derived) and reading.ask is not None
    assert compare(key, outcome.answers, reading.ask).agreement.value == agreement


def disagrees(words: str) -> None:
    outcome = derived(words)
    assert isinstance(outcome, NotRead) and "disagree" in outcome.why, outcome


@pytest.mark.parametrize(("kind", "wrong", "words"), [
    ("cone", "V = πr²h", "Find the volume of a cone with radius 3 cm and height 4 cm."),
    ("cylinder", "S = πr² + 2πrh", "Find the total surface area of a closed cylinder of radius 3 cm and height 4 cm."),
    ("sphere", "V = (2/3)πr³", "Find the volume of a sphere of radius 3 cm."),
    ("cuboid", "S = lb + lh + bh", "A cuboid measures 5 cm by 4 cm by 3 cm. Find its total surface area."),
])  # fmt: skip
def test_a_wrong_law_of_a_solid_is_caught(monkeypatch: pytest.MonkeyPatch, kind: str, wrong: str, words: str) -> None:
    letter = wrong[0]
    laws = tuple(Law(wrong) if law.text.startswith(letter) else law for law in solids.LAWS[kind])
    monkeypatch.setitem(solids.LAWS, kind, laws)
    disagrees(words)


def test_wrong_growth_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    simple, compound = interest.LAWS["simple interest"], interest.LAWS["compound interest"]
    monkeypatch.setitem(interest.LAWS, "compound interest", (Law("A = P(1 + i n)"), *compound[1:]))
    disagrees("R5000 is invested at 8% per year compound interest for 3 years. Find the final amount.")
    monkeypatch.setitem(interest.LAWS, "simple interest", (Law("I = P i n/2"), *simple[1:]))
    disagrees("R5000 is invested at 8% per year simple interest for 3 years. Find the interest.")


def test_wrong_percentages_and_shares_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(percents, "_share", lambda part, whole, working: whole / part)
    disagrees("Express 12 as a percentage of 48.")
    disagrees("The price of a jacket rises from R250 to R300. Calculate the percentage increase.")


def test_a_wrong_conversion_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(measures, "conversion", lambda source, target: Fraction(10))
    disagrees("How many grams are there in 2.5 kg?")


def test_a_wrong_size_on_a_map_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(scales, "enlarged", lambda size, factor, forward: size + factor)
    disagrees("The scale of a map is 1 : 20 000. A road is 3 km long. How long is the road on the map, in cm?")
    disagrees("On a plan, 2 cm represents 5 m. A deck is 8 cm long on the plan. What is its actual length?")


def test_wrong_money_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(exchange, "exchanged", lambda size, per_one, other: size * per_one / other)
    disagrees("The exchange rate is £1 = $1.25. Change £340 into dollars.")
    monkeypatch.setattr(buys, "unit_price", lambda price, size: size / price)
    disagrees("A 500 g pack of rice costs R18. A 750 g pack of rice costs R25.50. Which pack is the better buy?")
    monkeypatch.setattr(hire, "_count", lambda value: int(value) + 1)
    disagrees(
        "A sail has a cash price of R9000. It is paid in 12 monthly instalments of R800. Calculate the interest paid."
    )
    monkeypatch.setattr(hire, "_tax_in_lines", lambda income, bands, last, money, working: income * last)
    disagrees("Ann earns R90000 a year. The first R50000 is tax free. The rest is taxed at 20%. Find the tax.")


def test_wrong_shares_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(known_shares, "_one_part", lambda name, value, *_: value)
    disagrees("Ann and Bea share some money in the ratio 3 : 5. Bea gets R12 more than Ann. How much does each get?")
    monkeypatch.setattr(known_shares, "common_terms", lambda one, other, mine, theirs: {**one, **other})
    disagrees("a : b = 2 : 3 and b : c = 4 : 5. Find a : b : c.")


def test_wrong_proportion_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(proportions, "direct", lambda amount, first, second: amount * first / second)
    disagrees("A recipe for 4 people uses 300 g of flour. How much flour is needed for 10 people?")
    monkeypatch.setattr(proportions, "inverse", lambda amount, first, second: amount * second / first)
    disagrees("Six workers build a wall in 10 days. How long would 4 workers take?")
    monkeypatch.setattr(variation, "constant", lambda first, at, inverse: at)
    disagrees("y varies directly as the square of x. When x = 3, y = 36. Find the constant of proportionality.")


def test_wrong_solids_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(similar_solids, "raised", lambda ratio, given, wanted: Number(ratio))
    disagrees("Two similar cylinders have heights 4 cm and 6 cm. The volume of the smaller cylinder is 80 cm³."
              " Find the volume of the larger cylinder.")  # fmt: skip
    monkeypatch.setattr(bodies, "added", lambda row, working: row.terms[0])
    disagrees("A solid consists of a cone on top of a hemisphere. Both have radius 3 cm. The cone has height 4 cm."
              " Find the total volume of the solid in terms of π.")  # fmt: skip
    cone = solids.LAWS["cone"]
    monkeypatch.setitem(solids.LAWS, "cone", (Law("V = πr²h"), *cone[1:]))
    disagrees(
        "A metal sphere of radius 6 cm is melted down and recast as a cone of radius 6 cm. Find the height of the cone."
    )
    prism = solids.LAWS["triangular prism"]
    monkeypatch.setitem(solids.LAWS, "triangular prism", (Law("B = b h"), *prism[1:]))
    disagrees(
        "A triangular prism has a cross-section with base 6 cm and height 4 cm. It is 10 cm long. Find its volume."
    )


def test_wrong_spreads_and_losses_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = compound_measures._left
    monkeypatch.setattr(compound_measures, "_left", lambda price, loss, times: right(price, loss, times + 1))
    disagrees("A car costs R90 000. Its value decreases by R9 000 each year. What is its value after 4 years?")
    wrong = replace(compound_measures.PRESSURE, laws=(Law("P = F × A"),))
    monkeypatch.setitem(strand.DERIVATIONS, "pressure", partial(by_laws, wrong))
    disagrees("A force of 500 N acts on an area of 2 m². Calculate the pressure.")
    monkeypatch.setattr(two_proportions, "in_one_unit", lambda values: ([Fraction(2), Fraction(3)], ""))
    outcome = derived("8 men can build 3 boats in 12 days. How many days will 16 men take to build 6 boats?")
    assert texts(outcome) != ["12 days"]


def test_wrong_frustums_and_holes_are_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    wrong = replace(further_solids.SQUARE_FRUSTUM, laws=(Law("V = h × (a² + b²)/2"),))
    monkeypatch.setitem(strand.DERIVATIONS, "square frustum", partial(by_laws, wrong))
    disagrees("A square frustum has a bottom base of side 6 cm, a top base of side 4 cm and a height of 9 cm. "
            "Calculate its volume.")  # fmt: skip
    right = further_solids._parts

    def without_walls(*given: Any) -> Any:
        found = right(*given)
        return replace(found, walls=found.ends)

    monkeypatch.setattr(further_solids, "_parts", without_walls)
    disagrees("A solid cube of side 10 cm has a square hole of side 4 cm cut straight through it. Find the total "
              "surface area.")  # fmt: skip
    monkeypatch.setattr(further_solids, "_piece", lambda kind, sizes: 1.0)
    disagrees("The net of a square-based pyramid consists of a square of side 6 cm and four triangles of height 5 cm. "
            "Find the total area of the net.")  # fmt: skip


def test_a_mesh_measures_what_is_known() -> None:
    cube = mesh_of("cube", {"a": 2.0})
    assert (round(cube.volume, 9), round(cube.surface(()), 9)) == (8.0, 24.0)
    assert abs(mesh_of("sphere", {"r": 1.0}).volume - 4.18879) < 0.003


def test_a_chain_of_laws_is_the_shortest() -> None:
    path = chain(solids.LAWS["cone"], ("r", "L"), "V")
    assert path is not None and [law.text[0] for law, _ in path] == ["L", "V"]


@pytest.mark.parametrize("name", [topic.name for topic in TOPICS if topic.ahead is not None])
def test_every_pattern_of_the_grammars_compiles(name: str) -> None:
    waiting, seen = list(topic_named(name).rules().values()), set()
    while waiting:
        rule: Any = waiting.pop()
        if id(rule) not in seen:
            seen.add(id(rule))
            assert not hasattr(rule, "pattern") or rule.re
            waiting.extend(getattr(rule, "members", ()))
