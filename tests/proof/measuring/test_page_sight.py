"""What is hidden or added by means that the walk does not follow shows in the dots of the page; what it follows does not."""

from functools import cache
from io import BytesIO
from random import Random
from typing import Any

import pytest
from fontTools.subset import Subsetter
from fontTools.ttLib import TTFont

from publisher.basics import Box, PagePromise, Promises
from publisher.proof.measuring.case import Case
from publisher.proof.measuring.page_sight import PageSight
from publisher.proof.reading.reader import read_file

PT = 72 / 25.4
FRAME = f"q {PT} 0 0 {PT} 0 0 cm "  # millimetres from here on
LINE = "0.25 w 20 150 m 120 150 l S "
WORDS = "BT /F 4 Tf 30 200 Td (cut 14 boards) Tj ET "
PAGE = FRAME + LINE + WORDS + "Q "
Objects = tuple[tuple[int, bytes], ...]


@cache
def program(path: Any) -> bytes:
    """A few letters of the font of the packs, as a program to embed."""
    small = Subsetter()
    small.populate(text="cut 14boards")
    with TTFont(path) as font, BytesIO() as out:
        small.subset(font)
        font.save(out)
        return out.getvalue()


def sight(
    kit: Any,
    content: str,
    resources: bytes = b"",
    objects: Objects = (),
    page: bytes = b"",
    catalogue: bytes = b"",
    size: tuple[float, float] = (210.0, 297.0),
) -> PageSight:
    font = program(kit.font)
    widths = b" ".join(b"%d" % 600 for _ in range(95))
    own: Objects = (
        (5, b"<< /Type /Font /Subtype /TrueType /BaseFont /Body /Encoding /WinAnsiEncoding /FirstChar 32 /LastChar 126 "
            b"/Widths [" + widths + b"] /FontDescriptor 6 0 R >>"),
        (6, b"<< /Type /FontDescriptor /FontName /Body /Flags 32 /FontFile2 7 0 R >>"),
        (7, kit.raw_stream(font, b"/Length1 %d" % len(font))),
    )  # fmt: skip
    data = kit.raw_pdf(
        content.encode(), resources=b"/Font << /F 5 0 R /T 9 0 R >> " + resources, objects=(*own, *objects), page=page, catalogue=catalogue,
        box=b"[0 0 %.4f %.4f]" % (size[0] * PT, size[1] * PT),
    )  # fmt: skip
    promise = PagePromise(1, *size, "1", "templates", Box(5, 5, size[0] - 5, size[1] - 5), False)
    case = Case(data, read_file(data, "p.pdf"), Promises("t", "en", (promise,), (), (), (), (), ()))
    (seen,) = case.pixels().sights
    return seen


def test_lines_and_letters_are_looked_for_and_seen(kit: Any) -> None:
    seen = sight(kit, PAGE)
    assert (seen.stretches, seen.letters) == (99, 11)
    assert (seen.line, seen.words, seen.stray) == (None, None, None)


PATTERN = (
    b"<< /Type /Pattern /PatternType 1 /PaintType 1 /TilingType 1 /BBox [0 0 9 9] /XStep 9 /YStep 9 /Resources << >> "
)
SHADING = (
    b"<< /ShadingType 2 /ColorSpace /DeviceGray /Coords [0 0 1 0] /Extend [true true] "
    b"/Function << /FunctionType 2 /Domain [0 1] /C0 [%d] /C1 [%d] /N 1 >> >>"
)
OVER_WORDS, OVER_LINE = "28 198 40 8 re f ", "40 149 30 2 re f "
STENCIL = "q 40 0 0 8 28 198 cm BI /W 1 /H 1 /IM true /D [0 1] ID \x00 EI Q "
TYPE_3 = b"<< /Type /Font /Subtype /Type3 /FontBBox [0 0 1000 1000] /FontMatrix [0.001 0 0 0.001 0 0] /FirstChar 97 /LastChar 97 "


def type_3(kit: Any, code: bytes) -> Objects:
    return (
        (9, TYPE_3 + b"/Widths [600] /Encoding << /Differences [97 /a] >> /CharProcs << /a 10 0 R >> >>"),
        (10, kit.raw_stream(b"600 0 d0 " + code)),
    )


def note(kit: Any, code: bytes) -> dict[str, Any]:
    form = kit.raw_stream(code, b"/Type /XObject /Subtype /Form /BBox [0 0 100 100]")
    return {
        "page": b"/Annots [<< /Type /Annot /Subtype /Stamp /F 4 /Rect [57 425 227 595] /AP << /N 9 0 R >> >>]",
        "objects": ((9, form),),
    }


