from types import SimpleNamespace

import pytest

from publisher.joints.checks.needs_contradict import needs_contradict


def run(make: SimpleNamespace, *needs: object) -> tuple[object, ...]:
    return needs_contradict.run(
        make.assembled(make.design(needs=needs), make.wall("w", 60, 40)), needs_contradict
    ).findings  # type: ignore[no-any-return]


@pytest.mark.keeps("joints/needs-contradict")
def test_needs_that_leave_room_pass(make: SimpleNamespace) -> None:
    assert (
        run(make, make.need("w.width", 50.0), make.need("w.width", None, 60.0), make.need("w.height", None, 40.0)) == ()
    )
    assert run(make, make.need("w.width", 60.0), make.need("w.width", None, 60.0)) == ()


@pytest.mark.breaks("joints/needs-contradict")
def test_needs_that_exclude_each_other_are_found_with_both_places(make: SimpleNamespace) -> None:
    (found,) = run(make, make.need("w.width", None, 50.0), make.need("w.width", 60.0))
    assert (
        "w.width is to be at least 60.0 mm (2.37 in) here and at most 50.0 mm (1.96 in) at spec.yaml:1:1"
        in found.message
    )  # type: ignore[attr-defined]
    assert (found.value, found.limit) == (60.0, 50.0)  # type: ignore[attr-defined]
