"""Options of the whole test suite."""

import pytest
from hypothesis import settings

settings.register_profile("same_every_time", derandomize=True, deadline=None, database=None)
settings.load_profile("same_every_time")  # a red run is red again; a busy machine makes none red


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add ``--update-golden``: write the golden dumps anew. The run that writes them still fails, so that nobody accepts unseen."""
    parser.addoption("--update-golden", action="store_true", help="write the golden dumps of pages anew")
