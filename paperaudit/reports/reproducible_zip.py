"""Makes an Office file the same to the byte whenever it is written: fixed dates, inside and out."""

import io
import re
import zipfile

FIXED_DATE = "2000-01-01T00:00:00Z"
"""The date of creation and of the last change that every file we write carries."""

_PROPERTIES = "docProps/core.xml"
_DATES = re.compile(rb"(<dcterms:(created|modified)\b[^>]*>)[^<]*(</dcterms:\2>)")


def reproducible(archive: bytes) -> bytes:
    """The same .xlsx or .docx with the zip's own times, and the dates in its properties, fixed.

    Entries keep their order and their contents. Raises zipfile.BadZipFile if `archive` is no zip.
    """
    written = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(archive)) as old, zipfile.ZipFile(written, "w") as new:
        for entry in old.infolist():
            content = old.read(entry)
            if entry.filename == _PROPERTIES:
                content = _DATES.sub(rb"\g<1>" + FIXED_DATE.encode() + rb"\g<3>", content)
            fixed = zipfile.ZipInfo(entry.filename, date_time=(1980, 1, 1, 0, 0, 0))
            fixed.compress_type = zipfile.ZIP_DEFLATED
            fixed.create_system = 3  # what Unix writes; the running system's number would differ
            fixed.external_attr = 0o644 << 16
            new.writestr(fixed, content)
    return written.getvalue()
