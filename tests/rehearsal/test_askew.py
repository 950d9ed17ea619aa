"""Words along glue lines that lie askew."""

from math import cos, radians, sin

import numpy as np
import pytest
from PIL import Image, ImageDraw, ImageFont

from tests.rehearsal.askew import askew_words
from tests.rehearsal.glyphs import FONTS
from tests.rehearsal.notes import Said, notes_of
from tests.rehearsal.raster import DOTS, Grey, pieces_of
from tests.rehearsal.thin_lines import Thin

EM, SIDE = 2.3, 60.0  # mm
WORDS = "C, below steps 9-10"


def page_of(turn: float) -> Grey:
    """Return the ink of a square page with the words in its middle, rising by so many degrees."""
    font = ImageFont.truetype(FONTS / "NotoSans-Bold.ttf", round(EM * DOTS))
    dots = round(SIDE * DOTS)
    picture = Image.new("L", (dots, dots), 0)
    ImageDraw.Draw(picture).text((dots / 2, dots / 2), WORDS, 255, font, anchor="mm")
    return np.asarray(picture.rotate(turn, Image.Resampling.BICUBIC))


@pytest.mark.parametrize("turn", [27.5, -41.0, 62.0])
def test_words_are_read_along_their_lines(turn: float) -> None:
    along = np.array((cos(radians(turn)), sin(radians(turn)))) * 12.0
    line = Thin("glue", np.array((SIDE / 2 - along, SIDE / 2 + along)))
    read = [one for one in askew_words(page_of(turn), [line]) if one.text == WORDS]
    assert len(read) == 1
    assert (read[0].x, read[0].y) == pytest.approx((SIDE / 2, SIDE / 2), abs=0.6)


def test_a_letter_of_a_word_that_stands_askew_is_no_match_letter() -> None:
    """The o of “below” was taken for one, and the part for a panel."""
    seen = pieces_of(page_of(30.5))
    x, y, width, height, _ = seen.boxes[np.argmin(np.abs(seen.boxes[:, 0] / DOTS - SIDE / 2))] / DOTS
    letter = Said("o", x + width / 2, SIDE - y - height / 2, EM, True)
    assert not list(notes_of([letter], seen))
    alone = pieces_of(np.zeros_like(page_of(0.0)))
    assert [note.kind for note in notes_of([letter], alone)] == ["match"]


def test_straight_lines_are_left_to_the_reader_of_the_page() -> None:
    line = Thin("glue", np.array(((10.0, 30.0), (50.0, 30.0))))
    assert not list(askew_words(page_of(0.0), [line]))
