"""What cannot be read as a draft is said in words, within seconds and without filling the memory."""

import subprocess
import sys
import time
from pathlib import Path

import pytest

from paperaudit.readers.draft.read_draft import read_draft
from tests.readers.made_pdf import FONT, PAPER, packed, pages, pdf, stream, written

PICTURE = stream(
    b"\x00" * 300, "/Type /XObject /Subtype /Image /Width 10 /Height 10 /BitsPerComponent 8 /ColorSpace /DeviceRGB"
)
SCAN = b"q 595 0 0 842 0 0 cm /I Do Q"
SECONDS = 20.0
"""Within this each of these has to be refused, on a busy machine too; the slowest takes some four."""


def complaints(content: bytes) -> list[str]:
    read = read_draft(content, "draft.pdf")
    return [complaint.describe() for complaint in read.complaints]


def test_a_plain_paper_is_read() -> None:
    paper = read_draft(pages([written(PAPER)]), "draft.pdf").whole()
    assert [(part.id, part.marks) for _, part in paper.parts()] == [("1.a", 2), ("1.b", 1), ("2", 1)]
    place = next(paper.questions()).place
    assert place.page == 1 and place.box is not None and place.describe() == "draft.pdf, page 1"


def bombs() -> dict[str, tuple[bytes, str]]:
    nested = [
        stream(
            f"/X{at + 1} Do\n".encode() * 10,
            f"/Type /XObject /Subtype /Form /BBox [0 0 9 9] /Resources << /XObject << /X{at + 1} {at + 5} 0 R >> >>",
        )
        for at in range(9)
    ]
    nested.append(stream(b"0 0 m 1 1 l S", "/Type /XObject /Subtype /Form /BBox [0 0 9 9]"))
    wide = (
        "<< /Type /Font /Subtype /Type0 /BaseFont /W /Encoding /Identity-H /DescendantFonts [<< /Type /Font /Subtype"
        " /CIDFontType2 /BaseFont /W /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >>"
        " /FontDescriptor << /Type /FontDescriptor /FontName /W >> /W [0 2000000000 500] >>] >>"
    )
    mapped = packed(b"begincmap 1 beginbfrange <00000000> <7fffffff> <0041> endbfrange endcmap")
    map_font = "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /ToUnicode 4 0 R >>"
    return {
        "unpacks to two hundred megabytes": (pages([b" " * 200_000_000]), "unpacks to more than"),
        "commands without end": (pages([b"q Q " * 2_000_000]), "commands was read"),
        "letters without end": (
            pages([b"BT /F 9 Tf " + b"(aaaaaaaaaaaaaaaaaaaa) Tj " * 9_000 + b"ET"]),
            "letters and lines",
        ),
        "drawings within drawings": (
            pages([b"/X0 Do"], resources="/XObject << /X0 4 0 R >>", more=nested),
            "drawings within drawings",
        ),
        "a font of two thousand million widths": (
            pages([b"BT /G 9 Tf (a) Tj ET"], resources="/Font << /F 3 0 R /G 4 0 R >>", more=[wide]),
            "a font with more than",
        ),
        "a table of letters without end": (
            pages([b"BT /G 9 Tf (a) Tj ET"], resources="/Font << /F 3 0 R /G 5 0 R >>", more=[mapped, map_font]),
            "a font with more than",
        ),
    }


BOMBS = bombs()


@pytest.mark.parametrize("name", BOMBS)
def test_what_has_no_end_is_refused(name: str) -> None:
    content, expected = BOMBS[name]
    begin = time.monotonic()
    (found,) = complaints(content)
    assert expected in found
    assert time.monotonic() - begin < SECONDS


def test_a_drawing_that_draws_itself_is_drawn_once() -> None:
    itself = stream(
        b"/X0 Do 0 0 m 9 9 l S",
        "/Type /XObject /Subtype /Form /BBox [0 0 9 9] /Resources << /XObject << /X0 4 0 R >> >>",
    )
    content = pages([written(PAPER) + b"\n/X0 Do"], resources="/XObject << /X0 4 0 R >>", more=[itself])
    assert read_draft(content, "draft.pdf").whole().marks_sum() == 4


