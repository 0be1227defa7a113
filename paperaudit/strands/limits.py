"""Lets one part of a paper fail or take too long without the others."""

import logging
import signal
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from types import FrameType
from typing import TypeVar

from paperaudit.errors import BudgetExceeded, ExpressionNotRead

SECONDS_A_PART = 20
"""After this long a part counts as not read; the engines' own budgets end nearly everything long before."""

_Result = TypeVar("_Result")
_log = logging.getLogger(__name__)


def within_limits(work: Callable[[], _Result], otherwise: Callable[[str], _Result]) -> _Result:
    """The result of a stage; what goes wrong inside leaves the part unread, and the paper goes on.

    Raises ExpressionNotRead for mathematics beyond the limits: that is bad input.
    """
    try:
        with _time_limit(SECONDS_A_PART):
            return work()
    except BudgetExceeded as error:
        return otherwise(str(error) or "the search was longer than allowed")
    except ExpressionNotRead:
        raise
    except Exception as error:
        _log.debug("a part could not be audited", exc_info=True)
        return otherwise(f"internal error: {type(error).__name__}")


@contextmanager
def _time_limit(seconds: int) -> Iterator[None]:
    """Raises BudgetExceeded inside after `seconds`, on the main thread of a system that has alarms."""
    if not hasattr(signal, "SIGALRM") or threading.current_thread() is not threading.main_thread():
        yield
        return

    def stop(_signal: int, _frame: FrameType | None) -> None:
        raise BudgetExceeded(f"the search took longer than {seconds} seconds")

    before = signal.signal(signal.SIGALRM, stop)
    signal.setitimer(signal.ITIMER_REAL, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)
