"""What is said of patterns that are pressed: whole specs of it stand in tests/whole/test_paper_and_bends.py."""

from types import SimpleNamespace

from publisher.joints.checks.pressed_on_paper import pressed_on_paper


def test_parts_without_a_pattern_are_not_looked_at(make: SimpleNamespace) -> None:
    outcome = pressed_on_paper.run(make.assembled(make.design(), make.wall("wall", 60, 40)), pressed_on_paper)
    assert (outcome.looked_at, outcome.findings) == (0, ())
    assert pressed_on_paper.may_be_empty
