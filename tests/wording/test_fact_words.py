"""A fact in words reads back to itself."""

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from paperaudit.model import fact as facts
from paperaudit.model.expression import (
    AngleAt,
    AngleOf,
    ArcLengthOf,
    ArcOf,
    BearingOf,
    CircleSize,
    DistanceOf,
    Function,
    LengthOf,
    Letter,
    Measured,
    Number,
    Product,
    Relation,
    SegmentOf,
    Sum,
)
from paperaudit.wording import fact_text, read_statement

POINTS = st.permutations([*"ABCDEFGHKLMNPQSTUVWXYZ", "A′", "C″".replace("″", "′′")])
SAYING_MORE = (
    facts.Tangent,
    facts.Diameter,
    facts.Midline,
    facts.Centre,
    facts.Incircle,
    facts.CirclesTouch,
    facts.OnArc,
    facts.Holds,
)
CORNERS = {
    "triangle": 3,
    "quadrilateral": 4,
    "parallelogram": 4,
    "rectangle": 4,
    "rhombus": 4,
    "square": 4,
    "kite": 4,
    "trapezium": 4,
}


@st.composite
def facts_drawn(draw: st.DrawFn) -> facts.Fact:
    a, b, c, d, e, f, *rest = draw(POINTS)
    angle = draw(st.sampled_from([AngleOf(b, a, c), AngleOf(b, a, c, reflex=True), AngleAt(a), AngleAt(a, 2)]))
    degrees = Measured(Number(Fraction(draw(st.integers(1, 179)))), "°")
    letter = Product((Number(Fraction(draw(st.integers(2, 9)))), Letter(draw(st.sampled_from("xyz")))))
    kind = draw(st.sampled_from(sorted(CORNERS)))
    return draw(
        st.sampled_from(
            [
                facts.Shape(kind, (a, b, c, d)[: CORNERS[kind]]),  # type: ignore[arg-type]
                facts.Shape(
                    "triangle", (a, b, c), (draw(st.sampled_from(["isosceles", "equilateral", "right-angled"])),)
                ),
                facts.Shape("polygon", (a, b, c, d, e, f), ("regular",)),
                facts.Shape("polygon", (a, b, c, d, e, *rest[:6])),
                facts.Drawn(draw(st.sampled_from(["segment", "line", "ray"])), (a, b)),
                facts.Collinear((a, b, c)),
                facts.Collinear((a, b, c, d)),
                facts.Crossing((a, b), (c, d), e),
                facts.Parallel(((a, b), (c, d))),
                facts.Parallel(((a, b), (c, d), (e, f))),
                facts.Perpendicular((a, b), (c, d)),
                facts.BisectsAngle((a, d), angle),
                facts.Midpoint(a, (b, c)),
                facts.RoundPoint(a, (b, c, d)),
                facts.Inside(a, (b, c, d, e)),
                facts.Outside(a, (b, c, d, e)),
                facts.RayInside(a, b, c, d),
                facts.Collinear((a, b, c), ordered=False),
                facts.Between(a, (b, c), (d, e)),
                facts.Sides((a, b), (c, d), draw(st.booleans())),
                facts.Congruent((a, b, c), (d, e, f)),
                facts.Similar((a, b, c), (d, e, f)),
                facts.Circle("", (a, b, c)),
                facts.Circle(a, ()),
                facts.Circle(a, (b, c, d)),
                facts.Circle(a, (b,)),
                facts.Tangent((a, b), b, draw(st.sampled_from(["", c]))),
                facts.Tangent((a, b), c, draw(st.sampled_from(["", d]))),
                facts.Diameter((a, b), draw(st.sampled_from(["", c]))),
                facts.BisectsSegment((a, b), (c, d), draw(st.booleans())),
                facts.Midline((a, b), (c, d, e)),
                facts.Centre(
                    draw(st.sampled_from(["circumcentre", "incentre", "centroid", "orthocentre"])), a, (b, c, d)
                ),
                facts.Incircle(a, (b, c, d)),
                facts.CirclesTouch(
                    a,
                    b,
                    draw(st.sampled_from(["", c])),
                    draw(
                        st.sampled_from(
                            [
                                "",
                                "second in first",
                                "one in the other",
                            ]
                        )
                    ),
                ),
                facts.OnArc((a,), ArcOf(b, c, major=draw(st.booleans()))),
                facts.OnArc((a, b), ArcOf(c, d, e)),
                facts.Holds(Relation(ArcOf(a, b, draw(st.sampled_from(["", c]))), "=", degrees)),
                facts.Holds(Relation(ArcOf(a, b, major=True), "=", degrees)),
                facts.Holds(Relation(ArcLengthOf(ArcOf(a, b)), "=", Measured(Number(Fraction(7)), "cm"))),
                facts.Holds(Relation(CircleSize("circumference", a), "=", Measured(Number(Fraction(7)), "cm"))),
                facts.Holds(Relation(CircleSize("area", a), "=", Number(Fraction(7)))),
                facts.Holds(
                    Relation(SegmentOf("area", ArcOf(a, b, major=draw(st.booleans()))), "=", Number(Fraction(7)))
                ),
                facts.Holds(Relation(DistanceOf(a, (b, c)), "=", Number(Fraction(7)))),
                facts.Holds(Relation(BearingOf(a, b), "=", degrees)),
                facts.Holds(
                    Relation(Function(draw(st.sampled_from(["sin", "cos", "tan"])), angle), "=", Number(Fraction(1)))
                ),
                facts.AngleName(AngleAt(a, 1), AngleOf(b, a, c)),
                facts.Holds(Relation(angle, "=", degrees)),
                facts.Holds(Relation(angle, "=", Sum((letter, degrees)))),
                facts.Holds(Relation(LengthOf(a, b), "=", LengthOf(c, d))),
                facts.Holds(Relation(LengthOf(a, b), "=", Measured(Number(Fraction(7)), "cm"))),
            ]
        )
    )


@given(facts_drawn())
@settings(max_examples=400, deadline=None)
def test_a_fact_in_words_reads_back_to_it(fact: facts.Fact) -> None:
    found = read_statement(fact_text(fact))
    read_back = getattr(found, "facts", found)
    if isinstance(fact, facts.Congruent | facts.Similar):  # its triangles are named in passing
        read_back = read_back[2:]
    if isinstance(fact, SAYING_MORE):  # which points are on a circle, which triangle
        read_back = read_back[-1:]
    assert read_back == (fact,)
