"""A small pack drawn by hand with reportlab: every piece has a name, so that a test can spoil exactly one."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from functools import cache
from hashlib import sha256
from io import BytesIO
from math import cos, pi, sin, tan
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pikepdf
import pytest
import segno
from PIL import Image
from reportlab import rl_config
from reportlab.lib.utils import ImageReader
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

import publisher.pages
from publisher.basics import (
    AttachmentPromise,
    BendPromise,
    BoardPromise,
    BookmarkPromise,
    Box,
    Carried,
    ClearPromise,
    CodePromise,
    CompassPromise,
    CutPromise,
    DonePromise,
    DrawingPromise,
    DrawnPromise,
    EdgePromise,
    FiducialPromise,
    FigurePromise,
    FontPromise,
    FurniturePromise,
    HolePromise,
    LayoutPromise,
    LengthPromise,
    LinkPromise,
    MarkPromise,
    MeasurePromise,
    NeededPromise,
    NumberPromise,
    OutlinePromise,
    PagePromise,
    PaperPromise,
    PieceLine,
    PlacePromise,
    Point,
    Pose,
    PrintPromise,
    Promises,
    RowPromise,
    SaidPromise,
    SeamPromise,
    SentencePromise,
    SheetsPromise,
    SidePromise,
    SizesPromise,
    TagPromise,
    TextPromise,
    TipPromise,
    WordPromise,
    WorkPromise,
)
from publisher.proof.measuring.drawn_things import things_of
from publisher.proof.reading.reader import read_file
from tests.proof.made_folder import Made
from tests.proof.said import what_is_said

K = 72 / 25.4
WIDTH, HEIGHT = 210.0, 297.0
LIMIT = Box(6.35, 12.7, 203.65, 284.3)
FONT = Path(publisher.pages.__file__).parent / "type" / "fonts" / "NotoSans-Regular.ttf"
RECORD = b'{"format": 1}'
Draw = Callable[[Canvas], None]


def ring_code(points: tuple[Point, ...], closed: bool = True) -> str:
    first, *rest = (f"{x * K:.4f} {y * K:.4f}" for x, y in points)
    return f"{first} m " + " ".join(f"{p} l" for p in rest) + (" h" if closed else "")


def circle_code(x: float, y: float, r: float) -> str:
    k = 4 / 3 * tan(pi / 16)
    code = f"{(x + r) * K:.4f} {y * K:.4f} m"
    for i in range(8):
        a, b = i * pi / 4, (i + 1) * pi / 4
        points = (
            (x + r * (cos(a) - k * sin(a)), y + r * (sin(a) + k * cos(a))),
            (x + r * (cos(b) + k * sin(b)), y + r * (sin(b) - k * cos(b))),
            (x + r * cos(b), y + r * sin(b)),
        )
        code += " " + " ".join(f"{p * K:.4f} {q * K:.4f}" for p, q in points) + " c"
    return code + " h"


def stroke(code: str, width: float = 0.25, dash: str = "", grey: float = 0.0, clip: Box | None = None) -> Draw:
    cut = (
        f"{clip.left * K:.4f} {clip.bottom * K:.4f} {clip.width * K:.4f} {clip.height * K:.4f} re W n " if clip else ""
    )
    return lambda canvas: canvas.addLiteral(f"q {cut}{width * K:.4f} w [{dash}] 0 d {grey:g} G {code} S Q")


def line(a: Point, b: Point, width: float = 0.25) -> Draw:
    return stroke(ring_code((a, b), False), width)


def words(
    text: str, x: float, y: float, size: float = 4.0, grey: float = 0.0, font: str = "Body", mode: int = 0
) -> Draw:
    def draw(canvas: Canvas) -> None:
        run = canvas.beginText()
        run.setFont(font, size * K)
        run.setFillGray(grey)
        run.setTextRenderMode(mode)
        run.setTextOrigin(x * K, y * K)
        run.textOut(text)
        run.setTextRenderMode(0)
        canvas.drawText(run)

    return draw


def picture(box: Box, pixels: int) -> Draw:
    image = ImageReader(Image.new("L", (pixels, pixels), 128))
    return lambda canvas: canvas.drawImage(image, box.left * K, box.bottom * K, box.width * K, box.height * K)


def literal(code: str) -> Draw:
    return lambda canvas: canvas.addLiteral(code)


def box_code(box: Box) -> str:
    return ring_code(box.corners())


def sides(page: int, box: Box, label: str) -> tuple[LengthPromise, ...]:
    a, b, c, d = box.corners()
    return tuple(
        LengthPromise(page, start, end, length, "calibration", label)
        for start, end, length in ((a, b, box.width), (d, c, box.width), (a, d, box.height), (b, c, box.height))
    )


@cache
def body_font() -> TTFont:
    """The font of the packs, taken apart once."""
    return TTFont("Body", str(FONT))


@cache
def code_rows(text: str) -> tuple[str, ...]:
    return tuple("".join("1" if dark else "0" for dark in row) for row in segno.make_qr(text, version=3).matrix)


def code_modules(text: str, box: Box) -> str:
    matrix = [[m == "1" for m in row] for row in code_rows(text)]
    step = box.width / len(matrix)
    return " ".join(
        f"{(box.left + x * step) * K:.4f} {(box.top - (y + 1) * step) * K:.4f} {step * K:.4f} {step * K:.4f} re"
        for y, row in enumerate(matrix)
        for x, dark in enumerate(row)
        if dark
    )


MARKED = {"count": "/P <</MCID 0>> BDC", "outline": "/Figure <</MCID 1>> BDC"}  # all else is furniture
LINK = Box(20.0, 255.0, 60.0, 262.0)


def link_to(pdf: pikepdf.Pdf, page: int, box: Box = LINK) -> pikepdf.Object:
    """A link to a page (from 0)."""
    return pdf.make_indirect(
        pikepdf.Dictionary(
            Type=pikepdf.Name.Annot,
            Subtype=pikepdf.Name.Link,
            Rect=[side * K for side in box.sides],
            Border=[0, 0, 0],
            Dest=[pdf.pages[page].obj, pikepdf.Name.Fit],
        )
    )


def tag(pdf: pikepdf.Pdf) -> None:
    """Write a structure: the document, a section for each page, on page 2 a paragraph and a figure."""
    root = pdf.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.StructTreeRoot))
    root.K = element(pdf, root, "Document")
    for number, page in enumerate(pdf.pages):
        section = element(pdf, root.K, "Sect")
        root.K.K.append(section)
        if number == 1:
            section.K = [
                element(pdf, section, "P", Pg=page.obj, K=0),
                element(pdf, section, "Figure", Pg=page.obj, K=[1], Alt=pikepdf.String("Outline of the step")),
            ]
    pdf.Root.StructTreeRoot = root


def element(pdf: pikepdf.Pdf, parent: pikepdf.Object, role: str, **entries: Any) -> pikepdf.Object:
    return pdf.make_indirect(
        pikepdf.Dictionary({"/S": pikepdf.Name("/" + role), "/P": parent, "/K": []} | entries_of(entries))
    )


def entries_of(entries: dict[str, Any]) -> dict[str, Any]:
    return {f"/{key}": value for key, value in entries.items()}


@dataclass
class Sheet:
    """One page: named drawings in order, and its size."""

    items: dict[str, Draw] = field(default_factory=dict)
    width: float = WIDTH
    height: float = HEIGHT


@dataclass
class Pack:
    """Sheets and promises; ``edits`` change the finished file with pikepdf, ``damage`` changes its bytes."""

    sheets: list[Sheet]
    promises: Promises
    edits: list[Callable[[pikepdf.Pdf], None]] = field(default_factory=list)
    damage: Callable[[bytes], bytes] | None = None
    save: dict[str, Any] = field(default_factory=dict)

    def write(self) -> bytes:
        rl_config.useA85 = 0  # as the press does
        pdfmetrics.registerFont(body_font())
        out = BytesIO()
        canvas = Canvas(out, invariant=1, initialFontName="Body")
        canvas.setTitle(self.promises.title)
        for sheet in self.sheets:
            canvas.setPageSize((sheet.width * K, sheet.height * K))
            for name, draw in sheet.items.items():
                canvas.addLiteral(MARKED.get(name, "/Artifact BMC"))
                draw(canvas)
                canvas.addLiteral("EMC")
            canvas.showPage()
        canvas.save()
        with pikepdf.open(BytesIO(out.getvalue())) as pdf:
            pdf.Root.Lang = pikepdf.String("en")
            pdf.Root.ViewerPreferences = pikepdf.Dictionary(
                PrintScaling=pikepdf.Name("/None"),
                Enforce=pikepdf.Array([pikepdf.Name("/PrintScaling")]),
                Duplex=pikepdf.Name.Simplex,
                PickTrayByPDFSize=True,
            )
            pdf.Root.PageLabels = pikepdf.Dictionary(Nums=[0, pikepdf.Dictionary(S=pikepdf.Name.D)])
            pdf.attachments["facts.json"] = pikepdf.AttachedFileSpec(pdf, RECORD)
            last = len(self.sheets) - 1  # tests of single readings keep fewer sheets
            with pdf.open_outline() as outline:
                outline.root.append(top := pikepdf.OutlineItem("Templates", min(1, last)))
                top.children.append(pikepdf.OutlineItem("A Step", min(1, last)))
                outline.root.append(pikepdf.OutlineItem("Tiles", min(2, last)))
            tag(pdf)
            page = pdf.pages[min(1, last)]
            page.obj.Annots = [link_to(pdf, min(2, last))]
            for edit in self.edits:
                edit(pdf)
            finished = BytesIO()
            pdf.save(finished, **self.save)
        data = finished.getvalue()
        return self.damage(data) if self.damage else data


NOTCH = ((40.0, 0.0), (44.0, 0.0), (44.0, 6.0), (48.0, 6.0), (48.0, 0.0))
PART_A = ((0.0, 0.0), *NOTCH, (90.0, 0.0), (90.0, 40.0), (70.0, 60.0), (0.0, 60.0))
DOOR = ((10.0, 10.0), (10.0, 40.0), (30.0, 40.0), (30.0, 10.0))
PART_B = ((0.0, 0.0), (300.0, 0.0), (300.0, 80.0), (0.0, 90.0))
HOLE_B = ((140.0, 30.0), (140.0, 60.0), (165.0, 60.0), (165.0, 30.0))
RULER = 60  # mm: each of its ticks is read in each of the packs that tests spoil
AT_A = Pose(30.0, 180.0, 10.0)
DRAW_LINES = (((35.0, 20.0), (80.0, 20.0)), ((50.0, 20.0), (50.0, 35.0), (60.0, 35.0)))
REFERENCE = ((0.0, 30.0), (90.0, 30.0), (0.0, 30.0))
FOLD_LINE = ((0.0, 50.0), (80.0, 50.0))
ARROW = ((12.0, 45.0), (24.0, 45.0), (21.0, 46.0), (24.0, 45.0), (21.0, 44.0))  # with its barbs
FOOTER = Box(145.0, 14.5, 190.0, 21.0)
FOLD_DASH = (8.4, 1.05, 0.35, 1.05)
TILE_WINDOWS = (Box(10.0, 40.0, 200.0, 240.0), Box(10.0, 40.0, 200.0, 240.0))
TILE_POSES = (Pose(20.0, 100.0), Pose(-130.0, 100.0))  # the second page shows the part from x = 140
HATCHED = (((165.0, 135.0), (180.0, 155.0)), ((15.0, 135.0), (30.0, 155.0)))  # in the hole of B, page by page
SEAM_POINTS = (("B1-2·a", (155.0, 20.0)), ("B1-2·b", (155.0, 75.0)))


def corners(arm: float = 6.0) -> Draw:
    w = 0.35
    inner = LIMIT.grown(-w / 2)
    code = []
    for x, y in inner.corners():
        dx, dy = (arm if x < 100 else -arm), (arm if y < 100 else -arm)
        code.append(ring_code(((x + dx, y), (x, y), (x, y + dy)), False))
    return stroke(" ".join(code), w)


def fiducials(page: int) -> tuple[FiducialPromise, ...]:
    """Two marks of a page: that of the lower left corner as ``corners`` draws it, and one at the right side."""
    (x, y), side = LIMIT.grown(-0.175).corners()[0], LIMIT.right - 0.175
    arms = (((x, y), (x + 6.0, y)), ((x, y), (x, y + 6.0)))
    dashes = (((side, 146.0), (side, 149.5)), ((side, 150.5), (side, 154.0)))
    return (
        FiducialPromise(page, "lower left", (x, y), 6.0, 0.0, 0.35, arms, tuple(Box.round(a).grown(0.6) for a in arms)),
        FiducialPromise(
            page, "right", (side, 150.0), 8.0, 1.0, 0.35, dashes, (Box(side, 146.0, side, 154.0).grown(0.6),)
        ),
    )


def dashes(x: float = LIMIT.right - 0.175) -> Draw:
    return stroke(" ".join(ring_code(((x, a), (x, b)), False) for a, b in ((146.0, 149.5), (150.5, 154.0))), 0.35)


def outline(rings: tuple[tuple[Point, ...], ...], pose: Pose, clip: Box | None = None) -> Draw:
    return stroke(" ".join(ring_code(pose.apply_all(r)) for r in rings), 0.5, clip=clip)


def head(ring: tuple[Point, ...]) -> Draw:
    """A black triangle on the part of the second page."""
    return literal(f"q 0 g {ring_code(AT_A.apply_all(ring))} f Q")


def ground(box: Box, grey: float = 0.93) -> Draw:
    return lambda canvas: canvas.addLiteral(f"q {grey:g} g {box_code(box)} f Q")


def mark(x: float, y: float, r: float = 2.5) -> Draw:
    cross = ring_code(((x - r, y), (x + r, y)), False) + " " + ring_code(((x, y - r), (x, y + r)), False)
    return stroke(f"{circle_code(x, y, r)} {cross}", 0.25)


def pin(x: float, y: float) -> Draw:
    return stroke(
        " ".join(ring_code(((x - a, y - b), (x + a, y + b)), False) for a, b in ((3.0, 0.0), (0.0, 3.0))), 0.25
    )


def furniture(number: int) -> dict[str, Draw]:
    return {
        "corners": corners(),
        "number": words(f"page {number} of 4", 150.0, 16.0),
        "paper": words("A4", 60.0, 281.0, 3.0),
    }


def print_check() -> tuple[Sheet, list[LengthPromise]]:
    square, card = Box(80.0, 150.0, 180.0, 250.0), Box(80.0, 70.0, 165.6, 123.98)
    ticks = [(i, (20.0 + i, 30.0), (20.0 + i, 34.0 if i % 10 == 0 else 32.0)) for i in range(RULER + 1)]
    items = furniture(1) | {
        "square": stroke(box_code(square)),
        "square label": words("100 mm", 120.0, 245.0),
        "ruler": line((20.0, 30.0), (20.0 + RULER, 30.0)),
        "card": stroke(box_code(card)),
        "card label": words("85.60 mm", 110.0, 118.0),
        "gauge": line((30.0, 140.0), (30.0, 146.0)),
        "wide end": line((130.0, 140.0), (130.0, 148.0)),
        "bar": line((30.0, 149.0), (80.0, 149.0), 0.5),
    }
    for i, a, b in ticks:
        items[f"tick {i}"] = line(a, b, 0.18)
        if i % 50 == 0:
            items[f"tick label {i}"] = words(str(i), 20.0 + i - 2.0, 35.5, 2.4)
    lengths = [
        *sides(1, square, "100 mm"),
        LengthPromise(1, (20.0, 30.0), (20.0 + RULER, 30.0), float(RULER), "ruler"),
        LengthPromise(1, (80.0, 90.0), (165.6, 90.0), 85.6, "card", "85.60 mm"),
        LengthPromise(1, (30.0, 140.0), (30.0, 146.0), 6.0, "gauge"),
        LengthPromise(1, (130.0, 140.0), (130.0, 148.0), 8.0, "gauge"),
        *(LengthPromise(1, a, b, b[1] - a[1], "tick", str(i) if i % 50 == 0 else "") for i, a, b in ticks),
    ]
    return Sheet(items), lengths


def square_items(page: int) -> tuple[dict[str, Draw], list[LengthPromise]]:
    square = Box(150.0, 30.0, 200.0, 80.0)
    items = {"square": stroke(box_code(square)), "square label": words("50 mm", 155.0, 40.0)}
    return items, list(sides(page, square, "50 mm"))


def template() -> tuple[Sheet, list[LengthPromise]]:
    items, lengths = square_items(2)
    code = Box(180.0, 60.0, 194.5, 74.5)
    left, right = (20.0, 150.0), (110.0, 150.0)
    items |= furniture(2) | {
        "outline": outline((PART_A, DOOR), AT_A),
        "draw lines": stroke(" ".join(ring_code(AT_A.apply_all(line), False) for line in DRAW_LINES)),
        "fold lines": stroke(
            ring_code(AT_A.apply_all(FOLD_LINE), False), 0.35, " ".join(f"{d * K:.4f}" for d in FOLD_DASH)
        ),
        "reference": stroke(ring_code(AT_A.apply_all(REFERENCE)), 0.25, "3 1"),
        "arrow": stroke(ring_code(AT_A.apply_all(ARROW[:2]), False)),
        "head": head(ARROW[1:3] + ARROW[4:]),
        "up": head(((5.0, 12.0), (6.0, 9.0), (4.0, 9.0))),
        "upwards": words("top", *AT_A.apply((2.0, 5.0)), 2.4),
        "letter": words("A", 72.0, 226.5, 9.0),
        "count": words("cut 14", 80.0, 215.0),
        "code": literal(f"q 0 g {code_modules('pack 1.0.0 a4 2', code)} f* Q"),
        "dimension": line(left, right, 0.18),
        "dimension ends": stroke(
            ring_code(((20.0, 148.0), (20.0, 152.0)), False) + " " + ring_code(((110.0, 148.0), (110.0, 152.0)), False),
            0.18,
        ),
        "dimension label": words("90.0 mm", 60.0, 151.0),
        "picture": picture(Box(20.0, 100.0, 50.0, 130.0), 360),
    }
    lengths.append(LengthPromise(2, left, right, 90.0, "dimension", "90.0 mm"))
    return Sheet(items), lengths


def tile(number: int, index: int) -> tuple[Sheet, list[LengthPromise]]:
    items, lengths = square_items(number)
    pose, window = TILE_POSES[index], TILE_WINDOWS[index]
    items |= furniture(number) | {
        "outline": outline((PART_B, HOLE_B), pose, window),
        "letter": words("B", 100.0, 140.0, 12.0),
    }
    items["hatching"] = line(*HATCHED[index], 0.18)
    for label, point in SEAM_POINTS:
        x, y = pose.apply(point)
        items[f"mark {label}"] = mark(x, y)
        items[f"label {label}"] = words(label, x + 4.0, y + 1.0, 3.2)
    if index == 0:
        items = {
            "ground": ground(Box(pose.apply(SEAM_POINTS[0][1])[0], window.bottom, window.right, window.top)),
            **items,
        }
    said = ("glue area: page 4 lies on it", "trim line: cut, then lay over page 3")[index]
    items["seam says"] = words(said, 60.0, (112.0, 177.0)[index], 3.0)
    return Sheet(items), lengths


ROWS = (
    ("", "Part", "Board", "Cut", "Width × height", "in inches", "Page"),
    ("A", "Step", "foam", "14 + 1 spare", "90.0 × 60.0 mm", "3.54 × 2.36 in", "2"),
    ("B", "Deck of", "foam", "2, 1 mirrored", "300.0 × 90.0 mm", "11.81 × 3.54 in", "3-4"),
    ("L", "Lid", "foam", "3 + 1 spare", "80.0 × 30.0 mm", "3.15 × 1.18 in", "4"),
)


def table() -> dict[str, Draw]:
    """A cut list at the top of a page: level lines, and between them a row of words each; one name takes two lines."""
    items: dict[str, Draw] = {}
    for row, cells in enumerate(ROWS):
        top = 280.0 - 8.0 * row
        items[f"rule {row}"] = line((15.0, top), (200.0, top), 0.18)
        for x, cell in zip((15.0, 24.0, 60.0, 80.0, 110.0, 150.0, 185.0), cells, strict=True):
            if cell:
                items[f"cell {row} {cell}"] = words(cell, x, top - 3.5, 3.0)
    items["cell 2 name"] = words("the bridge", 24.0, 260.5 - 3.5, 3.0)
    items["rule 4"] = line((15.0, 248.0), (200.0, 248.0), 0.18)
    return items


PLAN = (
    ("Check your printer", 1, 1),
    ("Templates", 2, 2),
    ("Tiles of part B", 3, 4),
)


def plan() -> dict[str, Draw]:
    """A print plan at the top of a page; words beside it are none of its own."""
    items: dict[str, Draw] = {"beside the plan": words("Beside it", 20.0, 274.0, 3.0)}
    for row, (task, first, last) in enumerate(PLAN):
        y = 278.0 - 8.0 * row
        items[f"plan rule {row}"] = line((110.0, y), (195.0, y), 0.18)
        items[f"task {row}"] = words(task, 110.0, y - 4.0, 3.0)
        items[f"pages {row}"] = words(str(first) if first == last else f"{first}-{last}", 180.0, y - 4.0, 3.0)
    items["plan rule 3"] = line((110.0, 254.0), (195.0, 254.0), 0.18)
    return items


LAYOUT = Carried("layout:foam:A3:1", 3, Box(20.0, 45.0, 62.0, 74.7), Pose(20.0, 74.7, 270.0), 0.1)  # turned, at 1 : 10
LAID = (  # part, letter, outline, turn and points to measure out, their words
    ("step", "A", ((20.0, 20.0), (110.0, 20.0), (110.0, 80.0), (20.0, 80.0)), ((20.0, 20.0),), ("→20 ↓20",)),
    ("deck", "B", ((20.0, 100.0), (200.0, 100.0), (200.0, 180.0), (20.0, 180.0)), ((20.2, 100.0),), ("→100 ↓20",)),
    ("step", "A", ((120.0, 20.0), (210.0, 20.0), (210.0, 80.0), (120.0, 80.0)), ((120.0, 20.0),), ("→20 ↓120",)),
    (
        "peg",
        "P",
        ((250.0, 20.0), (256.0, 20.0), (256.0, 60.0), (250.0, 60.0)),
        ((250.0, 20.0), (256.0, 60.0)),
        ("● →20 ↓250", "○ →60 ↓256"),
    ),
)
CUTS = (CutPromise(True, 200.0, 0.0, 297.0, 1), CutPromise(False, 115.0, 0.0, 90.0, 2))
OFFCUT = Box(3.0, 203.0, 294.0, 417.0)


def on_layout(points: tuple[Point, ...]) -> tuple[Point, ...]:
    return LAYOUT.pose.apply_all(tuple((x * LAYOUT.scale, y * LAYOUT.scale) for x, y in points))


def layout_items() -> dict[str, Draw]:
    """A picture of a sheet: its frame, its pieces with names and measures, straight cuts, what is left, a list, a caption."""
    box = LAYOUT.box
    items: dict[str, Draw] = {"sheet": stroke(box_code(box), 0.35)}
    for number, (_, letter, ring, _, words_of) in enumerate(LAID, 1):
        items[f"piece {number}"] = stroke(ring_code(on_layout(ring)))
        (x, y), (far_x, far_y) = on_layout(ring)[0], on_layout(ring)[2]
        if letter != "P":
            items[f"piece {number} name"] = words(
                f"{number} {letter}", (x + far_x) / 2 - 2.0, (y + far_y) / 2 - 0.8, 2.4
            )
        for line, said in enumerate(words_of):
            items[f"piece {number} says {line}"] = words(
                said if line else f"{number} {letter} {said}", 20.0, 40.0 - 4.0 * (number + line), 2.4
            )
    for number, cut in enumerate(CUTS, 1):
        ends = [(along, cut.at) if cut.level else (cut.at, along) for along in (cut.start, cut.end)]
        items[f"cut {number}"] = stroke(ring_code(on_layout(tuple(ends)), False), 0.5, "4 2")
    items["cut 1 says"] = words("cut 1 upright at 200", 50.0, 40.0, 2.4)
    items["cut 2 says"] = words("cut 2 across at 115, from 0 to 90", 50.0, 36.0, 2.4)
    items["left"] = stroke(ring_code(on_layout(OFFCUT.corners())), 0.35, "1 2")
    items["left says"] = words("214 × 291 mm", 42.0, 60.0, 2.4)
    caption = "Foam, A3: sheet 1 of 1. Measured in mm from the left and the top edge."
    items["caption"] = words(caption.replace("Foam", "foam"), 20.0, 78.0, 3.0)
    return items


def layout_carried() -> tuple[Carried, ...]:
    """Where the words of the sheet's picture stand."""
    caption = Carried(LAYOUT_PROMISE.key_of("caption"), 3, Box(19.0, 77.0, 150.0, 81.0))
    kept = Carried(LAYOUT_PROMISE.key_of("offcut"), 3, Box(41.0, 59.0, 61.0, 62.0))
    pieces = (
        Carried(LAYOUT_PROMISE.key_of("piece", n), 3, Box(19.0, 43.0 - 4.0 * (n + len(said)), 48.0, 43.0 - 4.0 * n))
        for n, (*_, said) in enumerate(LAID, 1)
    )
    cuts = (
        Carried(LAYOUT_PROMISE.key_of("cut", n), 3, Box(49.0, 43.0 - 4.0 * n, 110.0, 46.5 - 4.0 * n)) for n in (1, 2)
    )
    return (LAYOUT, caption, kept, *pieces, *cuts)


