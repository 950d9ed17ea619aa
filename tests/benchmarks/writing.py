"""``python -m tests.benchmarks.writing [designs/bridge …] [--paper a4]``: writing a pack, beside reportlab alone with the same operations.

The yardstick draws what the pages hold by reportlab's own calls: paths, lines of words, pictures, links, bookmarks. It writes no layers,
no structure, no attachments and no metadata, as reportlab cannot; what these take is in the ratio, which is to stay at 1.5 or less.
"""

import argparse
from io import BytesIO
from pathlib import Path
from time import process_time

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from publisher.basics import Line
from publisher.basics import Path as Outline
from publisher.brief import read_brief
from publisher.pages import Fill, Link, Pack, Page, Picture, Stroke, Words
from publisher.pipeline import compose_packs, work
from publisher.press import write_pdf
from publisher.press.arcs import beziers
from publisher.press.photos import prepared

K = 72 / 25.4
ROUNDS = 5  # the best of them counts


def bare(pack: Pack) -> bytes:
    """Return a PDF of what the pages show by reportlab alone."""
    rl_config.invariant = 1
    rl_config.useA85 = 0
    for font in pack.fonts:
        if f"bare-{font.name}" not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(f"bare-{font.name}", BytesIO(font.data)))
    out = BytesIO()
    canvas = Canvas(out, pageCompression=1, invariant=1, initialFontName=f"bare-{pack.fonts[0].name}")
    images = {image.name: image.data for image in pack.images}
    for page in pack.pages:
        canvas.setPageSize((page.width * K, page.height * K))
        canvas.bookmarkPage(f"page-{page.number}")
        for number, mark in enumerate(pack.bookmarks):
            if mark.page == page.number:
                canvas.bookmarkPage(f"mark-{number}")
                canvas.addOutlineEntry(mark.title, f"mark-{number}", mark.depth, closed=True)
        _draw(canvas, page, images)
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def _draw(canvas: Canvas, page: Page, images: dict[str, bytes]) -> None:
    for thing in page.drawn:
        if isinstance(thing, Link):
            canvas.linkRect("", f"page-{thing.page}", tuple(side * K for side in thing.box.sides), Border="[0 0 0]")
        elif isinstance(thing, Words):
            _words(canvas, thing)
        elif isinstance(thing, Picture):
            box = thing.box
            image = prepared(images[thing.image], box.width, box.height)
            canvas.drawImage(image, box.left * K, box.bottom * K, box.width * K, box.height * K)
        elif isinstance(thing, Stroke | Fill):
            _lines(canvas, thing)


def _words(canvas: Canvas, words: Words) -> None:
    canvas.setFillGray(words.grey)
    canvas.setFont(f"bare-{words.font}", words.size * K)
    if words.turn:
        canvas.saveState()
        canvas.translate(words.x * K, words.y * K)
        canvas.rotate(words.turn)
        canvas.drawString(0, 0, words.text)
        canvas.restoreState()
    else:
        canvas.drawString(words.x * K, words.y * K, words.text)


def _lines(canvas: Canvas, thing: Stroke | Fill) -> None:
    canvas.saveState()
    if thing.clip is not None:
        clip = canvas.beginPath()
        clip.rect(thing.clip.left * K, thing.clip.bottom * K, thing.clip.width * K, thing.clip.height * K)
        canvas.clipPath(clip, stroke=0, fill=0)
    path = canvas.beginPath()
    for one in thing.paths:
        _trace(path, one)
    if isinstance(thing, Stroke):
        canvas.setLineWidth(thing.style.width * K)
        canvas.setDash([length * K for length in thing.style.dash])
        canvas.setStrokeGray(thing.style.grey)
        canvas.drawPath(path, stroke=1, fill=0)
    else:
        canvas.setFillGray(thing.grey)
        canvas.drawPath(path, stroke=0, fill=1)
    canvas.restoreState()


def _trace(path: PDFPathObject, outline: Outline) -> None:
    x, y = outline.edges[0].start
    path.moveTo(x * K, y * K)
    for edge in outline.edges:
        if isinstance(edge, Line):
            path.lineTo(edge.end[0] * K, edge.end[1] * K)
        else:
            for one, two, end in beziers(edge):
                path.curveTo(one[0] * K, one[1] * K, two[0] * K, two[1] * K, end[0] * K, end[1] * K)
    if outline.closed:
        path.close()


def _best(pack: Pack) -> tuple[float, float]:
    """Return the least seconds of the processor for the pack and for the yardstick, taken in turns."""
    ours, yardstick = [], []
    for _ in range(ROUNDS):
        begin = process_time()
        write_pdf(pack)
        middle = process_time()
        bare(pack)
        ours.append(middle - begin)
        yardstick.append(process_time() - middle)
    return min(ours), min(yardstick)


def main() -> None:
    """Print for each design seconds and ratio."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.writing", description=main.__doc__)
    parser.add_argument("designs", nargs="*", type=Path, default=sorted(Path("designs").iterdir()))
    parser.add_argument("--paper", default="a4")
    given = parser.parse_args()
    print("design          pages  written  reportlab  ratio")
    for folder in given.designs:
        (pack,), _ = compose_packs(work(read_brief(folder)), (given.paper,))
        ours, yardstick = _best(pack)
        print(
            f"{folder.name:15} {len(pack.pages):5} {ours:7.3f} s {yardstick:8.3f} s {ours / yardstick:6.2f}", flush=True
        )


if __name__ == "__main__":
    main()
