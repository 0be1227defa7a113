"""How long the main command takes, beside the import of three big libraries, as whole processes side by side."""

import os
import resource
import statistics
import subprocess
import sys
from pathlib import Path

import pytest

from paperaudit.resources import shipped

ROOT = Path(__file__).resolve().parent.parent
RUNS = 9
AT_MOST = 3.5
"""How many times as long as the imports an audit of the demonstration paper may take.

The aim is 3: 2.7 to 3.3 are measured, depending on how busy the machine is.
"""


def seconds(compiled: Path, *arguments: str) -> float:
    """The processor time of one process, its modules compiled once under `compiled`, as after an installation by pip.

    Processor time, since the two are compared on machines that are busy with other tests.
    """
    environment = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(
        [sys.executable, *arguments],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        check=False,
        env={**environment, "PYTHONPATH": str(ROOT), "PYTHONPYCACHEPREFIX": str(compiled)},
    )
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def test_an_audit_takes_a_bounded_multiple_of_the_imports(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    paper = str(shipped("papers", "sail-loft-draft", "paper.yaml"))
    imports, audits = [], []
    for _ in range(RUNS + 1):  # in turn, so that a busy machine slows both; the first of each compiles
        imports.append(seconds(tmp_path, "-c", "import sympy, pydantic, rich"))
        audits.append(seconds(tmp_path, "-m", "paperaudit", "check", paper))
    one, other = statistics.median(imports[1:]), statistics.median(audits[1:])
    with capsys.disabled():
        print(f"\nimports {one:.3f} s, audit {other:.3f} s, {other / one:.2f} times")
    assert other < AT_MOST * one, f"imports {one:.3f} s, audit {other:.3f} s"