LAYOUT_PROMISE = LayoutPromise(
    LAYOUT.key,
    "foam",
    "A3",
    297.0,
    420.0,
    1,
    1,
    1,
    tuple(
        PlacePromise(part, letter, 1, (ring,), measures=tuple(MeasurePromise(at, at) for at in points), order=number)
        for number, (part, letter, ring, points, _) in enumerate(LAID, 1)
    ),
    CUTS,
    OFFCUT,
    0.5,
    32,
)


WAY = SheetsPromise("buy:foam:A3", "foam", "A3", 297.0, 420.0, 2, (("A", 12, True), ("B", 3, False)), (214.4, 291.0))
TIPS = (TipPromise(False, 2000.0, 4000.0), TipPromise(True, 1000.0, 2000.0))
WORK = WorkPromise("work", 7812.0, 0.0, 16, 17_230.0, 1724, (3, 5), TIPS)
TIPS_SAY = "A blade’s tip usually lasts 2 to 4 m (7 to 13 ft) of bare board and 1 to 2 m (3 to 7 ft) of board with paper on it."


BOARD = BoardPromise("foam", "foam", "bare", "5 mm", 5.0, 4.7, 5.3)
BOARD_SAYS = (
    "Bare foam board, no paper on its faces (extruded foam), sold as 5 mm, measured 5.00 mm (0.197 in)",
    "thick. Takes board from 4.7 to 5.3 mm (0.186 to 0.208 in). Boards sold as 5 mm: measure yours.",
)


