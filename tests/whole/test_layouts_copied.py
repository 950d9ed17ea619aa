"""Layouts copied by a stranger: the sheet, its pieces and their measures are read as words of the finished PDF and laid again."""

import re
from collections import Counter
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

import pypdfium2
import pytest
import shapely

from publisher import api
from publisher.basics import LayoutPromise, Point
from publisher.pages import Words
from publisher.pages.sheet import edition_called, needs_in, paper_for
from publisher.pipeline import Worked, compose_packs
from publisher.press import write_pdf
from tests.random_designs.make import true_design
from tests.random_designs.tool import written
from tests.searches.profile import seeds
from tests.whole.conftest import demo

FIGURE = r"\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?"
PAIR = rf"→({FIGURE})\s([↓↑])({FIGURE})"
PIECE = re.compile(rf"(\d+) (\S+)\s(?:{PAIR}|● {PAIR}\s○ {PAIR})(?!\S)")
CUT = re.compile(rf"cut (\d+)\s(upright|across) at ({FIGURE})(?:,\sfrom\s({FIGURE})\sto\s({FIGURE}))?(?=\s|$)")
CAPTION = re.compile(
    r"^(.+), .*?: (?:sheet (\d+) of (\d+)|(\d+) sheets of (\d+) are laid out like this)\. "
    r"Measured in\s(mm|inches) from the left and the (top|bottom) edge\.",
    re.M,
)
TOUCH = 0.02  # mm by which layouts may reach over each other or the edge
INCH = 25.4


@dataclass(frozen=True)
class Read:
    """A piece as its words tell: number, letter, points in mm from the left and from the other edge."""

    order: int
    letter: str
    points: tuple[Point, ...]


@dataclass(frozen=True)
class Cut:
    """A straight cut as its words tell: number, whether it is upright as shown, where it runs and ends in mm (no ends: to the edges)."""

    number: int
    upright: bool
    at: float
    ends: tuple[float, ...]


@dataclass(frozen=True)
class Sheet:
    """A sheet as its words tell: how many are laid out like it, of how many, whether it is measured from the top, its pieces and cuts."""

    alike: int
    total: int
    from_top: bool
    pieces: tuple[Read, ...]
    cuts: tuple[Cut, ...]


def sheets_of(data: bytes) -> list[Sheet]:
    """Read all sheets of a pack, in order, by nothing but its words."""
    pages = pypdfium2.PdfDocument(data)
    text = "\n".join(pages[n].get_textpage().get_text_range().replace("\r", "") for n in range(len(pages)))
    starts = list(CAPTION.finditer(text))
    ends = [found.start() for found in starts[1:]] + [len(text)]
    sheets: dict[str, Sheet] = {}
    for found, end in zip(starts, ends, strict=True):
        one = _sheet(found, text[found.end() : end])
        if before := sheets.get(found[0]):  # a list that runs on to the next page, under the same words
            one = replace(before, pieces=(*before.pieces, *one.pieces), cuts=(*before.cuts, *one.cuts))
        sheets[found[0]] = one
    return list(sheets.values())


def _sheet(found: re.Match[str], text: str) -> Sheet:
    _, _, total, alike, of, unit, edge = found.groups()
    worth = 1.0 if unit == "mm" else INCH
    pieces = []
    for order, letter, *words in PIECE.findall(text):
        pairs = [words[i : i + 3] for i in (0, 3, 6) if words[i]]
        assert {arrow for _, arrow, _ in pairs} == {"↓" if edge == "top" else "↑"}
        points = tuple((_figure(over) * worth, _figure(along) * worth) for over, _, along in pairs)
        pieces.append(Read(int(order), letter, points))
    cuts = []
    for number, way, at, *ends in CUT.findall(text):
        cuts.append(
            Cut(int(number), way == "upright", _figure(at) * worth, tuple(_figure(e) * worth for e in ends if e))
        )
    return Sheet(int(alike or 1), int(total or of), edge == "top", tuple(pieces), tuple(cuts))


def _figure(words: str) -> float:
    return float(sum(Fraction(word) for word in words.split()))


