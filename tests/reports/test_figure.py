"""A part's figure as SVG: well formed, safe, described in words, set by typst, and the same bytes every time."""

import io
import math
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree

import pdfplumber
import pytest

from paperaudit.audit import audit, audit_file
from paperaudit.model.audited import AuditedPart
from paperaudit.model.derivation import Derived, NotDetermined, NotRead, Several
from paperaudit.readers.question_file import read_question_file
from paperaudit.reports.figure import NOT_TO_SCALE, ONE_OF_SEVERAL, render, render_case
from paperaudit.resources import shipped
from tests import sail_loft

SOUND = shipped("papers", "sail-loft-term-test", "paper.yaml")
DRAFT = shipped("papers", "sail-loft-draft", "paper.yaml")
SVG = "{http://www.w3.org/2000/svg}"
PANEL = "figure: ['triangle ABC, BC is produced to D'], given: [AB = AC, ∠ACD = 112°], ask: ∠ABC"
IMPOSSIBLE = "figure: [triangle ABC], given: [∠BAC = 140°, ∠ABC = 50°], ask: ∠ACB"
OPEN = "figure: [triangle ABC], given: [∠BAC = 40°], ask: ∠ACB"
SEVERAL = "figure: [isosceles triangle ABC], given: [∠ABC = 40°], ask: ∠BAC"


def part(question: str) -> AuditedPart:
    (found,) = audit(read_question_file(f"questions: [{{number: 1, {question}}}]", "sails.yaml").whole()).parts
    return found


def tree(svg: str) -> ElementTree.Element:
    return ElementTree.fromstring(svg)


def written(svg: str) -> list[str]:
    return [text.text or "" for text in tree(svg).iter(f"{SVG}text")]


def numbers(svg: str) -> list[str]:
    values = [
        value
        for element in tree(svg).iter()
        for name, value in element.attrib.items()
        if name not in ("id", "aria-labelledby", "stroke", "fill", "font-family")
    ]
    return [number for value in values for number in re.findall(r"-?\d+\.?\d*(?:e[-+]?\d+)?", value)]


@pytest.mark.parametrize("paper", [SOUND, DRAFT], ids=lambda path: path.parent.name)
def test_every_part_with_a_figure_is_drawn_and_no_other(paper: Path) -> None:
    for one in audit_file(str(paper)).parts:
        svg = render(one)
        has_figure = bool(one.strand == "geometry" and one.verdict != "not-read")
        assert bool(svg) is has_figure, one.part.id
        if has_figure:
            assert tree(svg).get("role") == "img"


def test_parts_of_numbers_and_equations_have_no_figure() -> None:
    for one in (sail_loft.share(), sail_loft.equation(), sail_loft.half(), sail_loft.not_read()):
        assert render(one) == ""


def test_the_givens_are_marked_and_the_answer_is_not() -> None:
    svg = render(part(PANEL))
    assert sorted(written(svg)) == ["112°", "?", "A", "B", "C", "D"]
    assert "68" not in "".join(written(svg)) and "68°" not in svg


def test_a_figure_says_in_words_what_it_shows() -> None:
    root = tree(render(part(PANEL)))
    said = {root.find(f"{SVG}{name}").get("id"): root.findtext(f"{SVG}{name}") for name in ("title", "desc")}  # type: ignore[union-attr]
    assert root.get("aria-labelledby", "").split() == list(said)
    title, description = said.values()
    assert title == "Figure of question 1"
    assert description == (
        "Drawn: triangle ABC, BC is produced to D. Given: AB = AC; ∠ACD = 112°. Asked: ∠ABC. Scale: true to scale."
    )


def test_ids_begin_with_the_part_so_that_figures_share_a_page() -> None:
    audited = audit_file(str(SOUND))
    ids = [
        element.get("id")
        for one in audited.parts
        if (svg := render(one))
        for element in tree(svg).iter()
        if element.get("id")
    ]
    assert len(ids) == len(set(ids)) > 9
    assert {"figure-1-a", "figure-1-a-title", "figure-7-b-desc"} <= set(ids)