def buying_items() -> dict[str, Draw]:
    """Rows of what to buy and of the work."""
    row = ("or 2 sheets", "A3 (11.7 × 16.5 in)", "12 or more A, or 3 B", "214 × 291 mm (8.4 × 11.4 in)")
    work = ("7.8 m (25.6 ft)", "none", "16", "17.2 m (56.5 ft) in 1724 strokes", "3 to 5")
    items = {f"way {n}": words(text, 20.0 + 40.0 * n, 27.0, 2.4) for n, text in enumerate(row)}
    items |= {f"board {n}": words(text, 20.0, 34.0 - 3.2 * n, 2.3) for n, text in enumerate(BOARD_SAYS)}
    items["tips"] = words(TIPS_SAY, 20.0, 16.0, 2.3)
    return items | {
        f"work {n}": words(text, 20.0 + (0.0, 34.0, 60.0, 80.0, 130.0)[n], 21.0, 2.4) for n, text in enumerate(work)
    }


SENTENCE = "Cut 14 pieces with a wall of 92.3 mm (3.63 in) for about 90 g."
PICTURE = Carried("step:2:picture", 4, Box(20.0, 45.0, 60.0, 65.0), Pose(20.0, 45.0), 0.5)
SEEN = (((0.0, 0.0), (80.0, 0.0), (80.0, 40.0), (0.0, 40.0), (0.0, 0.0)), ((0.0, 30.0), (80.0, 30.0)))
TEXTURE = tuple(((4.0 * i, 5.0), (4.0 * i, 25.0)) for i in range(1, 19))

