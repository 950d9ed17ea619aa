"""The size that a drawing states, and which way is up."""

import pytest

from publisher.geometry.drawings.css import apply_styles
from publisher.geometry.drawings.numbers import carried
from publisher.geometry.drawings.tree import Unreadable, read_tree
from publisher.geometry.drawings.views import SvgPage, page_of, window_of


def page(attributes: str) -> SvgPage:
    root = read_tree(f'<svg xmlns="http://www.w3.org/2000/svg" {attributes}/>'.encode())
    apply_styles(root)
    return page_of(root)


def test_up_is_up() -> None:
    """The drawing's upper left corner is at the height of its page, its lower left at the origin."""
    found = page('width="100mm" height="80mm" viewBox="0 0 50 40"')
    assert (found.width, found.height, found.known) == (pytest.approx(100.0), pytest.approx(80.0), "said")
    assert carried(found.to_mm, (0.0, 0.0)) == pytest.approx((0.0, 80.0))
    assert carried(found.to_mm, (0.0, 40.0)) == pytest.approx((0.0, 0.0), abs=1e-9)
    assert carried(found.to_mm, (10.0, 0.0)) == pytest.approx((20.0, 80.0))


@pytest.mark.parametrize(
    ("attributes", "size", "known"),
    [
        ('width="96" height="192"', (25.4, 50.8), "said"),
        ('width="2in" viewBox="0 0 4 2"', (50.8, 25.4), "said"),
        ('height="1in" viewBox="0 0 4 2"', (50.8, 25.4), "said"),
        ('viewBox="0 0 96 192"', (25.4, 50.8), "viewBox"),
        ('width="100%" height="100%" viewBox="0 0 96 192"', (25.4, 50.8), "viewBox"),
        ("", (0.0, 0.0), "open"),
        ('style="width:50mm;height:40mm"', (50.0, 40.0), "said"),
    ],
)
def test_sizes_of_the_page(attributes: str, size: tuple[float, float], known: str) -> None:
    found = page(attributes)
    assert (found.width, found.height) == pytest.approx(size) and found.known == known


@pytest.mark.parametrize(
    ("aspect", "corner"),
    [("", (0.0, 150.0)), ("xMinYMin", (0.0, 200.0)), ("xMinYMax slice", (0.0, 200.0)), ("none", (0.0, 200.0))],
)
def test_preserve_aspect_ratio(aspect: str, corner: tuple[float, float]) -> None:
    """A square viewBox on a page of 100 by 200 mm: where its upper left corner comes to lie."""
    found = page(f'width="100mm" height="200mm" viewBox="0 0 50 50" preserveAspectRatio="{aspect}"')
    assert carried(found.to_mm, (0.0, 0.0)) == pytest.approx(corner)


@pytest.mark.parametrize(
    "attributes",
    ['width="0" height="5"', 'viewBox="0 0 0 5"', 'viewBox="0 0 5"', 'viewBox="a"', 'width="-1mm" height="5mm"'],
)
def test_no_size_is_refused(attributes: str) -> None:
    with pytest.raises(Unreadable):
        page(attributes)


def test_a_nested_drawing_has_a_window() -> None:
    text = '<svg xmlns="http://www.w3.org/2000/svg"><svg x="10%" width="50%" height="20" viewBox="0 0 5 5" overflow="visible"/></svg>'
    root = read_tree(text.encode())
    apply_styles(root)
    (inner,) = root.children
    window = window_of(inner, inner, (200.0, 100.0))
    assert window is not None and not window.clips
    assert window.corners[0] == (20.0, 0.0) and window.corners[2] == (120.0, 20.0)
    assert carried(window.to_user, (2.5, 2.5)) == pytest.approx((70.0, 10.0))
    assert window_of(inner, inner, (200.0, 100.0)) is not None
    inner.own["width"] = "0"
    assert window_of(inner, inner, (200.0, 100.0)) is None
