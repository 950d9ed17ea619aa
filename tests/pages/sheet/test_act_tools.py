"""What the picture of an act shows in the hand stands in the lists, once, where nothing named does as well."""

import pytest

from publisher.pages.sheet.act_tools import tools_of_acts


@pytest.mark.parametrize(
    ("acts", "named", "more"),
    [
        (("press",), ("steel_rule",), ("blunt_pencil",)),
        (("press",), ("blunt_pencil",), ()),
        (("press",), ("pencil",), ()),
        (("trace", "draw", "cut_outlines"), ("craft_knife",), ("pencil",)),
        (("roll", "seal", "paint"), (), ("bottle", "brushes")),
        (("paint",), ("spray_can",), ()),
        (("seal", "paint"), ("spray_paint",), ()),
        (("seal",), ("filler",), ()),
        ((), (), ()),
    ],
)
def test_what_is_shown_is_listed(acts: tuple[str, ...], named: tuple[str, ...], more: tuple[str, ...]) -> None:
    assert tools_of_acts(acts, named) == more
