"""Posts under decks, against 6·F·e/(w·h²) by hand."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.joints.panels.necks import CarriedOver, necks_under
from publisher.joints.panels.place import Panel
from publisher.joints.panels.space import PanelFrame

HIGH = 60.0
UPRIGHT = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, -1.0], [0.0, 1.0, 0.0]])  # columns: along x, up, its face to the front


def post(make: SimpleNamespace, name: str, wide: float, at: float, high: float = HIGH) -> Panel:
    """An upright board of 5 mm whose foot is ``wide`` mm along x about ``at``; y from 0 to 5."""
    return Panel(
        name, make.wall(name, wide, high), PanelFrame(UPRIGHT, np.array([at - wide / 2, 0.0, 0.0])), False, make.here
    )


def deck(make: SimpleNamespace, bottom: float = HIGH) -> Panel:
    """A disc of radius 70 over the middle of a post."""
    return Panel(
        "top", make.disc("top", 70.0), PanelFrame(np.eye(3), np.array([0.0, 2.5, bottom + 5.0])), True, make.here
    )


def borne(*places: tuple[float, float]) -> CarriedOver:
    return CarriedOver(np.array(places), 0.3, 0.0, np.array([0.0, 2.5]))


def test_one_post_bends_alike_at_its_head_and_down_to_its_foot(make: SimpleNamespace) -> None:
    found = list(necks_under(deck(make), borne((0.0, 72.5), (70.0, 2.5)), [post(make, "post", 12.0, 0.0)]))
    assert len(found) > 2 and {one.carriers for one in found} == {("post",)}
    for one in found:
        assert one.neck.stress == pytest.approx(6 * 0.3 * 70.0 / (12.0 * 5.0**2), rel=1e-6)  # over its thin side
        assert one.neck.size == pytest.approx((5.0, 12.0)) and one.neck.arm == pytest.approx(70.0)


def test_its_own_weight_bends_it_where_that_lies_aside(make: SimpleNamespace) -> None:
    over = replace(borne((0.0, 42.5)), weight=0.1, middle=np.array([0.0, 12.5]))
    (first, *_) = necks_under(deck(make), over, [post(make, "post", 12.0, 0.0)])
    assert first.neck.stress == pytest.approx(6 * (0.3 * 40.0 + 0.1 * 10.0) / (12.0 * 25.0), rel=1e-6)


def test_two_posts_carry_as_one_section_and_no_farther_down(make: SimpleNamespace) -> None:
    posts = [post(make, "left", 12.0, -40.0), post(make, "right", 12.0, 40.0)]
    (only,) = necks_under(deck(make), borne((70.0, 2.5)), posts)
    second = 2 * (5.0 * 12.0**3 / 12.0 + 60.0 * 40.0**2)
    assert only.carriers == ("left", "right")
    assert only.neck.stress == pytest.approx(0.3 * 70.0 * 46.0 / second, rel=1e-6)


def test_a_deck_held_at_its_side_is_no_head_of_a_post(make: SimpleNamespace) -> None:
    beside = post(make, "wall", 100.0, 0.0, high=120.0)
    moved = replace(beside, frame=PanelFrame(UPRIGHT, np.array([-50.0, 72.5, 0.0])))
    assert list(necks_under(deck(make), borne((70.0, 2.5)), [post(make, "post", 12.0, 0.0), moved])) == []


def test_what_lies_loose_on_its_post_does_not_break_off_it(make: SimpleNamespace) -> None:
    glued, loose = borne((70.0, 2.5)), replace(borne((70.0, 2.5)), glued=False)
    boards = [post(make, "post", 12.0, 0.0)]
    assert len(list(necks_under(deck(make), glued, boards))) == len(list(necks_under(deck(make), loose, boards))) + 1


def test_boards_that_lie_on_each_other_are_followed_down_to_the_post(make: SimpleNamespace) -> None:
    cap = Panel("cap", make.disc("cap", 20.0), PanelFrame(np.eye(3), np.array([0.0, 2.5, HIGH + 5.0])), True, make.here)
    found = list(necks_under(deck(make, HIGH + 5.0), borne((0.0, 72.5)), [cap, post(make, "post", 12.0, 0.0)]))
    assert [one.carriers for one in found][:2] == [("cap",), ("post",)]
    assert found[0].neck.stress < found[1].neck.stress == pytest.approx(6 * 0.3 * 70.0 / (12.0 * 25.0), rel=1e-6)
