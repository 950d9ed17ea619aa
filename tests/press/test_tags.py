"""Tagged structure as two outside readers find it. Order, words, and words in the place of figures; nothing is claimed of a standard for
accessible files."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Box, Layer, polyline
from publisher.pages import Drawn, LineStyle, Link, Pack, Stroke, StructureElement, Words
from publisher.press import write_pdf
from publisher.press.tags import ARTIFACT, marked
from tests.outside_readers import by_pdfium, by_pdfminer

LINE = LineStyle("cut", 0.5)


def words(text: str, y: float, layer: Layer = Layer.PAGE) -> Words:
    return Words(text, "regular", 4.0, 20.0, y, layer)


def stroke(y: float) -> Stroke:
    return Stroke(LINE, (polyline(((20.0, y), (60.0, y))),), Layer.OUTLINES)


DRAWN: tuple[Drawn, ...] = (
    words("Cut the layer", 250.0),
    Link(Box(20.0, 240.0, 40.0, 244.0), 1),
    stroke(200.0),
    words("with a knife.", 245.0),
    words("Letter", 230.0, Layer.NOTES),
    words("A", 225.0),
    words("page 1 of 1", 20.0),
    words("Templates", 280.0),
    stroke(210.0),
)
STRUCTURE = (
    StructureElement("H1", (7,)),
    StructureElement("P", (0, 3)),
    StructureElement("Figure", (2, 8), alt="Outline of the layer"),
    StructureElement(
        "Table",
        kids=(
            StructureElement("TR", kids=(StructureElement("TH", (4,)),)),
            StructureElement("TR", kids=(StructureElement("TD", (5,)), StructureElement("TD"))),
        ),
    ),
)
EXPECTED = [
    (0, "Document", "", ""),
    (1, "Sect", "", ""),
    (2, "H1", "", "Templates"),
    (2, "P", "", "Cut the layer with a knife."),
    (2, "Figure", "Outline of the layer", ""),
    (2, "Table", "", ""),
    (3, "TR", "", ""),
    (4, "TH", "", "Letter"),
    (3, "TR", "", ""),
    (4, "TD", "", "A"),
    (4, "TD", "", ""),
]


def written(make_pack: Callable[..., Pack]) -> tuple[Pack, bytes]:
    pack = make_pack(*DRAWN)
    pack = replace(pack, pages=(replace(pack.pages[0], structure=STRUCTURE),))
    return pack, write_pdf(pack)


def test_two_outside_readers_find_the_order_and_the_words(make_pack: Callable[..., Pack]) -> None:
    _, data = written(make_pack)
    read, artifacts = by_pdfminer(data)
    assert read == EXPECTED
    assert artifacts == ["page 1 of 1"]
    assert by_pdfium(data) == EXPECTED[:-1]  # it comes from the marks, and does not see the cell that has none


def test_everything_drawn_stands_in_one_mark_and_in_its_layer(make_pack: Callable[..., Pack]) -> None:
    pack, _ = written(make_pack)
    runs = marked(pack.pages[0])
    assert [thing for run in runs for thing in run.things] == [thing for thing in DRAWN if not isinstance(thing, Link)]
    assert all(thing.layer is run.layer for run in runs for thing in run.things)
    numbers = [run.number for run in runs if run.leaf != ARTIFACT]
    assert numbers == list(range(len(numbers)))


def test_equal_elements_keep_their_own_things(make_pack: Callable[..., Pack]) -> None:
    """Two rows with the same word are two cells, each with its own mark."""
    twice = words("A", 225.0)
    pack = make_pack(twice, twice)
    page = replace(pack.pages[0], structure=(StructureElement("P", (0,)), StructureElement("P", (1,))))
    read, _ = by_pdfminer(write_pdf(replace(pack, pages=(page,))))
    assert read[2:] == [(2, "P", "", "A"), (2, "P", "", "A")]