PRESSED = Carried("step:2:does:press:lid", 4, Box(155.0, 49.0, 196.0, 70.0), Pose(156.0, 54.0), 0.3)
LID_RING = ((0.0, 0.0), (80.0, 0.0), (80.0, 30.0), (50.0, 40.0), (0.0, 40.0))
PRESSED_SIGNS = (
    ((186.0, 64.4), (187.4, 63.0), (190.0, 67.2)),  # a tick, then both strokes of a cross
    ((184.0, 50.0), (194.0, 60.0)),
    ((184.0, 60.0), (194.0, 50.0)),
)


def step_items() -> dict[str, Draw]:
    """A step: a sentence over two lines, a picture with fine lines and a label, and a sketch of what is done to a part."""

    def seen(line: tuple[Point, ...]) -> str:
        return ring_code(tuple((20.0 + x / 2, 45.0 + y / 2) for x, y in line), False)

    return {
        "say": words(SENTENCE[:36], 70.0, 60.0, 3.0),
        "say on": words(SENTENCE[37:], 70.0, 55.0, 3.0),
        "seen": stroke(" ".join(map(seen, SEEN)), 0.35),
        "texture": stroke(" ".join(map(seen, TEXTURE)), 0.18),
        "label": words("A", 24.12, 52.0, 2.6),
        "pressed": stroke(ring_code(tuple((156.0 + 0.3 * x, 54.0 + 0.3 * y) for x, y in LID_RING)), 0.35),
        "first picture": words("1", 14.5, 60.0, 4.6),
        "second picture": words("2", 150.5, 65.5, 4.6),
        "pressed count": words("2 × A", 160.0, 50.0, 2.7),
        "needs": words("A 2 × Step", 176.0, 42.0, 2.7),
        "needs too": words("pins", 176.0, 39.2, 2.7),
        "caution": words("“Pins”", 160.0, 36.0, 2.7),
        "sample": line((85.0, 76.0), (100.0, 76.0), 0.5),
        "means": words("cut line cut right through", 103.0, 75.0, 2.7),
        "tick": stroke(ring_code(PRESSED_SIGNS[0], False), 0.5),
        "cross": stroke(" ".join(ring_code(line, False) for line in PRESSED_SIGNS[1:]), 0.5),
    }


