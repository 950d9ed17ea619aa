"""The tagged structure of a file as two readers of other houses find it: PDFium's structure tree, and pdfminer.six's marked content."""

import ctypes
from collections.abc import Callable, Iterator
from io import BytesIO

import pypdfium2
import pypdfium2.raw as pdfium
from pdfminer.pdfdevice import PDFTextDevice
from pdfminer.pdfdocument import PDFDocument
from pdfminer.pdfinterp import PDFPageInterpreter, PDFResourceManager
from pdfminer.pdfpage import PDFPage
from pdfminer.pdfparser import PDFParser
from pdfminer.pdftypes import PDFObjRef, resolve1
from pdfminer.psparser import literal_name
from pdfminer.utils import decode_text

ARTIFACT = -1
TagRow = tuple[int, str, str, str]  # depth, role, words in its place, its own words


def by_pdfium(data: bytes, page: int = 0) -> list[TagRow]:
    """Read the structure of one page (from 0) with PDFium: the tree, and the words of the text objects that its marks hold. It comes from
    the marks: an element that has none on the page, nor any under it, is not seen."""
    document = pypdfium2.PdfDocument(data)
    shown = document[page]
    lines = shown.get_textpage()
    said: dict[int, list[str]] = {}
    for thing in shown.get_objects(filter=[pdfium.FPDF_PAGEOBJ_TEXT]):
        length = pdfium.FPDFTextObj_GetText(thing, lines, None, 0)
        room = ctypes.create_string_buffer(length)
        pdfium.FPDFTextObj_GetText(thing, lines, ctypes.cast(room, ctypes.POINTER(ctypes.c_ushort)), length)
        said.setdefault(pdfium.FPDFPageObj_GetMarkedContentID(thing), []).append(_utf16(room))
    tree = pdfium.FPDF_StructTree_GetForPage(shown)

    def walk(element: pdfium.FPDF_STRUCTELEMENT, depth: int) -> Iterator[TagRow]:
        numbers = [
            number
            for place in range(pdfium.FPDF_StructElement_GetMarkedContentIdCount(element))
            if (number := pdfium.FPDF_StructElement_GetMarkedContentIdAtIndex(element, place)) >= 0
        ]
        own = " ".join(text for number in numbers for text in said.get(number, ()))
        yield (
            depth,
            _named(pdfium.FPDF_StructElement_GetType, element),
            _named(pdfium.FPDF_StructElement_GetAltText, element),
            own,
        )
        for place in range(pdfium.FPDF_StructElement_CountChildren(element)):
            if child := pdfium.FPDF_StructElement_GetChildAtIndex(element, place):
                yield from walk(child, depth + 1)

    count = pdfium.FPDF_StructTree_CountChildren(tree)
    found = [one for place in range(count) for one in walk(pdfium.FPDF_StructTree_GetChildAtIndex(tree, place), 0)]
    pdfium.FPDF_StructTree_Close(tree)
    document.close()
    return found


def _utf16(room: ctypes.Array[ctypes.c_char]) -> str:
    return room.raw.decode("utf-16-le").rstrip("\0\r\n")


def _named(function: Callable[..., int], element: pdfium.FPDF_STRUCTELEMENT) -> str:
    length = function(element, None, 0)
    room = ctypes.create_string_buffer(length)
    function(element, room, length)
    return _utf16(room) if length else ""


class MarkedWords(PDFTextDevice):
    """Collects the words of each mark of a page, and those of artifacts under ``ARTIFACT``; of words in no mark under None."""

    def __init__(self, manager: PDFResourceManager) -> None:
        """Start with nothing said."""
        super().__init__(manager)
        self.open: list[int | None] = []
        self.said: dict[int | None, list[str]] = {}

    def begin_tag(self, tag: object, props: object = None) -> None:
        """Begin marked content."""
        number = props.get("MCID") if isinstance(props, dict) else None
        self.open.append(ARTIFACT if literal_name(tag) == "Artifact" else number)

    def end_tag(self) -> None:
        """End it."""
        self.open.pop()

    def render_string(self, textstate: object, seq: object, ncs: object, graphicstate: object) -> None:
        """Take the words of one operator."""
        font = textstate.font  # type: ignore[attr-defined]
        text = "".join(font.to_unichr(c) for run in seq if isinstance(run, bytes) for c in font.decode(run))  # type: ignore[attr-defined]
        self.said.setdefault(self.open[-1] if self.open else None, []).append(text)


def by_pdfminer(data: bytes) -> tuple[list[TagRow], list[str]]:
    """Read the whole structure with pdfminer.six; return the words of artifacts too. Words in no mark at all are a failure."""
    document = PDFDocument(PDFParser(BytesIO(data)))
    manager = PDFResourceManager()
    pages: dict[int, dict[int | None, list[str]]] = {}
    for page in PDFPage.create_pages(document):
        marks = MarkedWords(manager)
        PDFPageInterpreter(manager, marks).process_page(page)
        assert None not in marks.said
        pages[page.pageid] = marks.said

    def walk(thing: object, depth: int) -> Iterator[TagRow]:
        element = resolve1(thing)
        kids = resolve1(element.get("K", []))
        kids = [resolve1(kid) for kid in (kids if isinstance(kids, list) else [kids])]
        on = element.get("Pg")
        said = pages[on.objid] if isinstance(on, PDFObjRef) else {}
        own = " ".join(text for kid in kids if isinstance(kid, int) for text in said.get(kid, []))
        yield depth, literal_name(element["S"]), decode_text(element.get("Alt", b"")), own
        for kid in kids:
            if isinstance(kid, dict):
                yield from walk(kid, depth + 1)

    root = resolve1(document.catalog["StructTreeRoot"])
    return list(walk(root["K"], 0)), [text for said in pages.values() for text in said.get(ARTIFACT, [])]
