"""Says what long work is under way, on a terminal only."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def under_way(message: str) -> Iterator[None]:
    """Shows `message` on the terminal's last line while the work inside goes on; elsewhere it shows nothing."""
    if not sys.stderr.isatty():
        yield
        return
    from rich.console import Console
    from rich.text import Text

    from paperaudit.reports.terminal import plain

    with Console(stderr=True, emoji=False).status(Text(plain(message))):
        yield