def insist_that_it_can_be_copied(data: bytes, worked: Worked) -> None:
    """Fail unless the words lay every sheet again: each piece once, none over another or over the edge, no straight cut into one at
    its true size, as many as the list asks."""
    assert worked.needs is not None
    promises, sheets = worked.needs.layouts, sheets_of(data)
    assert len(sheets) == len(promises) > 0
    counts: dict[tuple[str, str], Counter[str]] = {}
    for sheet, promise in zip(sheets, promises, strict=True):
        assert (sheet.alike, sheet.total) == (promise.alike, promise.total)
        assert sorted(piece.order for piece in sheet.pieces) == list(range(1, len(promise.places) + 1))
        laid = [_laid(sheet, piece, promise, worked) for piece in sheet.pieces]
        board = shapely.box(0.0, 0.0, promise.width, promise.height).buffer(TOUCH)
        assert all(board.covers(shape) for shape in laid)
        for number, one in enumerate(laid):
            assert all(one.intersection(other).area <= TOUCH * one.length for other in laid[:number])
        assert sorted(cut.number for cut in sheet.cuts) == list(range(1, len(promise.cuts) + 1))
        for cut in sheet.cuts:
            line = _cut_line(sheet, cut, promise)
            assert not any(line.crosses(shape.buffer(-TOUCH, join_style="mitre")) for shape in laid)
        got = counts.setdefault((promise.board, promise.sheet), Counter())
        for piece in sheet.pieces:
            got[piece.letter] += sheet.alike
    for yielded in worked.needs.yields:
        wanted = {
            row.letter: row.count + row.spare
            for row in worked.needs.cut_list
            if row.board == yielded.board and row.part not in yielded.left_out
        }
        assert counts[yielded.board, yielded.sheet.label] == wanted


def shown_on(paper: str, worked: Worked) -> Worked:
    """Return what was worked out with the sheets alone that a pack for this paper shows."""
    assert worked.design is not None
    assert worked.needs is not None
    edition = edition_called(paper_for(worked.design, paper).edition)
    return replace(worked, needs=needs_in(edition, worked.needs))


def _laid(sheet: Sheet, piece: Read, promise: LayoutPromise, worked: Worked) -> shapely.Polygon:
    """Return a piece where its words put it; which points of it are meant and how it is turned is seen in the picture."""
    place = next(place for place in promise.places if place.order == piece.order)
    assert place.letter == piece.letter
    points = [(along, over) if sheet.from_top else (over, along) for over, along in piece.points]
    outline = next(part.outline for part in worked.pieces if part.id == place.part)
    shape = shapely.Polygon(outline.outer.points, [hole.points for hole in outline.holes])
    own = [measure.own for measure in place.measures]
    turned = shapely.affinity.scale(shape, -1.0, 1.0, origin=(0, 0)) if place.mirrored else shape
    turned = shapely.affinity.rotate(turned, place.turn, origin=(0, 0))
    if len(points) == 1:
        left, low, *_ = turned.bounds
        return shapely.affinity.translate(turned, points[0][0] - left, points[0][1] - low)
    (a, b), (c, d) = (complex(-x if place.mirrored else x, y) for x, y in own), (complex(*p) for p in points)
    by = (d - c) / (b - a)
    by /= abs(by)
    bare = shapely.affinity.scale(shape, -1.0, 1.0, origin=(0, 0)) if place.mirrored else shape
    at = c - a * by
    return shapely.affinity.affine_transform(bare, [by.real, -by.imag, by.imag, by.real, at.real, at.imag])


def _cut_line(sheet: Sheet, cut: Cut, promise: LayoutPromise) -> shapely.LineString:
    """Return a straight cut where its words put it on the board."""
    level = cut.upright == sheet.from_top
    start, end = cut.ends or (0.0, promise.width if level else promise.height)
    return shapely.LineString([(along, cut.at) if level else (cut.at, along) for along in (start, end)])


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("slug", ["bridge", "island", "lock-stair", "quay", "toll-house"])
def test_every_demo_sheet_is_laid_again_from_its_words(slug: str, paper: str, packs: Path) -> None:
    (file,) = (packs / slug).glob(f"{slug}-?.?.?-foam-*-{paper}.pdf")
    insist_that_it_can_be_copied(file.read_bytes(), shown_on(paper, demo(slug)))


@pytest.mark.search
@seeds(2, 60)
def test_random_designs_are_laid_again_from_their_words(seed: int) -> None:
    design = true_design(seed)
    with TemporaryDirectory() as top:
        paper = ("a4", "letter")[seed % 2]
        worked = api.work(api.read(written(Path(top), design.spec, design.files), (), (paper,)))
        (pack,), _ = compose_packs(worked, (paper,))
    insist_that_it_can_be_copied(write_pdf(pack), shown_on(paper, worked))


def test_a_measure_in_another_place_is_found() -> None:
    """The program of this file fails when a piece is said to lie over another."""
    worked = demo("quay")
    (pack,), _ = compose_packs(worked, ("a4",))
    pages = tuple(
        replace(
            page,
            drawn=tuple(
                replace(t, text="→90 ↓3") if isinstance(t, Words) and t.text == "→99 ↓3" else t for t in page.drawn
            ),
        )
        for page in pack.pages
    )
    assert pages != pack.pages
    with pytest.raises(AssertionError):
        insist_that_it_can_be_copied(write_pdf(replace(pack, pages=pages)), worked)
