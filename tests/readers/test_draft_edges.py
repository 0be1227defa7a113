"""Edges of a page: page numbers, marks at a page turn, centred numbers, totals in a row with words."""

import pytest

from paperaudit.readers.draft.columns import areas_of
from paperaudit.readers.draft.cover import cover_of
from paperaudit.readers.draft.draft_tree import TreeWriter
from paperaudit.readers.draft.drawing.figures import figures_of
from paperaudit.readers.draft.drawing.label_kinds import LabelKind, kind_of
from paperaudit.readers.draft.outline_reader import outline_of
from paperaudit.readers.draft.page import DraftPage, Glyph, Path, Piece
from paperaudit.readers.draft.print_line import Column, PrintLine, PrintTable
from paperaudit.readers.draft.raised_numbers import with_raised_numbers
from paperaudit.readers.draft.row import Cell, Row
from paperaudit.readers.draft.running import running_matter
from paperaudit.readers.draft.runs import runs_of
from paperaudit.readers.tree import plain
from tests.readers.typed_pages import lines_of, outlined

HIGH = 840.0


def glyphs(text: str, left: float, baseline: float, first: int) -> list[Glyph]:
    return [
        Glyph(letter, (left + 6 * at, baseline - 9, left + 6 * at + 6, baseline + 2), baseline, 11.0, "F", first + at)
        for at, letter in enumerate(text)
        if letter != " "
    ]


def page(number: int, *texts: tuple[str, float, float]) -> DraftPage:
    printed: list[Glyph] = []
    for text, left, baseline in texts:
        printed += glyphs(text, left, baseline, len(printed) * 2)
    return DraftPage(number, 600.0, HIGH, tuple(printed))


FULL = ("Some text of the page", 60.0, 400.0)


@pytest.mark.parametrize(
    ("texts", "number"),
    [
        ([("2", 300.0, 810.0)], 2),
        ([("- 2 -", 300.0, 810.0)], 2),
        ([("(2)", 300.0, 810.0)], 2),
        ([("Page 2 of 4", 300.0, 30.0)], 2),
        ([("it is red.", 60.0, 80.0), ("(2)", 540.0, 80.0)], None),
        ([("Find x.", 60.0, 800.0), ("[2]", 540.0, 800.0)], None),
        ([("Find x.", 60.0, 60.0), ("it is red.", 60.0, 75.0), ("(2)", 540.0, 75.0)], None),
    ],
)
def test_marks_beside_text_are_no_page_number(texts: list[tuple[str, float, float]], number: int | None) -> None:
    second = running_matter([page(1, FULL), page(2, FULL, *texts)])[1]
    assert second.number == number
    if number is None:
        assert not second.glyphs


def row(baseline: float, *cells: tuple[str, float, int]) -> PrintLine:
    made = tuple(
        Cell(text, (left, baseline - 9, left + 6 * len(text), baseline + 2), tuple(range(first, first + len(text))))
        for text, left, first in cells
    )
    box = (made[0].box[0], baseline - 9, made[-1].box[2], baseline + 2)
    return PrintLine(Column(1, 0, 40.0, 560.0), Row(made, box, baseline, 11.0))


def texts(lines: list[PrintLine]) -> list[list[str]]:
    return [[cell.text for cell in line.row.cells] for line in lines]


def test_a_number_in_the_middle_of_its_cell_goes_to_the_first_row_of_the_text() -> None:
    lines = [
        row(100, ("A bag holds beads.", 90, 10)),
        row(107, ("3.1", 50, 0)),
        row(114, ("Find the chance.", 90, 40), ("(2)", 520, 80)),
        row(134, ("One of them is red.", 90, 110)),
        row(148, ("3.2", 50, 100), ("It is put back.", 90, 140)),
        row(162, ("Find the chance now.", 90, 170), ("(3)", 520, 200)),
    ]
    assert texts(with_raised_numbers(lines)) == [  # type: ignore[arg-type]
        ["3.1", "A bag holds beads."],
        ["Find the chance.", "(2)"],
        ["3.2", "One of them is red."],
        ["It is put back."],
        ["Find the chance now.", "(3)"],
    ]


def test_rows_that_are_printed_from_the_top_stay_as_they_are() -> None:
    lines = [
        row(100, ("A bag holds beads.", 90, 0)),
        row(114, ("(a)", 50, 20), ("Find the chance.", 90, 30)),
        row(128, ("(b)", 50, 60), ("Find it again.", 90, 70)),
    ]
    assert texts(with_raised_numbers(lines)) == texts(lines)  # type: ignore[arg-type]


def test_a_total_and_the_time_may_stand_behind_the_title() -> None:
    cover = cover_of(list(lines_of("MATHEMATICS TEST 3 Total: 24\nTime: 30 minutes")))
    assert cover.title and cover.title.value == "MATHEMATICS TEST 3"
    assert cover.total and cover.total.value == "24"
    assert cover.minutes and cover.minutes.value == "30"


def test_the_cover_may_stand_in_a_ruled_table() -> None:
    table = PrintTable(
        Column(1, 0, 40.0, 560.0),
        (40.0, 60.0, 560.0, 120.0),
        (("PELICAN BAY HIGH", "GRADE 11 MATHEMATICS"), ("Paper 2", "Time: 1½ hours"), ("Date: June", "Marks: 60")),
    )
    cover = cover_of(list(outline_of([table, row(200, ("1.", 50, 0), ("Find x.", 90, 5))]).cover))
    assert cover.title and cover.title.value == "GRADE 11 MATHEMATICS"
    assert cover.minutes and cover.minutes.value == "90"
    assert cover.total and cover.total.value == "60"