MASKED = (
    (9, b"<< /Type /ExtGState /SMask << /Type /Mask /S /Luminosity /G 10 0 R >> >>"),
    (10, b"<< /Type /XObject /Subtype /Form /BBox [0 0 600 900] /Group << /S /Transparency /CS /DeviceGray >> /Length 0 >>"
         b"\nstream\n\nendstream"),
)  # fmt: skip
HIDDEN = {
    "words under a white pattern": ("words", PAGE + FRAME + "/Pattern cs /P scn " + OVER_WORDS + "Q", lambda kit: {
        "resources": b"/Pattern << /P 9 0 R >>", "objects": ((9, kit.raw_stream(b"1 g 0 0 9 9 re f", PATTERN[2:])),)}),
    "a line under a white pattern": ("line", PAGE + FRAME + "/Pattern cs /P scn " + OVER_LINE + "Q", lambda kit: {
        "resources": b"/Pattern << /P 9 0 R >>", "objects": ((9, kit.raw_stream(b"1 g 0 0 9 9 re f", PATTERN[2:])),)}),
    "words under a white shading": ("words", PAGE + FRAME + "28 198 40 8 re W n /S sh Q", lambda _: {
        "resources": b"/Shading << /S 9 0 R >>", "objects": ((9, SHADING % (1, 1)),)}),
    "a line behind a soft mask": ("line", FRAME + "/G gs " + LINE + "Q", lambda _: {
        "resources": b"/ExtGState << /G 9 0 R >>", "objects": MASKED}),
    "words behind a soft mask": ("words", FRAME + "/G gs " + WORDS + "Q", lambda _: {
        "resources": b"/ExtGState << /G 9 0 R >>", "objects": MASKED}),
    "a line that is blended away": ("line", FRAME + "1 g 10 140 120 20 re f /G gs " + LINE + "Q", lambda _: {
        "resources": b"/ExtGState << /G << /BM /Lighten >> >>"}),
    "words under a white stencil": ("words", PAGE + FRAME + "1 g " + STENCIL + "Q", lambda _: {}),
    "words under a note": ("words", PAGE, lambda kit: note(kit, b"1 g 0 0 100 100 re f") | {
        "page": b"/Annots [<< /Type /Annot /Subtype /Stamp /F 4 /Rect [57 560 227 595] /AP << /N 9 0 R >> >>]"}),
    "a line under a note": ("line", PAGE, lambda kit: note(kit, b"1 g 0 0 100 100 re f") | {
        "page": b"/Annots [<< /Type /Annot /Subtype /Stamp /F 4 /Rect [57 400 227 460] /AP << /N 9 0 R >> >>]"}),
    "a line shown by an expression": ("line", FRAME + "/OC /X BDC " + LINE + "EMC Q", lambda _: {
        "resources": b"/Properties << /X << /Type /OCMD /OCGs [9 0 R] /VE [/Not 9 0 R] >> >>",
        "objects": ((9, b"<< /Type /OCG /Name (a) >>"),),
        "catalogue": b"/OCProperties << /OCGs [9 0 R] /D << /ON [9 0 R] >> >>"}),
    "a line clipped by letters": ("line", FRAME + "BT /F 4 Tf 7 Tr 30 250 Td (cut) Tj ET " + LINE + "Q", lambda _: {}),
    "a letter that its own operators leave out": ("words", FRAME + "BT /T 4 Tf 30 200 Td (aaa) Tj ET Q", lambda kit: {
        "objects": type_3(kit, b"")}),
}  # fmt: skip
ADDED = {
    "a dark pattern": (PAGE + FRAME + "/Pattern cs /P scn 40 100 20 20 re f Q", lambda kit: {
        "resources": b"/Pattern << /P 9 0 R >>", "objects": ((9, kit.raw_stream(b"0 g 0 0 4 4 re f", PATTERN[2:])),)}),
    "a dark shading": (PAGE + FRAME + "100 180 4 4 re W n /S sh Q", lambda _: {
        "resources": b"/Shading << /S 9 0 R >>", "objects": ((9, SHADING % (0, 0)),)}),
    "a line of a note": (PAGE, lambda kit: note(kit, b"10 10 m 90 90 l S")),
    "a letter that draws farther than letters do": (FRAME + "BT /T 4 Tf 30 200 Td (a) Tj ET Q", lambda kit: {
        "objects": type_3(kit, b"0 0 500 500 re f 3000 0 400 400 re f")}),
    "a layer that an expression shows": (FRAME + "/OC /X BDC " + LINE + "EMC Q", lambda _: {
        "resources": b"/Properties << /X << /Type /OCMD /OCGs [9 0 R] /P /AllOn /VE [/Not 9 0 R] >> >>",
        "objects": ((9, b"<< /Type /OCG /Name (a) >>"),),
        "catalogue": b"/OCProperties << /OCGs [9 0 R] /D << /OFF [9 0 R] >> >>"}),
}  # fmt: skip