def test_three_hundred_pages_are_too_many() -> None:
    (found,) = complaints(pages([written(PAPER)] * 300))
    assert "more than 100 pages" in found


def test_no_pages_at_all() -> None:
    (found,) = complaints(pages([]))
    assert "no pages" in found


@pytest.mark.parametrize("share", [0.02, 0.3, 0.6, 0.9])
def test_a_file_cut_short(share: float) -> None:
    whole = pages([written(PAPER)] * 3)
    found = complaints(whole[: int(share * len(whole))])
    assert found
    assert all("damaged" in one or "no pages" in one or "no numbered question" in one for one in found)


@pytest.mark.parametrize(
    "content", [b"%PDF-1.7\n", b"%PDF-1.7\nnothing of the kind\n%%EOF", b"%PDF-" + bytes(range(256)) * 40]
)
def test_what_only_begins_like_a_pdf(content: bytes) -> None:
    (found,) = complaints(content)
    assert "damaged" in found or "no pages" in found


def test_an_encrypted_file_is_called_so() -> None:
    objects = [
        "<< /Type /Catalog /Pages 2 0 R >>",
        "<< /Type /Pages /Kids [] /Count 0 >>",
        "<< /Filter /Standard /V 1 /R 2 /Length 40 /P -4 /O <" + "ab" * 32 + "> /U <" + "cd" * 32 + "> >>",
    ]
    (found,) = complaints(pdf(objects, "/Encrypt 3 0 R /ID [<00> <00>]"))
    assert "protected by a password" in found


def test_scanned_pages_are_named_page_by_page() -> None:
    content = pages([SCAN, written(PAPER), SCAN], resources="/XObject << /I 4 0 R >>", more=[PICTURE])
    assert complaints(content) == [
        f"draft.pdf, page {page}: this page is a picture without text, a scan or a photograph; expected a PDF with text"
        for page in (1, 3)
    ]


def test_a_font_that_names_no_letters_is_named() -> None:
    mute = (
        "<< /Type /Font /Subtype /Type1 /BaseFont /ABCDEF+Mute /FirstChar 0 /LastChar 255 /Widths ["
        + "500 " * 256
        + "] /Encoding << /Type /Encoding /Differences [0 "
        + " ".join(f"/sign{at}x" for at in range(256))
        + "] >> /FontDescriptor << /Type /FontDescriptor /FontName /ABCDEF+Mute /Flags 4 >> >>"
    )
    text = written(PAPER).replace(b"/F ", b"/G ")
    (found,) = complaints(pages([text], resources="/Font << /F 3 0 R /G 4 0 R >>", more=[mute]))
    assert "page 1" in found and "font Mute" in found


@pytest.mark.parametrize("turn", [90, 180, 270])
def test_turned_pages_are_read(turn: int) -> None:
    """Such as a scanner's software or a word processor turns them: the text itself runs the way that one looks."""
    matrix = {90: b"0 1 -1 0 595 0 cm ", 180: b"-1 0 0 -1 595 842 cm ", 270: b"0 -1 1 0 0 842 cm "}[turn]
    for extra in (f"/Rotate {turn}", ""):
        paper = read_draft(pages([matrix + written(PAPER)], extra=extra), "draft.pdf").whole()
        assert [part.id for _, part in paper.parts()] == ["1.a", "1.b", "2"]


def test_a_page_without_questions_is_said() -> None:
    (found,) = complaints(pages([written(["Notes on rope and canvas", "Nothing is asked here."])]))
    assert "no numbered question was read" in found


@pytest.mark.parametrize("name", ["unpacks to two hundred megabytes", "a font of two thousand million widths"])
def test_the_command_ends_with_status_two_below_a_gigabyte(name: str, tmp_path: Path) -> None:
    path = tmp_path / "draft.pdf"
    path.write_bytes(BOMBS[name][0])
    code = (
        "import resource, sys; resource.setrlimit(resource.RLIMIT_DATA, (10**9, 10**9));"
        "from paperaudit.cli import main; sys.exit(main(['check', sys.argv[1]]))"
    )
    done = subprocess.run([sys.executable, "-c", code, str(path)], capture_output=True, text=True, check=False)
    assert done.returncode == 2
    assert "expected the" in done.stderr and "Traceback" not in done.stderr
    assert FONT not in done.stderr
