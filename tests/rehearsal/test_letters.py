"""Tags are found by their frames, small ones and such as run up the page among them."""

import numpy as np
import pytest
import shapely
from PIL import Image, ImageDraw, ImageFont

from tests.rehearsal.cut_lines import CutLine
from tests.rehearsal.glyphs import FONTS
from tests.rehearsal.letters import Tag, tags
from tests.rehearsal.pages import Line, ReadPage, turned_tag
from tests.rehearsal.parts import read_parts
from tests.rehearsal.raster import DOTS, Grey, pieces_of

CAP = 0.714  # height of capitals in ems
RING = CutLine(shapely.box(10, 10, 90, 90).difference(shapely.box(10.5, 10.5, 89.5, 89.5)), closed=True)


def page_of(letter: str, cap: float, side: float, cut: float = 2.2) -> Grey:
    """Return the ink of a page of 40 × 60 mm with a letter so high in a square frame, a corner cut off: its lower left at 10, 30 mm."""
    picture = Image.new("L", (round(40 * DOTS), round(60 * DOTS)), 0)
    draw = ImageDraw.Draw(picture)
    font = ImageFont.truetype(FONTS / "NotoSans-Bold.ttf", round(cap / CAP * DOTS))
    left, bottom, right, top = (round(at * DOTS) for at in (10.0, 30.0, 10.0 + side, 30.0 - side))
    off = round(cut * DOTS)
    corners = ((left, bottom), (right, bottom), (right, top + off), (right - off, top), (left, top), (left, bottom))
    draw.line(corners, 255, round(0.25 * DOTS))
    base = (top + bottom) / 2 + cap * DOTS / 2
    draw.text(((left + right) / 2, base), letter, 255, font, anchor="ms")
    return np.asarray(picture)


@pytest.mark.parametrize(("cap", "side"), [(4.7, 7.9), (7.0, 11.4)])
def test_a_letter_is_found_in_its_frame(cap: float, side: float) -> None:
    """Beside a small letter the cut corner reaches below its top."""
    (tag,) = tags(pieces_of(page_of("D", cap, side)))
    assert tag.letter == "D"
    assert (tag.left, tag.bottom, tag.right, tag.top) == pytest.approx((10, 30, 10 + side, 30 + side), abs=0.3)


def test_a_letter_without_a_frame_is_none() -> None:
    ink = page_of("D", 4.7, 7.9)
    middle = np.zeros_like(ink)
    inner = np.s_[round(23 * DOTS) : round(29 * DOTS), round(11 * DOTS) : round(17 * DOTS)]
    middle[inner] = ink[inner]
    assert tags(pieces_of(middle)) == ()


def test_a_tag_that_runs_up_the_page_stands_where_it_is() -> None:
    ink = np.rot90(page_of("E", 4.7, 7.9), 1)  # a page of 60 × 40 mm, read from below up
    upright = pieces_of(np.ascontiguousarray(np.rot90(ink, -1)))
    (tag,) = (turned_tag(one, len(upright.labels) / DOTS) for one in tags(upright))
    assert (tag.letter, tag.turned) == ("E", True)
    assert (tag.left, tag.bottom, tag.right, tag.top) == pytest.approx((30 - 7.9, 10, 30, 17.9), abs=0.3)


def test_words_that_run_up_the_page_say_how_many_of_the_tag_beside_them() -> None:
    """Its words stand above it; those that stand upright are another one's."""
    tag, other = Tag("E", 50.0, 20.0, 58.0, 28.0, turned=True), Line("cut 3", 62.0, 26.0, 8.0, 2.3, bold=True)
    own = Line(
        "cut 2", 52.5 - 4.0, 33.0, 8.0, 2.3, bold=True, turned=True
    )  # its middle 0.7 mm higher than its base line
    (part,) = read_parts((ReadPage(7, (other, own), (tag,), (RING,)),))
    assert (part.letter, part.count) == ("E", 2)