@pytest.mark.parametrize("name", HIDDEN)
def test_what_is_hidden_by_other_means_is_not_seen(kit: Any, name: str) -> None:
    what, content, more = HIDDEN[name]
    seen = sight(kit, content, **more(kit))
    unseen = seen.line if what == "line" else seen.words
    assert unseen is not None
    assert bool(unseen.text) == (what == "words")
    assert (19 < unseen.at[0] < 121) and (140 < unseen.at[1] < 205)


@pytest.mark.parametrize("name", ADDED)
def test_what_is_drawn_by_other_means_is_stray(kit: Any, name: str) -> None:
    content, more = ADDED[name]
    assert sight(kit, content, **more(kit)).stray is not None


@pytest.mark.parametrize(("wide", "stray"), [(0.25, False), (1.2, True)])
def test_a_line_wider_than_it_was_read_is_stray(kit: Any, wide: float, stray: bool) -> None:
    # a note draws the same line again: what lies farther than one dot (0.2 mm) beside the line is found, what lies on it is not
    code = b"%f w 0 14.4 m 100 14.4 l S" % (wide * PT * 100 / 170)
    seen = sight(kit, FRAME + "0.25 w 20.108 158.571 m 80.081 158.571 l S Q", **note(kit, code))
    assert (seen.stray is not None) == stray


@pytest.mark.parametrize("seed", range(12))
def test_pages_of_all_sorts_are_seen_as_they_were_read(kit: Any, seed: int) -> None:
    """Lines of all widths, greys and dashes, curves, sharp corners, areas with holes, clips, covers and words in any turn."""
    random = Random(f"page {seed}")

    def at(low: float = 10.0, high: float = 200.0) -> str:
        return f"{random.uniform(low, high):.3f} {random.uniform(low, high):.3f}"

    code = [FRAME]
    for _ in range(random.randint(20, 60)):
        width = random.choice((0.18, 0.25, 0.35, 0.5, 0.7))
        dash = random.choice(("", "", "4.2 1.05", "0.25 0.75", "8.4 1.05 0.35 1.05", "1.2"))
        ends = random.choice((0, 1))
        code.append(f"q {width} w [{dash}] 0 d {random.choice((0, 0, 0.4, 0.6)):g} G {ends} J {ends} j")
        if random.random() < 0.2:
            code.append(f"{at()} {random.uniform(20, 90):.2f} {random.uniform(20, 90):.2f} re W n")
        code.append(f"{at()} m " + " ".join(f"{at()} l" for _ in range(random.randint(1, 5))))
        if random.random() < 0.4:
            code.append(f"{at()} {at()} {at()} c")
        code.append(random.choice(("S Q", "s Q")))
    for _ in range(random.randint(0, 6)):
        x, y, w, h = (random.uniform(10, 90) for _ in range(4))
        inner = f"{x + w / 4} {y + h / 4} {w / 2} {h / 2} re" if random.random() < 0.5 else ""
        code.append(f"q {random.choice((0, 0.5, 1)):g} g {x} {y} {w} {h} re {inner} f* Q")
    for _ in range(random.randint(3, 12)):
        turn = random.choice(((1, 0), (0, 1), (-1, 0), (0.8, 0.6), (0.28, -0.96)))
        size = random.uniform(2.3, 12)
        words = random.choice(("cut 14", "boards", "b"))
        code.append(f"BT /F {size:.2f} Tf {turn[0]} {turn[1]} {-turn[1]} {turn[0]} {at(70, 150)} Tm ({words}) Tj ET")
    seen = sight(kit, "\n".join([*code, "Q"]))
    assert seen.stretches > 100
    assert (seen.line, seen.words, seen.stray) == (None, None, None)


def test_each_dot_of_a_dotted_line_is_seen_on_a_large_page_too(kit: Any) -> None:
    """Large pages are drawn in fewer dots: a printed dot of 0.25 mm may lie between four of them, and be darkest beside its line."""
    dice = Random(0)
    ways = (
        f"{dice.uniform(10, 800):.4f} {dice.uniform(10, 1100):.4f} m {dice.uniform(10, 800):.4f} {dice.uniform(10, 1100):.4f} l S "
        for _ in range(60)
    )
    dotted = sight(kit, f"{FRAME}0.25 w [0.25 0.75] 0 d {''.join(ways)}Q ", size=(841.0, 1189.0))
    assert dotted.stretches > 5000 and dotted.line is None
