from pathlib import Path

import pytest

from publisher.joints import without_idle_steps
from publisher.joints.checks.no_brace_needed import no_brace_needed
from publisher.joints.put_together import assemble
from tests.joints.test_idle_steps import ALONE, AMONG, made


def found(folder: Path, step: str, strength: float = 5.0) -> list[str]:
    built = made(folder, step, strength=strength)
    parts = tuple(built.parts.values())
    subject = assemble(without_idle_steps(built.design, parts), parts)[0]
    return [finding.message for finding in no_brace_needed.run(subject, no_brace_needed).findings]


@pytest.mark.breaks("joints/no-brace-needed")
def test_a_step_that_tells_of_0_braces_among_other_things_is_found(tmp_path: Path) -> None:
    (message,) = found(tmp_path, AMONG)
    assert "tells of the braces of stair" in message and "there are 0 of them" in message


@pytest.mark.keeps("joints/no-brace-needed")
def test_where_braces_are_and_where_their_step_is_left_out_nothing_is(tmp_path: Path) -> None:
    assert found(tmp_path, AMONG, strength=0.05) == []
    assert found(tmp_path, ALONE) == []