def test_numbers_of_parts_and_marks_beside_a_figure_are_no_labels() -> None:
    assert {kind_of(text) for text in ("2)", "a)", "(ii)", "[3]", "(1 mark)", "(3 marks)", "4 marks")} == {
        LabelKind.WORDS
    }
    assert kind_of("2x") is LabelKind.SIZE and kind_of("A") is LabelKind.POINT


def test_a_dot_of_a_font_without_letters_belongs_to_its_figure() -> None:
    sides = [((100.0, 100.0), (200.0, 100.0)), ((200.0, 100.0), (150.0, 180.0)), ((150.0, 180.0), (100.0, 100.0))]
    boxes = [(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])) for a, b in sides]
    paths = [Path((Piece(side),), box, 90 + at) for at, (side, box) in enumerate(zip(sides, boxes, strict=True))]
    letters = [*glyphs("A", 90, 98, 0), *glyphs("B", 203, 98, 2), *glyphs("C", 147, 192, 4)]
    dot = Glyph("", (150, 118, 150, 122), 120, 3.6, "Dots", 9)
    (figure,) = figures_of(DraftPage(1, 600.0, HIGH, (*letters, dot), tuple(paths)))
    assert [point for point, *_ in figure.points] == ["A", "B", "C"] and 9 in figure.glyphs


def test_a_rule_of_the_text_near_a_figure_stays_with_the_text() -> None:
    """An angle sign of plain TeX is a slash and a rule; the next figure begins twenty points below it."""
    sides = [((100.0, 100.0), (200.0, 100.0)), ((200.0, 100.0), (150.0, 180.0)), ((150.0, 180.0), (100.0, 100.0))]
    rule = ((120.0, 78.0), (124.0, 78.0))
    paths = []
    for at, (a, b) in enumerate([*sides, rule]):
        box = (min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1]))
        paths.append(Path((Piece((a, b)),), box, 90 + at, width=0.4))
    letters = [*glyphs("A", 90, 98, 0), *glyphs("B", 203, 98, 2), *glyphs("C", 147, 192, 4)]
    (figure,) = figures_of(DraftPage(1, 600.0, HIGH, tuple(letters), tuple(paths)))
    assert figure.paths == {90, 91, 92}


def test_marks_at_the_right_edge_of_a_narrow_column_do_not_bridge_the_gutter() -> None:
    printed: list[Glyph] = []
    for at in range(8):
        row_of = [("Here is a row of the left column (2)", 40.0), ("and one of the right column here", 266.0)]
        for text, left in row_of:
            printed += glyphs(text, left, 100.0 + 14 * at, 200 * at + len(text))
    left, right = areas_of(runs_of(printed), (30.0, 80.0, 480.0, 220.0))
    assert left[2] == right[0] and 256.0 < right[0] <= 266.0


def test_a_dot_of_a_font_marks_the_centre_of_a_circle() -> None:
    x, y, r, k = 200.0, 200.0, 60.0, 60.0 * 0.5523
    corners = [(r, 0.0), (0.0, r), (-r, 0.0), (0.0, -r)]
    handles = [((r, k), (k, r)), ((-k, r), (-r, k)), ((-r, -k), (-k, -r)), ((k, -r), (r, -k))]
    pieces = [
        Piece(tuple((x + a, y + b) for a, b in (corners[at], *handles[at], corners[(at + 1) % 4]))) for at in range(4)
    ]
    circle = Path(tuple(pieces), (x - r, y - r, x + r, y + r), 90, closed=True, width=0.5)
    side = Path((Piece(((x + r, y), (x - r, y))),), (x - r, y, x + r, y), 91, width=0.5)
    letters = [*glyphs("O", x - 3, y + 14, 0), *glyphs("A", x + r + 4, y + 3, 2), *glyphs("B", x - r - 12, y + 3, 4)]
    dot = Glyph("", (x, y - 2, x, y + 2), y, 3.6, "Dots", 9, name="Bullet")
    (figure,) = figures_of(DraftPage(1, 600.0, HIGH, (*letters, dot), (circle, side)))
    assert figure.doubts == () and "circle with centre O through A and B" in [fact.text for fact in figure.figure]
    (figure,) = figures_of(DraftPage(1, 600.0, HIGH, tuple(letters), (circle, side)))
    assert any("no dot marks the centre O" in doubt for doubt in figure.doubts)


def test_marks_at_a_part_with_parts_are_written_as_its_total() -> None:
    page = """
1.  Work these out.
    (a)  In two ways.                                                                    [5]
         (i)  3 + 4                                                                      (2)
         (ii) 3 × 4                                                                      (2)
    (b)  5 + 6                                                                           (1)
"""
    tree = TreeWriter("draft.pdf").tree(outlined(page))
    (question,) = plain(tree)["questions"]  # type: ignore[index]
    assert [(part["number"], part.get("total"), part.get("marks")) for part in question["parts"]] == [
        ("a", "5", None),
        ("b", None, "1"),
    ]
