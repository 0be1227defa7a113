"""Runs headless LibreOffice over our files: recalculation of workbooks, and pages as PDF.

Where it is not installed a test is skipped and says so; with PAPERAUDIT_CI=1 it fails instead.
"""

import os
import shutil
import subprocess
from collections.abc import Mapping
from pathlib import Path

import pytest

ERRORS = ("#REF!", "#NAME?", "#VALUE!", "#DIV/0!", "#N/A", "#NUM!", "#NULL!", "Err:")


def office() -> str:
    """The path of soffice."""
    found = shutil.which("soffice")
    if not found:
        message = "LibreOffice (soffice) is not installed, so nothing can be recalculated"
        if os.environ.get("PAPERAUDIT_CI") == "1":
            pytest.fail(message)
        pytest.skip(message)
    return found


def converted(folder: Path, ending: str, files: Mapping[str, bytes]) -> dict[str, Path]:
    """Files, by name without ending, opened and saved by LibreOffice as `ending`; one start for them all."""
    program = office()
    for name, content in files.items():
        (folder / f"{name}.xlsx").write_bytes(content)
    subprocess.run(
        [
            program,
            f"-env:UserInstallation={(folder / 'profile').as_uri()}",
            "--headless",
            "--convert-to",
            ending,
            "--outdir",
            str(folder / "converted"),
            *[str(folder / f"{name}.xlsx") for name in files],
        ],
        check=True,
        capture_output=True,
        timeout=120,
    )
    return {name: folder / "converted" / f"{name}.{ending}" for name in files}


def faults_in(path: Path) -> list[str]:
    """Every cell of a recalculated workbook that holds an error."""
    from openpyxl import load_workbook

    return [
        f"{sheet.title}!{cell.coordinate}: {cell.value}"
        for sheet in load_workbook(path, data_only=True)
        for row in sheet.iter_rows()
        for cell in row
        if isinstance(cell.value, str) and (cell.data_type == "e" or cell.value.startswith(ERRORS))
    ]
