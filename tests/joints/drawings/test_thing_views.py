from types import SimpleNamespace

import pytest

from publisher.design import ThingPlan, WholePlan
from publisher.joints.drawings.lines import finish
from publisher.joints.drawings.thing_views import LIFTED, exploded_view, whole_view
from publisher.joints.drawings.view import PANEL_VIEW
from publisher.joints.stacks import lay_all
from publisher.joints.wholes import panels_of_stack, put_things


def test_things_are_drawn_on_each_other_and_lifted_off(make: SimpleNamespace) -> None:
    slab = make.rectangle("slab", 0, 0, 40, 40)
    stack = lay_all((make.stack("pile", ("slab", 2, 0.0, (0.0, 0.0))),), {"slab": slab})[1][0]
    things = (
        ThingPlan("low", "pile", (), (0, 0), 0.0, False, make.here),
        ThingPlan("top", "pile", ("low",), (0, 0), 0.0, True, make.here),
    )
    whole = put_things(
        WholePlan("pair", things, make.here),
        {"pile": panels_of_stack(stack, {"slab": slab}, make.here)},
        lambda part: 1.0,
    )
    assert whole is not None
    together, apart = (finish(view(whole), "whole:pair", "a pair") for view in (whole_view, exploded_view))
    assert together.width == pytest.approx(apart.width)
    # lifted straight up: the drawing grows by as much as that looks high
    assert apart.height - together.height == pytest.approx(LIFTED * 40.0 * float(PANEL_VIEW.axes()[1, 2]), abs=0.01)
    assert len(apart.lines) > 0 and len(together.lines) > 0
