"""Opens a PDF like a stranger. Any bytes at all may come in: what cannot be read is said in words, never raised."""

import logging
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from io import BytesIO
from math import isfinite
from typing import Any

from publisher.basics import Box
from publisher.proof.reading.actions import catalogue_actions, inner_links, page_extras
from publisher.proof.reading.canvas import Canvas, font_of
from publisher.proof.reading.catalogue import attachments, bookmarks, page_labels, print_wishes
from publisher.proof.reading.fonts import Font
from publisher.proof.reading.layers import Layers
from publisher.proof.reading.model import FileRead, FontRead, Matrix, PageRead
from publisher.proof.reading.objects import (
    MOST_STREAM,
    Spent,
    TooMuch,
    number,
    numbers,
    plain,
    raw,
    stream_bytes,
)
from publisher.proof.reading.structure import tags
from publisher.proof.reading.units import MM_PER_PT
from publisher.proof.reading.walk import Walker

MOST_FILE_BYTES = 120_000_000
MOST_PAGES = 400
OTHER_BOXES = ("/TrimBox", "/BleedBox", "/ArtBox")
MOST_POINTS_ACROSS = 200_000  # pt; ISO 32000-1 annex C allows 14,400 units times UserUnit

ENCRYPTED = "the file is encrypted"
LOCKED = ("DependencyError", "FileNotDecryptedError", "WrongPasswordError")  # what pypdf raises over encryption


class _Remarks(logging.Handler):
    """Keeps pypdf's remarks about damaged files from the user: proof says what matters in its own words."""

    def __init__(self) -> None:
        super().__init__()
        self.two_minds = False

    def emit(self, record: logging.LogRecord) -> None:
        """Note the one remark that matters: a dictionary that gives one key two values, of which readers take either."""
        self.two_minds = self.two_minds or "Multiple definitions" in record.getMessage()


@contextmanager
def quiet() -> Iterator[_Remarks]:
    """Keep pypdf silent and within bounds while it reads."""
    from pypdf import apply_configuration

    log, remarks = logging.getLogger("pypdf"), _Remarks()
    before = (log.propagate, log.level)
    log.propagate = False
    log.setLevel(logging.WARNING)
    log.addHandler(remarks)
    try:
        # no jbig2dec: a picture's bytes must not reach a helper program
        with apply_configuration(zlib_maximum_output_length=MOST_STREAM, jbig2dec_binary=None):
            yield remarks
    finally:
        log.removeHandler(remarks)
        log.propagate, level = before
        log.setLevel(level)


def read_file(data: bytes, name: str) -> FileRead:
    """Return what a PDF shows and asks for. ``trouble`` is set, and there are no pages, when it cannot be read."""
    trouble = _at_first_sight(data)
    if not trouble:
        try:
            with quiet() as remarks:
                file = _read(data, name)
            return replace(file, two_minds=remarks.two_minds)
        except TooMuch as limit:
            trouble = f"it was not read to the end: {limit}"
        except RecursionError:
            trouble = "its objects lead into each other without end"
        except Exception as damage:  # pypdf has many ways to give up on a damaged file
            trouble = _words(damage)
    return FileRead(name, trouble, encrypted=trouble == ENCRYPTED)


def _at_first_sight(data: bytes) -> str:
    if not data:
        return "the file is empty"
    if len(data) > MOST_FILE_BYTES:
        return "the file is larger than 120 MB"
    return "" if b"%PDF-" in data[:1024] else "the file is not a PDF: it does not begin with %PDF"


def _words(trouble: Exception) -> str:
    if type(trouble).__name__ in LOCKED:
        return ENCRYPTED
    if type(trouble).__name__ == "LimitReachedError":
        return "a stream unpacks to more than is reasonable"
    return "the file is damaged or cut short: its objects or pages cannot be found"


def _read(data: bytes, name: str) -> FileRead:
    from pypdf import PdfReader

    reader = PdfReader(BytesIO(data), strict=False)
    if "/Encrypt" in reader.trailer:
        return FileRead(name, ENCRYPTED, encrypted=True)
    catalogue = plain(reader.trailer.get("/Root"))
    if not isinstance(catalogue, dict):
        return FileRead(name, trouble="the file is damaged or cut short: it has no catalogue")
    count = len(reader.pages)
    if count > MOST_PAGES:
        return FileRead(name, trouble=f"the file has {count} pages; proof reads at most {MOST_PAGES}")
    if count == 0:
        return FileRead(name, trouble="the file has no pages")
    layers, spent = Layers(catalogue), Spent()
    numbered = {page.indirect_reference.idnum: n for n, page in enumerate(reader.pages, 1) if page.indirect_reference}
    fonts: dict[Any, Font] = {}
    pages = tuple(_read_page(reader.pages[i], i + 1, layers, spent, fonts, numbered) for i in range(count))
    preferences = plain(catalogue.get("/ViewerPreferences"))
    preferences = preferences if isinstance(preferences, dict) else {}
    info = plain(reader.trailer.get("/Info"))
    pick = plain(preferences.get("/PickTrayByPDFSize"))
    enforced = plain(preferences.get("/Enforce"))
    return FileRead(
        name,
        pages=pages,
        print_scaling=_word(preferences.get("/PrintScaling")),
        enforced=tuple(_word(e) for e in enforced) if isinstance(enforced, list) else (),
        duplex=_word(preferences.get("/Duplex")),
        pick_tray=None if pick is None else str(pick).lower() == "true",
        title=_word(info.get("/Title")) if isinstance(info, dict) else "",
        language=_word(catalogue.get("/Lang")),
        actions=tuple(dict.fromkeys(catalogue_actions(catalogue))),
        wishes=print_wishes(preferences),
        labels=page_labels(catalogue, count),
        bookmarks=bookmarks(catalogue, numbered),
        attachments=attachments(catalogue, spent),
        tags=tags(catalogue, numbered, pages),
        glyphs=tuple(glyph for font in fonts.values() for glyph in font.glyphs()),
    )


