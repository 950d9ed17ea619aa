"""Options of the whole test suite."""

import gc
import os
import sys
from collections import Counter
from collections.abc import Callable, Generator
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pytest
from hypothesis import settings
from hypothesis.internal.conjecture import providers

from publisher.basics import Finding, Rule
from tests.searches.profile import PROFILE, choose

if sys.dont_write_bytecode:  # as many containers ask: each process of a run would compile and rewrite all tests anew
    sys.dont_write_bytecode, sys.pycache_prefix = False, str(Path(__file__).parents[1] / ".pytest_cache/compiled")
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    os.environ["PYTHONPYCACHEPREFIX"] = sys.pycache_prefix

gc.set_threshold(
    2_000_000, 20, 50
)  # as the commands do: looking for rings more often is a fifteenth of all time of the tests

settings.register_profile("same_every_time", derandomize=True, deadline=None, database=None)
if hasattr(providers, "_get_local_constants"):  # draws must not depend on which modules happen to be loaded
    providers._get_local_constants = lambda: providers._local_constants
settings.load_profile("same_every_time")  # a red run is red again; a busy machine makes none red


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add ``--update-golden`` (the run that writes golden dumps still fails, so that nobody accepts unseen) and the searches' options."""
    parser.addoption("--update-golden", action="store_true", help="write the golden dumps of pages anew")
    parser.addoption("--large", action="store_true", help="random cases: many, from a new seed")
    parser.addoption("--cases", type=int, default=None, metavar="N", help="random cases: N of each, from a new seed")
    parser.addoption("--seed", type=int, default=None, metavar="S", help="random cases: many, from this seed")


def pytest_configure(config: pytest.Config) -> None:
    """Say what our marks mean, and which random cases are taken, before tests are collected."""
    config.addinivalue_line(
        "markers", "search: takes many random cases with --large; python -m tests.searches runs these"
    )
    config.addinivalue_line(
        "markers", "breaks(id, ...): bad case of these rules; the test fails if one of them is silent"
    )
    config.addinivalue_line("markers", "keeps(id, ...): good case of these rules; the test fails if one of them speaks")
    config.stash[CHOICE] = choose(config)


def pytest_collection_finish() -> None:
    """Never look for rings in what collecting has made: it stays to the end."""
    gc.freeze()


def pytest_report_header(config: pytest.Config) -> str:
    """Tell the seed at the top."""
    return config.stash[CHOICE]


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Tell the seconds of each search, and the seed again, where it is looked for after a failure."""
    if not PROFILE.large:
        return
    seconds: Counter[str] = Counter()
    for reports in terminalreporter.stats.values():
        for report in reports:
            if isinstance(report, pytest.TestReport) and "search" in report.keywords:
                seconds[report.nodeid.partition("[")[0]] += report.duration
    terminalreporter.section("searches")
    for name, took in seconds.most_common():
        terminalreporter.line(f"{took:8.1f} s  {name}")
    terminalreporter.line(config.stash[CHOICE])


CHOICE = pytest.StashKey[str]()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_call(item: pytest.Item) -> Generator[None, Any, Any]:
    """Hold what the rules said during a test against its marks."""
    bad, good = (_named(item, mark) for mark in ("breaks", "keeps"))
    if not bad and not good:
        return (yield)
    said: set[str] = set()
    speak = Rule.found

    def found(rule: Rule, *args: Any, **more: Any) -> Finding:
        said.add(rule.id)
        return speak(rule, *args, **more)

    with patch.object(Rule, "found", found):
        result = yield
    assert bad <= said, f"silent: {bad - said}"
    assert not good & said, f"spoke: {good & said}"
    return result


def _named(item: pytest.Item, mark: str) -> set[str]:
    return {name for marker in item.iter_markers(mark) for name in marker.args}


@pytest.fixture(scope="session")
def demo() -> Callable[..., Any]:
    """Return a function that makes the context of a demo design: ``demo("toll-house", "a4")``."""
    from functools import cache

    from publisher.brief import read_brief
    from publisher.design import Design, work_out
    from publisher.geometry import Part, make_parts
    from publisher.joints import Joined, put_together, with_promises
    from publisher.material import BoardNeeds, lay_out
    from publisher.pages.sheet.draft import Context
    from publisher.pages.sheet.paper_table import paper_for
    from publisher.pages.type.fonts import faces_of
    from publisher.pages.type.text import Setter

    @cache
    def worked(slug: str) -> tuple[Design, tuple[Part, ...], Joined, BoardNeeds]:
        design = work_out(read_brief(Path(__file__).parents[1] / "designs" / slug))
        parts, _ = make_parts(design)
        return design, parts, with_promises(design, parts, put_together(design, parts)), lay_out(design, parts)

    @cache
    def make(slug: str, paper: str = "a4") -> Context:
        design, parts, joined, needs = worked(slug)
        return Context(design, parts, joined, needs, paper_for(design, paper), Setter(faces_of(design)))

    return make
