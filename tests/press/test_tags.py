"""Tagged structure as two outside readers find it: PDFium's structure tree, and pdfminer.six's marked content. Order, words, and
words in the place of figures; nothing is claimed of a standard for accessible files."""

import ctypes
from collections.abc import Callable, Iterator
from dataclasses import replace
from io import BytesIO

import pypdfium2
import pypdfium2.raw as pdfium
from pdfminer.pdfdevice import PDFTextDevice
from pdfminer.pdfdocument import PDFDocument
from pdfminer.pdfinterp import PDFPageInterpreter, PDFResourceManager
from pdfminer.pdfpage import PDFPage
from pdfminer.pdfparser import PDFParser
from pdfminer.pdftypes import resolve1
from pdfminer.psparser import literal_name

from publisher.basics import Box, Layer, polyline
from publisher.pages import Drawn, LineStyle, Link, Pack, Stroke, StructureElement, Words
from publisher.press import write_pdf
from publisher.press.tags import ARTIFACT, marked

Read = list[tuple[int, str, str, str]]  # depth, role, words in its place, its own words
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


def by_pdfium(data: bytes) -> Read:
    """Read the structure of the first page with PDFium: the tree, and the words of the text objects that its marks hold."""
    page = pypdfium2.PdfDocument(data)[0]
    lines = page.get_textpage()
    said: dict[int, list[str]] = {}
    for thing in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_TEXT]):
        length = pdfium.FPDFTextObj_GetText(thing, lines, None, 0)
        room = ctypes.create_string_buffer(length)
        pdfium.FPDFTextObj_GetText(thing, lines, ctypes.cast(room, ctypes.POINTER(ctypes.c_ushort)), length)
        said.setdefault(pdfium.FPDFPageObj_GetMarkedContentID(thing), []).append(utf16(room))
    tree = pdfium.FPDF_StructTree_GetForPage(page)

    def walk(element: pdfium.FPDF_STRUCTELEMENT, depth: int) -> Iterator[tuple[int, str, str, str]]:
        numbers = [
            number
            for place in range(pdfium.FPDF_StructElement_GetMarkedContentIdCount(element))
            if (number := pdfium.FPDF_StructElement_GetMarkedContentIdAtIndex(element, place)) >= 0
        ]
        own = " ".join(text for number in numbers for text in said.get(number, ()))
        yield (
            depth,
            named(pdfium.FPDF_StructElement_GetType, element),
            named(pdfium.FPDF_StructElement_GetAltText, element),
            own,
        )
        for place in range(pdfium.FPDF_StructElement_CountChildren(element)):
            if child := pdfium.FPDF_StructElement_GetChildAtIndex(element, place):
                yield from walk(child, depth + 1)

    count = pdfium.FPDF_StructTree_CountChildren(tree)
    return [one for place in range(count) for one in walk(pdfium.FPDF_StructTree_GetChildAtIndex(tree, place), 0)]


def utf16(room: ctypes.Array[ctypes.c_char]) -> str:
    return room.raw.decode("utf-16-le").rstrip("\0\r\n")


def named(function: Callable[..., int], element: pdfium.FPDF_STRUCTELEMENT) -> str:
    length = function(element, None, 0)
    room = ctypes.create_string_buffer(length)
    function(element, room, length)
    return utf16(room) if length else ""


class Marks(PDFTextDevice):
    """Collects the words of each mark, and those of artifacts under ``ARTIFACT``."""

    def __init__(self, manager: PDFResourceManager) -> None:
        super().__init__(manager)
        self.open: list[int | None] = []
        self.said: dict[int | None, list[str]] = {}

    def begin_tag(self, tag: object, props: object = None) -> None:
        number = props.get("MCID") if isinstance(props, dict) else None
        self.open.append(ARTIFACT if literal_name(tag) == "Artifact" else number)

    def end_tag(self) -> None:
        self.open.pop()

    def render_string(self, textstate: object, seq: object, ncs: object, graphicstate: object) -> None:
        font = textstate.font  # type: ignore[attr-defined]
        text = "".join(font.to_unichr(c) for run in seq if isinstance(run, bytes) for c in font.decode(run))  # type: ignore[attr-defined]
        self.said.setdefault(self.open[-1] if self.open else None, []).append(text)


def by_pdfminer(data: bytes) -> tuple[Read, list[str]]:
    """Read the same with pdfminer.six; return the words of artifacts too. Words in no mark at all are a failure."""
    document = PDFDocument(PDFParser(BytesIO(data)))
    manager = PDFResourceManager()
    marks = Marks(manager)
    PDFPageInterpreter(manager, marks).process_page(next(PDFPage.create_pages(document)))
    assert None not in marks.said

    def walk(thing: object, depth: int) -> Iterator[tuple[int, str, str, str]]:
        element = resolve1(thing)
        kids = resolve1(element.get("K", []))
        kids = [resolve1(kid) for kid in (kids if isinstance(kids, list) else [kids])]
        own = " ".join(text for kid in kids if isinstance(kid, int) for text in marks.said.get(kid, []))
        yield depth, literal_name(element["S"]), element.get("Alt", b"").decode("ascii"), own
        for kid in kids:
            if isinstance(kid, dict):
                yield from walk(kid, depth + 1)

    root = resolve1(document.catalog["StructTreeRoot"])
    return list(walk(root["K"], 0)), marks.said.get(ARTIFACT, [])


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
