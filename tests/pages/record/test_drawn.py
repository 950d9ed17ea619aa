from publisher.basics import Box, Layer, Line, Path, Point, polyline
from publisher.pages.model import Drawn, Fill, LineStyle, Link, Picture, Stroke, Words
from publisher.pages.record.drawn import drawn_promises

SQUARE = polyline(((10.0, 10.0), (14.0, 10.0), (14.0, 14.0), (10.0, 14.0)), True, "side")
OPEN = Path((Line("", (0.0, 0.0), (6.0, 2.0)),), False)
CLIP = Box(0.0, 0.0, 50.0, 50.0)


def words(text: str, at: Point) -> Words:
    return Words(text, "Body", 3.0, *at, Layer.NOTES, grey=0.4)


def test_things_are_promised_in_their_order_and_links_and_empty_words_are_not() -> None:
    things: tuple[Drawn, ...] = (
        words("cut 4", (5.0, 6.0)),
        Link(CLIP, 2),
        words("  ", (1.0, 1.0)),
        Stroke(LineStyle("draw", 0.25, (2.0, 1.0), 0.1), (SQUARE, OPEN), Layer.NOTES, CLIP),
        Fill(0.5, (SQUARE,), Layer.NOTES),
        Stroke(LineStyle("draw", 0.25), (), Layer.NOTES),
        Picture("photo", CLIP, "a photo", Layer.NOTES),
    )
    said, lines, area, picture = drawn_promises(3, things)
    assert {p.page for p in (said, lines, area, picture)} == {3}
    assert (said.kind, said.text, said.first, said.grey) == ("words", "cut 4", (5.0, 6.0), 0.4)
    assert (lines.kind, lines.count, lines.closed, lines.width, lines.dash) == ("lines", 2, 1, 0.25, (2.0, 1.0))
    assert (lines.first, lines.last, lines.box) == ((5.0, 5.0), (8.0, 6.0), Box(0.0, 0.0, 14.0, 14.0))
    assert (lines.grey, lines.clip) == (0.1, CLIP)
    assert (area.kind, area.count, area.closed, area.box, area.grey) == ("area", 1, 1, Box(10.0, 10.0, 14.0, 14.0), 0.5)
    assert (picture.kind, picture.box) == ("picture", CLIP)
