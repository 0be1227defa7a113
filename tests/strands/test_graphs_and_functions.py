"""Coordinates, sequences, functions, trigonometric equations, transformations, vectors: cases, keys, mutations."""

from fractions import Fraction
from typing import Any

import pytest
from ruamel.yaml import YAML

from paperaudit.maths.algebra.intervals import Interval
from paperaudit.maths.equality import compare
from paperaudit.maths.powers import PowerSum
from paperaudit.maths.surd import Surd
from paperaudit.maths.trig import rewriting
from paperaudit.maths.trig.angles import reduced_ratio
from paperaudit.model.derivation import Derived, NotRead
from paperaudit.model.expression import Negative, Number
from paperaudit.strands.functions import derivatives, increase, moved_graphs, optimum, sets_of, values
from paperaudit.strands.movements import images, naming
from paperaudit.strands.plane import claims, curves, lines, points, round, unknowns
from paperaudit.strands.plane.places import Place
from paperaudit.strands.registry import derive
from paperaudit.strands.sequences import rules
from paperaudit.strands.verdict import verdict_on
from paperaudit.strands.waves import equations, known_ratio
from tests.strands import told
from tests.strands.asked import FIXTURES, cases, check, derived, judged_key, reading_of, texts

STRANDS = ("coordinates", "sequences", "functions", "trigonometry", "transformations")
CASES = [(strand, case) for strand in STRANDS for case in cases(strand)]
KEYED = [
    (case["ask"], tuple(case.get("given", ())), str(key), agreement)
    for _, case in CASES
    for agreement, said in (("agrees", "agrees"), ("differs", "differs"), ("cannot tell", "unclear"))
    for key in case.get(said, ())
]


@pytest.mark.parametrize(("strand", "case"), CASES, ids=[case["title"] for _, case in CASES])
def test_small_cases(strand: str, case: dict[str, Any]) -> None:
    check(case, strand)


@pytest.mark.parametrize(("ask", "given", "key", "agreement"), KEYED)
def test_keys(ask: str, given: tuple[str, ...], key: str, agreement: str) -> None:
    outcome, asked = derived(ask, given)[1], reading_of(ask, given).ask
    assert isinstance(outcome, Derived) and asked is not None
    assert compare(key, outcome.answers, asked).agreement.value == agreement


def disagrees(ask: str, *given: str) -> None:
    outcome = derived(ask, given)[1]
    assert isinstance(outcome, NotRead)
    assert "disagree" in outcome.why


def test_a_wrong_intercept_of_a_line_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    def shifted(terms: dict[Fraction, Fraction]) -> PowerSum:
        return PowerSum({**terms, Fraction(0): terms.get(Fraction(0), Fraction(0)) + 1})

    monkeypatch.setattr(lines, "PowerSum", shifted)
    disagrees("Find the equation of the line with gradient 3 that passes through (1, −2).")


def test_a_wrong_root_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(curves, "zeros", lambda form: (Fraction(1), Fraction(7)))
    disagrees("Find the intercepts of y = x² − 4 with the axes.")
    disagrees("Find the coordinates of the points of intersection of the line y = x + 1 and the curve y = x² − 1.")
    monkeypatch.setattr(values, "zeros", lambda form: (Fraction(1), Fraction(7)))
    disagrees("Solve f(x) = 3.", "f(x) = x² − 4x + 3")
    monkeypatch.setattr(derivatives, "zeros", lambda form: (Fraction(5),))
    disagrees("Find the stationary points of y = x³ − 3x + 2 and determine their nature.")


def test_a_wrong_circle_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(round, "circle_of", lambda relation: (Fraction(-2), Fraction(3), Fraction(25)))
    disagrees("Find the centre and radius of the circle x² + y² − 4x + 6y − 12 = 0.")


def test_a_wrong_area_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(points, "_by_triangles", lambda places: Fraction(7))
    disagrees("Find the area of triangle ABC.", "A(1, 1), B(5, 1), C(5, 4)")


def test_a_wrong_formula_of_a_sequence_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(rules, "_newton", lambda rows: PowerSum({Fraction(2): Fraction(2)}))
    disagrees("Determine the general term of the quadratic sequence 2; 5; 10; 17; …")


