"""A pack as a PDF: reportlab writes the pages, pikepdf finishes what reportlab cannot say."""

from collections.abc import Iterator
from io import BytesIO
from itertools import groupby
from math import cos, radians, sin

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from publisher.basics import Box, Layer, Line, Path, Point
from publisher.basics.units import INCH_MM
from publisher.pages import Bookmark, Fill, Link, Pack, Page, Picture, Stroke, Words
from publisher.press.arcs import beziers
from publisher.press.finish import finish
from publisher.press.photos import prepared
from publisher.press.tags import marked, opening

PT_PER_MM = 72.0 / INCH_MM  # ISO 32000-1, 8.3.2.3: default user space is 1/72 inch; the inch of 1959 is 25.4 mm
ROUND_JOIN = 1  # ISO 32000-1, 8.4.3.4: ink ends half its width round a corner too; a mitre sticks out by 2.4 mm at a tip of 12 degrees


def write_pdf(pack: Pack) -> bytes:
    """Return the finished PDF of a pack. Same pack, same bytes."""
    rl_config.invariant = 1
    rl_config.useA85 = 0  # bytes as text, which pikepdf would only undo
    _register_fonts(pack)
    out = BytesIO()
    canvas = Canvas(out, pageCompression=1, invariant=1, initialFontName=_font_name(pack, pack.fonts[0].name))
    canvas.setTitle(pack.title)
    canvas.setAuthor(pack.designer)
    canvas.setSubject(pack.summary)
    canvas.setCreator("publisher")
    canvas.setProducer("publisher")
    for page in pack.pages:
        canvas.setPageSize((page.width * PT_PER_MM, page.height * PT_PER_MM))
        canvas.bookmarkPage(_page_key(page.number))
        for number, bookmark in enumerate(pack.bookmarks):
            if bookmark.page == page.number:
                _mark(canvas, bookmark, f"bookmark-{number}")
        _draw_page(canvas, pack, page)
        canvas.showPage()
    canvas.save()
    return finish(out.getvalue(), pack)


def _font_name(pack: Pack, name: str) -> str:
    # reportlab keeps fonts by name for the whole process: two packs may carry different fonts under one name
    data = next(f.data for f in pack.fonts if f.name == name)
    return f"{name}-{len(data)}-{sum(data[:4096]) % 65521}"


def _register_fonts(pack: Pack) -> None:
    for font in pack.fonts:
        name = _font_name(pack, font.name)
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, BytesIO(font.data)))


def _page_key(number: int) -> str:
    return f"page-{number}"


def _mark(canvas: Canvas, bookmark: Bookmark, key: str) -> None:
    """Write an entry of the outline tree. Each has a key of its own: reportlab keeps the tree by keys, so that two entries under
    one key would share their parent."""
    if bookmark.top is None:
        canvas.bookmarkPage(key)
    else:
        canvas.bookmarkPage(key, fit="XYZ", left=0, top=bookmark.top * PT_PER_MM)
    canvas.addOutlineEntry(bookmark.title, key, bookmark.depth, closed=True)


def _draw_page(canvas: Canvas, pack: Pack, page: Page) -> None:
    names = {font.name: _font_name(pack, font.name) for font in pack.fonts}
    images = {image.name: image.data for image in pack.images}
    for link in (thing for thing in page.drawn if isinstance(thing, Link)):
        sides = tuple(side * PT_PER_MM for side in link.box.sides)
        canvas.linkRect("", _page_key(link.page), sides, relative=0, Border="[0 0 0]")
    for layer, runs in groupby(marked(page), lambda run: run.layer):
        canvas.addLiteral(f"/OC /{layer_key(layer)} BDC")
        for run in runs:
            canvas.addLiteral(opening(run))
            for thing in run.things:
                if isinstance(thing, Words):
                    _draw_words(canvas, names[thing.font], thing)
                elif isinstance(thing, Picture):
                    _draw_picture(canvas, images[thing.image], thing)
                elif isinstance(thing, Stroke | Fill):
                    canvas.addLiteral(_stroke_code(thing) if isinstance(thing, Stroke) else _fill_code(thing))
            canvas.addLiteral("EMC")
        canvas.addLiteral("EMC")


def layer_key(layer: Layer) -> str:
    """Return the resource name of a layer's optional-content group."""
    return f"L{layer.value}"


def _draw_words(canvas: Canvas, font: str, words: Words) -> None:
    text = canvas.beginText()
    text.setFont(font, words.size * PT_PER_MM)
    text.setFillGray(words.grey)
    c, s = cos(radians(words.turn)), sin(radians(words.turn))
    text.setTextTransform(c, s, -s, c, words.x * PT_PER_MM, words.y * PT_PER_MM)
    text.textOut(words.text)
    canvas.drawText(text)


def _draw_picture(canvas: Canvas, data: bytes, picture: Picture) -> None:
    box = picture.box
    image = prepared(data, box.width, box.height)
    canvas.drawImage(
        image, box.left * PT_PER_MM, box.bottom * PT_PER_MM, box.width * PT_PER_MM, box.height * PT_PER_MM, mask=None
    )


def _number(mm: float) -> str:
    text = f"{mm * PT_PER_MM:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _xy(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _upright_rectangle(path: Path) -> bool:
    if not path.closed or len(path.points) != 4 or path.corners is None:
        return False
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = path.points
    return (ay, bx, cy, dx) == (by, cx, dy, ax)


def _path_code(path: Path) -> Iterator[str]:
    if _upright_rectangle(path):  # one operator instead of five: page codes and tick boxes are made of rectangles
        (left, bottom), _, (right, top), _ = path.points
        yield f"{_xy((left, bottom))} {_number(right - left)} {_number(top - bottom)} re"
        return
    if corners := path.corners:
        yield f"{_xy(corners[0])} m"
        for point in corners[1:-1] if path.closed else corners[1:]:  # h draws the last side
            yield f"{_xy(point)} l"
        if path.closed:
            yield "h"
        return
    yield f"{_xy(path.edges[0].start)} m"
    for index, edge in enumerate(path.edges):
        if isinstance(edge, Line):
            if path.closed and index == len(path.edges) - 1:
                break  # h draws the last side
            yield f"{_xy(edge.end)} l"
        else:
            for one, two, end in beziers(edge):
                yield f"{_xy(one)} {_xy(two)} {_xy(end)} c"
    if path.closed:
        yield "h"


def _clip_code(clip: Box | None) -> Iterator[str]:
    if clip is not None:
        yield f"{_xy((clip.left, clip.bottom))} {_number(clip.width)} {_number(clip.height)} re W n"


def _stroke_code(stroke: Stroke) -> str:
    style = stroke.style
    dash = " ".join(_number(d) for d in style.dash)
    code = ["q", *_clip_code(stroke.clip)]
    ends = int(style.round_ends)
    code.append(f"{_number(style.width)} w [{dash}] 0 d {style.grey:g} G {ends} J {ROUND_JOIN} j")
    for path in stroke.paths:
        code.extend(_path_code(path))
    code.append("S Q")
    return "\n".join(code)


def _fill_code(fill: Fill) -> str:
    code = ["q", *_clip_code(fill.clip), f"{fill.grey:g} g"]
    for path in fill.paths:
        code.extend(_path_code(path))
    code.append("f* Q")
    return "\n".join(code)
