"""Rows of print: stacked fractions, powers, roots, hats and gaps become linear text, whatever order they come in."""

import random
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pdfminer.pdffont import PDFType1Font, PDFUnicodeNotDefined
from pdfminer.pdfinterp import PDFResourceManager
from pdfminer.psparser import LIT

from paperaudit.readers.draft.fonts import names_of, with_names
from paperaudit.readers.draft.page import Glyph
from paperaudit.readers.draft.rows import rows_of
from paperaudit.readers.draft.told_text import with_told
from tests.readers.set_print import Print

HAT = "\u0302"


def test_words_of_a_justified_line() -> None:
    assert Print().put("Find the value of x.").read() == ["Find the value of x."]


def test_letters_that_are_spread_out_are_one_word() -> None:
    row = Print()
    for letter in "SECTION A MATHEMATICS":
        row.put(letter)
        row.x += 2.0
    assert row.read() == ["SECTION A MATHEMATICS"]


def test_printed_spaces_are_single() -> None:
    row = Print().put("in")
    row.glyphs += [Glyph(" ", (row.x, 90, row.x + 3, 103), 100, 12, "Roman", 90) for _ in range(2)]
    row.x += 6
    assert row.put("the").read() == ["in the"]


@pytest.mark.parametrize("filled", [False, True])
def test_a_stacked_fraction_in_its_row(filled: bool) -> None:
    row = Print().put("Solve ").fraction("x + 1", "2x", filled=filled).put(" = 3.")
    assert row.read() == ["Solve (x + 1)/(2x) = 3."]
    assert row.doubts() == []


def test_a_mixed_number_and_a_fraction_as_a_factor() -> None:
    assert Print().put("2").fraction("3", "4").put(" + 1").read() == ["2 3/4 + 1"]
    assert Print().put("y = ").fraction("2", "3").put("x").read() == ["y = (2/3)x"]
    assert Print().put("3").fraction("x", "2").read() == ["3(x/2)"]


def test_a_fraction_that_stands_alone() -> None:
    assert Print().put("Work out").down(2.5).fraction("x + 1", "4").read() == ["Work out", "(x + 1)/4"]


def test_a_fraction_in_a_fraction() -> None:
    row = Print().put("y = ")
    left = row.x
    row.y -= 13
    row.fraction("1", "a", 9).put(" + ", 9).fraction("1", "b", 9)
    right = row.x
    row.y += 13
    row.at("2", (left + right) / 2 - 3, row.y + 9, 12).rule(left, right, row.y - 3)
    assert row.read() == ["y = (1/a + 1/b)/2"]


def test_an_underlined_word_is_no_fraction() -> None:
    row = Print().put("This is ")
    left = row.x
    row.put("not")
    row.rule(left, row.x, row.y + 1.5).put(" drawn to scale").down().put("and this is the next line of it.")
    assert row.read() == ["This is not drawn to scale", "and this is the next line of it."]


def test_an_underlined_heading_is_no_fraction() -> None:
    row = Print().put("SECTION A")
    row.rule(50, row.x, row.y + 1.6).down().put("Answer every question in it.")
    assert row.read() == ["SECTION A", "Answer every question in it."]


def test_the_lines_of_a_table_are_no_fractions() -> None:
    row = Print().put("12").down(1.6).put("15")
    for y in (88.0, 106.0, 124.0):
        row.rule(46, 66, y)
    row.stroke([(46, 88), (46, 124)]).stroke([(66, 88), (66, 124)])
    assert row.read() == ["12", "15"]


def test_powers_and_indices() -> None:
    row = Print().put("x").put("2", 8, 4).put(" + y").put("n+1", 8, 4).put(" = 2").put("−3", 8, 4)
    assert row.read() == ["x² + y^(n + 1) = 2⁻³"]
    row = Print().put("T").put("n", 8, -2).put(" = log").put("2", 8, -2).put("8")
    assert row.read() == ["T_n = log₂ 8"]


def test_a_power_of_a_power() -> None:
    assert Print().put("e").put("−x", 8, 4).put("2", 6, 8).read() == ["e^(−x²)"]


