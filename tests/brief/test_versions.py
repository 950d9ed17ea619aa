"""Every library that a file may owe its bytes to is named with its version."""

import re
import tomllib
from pathlib import Path

from publisher import __version__
from publisher.brief.versions import LIBRARIES, versions

ROOT = Path(__file__).parents[2]
ONLY_JUDGE_OR_TALK = {"click", "jsonschema", "packaging", "pypdf"}


def test_every_dependency_shapes_bytes_or_is_known_not_to() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    names = {re.split(r"[^\w.-]", wanted)[0].split("=")[0] for wanted in project["dependencies"]}
    assert {*LIBRARIES, *ONLY_JUDGE_OR_TALK} == names


def test_the_versions_are_those_that_are_loaded() -> None:
    import reportlab
    import shapely

    found = dict(versions())
    assert (found["publisher"], found["reportlab"], found["shapely"]) == (
        __version__, reportlab.__version__, shapely.__version__,
    )  # fmt: skip
