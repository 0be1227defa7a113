"""Reading a draft says page by page how far it is, on a terminal alone."""

import os
import pty
import subprocess
import sys
from pathlib import Path

from paperaudit.readers.draft.read_draft import read_draft
from tests.readers.made_pdf import PAPER, pages, written

ROOT = Path(__file__).resolve().parents[2]


def test_each_page_is_told_before_it_is_read() -> None:
    told: list[tuple[int, int]] = []
    read_draft(pages([written(PAPER), written(["3. Find 7 + 8. (1 mark)"])]), "draft.pdf", lambda *at: told.append(at))
    assert told == [(1, 2), (2, 2)]


def test_pages_are_shown_on_a_terminal_only(tmp_path: Path) -> None:
    path = tmp_path / "draft.pdf"
    path.write_bytes(pages([written([f"{at}. Find {at} + 8. (1 mark)"]) for at in range(1, 61)]))
    controller, terminal = pty.openpty()
    command = [sys.executable, "-m", "paperaudit", "read", str(path), "-o", str(tmp_path / "paper.yaml")]
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "TERM": "xterm"}
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=terminal, check=False, env=environment)
    os.close(terminal)
    shown = os.read(controller, 100_000)
    os.close(controller)
    assert done.returncode == 0
    assert b"of 60" in shown and b"of 60" not in done.stdout