def test_powers_with_a_narrow_letter_between_them_are_two() -> None:
    assert Print().put("x").put("2", 8, 4).put("y").put("2", 8, 4).read() == ["x²y²"]


@pytest.mark.parametrize("ring", ["°", "º", "∘", "o"])
def test_degree_signs(ring: str) -> None:
    row = Print().put("40")
    row = row.put(ring) if ring in "°º" else row.put(ring, 8, 4)
    assert row.read()[0].replace("º", "°") == "40°"
    assert row.doubts() == []


def test_a_raised_nought_is_a_doubt() -> None:
    row = Print().put("∠A = 40").put("0", 8, 4)
    assert row.read() == ["∠A = 40⁰"]
    assert row.doubts() == ["the raised 0 behind 40 may be a degree sign or a power"]


def test_roots() -> None:
    assert Print().root("x + 1").put(" = 3").read() == ["√(x + 1) = 3"]
    assert Print().put("2").root("50").read() == ["2√50"]
    row = Print().at("3", 52, 97, 6)
    assert row.root("27").read() == ["∛27"]


def test_a_root_drawn_as_a_path() -> None:
    row = Print().put("AB = ")
    x, y = row.x, row.y
    row.stroke([(x, y - 4), (x + 2, y - 5), (x + 4, y + 1), (x + 7, y - 11), (x + 21, y - 11)])
    row.x += 8
    assert row.put("13").read() == ["AB = √13"]


def test_a_root_over_a_fraction_and_a_fraction_over_a_root() -> None:
    row = Print().put("t = ").at("√", 74, 100, 12, wide=0.6)
    row.x = 82
    row.fraction("a", "b", 9).rule(81.2, row.x, 84)
    assert row.read() == ["t = √(a/b)"]


def hatted(order: str, accent: str, wide: float) -> Print:
    row = Print()
    places = {"A": 50.0, "B": 58.0, "C": 66.0, "^": 58.0 + 4.0 - wide * 6 + (3.0 if wide == 0 else 0.0)}
    for letter in order:
        if letter == "^":
            row.at(accent, places["^"], row.y - 2, 12, wide=wide)
        else:
            row.at(letter, places[letter], row.y, 12, wide=8 / 12)
    return row


@pytest.mark.parametrize("order", ["^ABC", "A^BC", "AB^C", "ABC^", "C^BA"])
@pytest.mark.parametrize(("accent", "wide"), [("ˆ", 0.45), ("^", 0.5), (HAT, 0.0), (HAT, 0.4)])
def test_a_hat_goes_to_the_letter_that_it_lies_over(order: str, accent: str, wide: float) -> None:
    assert hatted(order, accent, wide).read() == [f"AB{HAT}C"]
    assert hatted(order, accent, wide).doubts() == []


def test_a_hat_between_two_letters_is_a_doubt() -> None:
    row = Print().at("A", 50, 100, 12, wide=0.5).at("B", 56, 100, 12, wide=0.5).at("ˆ", 53.6, 98, 12, wide=0.4)
    assert row.doubts() == ["the mark over B lies between two letters"] or row.doubts() == [
        "the mark over A lies between two letters"
    ]


def test_a_mark_without_a_letter_is_a_doubtful_hat() -> None:
    row = hatted("AB^C", "", 0.0)
    row.glyphs = [replace(glyph, text=glyph.text) for glyph in row.glyphs]
    assert row.read() == [f"AB{HAT}C"]
    assert row.doubts() == ["what the mark over B is cannot be told; it is taken for a hat"]


def test_a_numbered_angle_and_a_letter_of_mathematical_italics() -> None:
    row = Print().put("𝐵").at("ˆ", 50.6, 98, 12, wide=0.4).put("1", 8, -2)
    assert row.read() == [f"B{HAT}₁"]


def test_a_ligature_is_its_letters() -> None:
    assert Print().put("ﬁnd").read() == ["find"]