def test_cases_have_ids_of_their_own_and_figures_that_differ() -> None:
    for question, kind in ((OPEN, NotDetermined), (SEVERAL, Several)):
        one = part(question)
        assert isinstance(one.outcome, NotDetermined | Several) and isinstance(one.outcome, kind)
        drawn = [render_case(one, case) for case in one.outcome.cases]
        assert len(drawn) >= 2 and all(drawn)
        paths = {"".join(path.get("d", "") for path in tree(svg).iter(f"{SVG}path")) for svg in drawn}
        assert len({tree(svg).get("id") for svg in drawn}) == len(paths) == len(drawn)


def test_what_has_more_than_one_figure_or_none_says_so() -> None:
    assert written(render(part(OPEN)))[-1] == ONE_OF_SEVERAL
    assert written(render(part(SEVERAL)))[-1] == ONE_OF_SEVERAL
    assert written(render(part(IMPOSSIBLE)))[-1] == NOT_TO_SCALE
    assert NOT_TO_SCALE not in render(part(PANEL))


def test_a_sketch_is_marked_and_looks_otherwise() -> None:
    one = part(PANEL)
    svg = render(one, scale="sketch")
    assert written(svg)[-1] == NOT_TO_SCALE and "Scale: not to scale." in svg
    assert sorted(written(svg)[:-1]) == sorted(written(render(one)))
    assert [path.get("d") for path in tree(svg).iter(f"{SVG}path")] != [
        path.get("d") for path in tree(render(one)).iter(f"{SVG}path")
    ]


def test_produced_sides_are_dashed_so_that_they_are_told_apart_in_grey() -> None:
    groups = {
        group.get("stroke-dasharray"): len(group)
        for group in tree(render(part(PANEL), colours="triangle-sides"))
        if group.get("stroke", "#000") != "#000"
    }
    assert groups == {None: 3, "5 3": 1}
    assert "dasharray" not in render(part(PANEL))


def test_a_reflex_angle_goes_the_long_way_round() -> None:
    svg = render(part("figure: ['segments AB, BC'], given: [∠ABC = 100°], ask: reflex ∠ABC"))
    flags = [re.findall(r" 0 ([01]) ([01]) ", path.get("d", ""))[0] for path in tree(svg).iter(f"{SVG}path")]
    assert sorted(large for large, _ in flags) == ["0", "1"]
    assert len({sweep for _, sweep in flags}) == 2, "the two arcs make a whole turn between them"


def test_numbers_have_at_most_two_decimals() -> None:
    found = numbers(render(part(PANEL)))
    assert len(found) > 40
    assert [number for number in found if not re.fullmatch(r"-?\d+(\.\d{1,2})?", number)] == []


def test_hostile_text_stays_text() -> None:
    hostile = '<script>alert("sail")</script>&'
    one = part(f"figure: [triangle ABC], given: [∠BAC = 40°, ∠ACB = 60°], ask: ∠ABC, text: '{hostile}'")
    one = replace(one, part=replace(one.part, id=f'1"/>{hostile}'))
    one = replace(one, reading=replace(one.reading, ask=replace(one.reading.ask, text=hostile)))
    svg = render(one)
    assert "<script" not in svg and hostile in (tree(svg).findtext(f"{SVG}desc") or "")
    assert not list(tree(svg).iter(f"{SVG}script"))
    assert re.fullmatch(r"[A-Za-z0-9-]+", tree(svg).get("id", ""))


def test_a_figure_without_positions_for_all_its_points_is_left_out() -> None:
    one = part(PANEL)
    assert isinstance(one.outcome, Derived)
    assert render(replace(one, outcome=replace(one.outcome, figure=one.outcome.figure[:2]))) == ""


def test_typst_sets_every_text() -> None:
    """An outside reader of the SVG: a PDF page with the figure has its letters and sizes as text."""
    import typst

    svg = render(
        part("figure: ['AB ∥ CD, EF cuts AB at G and CD at H'], given: [∠EGB = (3x + 10)°, ∠GHD = (5x − 30)°], ask: x")
    )
    folder = shipped("schemes", "templates", "scheme")
    pages = typst.Compiler(
        folder / "figure.typ", root=folder, ignore_system_fonts=True, sys_inputs={"drawing": svg}
    ).compile(format="pdf")
    with pdfplumber.open(io.BytesIO(pages)) as document:
        seen = "".join(letter["text"] for letter in document.pages[0].chars)
    assert all(text.replace(" ", "") in seen.replace(" ", "") for text in written(svg))
    assert len(written(svg)) == 10