def other_half(ring: tuple[Point, ...]) -> tuple[Point, ...]:
    return tuple((180.0 - x, y) for x, y in reversed(ring))


WHOLE_A = (
    ((0.0, 0.0), *NOTCH, *other_half(NOTCH), (180.0, 0.0), (180.0, 60.0), (110.0, 60.0), (90.0, 40.0), *PART_A[-2:]),
    DOOR,
    other_half(DOOR),
)


def made() -> dict[str, Any]:
    """What other rooms promised before there was a page, and where pages carry it."""
    return {
        "sheets": (WAY,),
        "work": WORK,
        "boards": (BOARD,),
        "layouts": (LAYOUT_PROMISE,),
        "sides": (
            SidePromise("side:step", "step", "A", False, "outside", False, True),
            SidePromise("side:deck", "deck", "B", False, "", True, False),
        ),
        "sentences": (
            SentencePromise(
                "step:2:say",
                SENTENCE,
                (
                    NumberPromise("step.count", 14.0, "count", "14"),
                    NumberPromise("wall", 92.3, "length", "92.3 mm (3.63 in)"),
                    NumberPromise("wall.carries", 0.97, "force", "about 90 g"),
                ),
            ),
        ),
        "prints": (
            PrintPromise(
                "step",
                "A",
                "foam",
                5.0,
                (PART_A, DOOR),
                (WordPromise("a", (45.0, 56.0), "letter"),),
                whole=WHOLE_A,
                mirror=((90.0, 0.0), (90.0, 60.0)),
                lines=(
                    *(PieceLine("draw", line) for line in DRAW_LINES),
                    PieceLine("fold", FOLD_LINE),
                    PieceLine("reference", REFERENCE),
                    PieceLine("arrow", ARROW),
                ),
                bend=BendPromise("paper", "inside", "outside", 3.5),
            ),
            PrintPromise("deck", "B", "foam", 5.0, (PART_B, HOLE_B)),
        ),
        "figures": (
            FigurePromise("thickness of foam", 5.0, "length"),
            FigurePromise("thickness of foam that is taken", 7.0, "length"),
            FigurePromise("least scale of a print", 0.995, "share"),
            FigurePromise("greatest scale of a print", 1.005, "share"),
            FigurePromise("thickness of foam that is taken", 4.7, "length"),
            FigurePromise("thickness of foam that is taken", 5.3, "length"),
        ),
        "drawings": (
            DrawingPromise(PICTURE.key, "part:step", 80.0, 40.0, SEEN, TEXTURE, (("A", (10.0, 16.0)),)),
            DrawingPromise(SIZES.key, SIZES.key, 80.0, 30.0, LID_LINES),
        ),
        "sizes": (SIZES,),
        "needed": (NeededPromise("step:2:needs", (("A", 2),), ("pins",)),),
        "said": (SaidPromise("step:2:does:press", ("2 × A",), ("2 × A",)),),
        "done": (DonePromise(PRESSED.key, "press", "A", 2, (LID_RING,), 1, 1),),
        "carried": (
            *layout_carried(),
            Carried(WAY.key, 2, Box(19.0, 25.0, 190.0, 29.5)),
            Carried(WORK.key, 2, Box(19.0, 19.0, 190.0, 23.5)),
            PICTURE,
            PRESSED,
            Carried("step:2:does:press", 4, PRESSED.box),
            Carried("step:2:does:press:step", 4, PRESSED.box, Pose(192.0, 66.0), 0.01),
            Carried("step:2:needs", 4, Box(174.5, 38.6, 196.0, 46.0)),
            LID,
            Carried(f"{SIZES.key}:words", 4, Box(69.0, 19.5, 148.0, 46.9)),
            Carried("side:step", 2, Box(120.0, 228.0, 190.0, 245.0), copy=1),
            Carried("side:deck", 3, Box(100.0, 128.0, 140.0, 137.0), copy=1),
            Carried("print_list", 1, Box(22.0, 193.0, 70.0, 204.0)),
            *(Carried(f"key_plan:{n}", 1, Box(21.0 + 16.0 * n, 184.0, 36.0 + 16.0 * n, 188.0)) for n in range(1, 5)),
            Carried("step:2:title", 4, Box(70.0, 64.0, 145.0, 70.0)),
            Carried("step:2:say", 4, Box(70.0, 52.0, 145.0, 63.0)),
        ),
    }