def test_symbol_fonts() -> None:
    assert Print().put("\uf0d0ABC \uf0b3 40\uf0b0", font="SymbolMT").read() == ["∠ABC ≥ 40°"]
    assert Print().put("AB ").put("x", font="LMMathSymbols10-Regular", name="bardbl").put(" CD").read() == ["AB ∥ CD"]


def test_a_sign_without_a_letter_is_a_doubt() -> None:
    row = Print().put("AB ").put("x", font="Fancy", name="g17").put(" CD")
    assert row.read() == ["AB \ufffd CD"]
    assert row.doubts() == ["a sign of the font Fancy has no letter behind it"]


def test_a_column_of_numbers_in_brackets() -> None:
    row = Print().put("a = ")
    row.at("(", row.x, row.y, 12, wide=0.7).at(")", row.x + 26, row.y, 12, wide=0.7)
    row.at("3", row.x + 14, row.y - 8, 12).at("−", row.x + 10, row.y + 8, 12).at("2", row.x + 17, row.y + 8, 12)
    assert row.read() == ["a = (3; −2)"]


def test_a_system_behind_one_bracket() -> None:
    row = Print().put("Solve ").at("{", 88, 100, 12, wide=0.7)
    for text, up in (("x + y = 5", 8.0), ("x − y = 1", -8.0)):
        row.x = 98
        row.put(text, lift=up)
    row.x += 20
    assert row.put("for x.").read() == ["Solve x + y = 5; x − y = 1 for x."]


def test_wide_gaps_part_cells_and_leaders_go() -> None:
    assert Print().put("x = 2").put(" " * 8).put("y = 3").read() == ["x = 2 ¦ y = 3"]
    assert Print().put("Answer").put("." * 30).put("cm").read() == ["Answer ¦ cm"]
    assert Print().put("." * 30).read() == []
    assert Print().put("2, 5, 8, ...").read() == ["2, 5, 8, ..."]


def test_recurring_decimals() -> None:
    row = Print().put("0.16").at("˙", 69.5, 97, 12, wide=0.25)
    assert row.read() == ["0.16\u0307"]
    assert Print().put("0.").put("45").rule(62, 74, 88.8).read() == ["0.4\u03075\u0307"]


def test_a_line_over_two_letters_is_a_length() -> None:
    row = Print().put("AB").rule(50, 62, 88.8).put(" = 5")
    assert row.read() == ["AB = 5"]


def test_bold_rows_and_their_sizes() -> None:
    (row,) = rows_of(Print(size=14).put("Question 1", font="Times-Bold").glyphs, [])
    assert (row.bold, row.size, row.baseline) == (True, 14, 100)


def test_print_that_stands_sideways_is_kept_and_doubtful() -> None:
    row = Print().put("Turn")
    row.glyphs = [replace(glyph, upright=False) for glyph in row.glyphs]
    assert row.read() == ["Turn"]
    assert row.doubts() == ["this does not stand upright on the page"]


@settings(deadline=None)
@given(st.randoms(use_true_random=False))
def test_the_order_of_printing_changes_nothing(chance: random.Random) -> None:
    row = Print().put("Solve ").fraction("x + 1", "2x").put(" = x").put("2", 8, 4).put(" + ").root("5").down(3)
    row.put("and 3").fraction("1", "4").put("x").put("n", 8, -2).put(" ").at("B", 140, 139, 12).at("ˆ", 140.5, 137, 12)
    before = row.read()
    chance.shuffle(row.glyphs)
    chance.shuffle(row.paths)
    row.glyphs = [replace(glyph, index=at) for at, glyph in enumerate(row.glyphs)]
    assert row.read() == before


@settings(deadline=None)
@given(st.floats(-300, 300), st.floats(-90, 600), st.floats(0.6, 2.5))
def test_moving_and_enlarging_changes_nothing(aside: float, down: float, times: float) -> None:
    row = Print().put("Solve ").fraction("x + 1", "2x").put(" = x").put("2", 8, 4).put(" + ").root("5").put(" and 2")
    before = row.read()
    row.glyphs = [
        replace(
            glyph,
            box=(
                glyph.box[0] * times + aside,
                glyph.box[1] * times + down,
                glyph.box[2] * times + aside,
                glyph.box[3] * times + down,
            ),
            baseline=glyph.baseline * times + down,
            size=glyph.size * times,
        )
        for glyph in row.glyphs
    ]
    paths, row.paths = row.paths, []
    for path in paths:
        (left, y), (right, _) = path.ends
        row.rule(left * times + aside, right * times + aside, y * times + down)
    assert row.read() == before