def test_the_same_part_gives_the_same_bytes_in_another_process(tmp_path: Path) -> None:
    program = (
        "import sys; from paperaudit.audit import audit_file; from paperaudit.reports.figure import render; "
        "sys.stdout.buffer.write(''.join(map(render, audit_file(sys.argv[1]).parts)).encode())"
    )
    found = [
        subprocess.run(
            [sys.executable, "-c", program, str(DRAFT)],
            capture_output=True,
            check=True,
            env={"PYTHONHASHSEED": seed, "PATH": ""},
        ).stdout
        for seed in ("1", "2")
    ]
    assert found[0] == found[1] and found[0].count(b"<svg") >= 6


def test_a_part_that_was_not_derived_has_the_figure_that_its_givens_make() -> None:
    """The right-angled triangle of the legs 5 cm and 12 cm, which no theorem here settles."""
    found = part("figure: [triangle KLM], given: [∠L = 90°, KL = 5 cm, LM = 12 cm], ask: KM")
    unread = replace(found, outcome=NotRead("no theorem known here reaches it"), verdict="not-read")
    assert {"K", "L", "M", "5 cm", "12 cm", "?"} <= set(written(render(unread)))


def test_a_figure_over_several_parts_leaves_out_what_is_asked() -> None:
    found = part(PANEL)
    assert "?" in written(render(found))
    bare = render(found, asked=False)
    assert "?" not in written(bare)
    assert "Asked" not in bare


CIRCLES = {
    "at the centre": (
        "figure: ['circle with centre O through A, B and C', 'segments OA, OB, CA, CB'], given: [∠AOB = 100°], "
        "ask: ∠ACB, sketch: {O: [0, 0], A: [-5, -6], B: [5, -6], C: [0, 8]}",
        "100° ? A B C O",
    ),
    "cyclic": (
        "figure: [ABCD is a cyclic quadrilateral, AB is produced to E], given: [∠CBE = 82°], ask: ∠D",
        "82° ? A B C D E",
    ),
    "tangents": (
        "figure: ['PA and PB are tangents to the circle with centre O at A and B', 'segments OA, OB'], "
        "given: [∠APB = 46°], ask: ∠AOB",
        "46° ? A B O P",
    ),
    "diameter": (
        "figure: ['circle with centre O through A, B and C', AOB is a diameter, 'segments AC, BC'], "
        "given: [∠BAC = 35°], ask: ∠ABC",
        "35° ? A B C O",
    ),
}


@pytest.mark.parametrize("name", CIRCLES)
def test_circles_are_drawn_whole_and_round_in_a_sketch_too(name: str) -> None:
    question, shown = CIRCLES[name]
    one = part(question)
    for svg, note in ((render(one), []), (render(one, scale="sketch"), [NOT_TO_SCALE])):
        outlines = [found for found in tree(svg).iter(f"{SVG}circle") if float(found.get("r", "")) > 20]
        assert len(outlines) == 1
        assert sorted(written(svg)) == sorted([*shown.split(), *note]), "a centre without a letter has none here"
        centre, radius = (float(outlines[0].get("cx", "")), float(outlines[0].get("cy", ""))), outlines[0].get("r", "")
        ends = [
            tuple(map(float, spot.split(",")))
            for line in tree(svg).iter(f"{SVG}polyline")
            for spot in line.get("points", "").split()
        ]
        assert sum(math.dist(centre, end) == pytest.approx(float(radius), abs=0.05) for end in ends) >= 2


def test_what_is_not_to_scale_has_another_angle_at_the_centre() -> None:
    one = part(CIRCLES["at the centre"][0])
    drawn = [
        {path.get("d") for path in tree(svg).iter(f"{SVG}path")} for svg in (render(one), render(one, scale="sketch"))
    ]
    assert len(drawn[0] | drawn[1]) == 4
