"""What stands in the sketches of steps is promised by what was put together so far, less what lifts off; before anything stands nothing."""

from collections.abc import Callable

from publisher.joints.act_standing import STANDS, act_standing, coated, standing, whole_of
from publisher.pages.sheet.draft import Context


def test_each_wait_and_coat_promises_what_stands(demo: Callable[..., Context]) -> None:
    quay = demo("quay")
    found = {one.key: one.drawing for one in act_standing(quay.design, quay.parts, quay.joined)}
    assert all(key.endswith(f":{STANDS}") for key in found)
    waits = [f"step:{number}:does:wait:{STANDS}" for number, step in enumerate(quay.design.steps, 1) if step.wait]
    assert waits and set(waits) <= set(found)
    assert any(key.endswith(f":paint:{STANDS}") for key in found) and any(":apart:" in key for key in found)
    assert all(name.partition(":")[0] in ("state", "whole", "trial", "off") for name in found.values())


def test_before_anything_is_built_nothing_stands(demo: Callable[..., Context]) -> None:
    joined = demo("quay").joined
    assert standing(joined, 1) is None and coated(joined, 1) is None
    last = len(demo("quay").design.steps)
    assert standing(joined, last) is not None and whole_of(joined) is not None


def test_only_lines_that_bound_it_are_promised(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    found = act_standing(house.design, house.parts, house.joined)
    assert found and all(one.lines and one.among and not one.fine and not one.labels for one in found)