SIZES = SizesPromise(
    "sizes:lid",
    "lid",
    "L",
    80.0,
    30.0,
    (HolePromise(10.0, 5.0, 12.0, 20.0, False), HolePromise(60.0, 15.0, 6.0, 6.0, True)),
    ((False, 40.0),),
    (EdgePromise("top", 45.0, 0.0), EdgePromise("left", 0.0, 5.0)),
)
LID = Carried(SIZES.key, 4, Box(20.0, 30.0, 36.0, 36.0), Pose(20.0, 30.0), 0.2)
LID_LINES = (
    ((0.0, 0.0), (80.0, 0.0), (80.0, 30.0), (0.0, 30.0), (0.0, 0.0)),
    ((10.0, 5.0), (22.0, 5.0), (22.0, 25.0), (10.0, 25.0), (10.0, 5.0)),
    ((60.0, 12.0), (63.0, 15.0), (60.0, 18.0), (57.0, 15.0), (60.0, 12.0)),
)
LID_SAYS = (
    "L Lid, cut 3 + 1 spare",
    "80.0 × 30.0 mm (3.15 × 1.18 in), foam.",
    "1: an opening, 12.0 × 20.0 mm (0.47 × 0.79 in);",
    "10.0 mm (0.39 in) from the left, 5.00 mm (0.20 in) from below.",
    "2: a round hole, 6.00 mm (0.24 in) across; its middle",
    "60.0 mm (2.36 in) from the left, 15.0 mm (0.59 in) from below.",
    "Draw an upright line, 40.0 mm (1.57 in) from the left.",
    "Bevel 45° at the upper edge: the face underneath is shorter.",
    "Rabbet at the left edge: cut the foam away behind,",
    "5.00 mm (0.20 in) wide; the front paper stays.",
)
LID_ROW = 2.6


