"""The trials of stacks stand on the page that is read before the first cut, where the page says."""

from collections.abc import Callable

from publisher.pages import Words
from publisher.pages.front.cautions import caution_drafts
from publisher.pages.front.piles import piles
from publisher.pages.sheet.draft import Context, Numbers


def test_each_trial_stands_where_its_page_says(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    body = caution_drafts(context)[0].body(Numbers(7, 9, (), (), ()))
    ((key, said),) = piles(context).items()
    (where,) = [one for one in body.carried if one.key == key]  # others are sketches
    assert (where.key, where.page) == (key, 7)
    lines = [w for w in body.drawn if isinstance(w, Words) and where.box.bottom < w.y < where.box.top]
    assert said in " ".join(w.text for w in lines).replace("\n", " ")
    assert [promise.text for promise in body.texts] == [said]


def test_nothing_stands_where_nothing_is_tried(demo: Callable[..., Context]) -> None:
    assert piles(demo("quay")) == {}
