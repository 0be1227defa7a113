"""PDFs written by hand, byte by byte, for what no producer makes."""

import zlib
from collections.abc import Sequence

Body = str | bytes


def stream(content: bytes, extra: str = "") -> bytes:
    """A stream object with its length."""
    return f"<< /Length {len(content)} {extra} >>\nstream\n".encode() + content + b"\nendstream"


def packed(content: bytes, extra: str = "") -> bytes:
    """A stream that zlib packed."""
    return stream(zlib.compress(content, 9), f"/Filter /FlateDecode {extra}")


def pdf(objects: Sequence[Body], trailer: str = "") -> bytes:
    """A PDF of numbered objects, the first of which is the catalogue."""
    out = bytearray(b"%PDF-1.7\n")
    places = []
    for number, body in enumerate(objects, 1):
        places.append(len(out))
        content = body.encode() if isinstance(body, str) else body
        out += f"{number} 0 obj\n".encode() + content + b"\nendobj\n"
    start = len(out)
    out += f"xref\n0 {len(objects) + 1}\n0000000000 65535 f \n".encode()
    out += b"".join(f"{place:010d} 00000 n \n".encode() for place in places)
    out += f"trailer\n<< /Size {len(objects) + 1} /Root 1 0 R {trailer} >>\nstartxref\n{start}\n%%EOF\n".encode()
    return bytes(out)


FONT = "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>"


def pages(contents: Sequence[bytes], extra: str = "", resources: str = "", more: Sequence[Body] = ()) -> bytes:
    """A PDF with a page for each content stream; `more` objects have the numbers from 4 on."""
    first = 4 + len(more)
    kids = " ".join(f"{first + 2 * at} 0 R" for at in range(len(contents)))
    objects: list[Body] = [
        "<< /Type /Catalog /Pages 2 0 R >>",
        f"<< /Type /Pages /Kids [{kids}] /Count {len(contents)} >>",
        FONT,
        *more,
    ]
    for at, content in enumerate(contents):
        objects.append(
            f"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] {extra} /Contents {first + 2 * at + 1} 0 R "
            f"/Resources << /Font << /F 3 0 R >> {resources} >> >>"
        )
        objects.append(packed(content))
    return pdf(objects)


def written(rows: Sequence[str], size: int = 11) -> bytes:
    """A content stream that prints rows of text, 50 points from the left, from the top of the page down."""
    lines = [f"BT /F {size} Tf {size + 4} TL 50 780 Td"]
    lines += [f"({row.translate({40: chr(92) + '(', 41: chr(92) + ')'})}) Tj T*" for row in rows]
    return "\n".join([*lines, "ET"]).encode("latin-1")


PAPER = ("1. Work out these.", "(a) 3 + 4 (2 marks)", "(b) 9 - 5 (1 mark)", "2. Find 5 + 6. (1 mark)")