def test_a_small_raised_number_before_its_letter() -> None:
    assert Print().put("n = ").put("5", 8, 4).put("C").put("2", 8, -2).read() == ["n = ⁵C₂"]


def test_rows_between_level_rules_are_a_table() -> None:
    row = Print().put("Score  5  6").down(1.5).put("Often  2  8")
    for y in (87.0, 104.0, 122.0):
        row.rule(48, 130, y)
    assert row.read() == ["Score 5 6", "Often 2 8"]


def test_numbers_below_each_other_are_no_fraction() -> None:
    row = Print()
    row.x += 6
    row.put("12").down(1.2).put("+ 15")
    row.rule(50, 74, row.y + 4).down(1.4)
    row.x += 6
    assert row.put("27").read() == ["12", "+ 15", "27"]


def test_white_print_is_seen_on_dark_shapes_only() -> None:
    row = Print().put("Marks")
    row.glyphs = [replace(glyph, grey=1.0) for glyph in row.glyphs]
    assert row.read() == []
    row.stroke([(40, 80), (120, 80), (120, 110), (40, 110), (40, 80)])
    row.paths = [replace(path, closed=True, stroke=None, fill=0.2) for path in row.paths]
    assert row.read() == ["Marks"]


def test_a_vector_s_arrow_is_no_row_of_its_own() -> None:
    row = Print().put("PQ")
    row.at("−", 49.5, 94, 12, wide=0.6).at("→", 54.5, 94, 12, wide=0.6)
    assert row.put(" = 3").read() == ["PQ = 3"]


def test_a_row_whose_equation_stands_lower() -> None:
    row = Print().put("Solve ")
    row.put("x = 4", lift=-6).put(" for x.")
    assert row.read() == ["Solve x = 4 for x."]


def test_cases_with_conditions_behind_gaps() -> None:
    row = Print().put("f(x) = ").at("{", 96, 100, 12, wide=0.7)
    row.x = 106
    row.put("x", lift=8).put("2", 8, 12)
    row.x = 160
    row.put("if x < 2", lift=8)
    row.x = 106
    row.put("3x − 1", lift=-8)
    row.x = 160
    row.put("if x > 2", lift=-8)
    assert row.read() == ["f(x) = x², if x < 2; 3x − 1, if x > 2"]


def test_the_font_symbol_has_an_encoding_of_its_own() -> None:
    font = with_names(PDFType1Font(PDFResourceManager(), {"BaseFont": LIT("Symbol")}), {"BaseFont": LIT("Symbol")})
    assert [font.to_unichr(code) for code in (0x61, 0xD0, 0xB3)] == ["α", "∠", "≥"]


def test_a_renamed_code_has_no_letter_of_the_standard_encoding() -> None:
    encoding = {"Differences": [0x71, LIT("parenleftbigg"), LIT("minus")]}
    spec = {"BaseFont": LIT("ABCDEF+Maths"), "Encoding": encoding}
    font = with_names(PDFType1Font(PDFResourceManager(), spec), spec)
    assert names_of(font) == {0x71: "parenleftbigg"}
    assert font.to_unichr(0x72) == "−"
    with pytest.raises(PDFUnicodeNotDefined):
        font.to_unichr(0x71)


def test_a_file_tells_what_a_glyph_without_a_letter_stands_for() -> None:
    row = hatted("AB^C", "", 0.0)
    told = with_told(row.glyphs[1:3], f"B{HAT}")
    assert [glyph.text for glyph in told] == ["B", HAT]
    assert with_told(row.glyphs[1:3], "X") == row.glyphs[1:3]
