"""Options of the test run."""

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--long", type=int, default=0, metavar="N", help="random figures of a long run, beside the usual ones")