def test_a_wrong_derivative_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(PowerSum, "derivative", lambda form: form.scaled(Fraction(2)))
    disagrees("Differentiate 3x² − 4x + 1 with respect to x.")
    disagrees("Find the equation of the tangent to the curve y = x² − 3x + 2 at x = 3.")


def test_a_wrong_integral_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    right = PowerSum.integral
    monkeypatch.setattr(PowerSum, "integral", lambda form: right(form).scaled(Fraction(2)))
    disagrees("Integrate 6x² + 4x with respect to x.")
    disagrees("Find the area under the curve y = x² from x = 0 to x = 3.")


def test_a_missing_or_wrong_angle_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(equations, "_families", lambda name, first: ((first, 360),))
    disagrees("Solve sin x = 0.5 for 0° ≤ x ≤ 360°.")
    monkeypatch.setattr(equations, "_families", lambda name, first: ((first, 360), (-first, 360)))
    disagrees("Solve sin x = 0.5 for 0° ≤ x ≤ 360°.")
    disagrees("Find the general solution of sin x = 1/2.")


def test_a_wrong_image_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(images, "moved", lambda place, movement, reading: Place("", place.x + 1, place.y))
    disagrees("Find the image of the point (2, 3) under a reflection in the x-axis.")
    disagrees("Find the image of A(4, −1) under a rotation of 90° clockwise about the origin.")
    disagrees("Find the image of (2, 5) under a translation by the vector (3, −2).")


def test_a_letter_of_which_the_text_says_more_is_not_taken_for_a_constant() -> None:
    assert texts(derived("Differentiate bx² with respect to x.", ["b = 3"])[1]) == ["6x"]
    outcome = derived("Differentiate bx² with respect to x.", ["b + c = 3"])[1]
    assert isinstance(outcome, NotRead) and "says something of b" in outcome.why


FIGURES = ("Find the area of triangle ABC.", "Calculate the length of AB.", "Find the radius of the circle.")


@pytest.mark.parametrize("ask", FIGURES)
def test_sizes_of_figures_stay_with_geometry(ask: str) -> None:
    assert not type(getattr(reading_of(ask).ask, "task", None)).__name__.startswith("Of")


PUBLISHED: list[dict[str, Any]] = YAML(typ="safe", pure=True).load(FIXTURES / "published" / "graphs-and-functions.yaml")


@pytest.mark.parametrize("item", PUBLISHED, ids=[f"{item['source']}: {item['ask']}" for item in PUBLISHED])
def test_published_values(item: dict[str, Any]) -> None:
    outcome, asked = derived(item["ask"], item.get("given", ()))[1], reading_of(item["ask"], item.get("given", ())).ask
    assert isinstance(outcome, Derived) and asked is not None, outcome
    assert compare(item["printed"], outcome.answers, asked).agreement.value == "agrees"


def test_a_wrong_reduction_or_formula_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(rewriting, "reduced_ratio", lambda function: Negative(reduced_ratio(function)))
    disagrees("Simplify sin(180° − x) + cos(90° − x).")
    disagrees("Find the exact value of sin 150°.")


def test_a_wrong_side_of_a_known_ratio_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(known_ratio, "_root", lambda square: Fraction(5))
    disagrees("Given that sin A = 3/5 and A is obtuse, find cos A.")
    monkeypatch.undo()
    monkeypatch.setattr(known_ratio, "_over", lambda above, below: Number(Fraction(1, 2)))
    disagrees("Given that sin A = 3/5 and A is obtuse, find cos A.")


def test_an_identity_that_is_false_is_told_as_a_wrong_claim() -> None:
    reading = reading_of("Prove that sin x + cos x = 1.")
    outcome = derive(reading)[1]
    assert verdict_on(reading, outcome, None) == "differs"


def test_a_wrong_gradient_or_length_of_a_claim_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(claims, "say_gradient", lambda one, other, working, name: Fraction(2))
    disagrees("Show that AB ∥ CD.", "A(0, 0), B(2, 4), C(1, 1), D(3, 6)")
    disagrees("Prove that AB ⊥ BC.", "A(0, 0), B(4, 2), C(3, 4)")
    monkeypatch.setattr(claims, "say_distance", lambda one, other, working, name: Surd.rational(3))
    disagrees("Show that triangle ABC is isosceles.", "A(0, 0), B(4, 0), C(1, 5)")
    disagrees("Show that ABCD is a rhombus.", "A(0, 0), B(4, 1), C(5, 4), D(1, 3)")


