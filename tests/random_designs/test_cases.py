"""Designs that the tool once got wrong, kept as small as they go. Those that it still gets wrong say so themselves.

``expect.yaml``: ``solids`` confirm the design or refuse it. One that they confirm brings no findings but ``warnings``, and the ``facts``;
one that they refuse brings an error. ``build`` lists papers on which it must build and be proved: that takes its time, so only
searches do it. ``fails_today`` is a reason why the case fails now: whoever mends it takes the line out.
"""

from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.random_designs.search import SAME
from tests.random_designs.shrink import CASES
from tests.random_designs.tool import build, check
from tests.searches.profile import PROFILE


def _cases() -> list[Any]:
    made = []
    for file in sorted(CASES.glob("*/expect.yaml")):
        expects = yaml.safe_load(file.read_text(encoding="utf-8"))
        why = expects.get("fails_today")
        marks = [pytest.mark.xfail(strict=True, reason=why, raises=AssertionError)] if why else []
        if "build" in expects:
            if not PROFILE.large:
                continue
            marks.append(pytest.mark.search)
        made.append(pytest.param(file.parent, expects, id=file.parent.name, marks=marks))
    return made


@pytest.mark.parametrize(("folder", "expects"), _cases())
def test_the_tool_says_what_the_solids_say(folder: Path, expects: dict[str, Any]) -> None:
    spec = (folder / "spec.yaml").read_text(encoding="utf-8")
    files = [(p.name, p.read_text(encoding="utf-8")) for p in sorted(folder.iterdir()) if p.suffix == ".svg"]
    papers = tuple(expects.get("build", ()))
    said = build(spec, files, papers) if papers else check(spec, files)
    if expects["solids"] == "refuse":
        assert said.errors, f"nothing was found, but {'; '.join(expects['untrue'])}"
        return
    assert not said.errors
    assert set(said.rules) == set(expects.get("warnings", ()))
    wrong = {
        name: (said.facts[name], value)
        for name, value in expects.get("facts", {}).items()
        if name in said.facts
        and abs(said.facts[name] - value) > (1.0 + 1e-4 * value if name.endswith(".area") else SAME)
    }
    assert not wrong
