"""Says what long work is under way, on a terminal only."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager


@contextmanager
def under_way(message: str) -> Iterator[Callable[[int, int], None]]:
    """Shows `message` on the terminal's last line while the work inside goes on; elsewhere it shows nothing.

    What it gives is called with the page that is read now and how many there are, and shows these too.
    """
    if not sys.stderr.isatty():
        yield lambda _page, _pages: None
        return
    from rich.console import Console
    from rich.text import Text

    from paperaudit.reports.terminal import plain

    with Console(stderr=True, emoji=False).status(Text(plain(message))) as status:
        yield lambda page, pages: status.update(Text(plain(f"{message}: page {page} of {pages}")))