def _word(thing: Any) -> str:
    value = plain(thing)
    return "" if value is None else str(value).lstrip("/")


def _box(page: Any, key: str) -> tuple[float, float, float, float] | None:
    """Return a page box in pt with its corners in order, inherited as the page tree says (7.7.3.4); None when not there."""
    box = next((box for value in _inherited(page, key) if len(box := numbers(value)) == 4), None)
    if box is None:
        return None
    (left, right), (bottom, top) = sorted(box[::2]), sorted(box[1::2])
    return left, bottom, right, top


def _inherited(page: Any, key: str) -> Iterator[Any]:
    """Yield what stands under a key of a page and of the nodes of the page tree above it, where there is anything."""
    holder = page
    for _ in range(64):
        if not isinstance(holder, dict):
            return
        value = plain(holder.get(key))
        if value is not None:
            yield value
        holder = plain(holder.get("/Parent"))


def _content(page: Any, spent: Spent) -> bytes:
    """Return a page's content: several streams count as one, parted by a blank (7.8.2)."""
    contents = plain(page.get("/Contents"))
    streams = [plain(c) for c in contents] if isinstance(contents, list) else [contents]
    return b"\n".join(stream_bytes(s, spent) for s in streams if hasattr(s, "get_data"))


def _read_page(
    page: Any, index: int, layers: Layers, spent: Spent, fonts: dict[Any, Font], numbered: dict[int, int]
) -> PageRead:
    unit = number(page.get("/UserUnit"), 1.0)
    scale = unit if 0 < unit < 1e4 else 1.0
    media = _box(page, "/MediaBox") or (0.0, 0.0, 0.0, 0.0)
    crop = _box(page, "/CropBox") or media
    shown = (max(media[0], crop[0]), max(media[1], crop[1]), min(media[2], crop[2]), min(media[3], crop[3]))
    turn = int(number(next(_inherited(page, "/Rotate"), None))) % 360
    base, width, height = _base(shown, turn, MM_PER_PT * scale)
    resources = next(_inherited(page, "/Resources"), None)
    canvas = Canvas(base, Box(0.0, 0.0, width, height), resources, layers, spent, fonts)
    if not all(isfinite(v) and abs(v) < MOST_POINTS_ACROSS for v in media):
        canvas.unread["a page of impossible size"] = None
    else:
        Walker(canvas).run(_content(page, spent))
    links, notes, actions = page_extras(page)
    return PageRead(
        index, width, height, _in_mm(media, scale), _in_mm(crop, scale), turn, unit,
        tuple(canvas.pieces), tuple(canvas.texts), tuple(canvas.images), _fonts(canvas),
        canvas.path_operators, tuple(canvas.hidden_layers), tuple(canvas.unread),
        tuple(links), tuple(dict.fromkeys(notes)), tuple(dict.fromkeys(actions)),
        tuple((key[1:], _in_mm(box, scale)) for key in OTHER_BOXES if (box := _box(page, key)) is not None),
        inner_links(page, numbered, base),
    )  # fmt: skip


def _in_mm(box: tuple[float, float, float, float], scale: float) -> Box:
    k = MM_PER_PT * scale
    return Box(box[0] * k, box[1] * k, box[2] * k, box[3] * k)


def _base(shown: tuple[float, float, float, float], turn: int, k: float) -> tuple[Matrix, float, float]:
    """Return the matrix from user space to mm on the page as shown, and its width and height (/Rotate is clockwise)."""
    left, bottom, right, top = shown
    width, height = max(right - left, 0.0) * k, max(top - bottom, 0.0) * k
    if turn == 90:
        return (0.0, -k, k, 0.0, -bottom * k, right * k), height, width
    if turn == 180:
        return (-k, 0.0, 0.0, -k, right * k, top * k), width, height
    if turn == 270:
        return (0.0, k, -k, 0.0, top * k, -left * k), height, width
    return (k, 0.0, 0.0, k, -left * k, -bottom * k), width, height


def _fonts(canvas: Canvas) -> tuple[FontRead, ...]:
    """Return the fonts that the page's own resources name."""
    named = plain(canvas.resources.get("/Font")) if isinstance(canvas.resources, dict) else None
    if isinstance(named, dict):
        for key in list(named)[:500]:
            font_of(raw(named, key), canvas.fonts, canvas.spent)
    return tuple(FontRead(f.name, f.embedded, f.has_meaning, f.shown, f.kind) for f in canvas.fonts.values())