def lid_items() -> dict[str, Draw]:
    """A piece without a template: its drawing, and what is said of it."""
    rings = [ring_code(tuple((20.0 + x / 5, 30.0 + y / 5) for x, y in line), False) for line in LID_LINES]
    items: dict[str, Draw] = {"lid": stroke(" ".join(rings), 0.35)}
    return items | {f"lid says {n}": words(said, 70.0, 44.0 - LID_ROW * n, 2.3) for n, said in enumerate(LID_SAYS)}


def boxes_code(count: int) -> str:
    """Boxes to tick in the label on the second page."""
    return " ".join(box_code(Box(141.0 + 3.0 * i, 234.0, 143.0 + 3.0 * i, 236.0)) for i in range(count))


STRIP = ((51.0, 44.0), (114.0, 44.0), (114.0, 64.0), (51.0, 64.0))
HOW = "Glue to card. Pin through the cross, pencil through the hole; cut on the pencil line."
KEYS = ("1: check", "2: A", "3: B", "4: B")  # of the small pictures: which parts each page shows


def good_pack() -> Pack:
    sheets, lengths = [], []
    for sheet, more in (print_check(), template(), tile(3, 0), tile(4, 1)):
        sheets.append(sheet)
        lengths += more
    sheets[0].items |= {
        "print list": words("Print list: now 1, then 2-4", 22.0, 200.0, 3.0),
        "print list sheets": words("on paper: 4 sheets of paper", 22.0, 195.0, 3.0),
    }
    sheets[0].items |= {f"key {n}": words(said, 22.0 + 16.0 * n, 185.0, 2.7) for n, said in enumerate(KEYS, 1)}
    sheets[2].items |= plan()
    sheets[3].items |= table()
    sheets[1].items |= {
        "dashes": dashes(),
        "side": words("THIS SIDE UP: the outside face", 120.0, 240.0, 3.0),
        "flip": words("Do not flip.", 120.0, 235.0, 3.0),
        "half": words(
            "Half: trace all but the marked side, flip it over along that side, trace again.", 120.0, 243.5, 2.3
        ),
        "top": words("top", 120.0, 230.0, 3.0),
        "hatching": line(AT_A.apply((14.0, 15.0)), AT_A.apply((26.0, 35.0)), 0.18),
        "whose": words("A cut 14 + 1 spare, 90.0 × 60.0 mm", 140.0, 230.0, 3.0),
        "boxes": stroke(boxes_code(15)),
        "edge letter": words("a", *AT_A.apply((45.0, 52.0)), 3.0),
    }
    sheets[1].items |= {"pin": pin(60.0, 50.0), "pencil": stroke(circle_code(105.0, 50.0, 1.25))} | {
        "strip": stroke(ring_code(STRIP), 0.18),
        "strip name": words("A Step, cut 14 + 1 spare: compass strip", 53.0, 61.0, 2.3),
        "pin says": words("pin", 64.0, 51.2, 2.3),
        "strip how": words(HOW[:36], 64.0, 46.9, 2.3),
        "strip how on": words(HOW[37:], 64.0, 44.6, 2.3),
    }
    for name, sheet, text, at in what_is_said():
        sheets[sheet].items[f"says {name}"] = words(text, *at, 2.3)
    sheets[1].items |= buying_items()
    sheets[2].items |= layout_items() | {
        "side": words("THIS SIDE UP", 100.0, 132.0, 3.0),
        "whose": words("B cut 2", 100.0, 129.0, 2.4),
    }
    sheets[3].items |= (
        lid_items()
        | step_items()
        | {
            "step": words("Dry-fit", 70.0, 66.0, 3.0),
            "step number": words("1", 60.0, 66.0, 3.0),
            "sent": words("Tile 2 of 2. Hold the board in the gauge on page 1.", 70.0, 48.0, 3.0),
        }
    )
    kinds = ("print_check", "templates", "tiles", "steps")
    tasks = [task for task, first, last in PLAN for _ in range(first, last + 1)]
    promises = Promises(
        "Lock-keeper's stair",
        "en",
        tuple(
            PagePromise(i + 1, WIDTH, HEIGHT, str(i + 1), kind, LIMIT, True, task, True)
            for i, (kind, task) in enumerate(zip(kinds, tasks, strict=True))
        ),
        tuple(lengths),
        (
            OutlinePromise(2, "step", "A", 1, AT_A, (PART_A, DOOR)),
            *(
                OutlinePromise(3 + i, "deck", "B", 1, TILE_POSES[i], (PART_B, HOLE_B), TILE_WINDOWS[i], 1, i + 1)
                for i in range(2)
            ),
        ),
        tuple(
            SeamPromise("deck", 1, label, (3, 4), (TILE_POSES[0].apply(p), TILE_POSES[1].apply(p)), 2.5)
            for label, p in SEAM_POINTS
        ),
        (
            TextPromise(2, "A", (72.0, 226.5), 5.0, "step", 1),
            TextPromise(2, "cut 14", (80.0, 215.0), 5.0, "step", 1),
            TextPromise(3, "B", (100.0, 140.0), 5.0),
            TextPromise(4, "B"),
        ),
        (CodePromise(2, Box(180.0, 60.0, 194.5, 74.5), "pack 1.0.0 a4 2", code_rows("pack 1.0.0 a4 2")),),
        (AttachmentPromise("facts.json", sha256(RECORD).hexdigest()),),
        (
            MarkPromise(2, "step", 1, "draw", tuple(AT_A.apply_all(line) for line in DRAW_LINES), 0.25),
            MarkPromise(2, "step", 1, "fold", (AT_A.apply_all(FOLD_LINE),), 0.35, FOLD_DASH),
        ),
        tuple(FurniturePromise(number, "footer", FOOTER) for number in range(1, 5)),
        (
            RowPromise("step", "A", "Step", "foam", 14, 1, 0, 90.0, 60.0),
            RowPromise("deck", "B", "Deck of the bridge", "foam", 2, 0, 1, 300.0, 90.0),
            RowPromise("lid", "L", "Lid", "foam", 3, 1, 0, 80.0, 30.0),
        ),
        bookmarks=(BookmarkPromise("Templates", 2, 0), BookmarkPromise("A Step", 2, 1), BookmarkPromise("Tiles", 3, 0)),
        fiducials=fiducials(2),
        links=(LinkPromise(2, LINK, 3),),
        tags=(TagPromise(2, 0, "P", "", "cut 14"), TagPromise(2, 0, "Figure", "Outline of the step", "")),
        clear=(ClearPromise(1, "ruler", Box(180.5, 150.0, 185.5, 250.0)),),
        fonts=(FontPromise("Body", FONT.read_bytes()),),
        paper=PaperPromise("a4"),
        compasses=(CompassPromise(2, "step", "A", (60.0, 50.0), ((105.0, 50.0),), (45.0,), 1.25, STRIP),),
        **made(),
    )
    return Pack(sheets, replace(promises, drawn=drawn_on_the_first(Pack(sheets, promises))))


