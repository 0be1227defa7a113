"""Running heads and feet: what every page repeats goes, what two pages merely share stays."""

from paperaudit.readers.draft.read_draft import read_draft
from tests.readers.made_pdf import pages


def page(rows: list[tuple[int, int, str]]) -> bytes:
    """A content stream with texts at given places from the left and from the bottom."""
    shown = (
        f"BT /F 11 Tf {left} {up} Td ({text.replace('(', '[').replace(')', ']')}) Tj ET" for left, up, text in rows
    )
    return "\n".join(shown).encode()


def texts(contents: list[bytes]) -> list[str]:
    paper = read_draft(pages(contents), "draft.pdf").whole()
    lines = [line for question in paper.questions() for line in (question.text, question.parts[0].text)]
    return [line.text for line in lines if line is not None]


def test_heads_page_numbers_and_calls_to_turn_over_are_no_text() -> None:
    contents = [
        page(
            [
                (50, 800, "Mathematics / P1"),
                (50, 740, "1. Find 3 + 4. (1)"),
                (290, 60, "Please turn over"),
                (290, 40, "1"),
            ]
        ),
        page([(50, 800, "Mathematics / P1"), (50, 740, "2. Find 5 + 4. (1)"), (290, 40, "2")]),
    ]
    assert texts(contents) == ["Find 3 + 4.", "Find 5 + 4."]


def test_questions_at_one_height_on_several_pages_are_no_heads() -> None:
    contents = [page([(50, 790, f"{at}. Find {at} + 4. (1)"), (290, 40, f"- {at} -")]) for at in (1, 2, 3)]
    assert texts(contents) == ["Find 1 + 4.", "Find 2 + 4.", "Find 3 + 4."]


def test_a_row_behind_a_row_of_text_is_no_head_though_pages_share_it() -> None:
    contents = [
        page([(50, 800, f"{at}. A boat sails {at} km in 2 hours."), (60, 785, "Find its average speed. (2)")])
        for at in (1, 2)
    ]
    assert [text.split(". ")[1] for text in texts(contents)] == ["Find its average speed."] * 2
