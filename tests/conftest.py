"""Options of the test run."""

import pytest
from hypothesis import settings

# The first example of a test loads what it needs, and other tests run beside it: times are measured elsewhere.
settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--long", type=int, default=0, metavar="N", help="N more random figures, in a test of their own")


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leaves the long run out unless it is asked for, so that a usual run skips nothing."""
    if not config.getoption("--long"):
        items[:] = [item for item in items if item.get_closest_marker("long") is None]