DRAWN: list[tuple[DrawnPromise, ...]] = []


def drawn_on_the_first(pack: Pack) -> tuple[DrawnPromise, ...]:
    """What the first page of the good pack draws, read once: here no maker of pages promised it."""
    if not DRAWN:
        DRAWN.append(tuple(things_of(read_file(pack.write(), "good.pdf").pages[0])))
    return DRAWN[0]


def raw_pdf(
    content: bytes = b"",
    *,
    page: bytes = b"",
    resources: bytes = b"",
    catalogue: bytes = b"",
    objects: tuple[tuple[int, bytes], ...] = (),
    box: bytes = b"[0 0 595.2756 841.8898]",
    pages: bytes = b"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
) -> bytes:
    """Write a PDF of one page by hand: objects 1 to 4 are catalogue, page tree, page and content."""
    numbered = (
        (1, b"<< /Type /Catalog /Pages 2 0 R " + catalogue + b" >>"),
        (2, pages),
        (
            3,
            b"<< /Type /Page /Parent 2 0 R /Contents 4 0 R /MediaBox "
            + box
            + b" /Resources << "
            + resources
            + b" >> "
            + page
            + b" >>",
        ),
        (4, raw_stream(content)),
        *objects,
    )
    out, offsets = b"%PDF-1.7\n", {}
    for number, body in numbered:
        offsets[number] = len(out)
        out += b"%d 0 obj\n" % number + body + b"\nendobj\n"
    last = max(offsets)
    table = b"".join(
        b"%010d 00000 %s \n" % (offsets.get(i, 0), b"n" if i in offsets else b"f") for i in range(1, last + 1)
    )
    trailer = b"trailer << /Size %d /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF" % (last + 1, len(out))
    return out + b"xref\n0 %d\n0000000000 65535 f \n" % (last + 1) + table + trailer


def raw_stream(data: bytes, entries: bytes = b"") -> bytes:
    return b"<< /Length %d " % len(data) + entries + b" >>\nstream\n" + data + b"\nendstream"


@pytest.fixture(scope="session")
def kit() -> SimpleNamespace:
    """The builder's tools."""
    return SimpleNamespace(
        good=good_pack,
        stroke=stroke,
        line=line,
        words=words,
        picture=picture,
        literal=literal,
        outline=outline,
        mark=mark,
        ground=ground,
        pin=pin,
        head=head,
        link_to=link_to,
        corners=corners,
        dashes=dashes,
        circle=lambda x, y, r: stroke(circle_code(x, y, r)),
        box_code=box_code,
        ring_code=ring_code,
        circle_code=circle_code,
        code_modules=code_modules,
        raw_pdf=raw_pdf,
        raw_stream=raw_stream,
        font=FONT,
        limit=LIMIT,
    )


@pytest.fixture(scope="session")
def made_folder(tmp_path_factory: pytest.TempPathFactory) -> Made:
    """The design, built once in a process."""
    folder = tmp_path_factory.mktemp("quay") / "quay-box"
    folder.mkdir()
    return Made(folder)