def test_a_wrong_letter_among_coordinates_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(unknowns, "zeros", lambda form: (Fraction(11),))
    disagrees("Find k.", "The gradient of the line through A(2, k) and B(5, 7) is 2.")
    disagrees("Find the possible values of k.", "The distance between A(1, 2) and B(k, 6) is 5.")
    disagrees("Find k if the points A(1, 2), B(3, k) and C(5, 10) are collinear.")


def test_a_wrong_domain_range_or_rise_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    wrong = Interval(Number(Fraction(7)), None, True, False)
    monkeypatch.setattr(sets_of, "_half_line", lambda form: (wrong,))
    disagrees("State the domain of f(x) = √(x − 3).")
    monkeypatch.setattr(sets_of, "_of_polynomial", lambda form, letter, working: (wrong,))
    disagrees("Find the range of f(x) = x² + 2.")
    monkeypatch.setattr(increase, "by_signs", lambda *given: (wrong,))
    disagrees("For which values of x is f(x) = x³ − 3x² increasing?")


def test_a_wrong_optimum_or_region_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(optimum, "zeros", lambda form: (Fraction(1),))
    disagrees("Find the value of x for which V is a maximum.", "V = x(10 − 2x)²")
    monkeypatch.setattr(PowerSum, "integral", lambda form: form)
    disagrees("Find the area enclosed by y = x² and y = x.")


def test_a_wrong_graph_or_transformation_is_caught(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(moved_graphs, "_stepped", lambda formula, x, step, size: Number(Fraction(4)))
    disagrees("The graph of y = x² is reflected in the x-axis. Find the equation of the new graph.")
    monkeypatch.setattr(naming, "_TURNS", {(Fraction(0), Fraction(1)): 270})
    disagrees(
        "Describe fully the single transformation that maps triangle ABC onto triangle A′B′C′.",
        "A(1, 1), B(3, 1), C(1, 4)",
        "A′(−1, 1), B′(−1, 3), C′(−4, 1)",
    )


@pytest.mark.parametrize(
    ("question", "answer"),
    [
        ({"text": "sin A = 3/5. A is obtuse. Find cos A."}, "−4/5"),
        ({"text": "Given that sin A = 3/5. The angle A is obtuse. Find tan A."}, "−3/4"),
        ({"text": "A is an acute angle. cos A = 5/13. Calculate sin A."}, "12/13"),
        ({"text": "It is given that tan θ = −3/4.", "part": "θ lies in the second quadrant. Determine sin θ."}, "3/5"),
        ({"text": "A is obtuse.", "given": ["sin A = 3/5"], "part": "Find cos A."}, "−4/5"),
        ({"text": "tan x = 4/3. 180° < x < 270°. Find cos x."}, "−3/5"),
    ],
)
def test_where_an_angle_lies_may_have_a_sentence_of_its_own(question: dict[str, Any], answer: str) -> None:
    outcome = told.outcome_of(question)[1]
    assert isinstance(outcome, Derived) and [one.text for one in outcome.answers] == [answer]


@pytest.mark.parametrize(
    "text",
    [
        "sin A = 3/5. B is obtuse. Find cos A.",
        "sin A = 3/5. A is obtuse. The wind blows twice. Find cos A.",
        "sin A = 3/5. A is obtuse. cos B = 1/2. Find cos A.",
    ],
)
def test_a_sentence_about_something_else_is_no_such_place(text: str) -> None:
    reading = told.reading_of({"text": text})
    assert reading.unread or reading.ask is None or isinstance(derive(reading)[1], NotRead)


@pytest.mark.parametrize(
    ("key", "agreement"), [("all real numbers", "agrees"), ("y ∈ ℝ", "agrees"), ("y > 0", "differs")]
)
def test_a_tangent_takes_every_value(key: str, agreement: str) -> None:
    assert judged_key(key, "State the range of y = 3 tan 2x − 1.") == agreement


def test_a_graph_with_a_long_period_is_soon_measured() -> None:
    outcome = derived("State the range of y = 3 sin(x/997) + 1.")[1]
    assert isinstance(outcome, Derived) and outcome.answers[0].text == "−2 ≤ y ≤ 4"
