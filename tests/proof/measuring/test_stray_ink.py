"""What may stand inside an outline, form by form, and what looks like it and may not."""

from dataclasses import replace
from typing import Any

import pytest

from publisher.basics import (
    Box,
    Carried,
    LayoutPromise,
    LengthPromise,
    MeasurePromise,
    OutlinePromise,
    PieceLine,
    PlacePromise,
    Pose,
    PrintPromise,
    Promises,
    SeamPromise,
    TextPromise,
    WordPromise,
)
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.stray_ink import InsideOutlines
from publisher.proof.reading import TextLine, read_file

PT = 72 / 25.4
RING = ((0.0, 0.0), (80.0, 0.0), (80.0, 60.0), (0.0, 60.0))
HOLE = ((60.0, 10.0), (60.0, 20.0), (75.0, 20.0), (75.0, 10.0))
POSE = Pose(20.0, 20.0)  # what stands at 20, 20 on the page is the piece's own corner
FOLD = ((5.0, 40.0), (55.0, 40.0))
STRIP = ((0.0, 50.0), (80.0, 50.0), (80.0, 60.0), (0.0, 60.0))
PIECE = PrintPromise(
    "wall", "A", "foam", 5.0, (RING, HOLE), (WordPromise("a", (40.0, 55.0), "letter"),), ("front edge 2",),
    lines=(PieceLine("fold", FOLD),), strips=(STRIP,),
)  # fmt: skip
OUTLINE = OutlinePromise(1, "wall", "A", 1, POSE, (RING, HOLE))
LENGTH = LengthPromise(1, (30.0, 30.0), (70.0, 30.0), 40.0, "dimension", "40.0 mm (1.57 in)")
SEAM = SeamPromise("wall", 1, "A1-2·a", (1, 2), ((90.0, 70.0), (10.0, 70.0)), 2.5)
LAYOUT = LayoutPromise(
    "layout:1", "foam", "A3", 420.0, 297.0, 1, 1, 1,
    (PlacePromise("wall", "A", 1, (RING,), measures=(MeasurePromise((9.0, 9.0), (0.0, 0.0)), MeasurePromise((80.0, 70.0), (80.0, 60.0)))),),
)  # fmt: skip
PROMISES = replace(
    Promises("", "", (), (LENGTH,), (OUTLINE,), (SEAM,), (TextPromise(1, "Nested templates: A and B"),), ()),
    prints=(PIECE,),
    layouts=(LAYOUT,),
    carried=(Carried("side:wall", 1, Box(40.0, 62.0, 60.0, 75.0), copy=1),),
)


def words(text: str, x: float, y: float) -> TextLine:
    return TextLine(text, x, y, x + 1.2 * len(text), y, 2.4)


def stray(kit: Any, *content: str, lines: tuple[TextLine, ...] = ()) -> list[str]:
    drawn = f"{PT:.6f} 0 0 {PT:.6f} 0 0 cm 0.18 w {' '.join(content)}"
    page = read_file(kit.raw_pdf(drawn.encode()), "test.pdf").pages[0]
    return [one.what for one in InsideOutlines(PROMISES, page, (OUTLINE,), lines).stray(Ink(page, ()))]


@pytest.mark.parametrize(
    ("content", "lines"),
    [
        ("0.5 w 20 20 80 60 re 80 30 15 10 re S", ()),  # its outline and its opening
        ("25 60 m 75 60 l S", ()),  # its fold
        ("30 30 m 70 30 l S 30 30 m 32 30.6 l 32 29.4 l f", ()),  # a length and an arrow head
        ("82 32 m 88 38 l S 22 72 m 28 78 l S", ()),  # hatching of an opening, and of foam that goes
        ("45 65 m 55 70 l S 0.5 g 45 65 2 2 re f", (words("any words", 46.0, 70.0),)),  # in the box of its label
        ("0.35 w 25 25 8 9 re S", (words("A", 28.0, 28.0),)),  # a tag round its letter
        ("0.35 w 30 62 m 30 67 l S 30 67 m 29 64 l 31 64 l h f", (words("top", 32.0, 64.0),)),
        ("88 70 m 92 70 l S 90 68 m 90 72 l S [1.2 1.2] 0 d 90 22 m 90 67 l S", (words("trim line", 91.0, 40.0),)),
        ("87 68.5 m 83 66 l S", (words("A1-2·a", 76.0, 64.5),)),  # a line from a match mark to its name
        ("0.93 g 90 20 10 60 re f", (words("glue area: page 3 lies on it", 50.0, 50.0),)),
        ("27 27 m 21 21 l S", (words("●", 27.4, 27.0),)),  # from a point of a layout to its corner
        ("", (words("front edge 2", 30.0, 50.0), words("a", 60.0, 75.0), words("bevel a", 60.0, 70.0))),
        ("", (words("Nested templates: A", 30.0, 50.0), words("40.0 mm (1.57 in)", 40.0, 32.0))),
        ("19 20 m 20.3 40 l S 19 25 m 15 25 l S", ()),  # less than half a millimetre inside
        ("150 150 m 180 160 l S", (words("outside", 150.0, 100.0),)),
    ],
)
def test_what_was_promised_and_furniture_in_its_place_may_stand_there(
    kit: Any, content: str, lines: tuple[TextLine, ...]
) -> None:
    assert stray(kit, content, lines=lines) == []


@pytest.mark.parametrize(
    ("content", "lines"),
    [
        ("25 60.2 m 75 60.2 l S", ()),  # beside the fold
        ("30 30 m 75 30 l S", ()),  # longer than its length
        ("40 45 m 42 45.6 l 42 44.4 l f", ()),  # an arrow head at the end of nothing
        ("25 60 m 27 60.6 l 27 59.4 l f", ()),  # at the end of a fold
        ("82 32 m 97 44 l S", ()),  # hatching over the rim
        ("0.35 w 82 32 m 88 38 l S", ()),  # too heavy for hatching
        ("45 65 m 65 70 l S", ()),  # out of the label's box
        ("0.35 w 25 25 8 9 re S", (words("B", 28.0, 28.0),)),  # a tag round no letter of a part here
        ("30 62 m 30 67 l S", ()),  # an arrow without its word
        ("90 22 m 90 67 l S", ()),  # a trim line that is none
        ("87 68.5 m 83 66 l S", (words("A1-2·b", 76.0, 64.5),)),
        ("0.93 g 91 20 10 60 re f", ()),  # a ground beside the seam
        ("27 27 m 40 40 l S", (words("●", 27.4, 27.0),)),  # to no corner
        ("1 g 30 30 20 20 re f", ()),
        ("0.9 G 30 30 m 50 50 l S", ()),
        ("[0.3 3] 0 d 30 45 m 50 45 l S", ()),
        ("", (words("front edge 3", 30.0, 50.0),)),
        ("", (words("b", 60.0, 75.0),)),
        ("", (words("41.0 mm", 40.0, 32.0),)),
    ],
)
def test_what_only_looks_like_it_is_stray(kit: Any, content: str, lines: tuple[TextLine, ...]) -> None:
    assert stray(kit, content, lines=lines)
