"""Every check of the catalogue: silent about the good pack, and finding its own planted fault."""

from collections.abc import Callable
from dataclasses import replace
from functools import reduce
from io import BytesIO
from typing import Any

import pikepdf
import pytest
from fontTools.ttLib import TTFont
from fontTools.ttLib.tables._g_l_y_f import Glyph

from publisher.basics import Box, Carried, DrawingPromise, PaperPromise, Pose, Severity
from publisher.proof import ALONE, OPENING, PROMISED, prove
from publisher.proof.checks import RULES
from publisher.proof.checks.cut_list import pages_said
from publisher.proof.checks.frame import about
from publisher.proof.measuring.case import NUMERAL, Case
from publisher.proof.reading.reader import read_file
from tests.proof.conftest import AT_A, BOARD_SAYS, PRESSED, TIPS_SAY, WHOLE_A, boxes_code

Spoil = Callable[[Any, Any], None]
PT = 72 / 25.4
BAD: list[tuple[str, str, Spoil]] = []


def bad(check: str, name: str) -> Callable[[Spoil], Spoil]:
    """Register a function that spoils the good pack so that exactly this check must notice."""

    def register(spoil: Spoil) -> Spoil:
        BAD.append((check, name, spoil))
        return spoil

    return register


def swap(sheet: int, item: str, make: Callable[[Any], Any]) -> Spoil:
    def spoil(pack: Any, kit: Any) -> None:
        assert item in pack.sheets[sheet].items
        pack.sheets[sheet].items[item] = make(kit)

    return spoil


def drop(sheet: int, item: str) -> Spoil:
    def spoil(pack: Any, _kit: Any) -> None:
        del pack.sheets[sheet].items[item]

    return spoil


def add(sheet: int, make: Callable[[Any], Any]) -> Spoil:
    def spoil(pack: Any, kit: Any) -> None:
        pack.sheets[sheet].items["added"] = make(kit)

    return spoil


def before(sheet: int, code: str, after: str = "") -> Spoil:
    """Put code before everything on a sheet, and code after it."""

    def spoil(pack: Any, kit: Any) -> None:
        items = pack.sheets[sheet].items
        pack.sheets[sheet].items = {"before": kit.literal(code), **items, "after": kit.literal(after)}

    return spoil


def edit(change: Callable[[pikepdf.Pdf], None]) -> Spoil:
    def spoil(pack: Any, _kit: Any) -> None:
        pack.edits.append(change)

    return spoil


def set_page(key: str, value: Any) -> Spoil:
    return edit(lambda pdf: pdf.pages[1].obj.__setitem__(key, value))


def in_a_form(pdf: pikepdf.Pdf) -> None:
    """Move a page's content into a form whose Matrix makes it smaller."""
    page = pdf.pages[1]
    form = pdf.make_stream(page.Contents.read_bytes())
    form.Type, form.Subtype, form.Resources = pikepdf.Name.XObject, pikepdf.Name.Form, page.Resources
    form.BBox = pikepdf.Array([-10, -10, 700, 900])
    form.Matrix = pikepdf.Array([0.97, 0, 0, 0.97, 5, 5])
    page.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary(Inner=form))
    page.Contents = pdf.make_stream(b"/Inner Do")


def outlined(*tree: tuple[str, int, tuple[tuple[str, int], ...]]) -> Spoil:
    """Write other bookmarks: titles with the index of their page and the entries under them."""

    def change(pdf: pikepdf.Pdf) -> None:
        with pdf.open_outline() as outline:
            outline.root.clear()
            for title, page, under in tree:
                outline.root.append(entry := pikepdf.OutlineItem(title, page))
                entry.children.extend(pikepdf.OutlineItem(*below) for below in under)

    return edit(change)


def preferences(**entries: Any) -> Spoil:
    def change(pdf: pikepdf.Pdf) -> None:
        for key, value in entries.items():
            if value is None:
                del pdf.Root.ViewerPreferences[f"/{key}"]
            else:
                pdf.Root.ViewerPreferences[f"/{key}"] = value

    return edit(change)


def layer_off(pdf: pikepdf.Pdf) -> None:
    group = pdf.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.OCG, Name=pikepdf.String("Outlines")))
    pdf.Root.OCProperties = pikepdf.Dictionary(
        OCGs=pikepdf.Array([group]), D=pikepdf.Dictionary(OFF=pikepdf.Array([group]))
    )
    pdf.pages[1].Resources.Properties = pikepdf.Dictionary(Hidden=group)


def hide(pack: Any, kit: Any, item: str) -> None:
    items = pack.sheets[1].items
    inner = items[item]

    def draw(canvas: Any) -> None:
        canvas.addLiteral("/OC /Hidden BDC")
        inner(canvas)
        canvas.addLiteral("EMC")

    items[item] = draw
    pack.edits.append(layer_off)


def annotate(note: dict[str, Any]) -> Spoil:
    return edit(lambda pdf: pdf.pages[1].obj.__setitem__("/Annots", pikepdf.Array([pikepdf.Dictionary(note)])))


def link(action: dict[str, Any], border: int = 0) -> Spoil:
    return annotate(
        {
            "/Type": pikepdf.Name.Annot, "/Subtype": pikepdf.Name.Link, "/Rect": pikepdf.Array([100, 700, 150, 720]),
            "/Border": pikepdf.Array([0, 0, border]), "/A": pikepdf.Dictionary(action),
        }
    )  # fmt: skip


def other_program(pdf: pikepdf.Pdf, change: Callable[[TTFont, list[str]], None]) -> None:
    """Change the embedded program of the words; what the file says of its letters stays."""
    (stream,) = (one for one in pdf.objects if isinstance(one, pikepdf.Stream) and "/Length1" in one)
    with TTFont(BytesIO(stream.read_bytes())) as font, BytesIO() as out:
        names = font.getGlyphOrder()
        change(font, [name for name in names if font["glyf"][name].numberOfContours > 0][1:])
        font.save(out)
        stream.write(out.getvalue())


def exchanged(font: TTFont, letters: list[str]) -> None:
    outlines, (a, b) = font["glyf"], letters[4:6]
    outlines.glyphs[a], outlines.glyphs[b] = outlines.glyphs[b], outlines.glyphs[a]


def blanked(font: TTFont, letters: list[str]) -> None:
    font["glyf"].glyphs[letters[4]] = Glyph()


def wider(pdf: pikepdf.Pdf) -> None:
    (font,) = (
        one for one in pdf.objects if isinstance(one, pikepdf.Dictionary) and "/Widths" in one and "/ToUnicode" in one
    )
    font.Widths = pikepdf.Array([round(float(width)) + 50 for width in font.Widths])


def patterned(pdf: pikepdf.Pdf, grey: int) -> None:
    """Lay a pattern of one grey over words and a part's outline."""
    page = pdf.pages[1]
    tile = pdf.make_stream(f"{grey} g 0 0 9 9 re f".encode())
    entries: dict[str, Any] = {
        "PatternType": 1,
        "PaintType": 1,
        "TilingType": 1,
        "BBox": [0, 0, 9, 9],
        "XStep": 9,
        "YStep": 9,
    }
    for key, value in entries.items():
        tile[f"/{key}"] = value
    tile.Resources = pikepdf.Dictionary()
    page.Resources.Pattern = pikepdf.Dictionary(P=tile)
    page.contents_add(b"q /Pattern cs /P scn 60 500 260 140 re f Q")


def stamped(code: str, box: tuple[int, int, int, int]) -> Spoil:
    """Lay a note's own picture of 100 units a side over a box."""

    def change(pdf: pikepdf.Pdf) -> None:
        form = pdf.make_stream(code.encode())
        form.Type, form.Subtype = pikepdf.Name.XObject, pikepdf.Name.Form
        form.BBox = pikepdf.Array([0, 0, 100, 100])
        note = pikepdf.Dictionary(Subtype=pikepdf.Name.Stamp, F=4, Rect=list(box), AP=pikepdf.Dictionary(N=form))
        pdf.pages[1].obj.Annots.append(pdf.make_indirect(note))

    return edit(change)


def other_pages(pack: Any, count: int) -> None:
    pack.sheets = [pack.sheets[i % 4] for i in range(count)]


NOTCH = ((44.0, 0.0), (44.0, 6.0), (48.0, 6.0), (48.0, 0.0))  # of part A
INNER = ((10.0, 10.0), (10.0, 40.0), (30.0, 40.0), (30.0, 10.0))
SQUARE_2 = Box(150.0, 30.0, 200.0, 80.0)


def part_a(kit: Any, change: Callable[[tuple[Any, ...]], tuple[Any, ...]]) -> Any:
    promise = kit.good().promises.outlines[0]
    return kit.outline(change(promise.rings), promise.pose)


def shifted_tile(pack: Any, kit: Any) -> None:
    promise = pack.promises.outlines[2]
    pose = replace(promise.pose, x=promise.pose.x + 0.2)
    pack.sheets[3].items["outline"] = kit.outline(promise.rings, pose, promise.window)


def moved_mark(pack: Any, kit: Any) -> None:
    x, y = pack.promises.seams[0].at[1]
    pack.sheets[3].items["mark B1-2·a"] = kit.mark(x + 0.2, y)


def repeated_tile(pack: Any, _kit: Any) -> None:
    pack.sheets.append(pack.sheets[3])


def promising(**other: Any) -> Spoil:
    return lambda pack, _: setattr(pack, "promises", replace(pack.promises, **other))


def on_the_other_tile(pack: Any, kit: Any) -> None:
    pack.sheets[3].items["ground"] = pack.sheets[2].items.pop("ground")


def other_way_round(pack: Any, _kit: Any) -> None:
    """The pages of a seam promised in another order: the second tile would lie below."""
    turned = [replace(s, pages=s.pages[::-1], at=s.at[::-1]) for s in pack.promises.seams]
    pack.promises = replace(pack.promises, seams=tuple(turned))


def named(old: str, new: str) -> Spoil:
    """A match mark called so by the pages and by what they promise: only its parts and tiles can say that it is wrong."""

    def spoil(pack: Any, kit: Any) -> None:
        seams = [replace(seam, label=new) if seam.label == old else seam for seam in pack.promises.seams]
        for sheet, at in ((2, 0), (3, 1)):
            x, y = next(seam for seam in pack.promises.seams if seam.label == old).at[at]
            pack.sheets[sheet].items[f"label {old}"] = kit.words(new, x + 4.0, y + 1.0, 3.2)
        pack.promises = replace(pack.promises, seams=tuple(seams))

    return spoil


def untied(pack: Any, _kit: Any) -> None:
    for label in ("B1-2·a", "B1-2·b"):
        del pack.sheets[3].items[f"mark {label}"]


bad("proof/not-readable", "cut short")(lambda pack, _: setattr(pack, "damage", lambda data: data[: len(data) // 3]))
bad("proof/not-readable", "no PDF")(lambda pack, _: setattr(pack, "damage", lambda data: b"<html>" + data[9:]))
bad("proof/encrypted", "with an owner's password")(
    lambda pack, _: pack.save.update(encryption=pikepdf.Encryption(owner="o", user=""))
)
bad("proof/two-minds", "two languages")(
    lambda pack, _: setattr(pack, "damage", lambda data: data.replace(b"/Lang (en)", b"/Lang (en) /Lang (de)", 1))
)
bad("proof/page-box", "crop box smaller")(set_page("/CropBox", pikepdf.Array([10, 10, 500, 800])))
bad("proof/page-box", "media box off the origin")(set_page("/MediaBox", pikepdf.Array([5, 5, 600.2756, 846.8898])))
bad("proof/page-rotated", "a quarter turn")(set_page("/Rotate", 90))
bad("proof/user-unit", "unit doubled")(set_page("/UserUnit", 2))
bad("proof/print-scaling", "not said")(preferences(PrintScaling=None))
bad("proof/print-scaling", "by the program")(preferences(PrintScaling=pikepdf.Name.AppDefault))
bad("proof/print-scaling", "not enforced")(preferences(Enforce=None))
bad("proof/duplex", "both sides")(preferences(Duplex=pikepdf.Name.DuplexFlipLongEdge))
bad("proof/duplex", "not said")(preferences(Duplex=None))
bad("proof/paper-tray", "not said")(preferences(PickTrayByPDFSize=None))
bad("proof/title", "none")(edit(lambda pdf: pdf.docinfo.__delitem__("/Title")))
bad("proof/title", "another")(edit(lambda pdf: pdf.docinfo.__setitem__("/Title", "Toll house")))
bad("proof/language", "none")(edit(lambda pdf: pdf.Root.__delitem__("/Lang")))
bad("proof/letter-shape", "two letters exchanged in the program")(edit(lambda pdf: other_program(pdf, exchanged)))
bad("proof/letter-shape", "a letter left blank")(edit(lambda pdf: other_program(pdf, blanked)))
bad("proof/letter-shape", "letters wider than they are")(edit(wider))
bad("proof/font-not-embedded", "a standard font")(add(1, lambda kit: kit.words("Notes", 100, 100, font="Helvetica")))
bad("proof/letter-missing", "not in the font")(add(1, lambda kit: kit.words("\u4e00 boat", 100, 100)))
bad("proof/text-hidden", "invisible letters")(add(1, lambda kit: kit.words("cut 14", 100, 100, mode=3)))
bad("proof/text-hidden", "white letters")(add(1, lambda kit: kit.words("cut 14", 100, 100, grey=1)))
bad("proof/text-hidden", "under a white area")(add(1, lambda kit: kit.literal("q 1 g 220 600 100 40 re f Q")))
bad("proof/text-hidden", "on a layer that is off")(lambda pack, kit: hide(pack, kit, "count"))
bad("proof/text-too-small", "2 mm")(add(1, lambda kit: kit.words("maker", 100, 100, 2.0)))
bad("proof/line-too-thin", "hairline")(add(1, lambda kit: kit.literal("q 0 w 100 300 m 200 300 l S Q")))
bad("proof/line-too-thin", "0.1 mm")(add(1, lambda kit: kit.line((100, 100), (120, 100), 0.1)))
bad("proof/line-too-pale", "white")(add(1, lambda kit: kit.stroke(kit.ring_code(((90, 90), (99, 90))), 0.5, grey=1)))
bad("proof/picture-too-coarse", "100 dots")(swap(1, "picture", lambda kit: kit.picture(Box(20, 100, 50, 130), 118)))
bad("proof/too-many-lines", "5000 operators")(
    add(1, lambda kit: kit.literal("q 1 w " + "300 300 m 310 300 l " * 2500 + "S Q"))
)
bad("proof/layer-off", "outlines off")(lambda pack, kit: hide(pack, kit, "outline"))
bad("proof/action", "a script when opened")(
    edit(
        lambda pdf: pdf.Root.__setitem__(
            "/OpenAction", pikepdf.Dictionary(S=pikepdf.Name.JavaScript, JS=pikepdf.String("x"))
        )
    )
)
bad("proof/action", "starts a program")(link({"/S": pikepdf.Name.Launch, "/F": pikepdf.String("a")}))
bad("proof/link-out", "an address")(link({"/S": pikepdf.Name.URI, "/URI": pikepdf.String("https://example.org")}))
bad("proof/note-over-page", "a stamp")(
    annotate({"/Subtype": pikepdf.Name.Stamp, "/Rect": pikepdf.Array([9, 9, 90, 90])})
)
bad("proof/note-over-page", "a framed link")(link({"/S": pikepdf.Name.GoTo}, border=1))
bad("proof/not-followed", "a shading")(add(1, lambda kit: kit.literal("/None sh")))
bad("proof/page-count", "one page less")(lambda pack, _: other_pages(pack, 3))
bad("proof/page-count", "one page more")(lambda pack, _: other_pages(pack, 5))
bad("proof/paper", "another paper")(promising(paper=PaperPromise("a5")))
bad("proof/paper", "a paper of the designer’s that is wider")(promising(paper=PaperPromise("own", 220.0, 297.0)))
bad("proof/paper", "wider margins of the designer’s")(
    promising(paper=PaperPromise("a4", 297.0, 210.0, (13.0, 5.0, 5.0, 5.0)))
)
bad("proof/paper", "a paper that nobody knows")(promising(paper=PaperPromise("b9")))
bad("proof/paper", "templates of a plan on everyday sheets")(promising(paper=PaperPromise("a1")))
bad("proof/paper", "not named on its page")(drop(1, "paper"))
bad("proof/paper", "printed on into its margins")(
    lambda pack, _: setattr(
        pack,
        "promises",
        replace(pack.promises, pages=tuple(replace(p, limit=p.limit.grown(1.0)) for p in pack.promises.pages)),
    )
)
bad("proof/page-size", "0.5 mm")(lambda pack, _: setattr(pack.sheets[1], "width", 210.5))
bad("proof/ink-outside-limit", "a line in the margin")(add(1, lambda kit: kit.line((2, 100), (3, 100))))
bad("proof/ink-outside-limit", "half a line's width")(add(1, lambda kit: kit.line((20, 12.75), (40, 12.75), 0.5)))
bad("proof/ink-in-margin-by-pixels", "words in the margin")(add(1, lambda kit: kit.words("draft", 100, 288)))
bad("proof/corner-mark", "all missing")(drop(1, "corners"))
bad("proof/corner-mark", "one covered")(add(1, lambda kit: kit.literal("q 1 g 0 0 60 60 re f Q")))
bad("proof/calibration", "0.05 mm in one axis")(
    swap(1, "square", lambda kit: kit.stroke(kit.box_code(Box(150, 30, 200.05, 80))))
)
bad("proof/calibration", "scaled by a hidden matrix")(before(1, "q 0.98 0 0 0.98 6 8 cm", "Q"))
bad("proof/calibration", "scaled by a form")(edit(in_a_form))
bad("proof/calibration", "not drawn")(drop(1, "square"))
bad("proof/ruler", "one wrong tick")(swap(0, "tick 37", lambda kit: kit.line((57.1, 30), (57.1, 32), 0.18)))
bad("proof/ruler", "one tick missing")(drop(0, "tick 44"))
bad("proof/ruler", "base line short")(swap(0, "ruler", lambda kit: kit.line((20, 30), (79.9, 30))))
bad("proof/length", "card too wide")(swap(0, "card", lambda kit: kit.stroke(kit.box_code(Box(80, 70, 165.8, 123.98)))))
bad("proof/scale", "the bar over a gauge ends where no board is taken")(
    swap(0, "bar", lambda kit: kit.line((30.0, 149.0), (85.0, 149.0), 0.5))
)
bad("proof/scale", "the arrow over a gauge points at no board")(
    add(0, lambda kit: kit.literal(f"q 0 g {kit.ring_code(((70.0, 149.0), (71.0, 151.0), (69.0, 151.0)))} f Q"))
)


def other_ticks(change: Callable[[Any], Any]) -> Spoil:
    """Draw and promise the ticks alike, but otherwise."""

    def spoil(pack: Any, kit: Any) -> None:
        items = {name: draw for name, draw in pack.sheets[0].items.items() if not name.startswith("tick")}
        lengths = [change(one) if one.purpose == "tick" else one for one in pack.promises.lengths]
        lengths = [one for one in lengths if one is not None]
        for number, one in enumerate(lengths):
            if one.purpose == "tick":
                items[f"tick {number}"] = kit.line(one.start, one.end, 0.18)
                if one.label:
                    items[f"tick label {number}"] = kit.words(one.label, one.start[0] - 2.0, 35.5, 2.4)
        pack.sheets[0].items, pack.promises = items, replace(pack.promises, lengths=tuple(lengths))

    return spoil


def stretched(one: Any) -> Any:
    shift = (one.start[0] - 20.0) * (8.0 / 9.0 - 1.0)
    return replace(one, start=(one.start[0] + shift, one.start[1]), end=(one.end[0] + shift, one.end[1]))


bad("proof/scale", "ticks of no known step")(other_ticks(stretched))
bad("proof/scale", "a tick left out")(other_ticks(lambda one: None if abs(one.start[0] - 43.0) < 0.1 else one))
bad("proof/scale", "a number that counts otherwise")(
    other_ticks(lambda one: replace(one, label="60") if one.label == "50" else one)
)
bad("proof/scale", "a tick of other parts")(
    other_ticks(lambda one: replace(one, end=(one.end[0], one.end[1] + 0.6)) if abs(one.start[0] - 43.0) < 0.1 else one)
)
bad("proof/scale", "shorter ticks at tens")(
    other_ticks(lambda one: replace(one, end=(one.end[0], one.start[1] + 0.5)) if one.label else one)
)
bad("proof/scale", "a gap that goes on")(add(0, lambda kit: kit.line((30.0, 146.0), (135.0, 148.1), 0.35)))
bad("proof/tick-boxes", "one box too few")(swap(1, "boxes", lambda kit: kit.stroke(boxes_code(14))))
bad("proof/tick-boxes", "a box for each, as if it stood for several")(
    add(1, lambda kit: kit.words("one box for every 1", 140.0, 241.0, 3.0))
)
bad("proof/tick-boxes", "a pencil line that nobody draws")(
    add(1, lambda kit: kit.words("cut on the pencil line", 140.0, 241.0, 3.0))
)


@bad("proof/tick-boxes", "a template that does not say so")
def traced(pack: Any, _kit: Any) -> None:
    piece, *others = pack.promises.prints
    pack.promises = replace(pack.promises, prints=(replace(piece, traced=True), *others))


bad("proof/length", "gauge too short")(swap(0, "gauge", lambda kit: kit.line((30, 140), (30, 145.9))))
bad("proof/label", "another number")(swap(1, "square label", lambda kit: kit.words("51 mm", 155, 40)))
bad("proof/label", "no number at a tick")(drop(0, "tick label 50"))
bad("proof/words-on-measure", "words over the side of a square")(
    add(1, lambda kit: kit.words("leave the foam whole", 140, 60))
)
bad("proof/words-on-measure", "a table in a ruler")(add(0, lambda kit: kit.words("the paper slipped", 60, 29)))
bad("proof/saying-of-others", "a remedy for slots that no piece has")(
    add(0, lambda kit: kit.words("You did not cut on the pencil line", 30.0, 252.0, 3.0))
)
bad("proof/words-clear", "a line through a count")(add(1, lambda kit: kit.line((76.0, 216.0), (84.0, 216.0))))
bad("proof/words-clear", "a dark area over half of a word")(
    add(1, lambda kit: kit.literal(f"q 0 g {80 * PT} {216 * PT} {4 * PT} {3 * PT} re f Q"))
)
bad("proof/words-clear", "another word over it")(add(1, lambda kit: kit.words("leave 1", 83.0, 216.0)))
bad("proof/calibration-by-pixels", "0.2 mm")(
    swap(1, "square", lambda kit: kit.stroke(kit.box_code(Box(150, 30, 200, 80.2))))
)
bad("proof/ink-unseen", "a line and words under a white pattern")(edit(lambda pdf: patterned(pdf, 1)))
bad("proof/ink-unseen", "words under a note")(stamped("1 g 0 0 100 100 re f", (220, 600, 320, 640)))
bad("proof/ink-stray", "a dark pattern")(edit(lambda pdf: patterned(pdf, 0)))
bad("proof/ink-stray", "a line of a note")(stamped("10 10 m 90 90 l S", (300, 300, 400, 400)))
bad("proof/readers-disagree", "an area of the square's shape over it")(
    add(1, lambda kit: kit.literal(edge_fill(200.3)))
)
bad("proof/outline", "off by 0.1 mm")(
    swap(1, "outline", lambda kit: part_a(kit, lambda rings: tuple(tuple((x + 0.1, y) for x, y in r) for r in rings)))
)
bad("proof/outline", "a slot 0.09 mm narrower")(
    swap(1, "outline", lambda kit: part_a(
        kit, lambda rings: (tuple((x + 0.045 * ((x, y) in NOTCH[:2]) - 0.045 * ((x, y) in NOTCH[2:4]), y) for x, y in rings[0]), *rings[1:])
    ))
)  # fmt: skip
bad("proof/outline", "a slot 0.03 mm narrower")(
    swap(1, "outline", lambda kit: part_a(
        kit, lambda rings: (tuple((x + 0.015 * ((x, y) in NOTCH[:2]) - 0.015 * ((x, y) in NOTCH[2:4]), y) for x, y in rings[0]), *rings[1:])
    ))
)  # fmt: skip


@bad("proof/outline", "a gap of 0.3 mm")
def gap(pack: Any, kit: Any) -> None:
    outline = pack.promises.outlines[0]
    first, *rings = (outline.pose.apply_all(ring) for ring in outline.rings)
    (ax, ay), (bx, by) = first[-1], first[0]
    far = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
    end = (bx - 0.3 * (bx - ax) / far, by - 0.3 * (by - ay) / far)
    codes = (kit.ring_code((*first, end), False), *map(kit.ring_code, rings))
    pack.sheets[1].items["outline"] = kit.stroke(" ".join(codes), 0.5)


bad("proof/outline", "mirrored")(
    swap(1, "outline", lambda kit: part_a(kit, lambda rings: tuple(tuple((90 - x, y) for x, y in r) for r in rings)))
)
bad("proof/outline", "opening missing")(swap(1, "outline", lambda kit: part_a(kit, lambda rings: rings[:1])))
bad("proof/outline", "notch missing")(
    swap(
        1,
        "outline",
        lambda kit: part_a(kit, lambda rings: (tuple(p for p in rings[0] if not 40 <= p[0] <= 48), rings[1])),
    )
)
bad("proof/outline", "clipped away")(before(1, f"q 0 0 {210 * PT} {200 * PT} re W n", "Q"))
bad("proof/outline", "on a layer that is off")(lambda pack, kit: hide(pack, kit, "outline"))
bad("proof/outline", "a second one 0.3 mm beside it")(
    add(1, lambda kit: part_a(kit, lambda rings: (tuple((x + 0.3, y) for x, y in rings[0]),)))
)
bad("proof/outline-twice", "drawn twice")(add(1, lambda kit: part_a(kit, lambda rings: rings)))
bad("proof/match-mark", "off by 0.2 mm")(moved_mark)
bad("proof/compass", "pencil 0.1 mm off")(swap(1, "pencil", lambda kit: kit.circle(105.1, 50.0, 1.25)))
bad("proof/compass", "no circle for the pencil")(drop(1, "pencil"))
bad("proof/compass", "no cross for the pin")(drop(1, "pin"))
bad("proof/compass", "another radius than the part's")(
    lambda pack, _: setattr(
        pack,
        "promises",
        replace(pack.promises, rows=(replace(pack.promises.rows[0], width=92.0), *pack.promises.rows[1:])),
    )
)


def board_said(*changes: tuple[str, str]) -> Spoil:
    def spoil(pack: Any, kit: Any) -> None:
        for n, said in enumerate(
            reduce(lambda lines, change: [line.replace(*change) for line in lines], changes, [*BOARD_SAYS])
        ):
            pack.sheets[1].items[f"board {n}"] = kit.words(said, 20.0, 34.0 - 3.2 * n, 2.3)

    return spoil


bad("proof/board-said", "other faces")(
    board_said(("Bare foam board, no paper on its faces", "Foam board with paper on both faces"))
)
bad("proof/board-said", "asked for in shops as board with other faces")(board_said(("(extruded foam)", "(foam board)")))
bad("proof/board-said", "another thickness")(board_said(("measured 5.00 mm (0.197 in)", "measured 4.70 mm (0.185 in)")))
bad("proof/board-said", "sold under another name")(board_said(("sold as 5 mm, ", "sold as 6 mm, ")))
bad("proof/board-said", "sold under no name")(board_said(("sold as 5 mm, ", "")))
bad("proof/board-said", "other boards will do")(board_said(("from 4.7 to 5.3 mm (0.186", "from 4.7 to 5.0 mm (0.186")))
bad("proof/board-said", "any board will do")(board_said(("Takes board from 4.7 to 5.3 mm (0.186 to 0.208 in).", "")))
bad("proof/board-said", "no card for what is traced")(
    lambda pack, _: setattr(
        pack,
        "promises",
        replace(pack.promises, prints=(replace(pack.promises.prints[0], traced=True), *pack.promises.prints[1:])),
    )
)
bad("proof/arrow", "its head turned back")(
    swap(1, "head", lambda kit: kit.head(((24.0, 45.0), (27.0, 46.0), (27.0, 44.0))))
)
bad("proof/arrow", "its head at its foot")(
    swap(1, "head", lambda kit: kit.head(((12.0, 45.0), (15.0, 46.0), (15.0, 44.0))))
)
bad("proof/arrow", "without its head")(drop(1, "head"))
bad("proof/arrow", "to the bottom of what stands")(
    swap(1, "up", lambda kit: kit.head(((5.0, 9.0), (6.0, 12.0), (4.0, 12.0))))
)
bad("proof/seam-words", "glue area and trim line exchanged")(
    swap(2, "seam says", lambda kit: kit.words("trim line: cut, then lay over page 4", 60.0, 112.0, 3.0))
)
bad("proof/saying", "how to print")(drop(0, "says print at 100 %"))
bad("proof/saying", "what a small reading means")(drop(0, "says smaller then"))
for name in ("taped", "room", "without template", "list"):
    bad("proof/saying", f"the step to {name}")(drop(3, f"says step {name}"))
bad("proof/saying", "half of a sentence")(drop(3, "says step tape on"))


def of_kind(kind: str) -> Spoil:
    def spoil(pack: Any, _kit: Any) -> None:
        first, *others = pack.promises.pages
        pack.promises = replace(pack.promises, pages=(replace(first, kind=kind), *others))

    return spoil


bad("proof/saying", "a page of a kind that is none")(of_kind("print_cheik"))
bad("proof/saying", "a whole pack without what is to be read before cutting")(of_kind("cover"))
bad("proof/saying", "on one page of many")(drop(2, "says print so"))
bad("proof/saying", "limits of another design")(
    swap(
        0,
        "says square limits",
        lambda kit: kit.words("Both must lie between 99 and 101 mm (3.9 and 3.98 in).", 84.0, 66.5, 2.3),
    )
)
bad("proof/glue-ground", "left out")(drop(2, "ground"))
bad("proof/glue-ground", "on the tile that lies over it")(on_the_other_tile)
bad("proof/glue-ground", "too narrow")(swap(2, "ground", lambda kit: kit.ground(Box(178.0, 40.0, 200.0, 240.0))))
bad("proof/glue-ground", "one more")(add(3, lambda kit: kit.ground(Box(10.0, 40.0, 25.0, 240.0))))
bad("proof/glue-ground", "under the tile that comes second")(other_way_round)
bad("proof/mark-name", "of other tiles")(named("B1-2·a", "B1-3·a"))
bad("proof/mark-name", "of another part")(named("B1-2·a", "A1-2·a"))
bad("proof/mark-name", "the same name twice")(named("B1-2·b", "B1-2·a"))
bad("proof/mark-name", "letters left out")(named("B1-2·b", "B1-2·c"))
bad("proof/mark-name", "tiles in no order")(named("B1-2·a", "B2-1·a"))
bad("proof/mark-name", "nearer to another mark")(
    swap(3, "label B1-2·b", lambda kit: kit.words("B1-2·b", 29.0, 127.0, 3.2))
)
bad("proof/seam-words", "another page")(
    swap(3, "seam says", lambda kit: kit.words("trim line: cut, then lay over page 2", 60.0, 181.0, 3.0))
)
bad("proof/seam-words", "on the other side of the marks")(
    swap(2, "seam says", lambda kit: kit.words("glue area: page 4 lies on it", 60.0, 150.0, 3.0))
)
bad("proof/strip-ink", "a line across")(add(1, lambda kit: kit.line((70.0, 53.0), (90.0, 57.0), 0.18)))
bad("proof/strip-ink", "a pale line")(
    add(1, lambda kit: kit.stroke(kit.ring_code(((70.0, 54.0), (90.0, 56.0)), False), 0.2, "", 0.9))
)
bad("proof/strip-ink", "another hole")(add(1, lambda kit: kit.circle(85.0, 50.0, 1.25)))
bad("proof/strip-ink", "an area")(add(1, lambda kit: kit.literal(f"q 0.5 g {70 * PT} {54 * PT} 4 4 re f Q")))
bad("proof/strip-ink", "a picture")(add(1, lambda kit: kit.picture(Box(70.0, 54.0, 74.0, 57.0), 40)))
bad("proof/strip-ink", "a word")(add(1, lambda kit: kit.words("here", 80.0, 54.0, 2.3)))
bad("proof/strip-ink", "another count")(
    swap(1, "strip name", lambda kit: kit.words("A Step, cut 15 + 1 spare: compass strip", 53.0, 61.0, 2.3))
)
bad("proof/strip-ink", "without how it is used")(drop(1, "strip how"))
bad("proof/match-mark", "missing")(drop(2, "mark B1-2·b"))
bad("proof/match-mark", "without its label")(drop(3, "label B1-2·a"))
bad("proof/tiles", "tile shifted by 0.2 mm")(shifted_tile)
bad("proof/tiles", "a mark shifted by 0.2 mm")(moved_mark)
bad("proof/tiles", "tile missing")(lambda pack, _: other_pages(pack, 3))
bad("proof/tiles", "tile repeated")(repeated_tile)
bad("proof/tiles", "no marks")(untied)
bad("proof/words", "wrong count")(swap(1, "count", lambda kit: kit.words("cut 15", 80, 215)))
bad("proof/words", "longer count")(swap(1, "count", lambda kit: kit.words("cut 140", 80, 215)))
bad("proof/words", "wrong letter")(swap(1, "letter", lambda kit: kit.words("C", 70, 215, 12)))
bad("proof/words", "elsewhere")(swap(1, "letter", lambda kit: kit.words("A", 150, 100, 12)))
bad("proof/words-outside", "beside the part")(swap(1, "count", lambda kit: kit.words("cut 14", 160, 120)))
bad("proof/words-outside", "over the outline")(swap(1, "letter", lambda kit: kit.words("A", 18, 215, 12)))
bad("proof/words", "under a white area")(add(1, lambda kit: kit.literal("q 1 g 180 600 100 60 re f Q")))
bad("proof/page-number", "wrong total")(swap(1, "number", lambda kit: kit.words("page 2 of 14", 150, 16)))
bad("proof/page-code", "not drawn")(drop(1, "code"))
bad("proof/page-code", "a black square")(
    swap(1, "code", lambda kit: kit.literal(f"q 0 g {180 * PT} {60 * PT} {14.5 * PT} {14.5 * PT} re f Q"))
)

AT = (88 * PT, 186 * PT)  # near the middle of part A's lower edge: pt on page 2
UNDER = f"{AT[0]} {AT[1]}"


def resource(code: str, kind: str, name: str, make: Callable[[pikepdf.Pdf], Any]) -> Spoil:
    """Add code to page 2 that uses a resource made with pikepdf."""

    def change(pdf: pikepdf.Pdf) -> None:
        resources = pdf.pages[1].Resources
        if kind not in resources:
            resources[kind] = pikepdf.Dictionary()
        resources[kind][name] = make(pdf)

    def spoil(pack: Any, kit: Any) -> None:
        pack.sheets[1].items["added"] = kit.literal(code)
        pack.edits.append(change)

    return spoil


def white_shading(_: pikepdf.Pdf) -> Any:
    function = pikepdf.Dictionary(FunctionType=2, Domain=[0, 1], C0=[1], C1=[1], N=1)
    return pikepdf.Dictionary(
        ShadingType=2, ColorSpace=pikepdf.Name.DeviceGray, Coords=[0, 0, 600, 0], Extend=[True, True], Function=function
    )


def ghost_colour(_: pikepdf.Pdf) -> Any:
    function = pikepdf.Dictionary(FunctionType=2, Domain=[0, 1], C0=[1], C1=[1], N=1)
    return pikepdf.Array([pikepdf.Name.Separation, pikepdf.Name.Ghost, pikepdf.Name.DeviceGray, function])


def soft_mask(pdf: pikepdf.Pdf) -> Any:
    group = pdf.make_stream(f"1 g 0 0 600 850 re f 0 g {UNDER} 60 30 re f".encode())
    group.Type, group.Subtype, group.BBox = pikepdf.Name.XObject, pikepdf.Name.Form, pikepdf.Array([0, 0, 600, 850])
    group.Group = pikepdf.Dictionary(S=pikepdf.Name.Transparency, CS=pikepdf.Name.DeviceGray)
    return pikepdf.Dictionary(SMask=pikepdf.Dictionary(S=pikepdf.Name.Luminosity, G=group))


def faded_outline(pack: Any, kit: Any, setting: str, kind: str, name: str, make: Callable[[pikepdf.Pdf], Any]) -> None:
    """Draw the outline of part A after a setting that makes it vanish."""
    items = pack.sheets[1].items
    resource("", kind, name, make)(pack, kit)
    promise = pack.promises.outlines[0]
    code = " ".join(kit.ring_code(promise.pose.apply_all(r)) for r in promise.rings)
    items["outline"] = kit.literal(f"q {0.5 * PT} w {setting} {code} S Q")


def covering_link(pdf: pikepdf.Pdf) -> None:
    look = pdf.make_stream(b"1 g 0 0 60 60 re f")
    look.Type, look.Subtype, look.BBox = pikepdf.Name.XObject, pikepdf.Name.Form, pikepdf.Array([0, 0, 60, 60])
    note = pikepdf.Dictionary(
        Type=pikepdf.Name.Annot, Subtype=pikepdf.Name.Link, Border=[0, 0, 0], F=4, AP=pikepdf.Dictionary(N=look),
        Rect=[AT[0], AT[1], AT[0] + 60, AT[1] + 60], Dest=[pdf.pages[1].obj, pikepdf.Name.Fit],
    )  # fmt: skip
    pdf.pages[1].obj["/Annots"] = pikepdf.Array([pdf.make_indirect(note)])


LOSSES: tuple[tuple[str, Spoil], ...] = (
    ("a white stencil", add(1, lambda kit: kit.literal(
        f"q 1 g 60 0 0 30 {UNDER} cm BI /W 8 /H 1 /IM true /BPC 1 ID \x00 EI Q"))),
    ("a link with a picture", edit(covering_link)),
    ("a colour that prints white", lambda pack, kit: faded_outline(
        pack, kit, "/Ghost CS 1 SCN", "/ColorSpace", "/Ghost", ghost_colour)),
    ("six see-through whites", resource(
        f"q /Half gs 1 g {f'{UNDER} 60 30 re f ' * 6} Q", "/ExtGState", "/Half", lambda _: pikepdf.Dictionary(ca=0.5))),
    ("a grey stroke over it", add(1, lambda kit: kit.literal(
        f"q 0.69 G 30 w {AT[0]} {AT[1] + 15} m {AT[0] + 60} {AT[1] + 15} l S Q"))),
    ("a white shading", resource(
        f"q {UNDER} 60 30 re W n /Pale sh Q", "/Shading", "/Pale", white_shading)),
    ("a soft mask", lambda pack, kit: faded_outline(
        pack, kit, "/Mask gs 0 G", "/ExtGState", "/Mask", soft_mask)),
)  # fmt: skip
for loss, spoil_ in LOSSES:
    bad("proof/outline-by-pixels", loss)(spoil_)
bad("proof/outline-by-pixels", "a black bar over it")(
    add(1, lambda kit: kit.literal(f"q 0 g {AT[0]} {AT[1]} 60 60 re f Q"))
)
bad("proof/not-followed", "a stencil")(LOSSES[0][1])


@bad("proof/not-followed", "a picture whose colour space and bits are exchanged")
def exchanged_in_a_picture(pack: Any, _kit: Any) -> None:
    def exchange(pdf: pikepdf.Pdf) -> None:
        for one in pdf.objects:
            if isinstance(one, pikepdf.Stream) and one.get("/Subtype") == "/Image":
                one.ColorSpace, one.BitsPerComponent = one.BitsPerComponent, one.ColorSpace

    edit(exchange)(pack, _kit)


bad("proof/not-followed", "a recipe of a colour")(LOSSES[2][1])
bad("proof/not-followed", "see-through areas")(LOSSES[3][1])
bad("proof/not-followed", "a soft mask")(LOSSES[6][1])


def inverted(_: pikepdf.Pdf) -> Any:
    function = pikepdf.Dictionary(FunctionType=2, Domain=[0, 1], C0=[1], C1=[0], N=1)
    return pikepdf.Array([pikepdf.Name.Separation, pikepdf.Name.Grey, pikepdf.Name.DeviceGray, function])


def transfer(_: pikepdf.Pdf) -> Any:
    return pikepdf.Dictionary(TR=pikepdf.Dictionary(FunctionType=2, Domain=[0, 1], C0=[1], C1=[1], N=1))


def never_shown(pdf: pikepdf.Pdf) -> Any:
    """A membership that hides what it marks although no layer is off."""
    group = pdf.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.OCG, Name=pikepdf.String("all")))
    pdf.Root.OCProperties = pikepdf.Dictionary(OCGs=[group], D=pikepdf.Dictionary())
    return pikepdf.Dictionary(Type=pikepdf.Name.OCMD, VE=pikepdf.Array([pikepdf.Name.Not, group]))


bad("proof/not-followed", "a transfer function")(resource("/Pale gs", "/ExtGState", "/Pale", transfer))
bad("proof/not-followed", "grey that means another grey")(resource("", "/ColorSpace", "/DefaultGray", inverted))
bad("proof/not-followed", "a layer by an expression")(
    resource("/OC /Never BDC EMC", "/Properties", "/Never", never_shown)
)
bad("proof/not-followed", "curves made of corners")(before(1, "90 i"))
bad("proof/note-over-page", "a link with a picture")(LOSSES[1][1])


def inside_a(points: tuple[tuple[float, float], ...], width: float = 0.5, closed: bool = False) -> Spoil:
    """Draw a line inside part A, given in the part's own coordinates."""
    return add(
        1, lambda kit: kit.stroke(kit.ring_code(kit.good().promises.outlines[0].pose.apply_all(points), closed), width)
    )


def smaller_copy(pack: Any, kit: Any) -> None:
    promise = pack.promises.outlines[0]
    ring = tuple((45 + 0.95 * (x - 45), 30 + 0.95 * (y - 30)) for x, y in promise.rings[0])
    inside_a(ring, 0.5, True)(pack, kit)


def with_width(width: float) -> Spoil:
    def spoil(pack: Any, kit: Any) -> None:
        promise = pack.promises.outlines[0]
        code = " ".join(kit.ring_code(promise.pose.apply_all(r)) for r in promise.rings)
        pack.sheets[1].items["outline"] = kit.stroke(code, width)

    return spoil


bad("proof/line-unpromised", "a slit of 20 mm")(inside_a(((70.0, 0.0), (70.0, 20.0))))
bad("proof/line-unpromised", "a second outline at 95 %")(smaller_copy)
bad("proof/line-unpromised", "as wide as a fold, but unbroken")(inside_a(((40.0, 20.0), (80.0, 20.5)), 0.35))
bad("proof/line-unpromised", "a square")(inside_a(((40.0, 20.0), (50.0, 20.0), (50.0, 30.0), (40.0, 30.0)), 0.49, True))
bad("proof/line-unpromised", "5 mm thick over the outline")(inside_a(((50.0, 0.0), (90.0, 0.0)), 5.0))
bad("proof/line-unpromised", "a chord over a notch")(inside_a(((40.0, 0.0), (48.0, 0.0))))
bad("proof/outline-width", "5 mm thick")(with_width(5.0))
bad("proof/outline-width", "as thin as a line to draw")(with_width(0.25))
ACROSS = ((40.0, 23.0), (80.0, 23.5))
bad("proof/unpromised-ink", "a line")(inside_a(ACROSS, 0.25))
bad("proof/unpromised-ink", "a hairline")(inside_a(ACROSS, 0.02))
bad("proof/unpromised-ink", "a short one")(inside_a(((60.0, 25.0), (61.0, 25.0)), 0.18))
bad("proof/unpromised-ink", "beside a promised line")(inside_a(((50.0, 20.3), (70.0, 20.3)), 0.25))
bad("proof/unpromised-ink", "a dotted line")(
    add(1, lambda kit: kit.stroke(kit.ring_code(AT_A.apply_all(ACROSS), False), 0.25, "0.7 2"))
)
bad("proof/unpromised-ink", "a pale line")(
    add(1, lambda kit: kit.stroke(kit.ring_code(AT_A.apply_all(ACROSS), False), 0.25, "", 0.9))
)
bad("proof/unpromised-ink", "a grey shape")(
    add(1, lambda kit: kit.literal(f"q 0.5 g {kit.ring_code(AT_A.apply_all(((60, 22), (63, 22), (60, 24))))} f Q"))
)
bad("proof/unpromised-ink", "a white patch")(
    add(
        1,
        lambda kit: kit.literal(f"q 1 g {kit.ring_code(AT_A.apply_all(((60, 22), (75, 22), (75, 27), (60, 27))))} f Q"),
    )
)
bad("proof/unpromised-ink", "a word")(add(1, lambda kit: kit.words("glue here", *AT_A.apply((60.0, 23.0)), 2.4)))
bad("proof/unpromised-ink", "a number")(add(1, lambda kit: kit.words("12", *AT_A.apply((60.0, 23.0)), 2.4)))
bad("proof/unpromised-ink", "a picture")(add(1, lambda kit: kit.picture(Box(95, 205, 97, 207), 20)))
bad("proof/unpromised-ink", "in an opening")(inside_a(((12.0, 12.0), (28.0, 14.0)), 0.35))
bad("proof/unpromised-ink", "on a tile")(add(3, lambda kit: kit.line((60.0, 120.0), (100.0, 122.0), 0.18)))
bad("proof/waste-unmarked", "an opening left white")(drop(1, "hatching"))
bad("proof/waste-unmarked", "an opening left white on one of its tiles")(drop(3, "hatching"))
bad("proof/waste-unmarked", "a strip of foam left white")(
    lambda pack, _: setattr(
        pack,
        "promises",
        replace(
            pack.promises,
            prints=(
                replace(pack.promises.prints[0], strips=(((55.0, 2.0), (75.0, 2.0), (75.0, 12.0), (55.0, 12.0)),)),
                *pack.promises.prints[1:],
            ),
        ),
    )
)
bad("proof/lines-left-out", "no folds")(drop(1, "fold lines"))
bad("proof/dark-area", "a black bar over the outline")(
    add(1, lambda kit: kit.literal(f"q 0 g {AT[0]} {AT[1]} 60 60 re f Q"))
)
bad("proof/dark-area", "a picture in the part")(add(1, lambda kit: kit.picture(Box(70, 190, 80, 200), 200)))
bad("proof/mark", "lines to draw missing")(drop(1, "draw lines"))
bad("proof/mark", "a fold moved by 0.3 mm")(
    swap(1, "fold lines", lambda kit: kit.stroke(
        kit.ring_code(kit.good().promises.outlines[0].pose.apply_all(((0.0, 50.3), (80.0, 50.3))), False), 0.35,
        " ".join(str(d * PT) for d in (8.4, 1.05, 0.35, 1.05))))
)  # fmt: skip
bad("proof/mark", "a fold drawn like a line to draw")(
    swap(1, "fold lines", lambda kit: kit.stroke(
        kit.ring_code(kit.good().promises.outlines[0].pose.apply_all(((0.0, 50.0), (80.0, 50.0))), False), 0.35))
)  # fmt: skip
CODE_BOX = Box(180.0, 60.0, 194.5, 74.5)
bad("proof/page-code", "that of another page")(
    swap(1, "code", lambda kit: kit.literal(f"q 0 g {kit.code_modules('pack 1.0.0 a4 3', CODE_BOX)} f* Q"))
)
bad("proof/page-code", "under a picture")(add(1, lambda kit: kit.picture(Box(185, 65, 190, 70), 100)))
bad("proof/page-code", "a line two modules away")(add(1, lambda kit: kit.line((179.0, 50.0), (179.0, 80.0))))
bad("proof/page-code", "words three modules away")(add(1, lambda kit: kit.words("50 mm", 181.0, 75.9, 3.0)))
bad("proof/page-code", "a grey area up to its edge")(
    add(1, lambda kit: kit.literal(f"q 0.9 g {194.5 * PT} {60 * PT} {3 * PT} {14.5 * PT} re f Q"))
)


@bad("proof/link", "to another page")
def elsewhere(pack: Any, kit: Any) -> None:
    pack.edits.append(lambda pdf: pdf.pages[1].obj.Annots.__setitem__(0, kit.link_to(pdf, 3)))


@bad("proof/link", "one too many")
def one_more_link(pack: Any, kit: Any) -> None:
    pack.edits.append(lambda pdf: pdf.pages[2].obj.__setitem__("/Annots", [kit.link_to(pdf, 0)]))


@bad("proof/link", "over other words")
def moved_link(pack: Any, kit: Any) -> None:
    box = Box(20.0, 245.0, 60.0, 252.0)
    pack.edits.append(lambda pdf: pdf.pages[1].obj.Annots.__setitem__(0, kit.link_to(pdf, 2, box)))


bad("proof/link", "missing")(edit(lambda pdf: pdf.pages[1].obj.__delitem__("/Annots")))
bad("proof/link", "to a page that is not there")(
    edit(lambda pdf: pdf.pages[1].obj.Annots[0].__setitem__("/Dest", pikepdf.String("nowhere")))
)


def restructured(change: Callable[[Any], None]) -> Spoil:
    """Change the section of page 2."""
    return edit(lambda pdf: change(pdf.Root.StructTreeRoot.K.K[1]))


bad("proof/structure", "none")(edit(lambda pdf: pdf.Root.__delitem__("/StructTreeRoot")))
bad("proof/structure", "another type")(restructured(lambda page: page.K[0].__setitem__("/S", pikepdf.Name.H1)))
bad("proof/structure", "other words for the figure")(
    restructured(lambda page: page.K[1].__setitem__("/Alt", pikepdf.String("Outline of the deck")))
)
bad("proof/structure", "no words for the figure")(restructured(lambda page: page.K[1].__delitem__("/Alt")))
bad("proof/structure", "in another order")(restructured(lambda page: page.__setitem__("/K", [page.K[1], page.K[0]])))
bad("proof/structure", "one left out")(restructured(lambda page: page.__setitem__("/K", [page.K[0]])))
bad("proof/structure", "a mark of something else")(restructured(lambda page: page.K[0].__setitem__("/K", 1)))
bad("proof/structure", "without the words of a mark")(restructured(lambda page: page.K[0].__setitem__("/K", 7)))
bad("proof/structure", "on another page")(
    edit(lambda pdf: pdf.Root.StructTreeRoot.K.K[1].K[1].__setitem__("/Pg", pdf.pages[2].obj))
)


@bad("proof/untagged", "words in no mark")
def unmarked(pack: Any, kit: Any) -> None:
    def draw(canvas: Any) -> None:
        canvas.addLiteral("EMC")
        kit.words("see below", 30.0, 90.0)(canvas)
        canvas.addLiteral("/Artifact BMC")

    pack.sheets[1].items["added"] = draw


RIGHT = 203.65 - 0.175  # mm: the middle line of the dashes at the right side
bad("proof/fiducial", "a mark at a side missing")(drop(1, "dashes"))
bad("proof/fiducial", "a mark moved by 0.05 mm")(swap(1, "dashes", lambda kit: kit.dashes(RIGHT - 0.05)))
bad("proof/fiducial", "an arm 0.05 mm longer")(swap(1, "corners", lambda kit: kit.corners(6.05)))
bad("proof/fiducial", "covered by white")(
    add(1, lambda kit: kit.literal(f"q 1 g {202 * PT} {148 * PT} {5 * PT} {4 * PT} re f Q"))
)
bad("proof/fiducial", "covered by ink")(add(1, lambda kit: kit.line((RIGHT, 146.0), (RIGHT, 154.0), 0.35)))
bad("proof/fiducial", "drawn twice as wide")(add(1, lambda kit: kit.line((RIGHT, 146.0), (RIGHT, 149.5), 0.7)))
bad("proof/fiducial", "a grey area over it")(
    add(1, lambda kit: kit.literal(f"q 0.9 g {200 * PT} {153 * PT} {3.6 * PT} {4 * PT} re f Q"))
)
bad("proof/fiducial", "words beside it")(add(1, lambda kit: kit.words("side", 196.5, 150.0, 3.5)))
bad("proof/clear-space", "words")(add(0, lambda kit: kit.words("across", 184.0, 200.0)))
bad("proof/clear-space", "a line through it")(add(0, lambda kit: kit.line((178.0, 200.0), (190.0, 200.0))))
bad("proof/clear-space", "grey")(add(0, lambda kit: kit.literal(f"q 0.9 g {181 * PT} {200 * PT} 9 9 re f Q")))
bad("proof/furniture", "no page number")(drop(1, "number"))
bad("proof/furniture", "a page number too low")(swap(1, "number", lambda kit: kit.words("page 2 of 4", 150, 13.5)))
bad("proof/furniture", "a line into the footer")(add(1, lambda kit: kit.line((160, 20), (160, 25))))
for old, new, x in (
    ("14 + 1 spare", "15 + 1 spare", 80.0),
    ("2, 1 mirrored", "2", 80.0),
    ("90.0 × 60.0 mm", "90.0 × 60.1 mm", 110.0),
    ("3.54 × 2.36 in", "3.54 × 2.38 in", 150.0),
    ("foam", "card", 60.0),
    ("Step", "Stop", 24.0),
    ("2", "3", 185.0),
    ("3-4", "3", 185.0),
    ("A", "C", 15.0),
):
    row = 2 if old in {"2, 1 mirrored", "3-4"} else 1

    def retyped(pack: Any, kit: Any, cell: str = f"cell {row} {old}", new: str = new, x: float = x) -> None:
        top = 280.0 - 8.0 * int(cell.split()[1])
        pack.sheets[3].items[cell] = kit.words(new, x, top - 3.5, 3.0)

    bad("proof/cut-list", f"{new} for {old}")(retyped)


@bad("proof/cut-list", "a part on no page")
def unshown(pack: Any, _kit: Any) -> None:
    del pack.sheets[3].items["cell 1 2"]
    kept = tuple(one for one in pack.promises.outlines if one.part != "step")
    pack.promises = replace(pack.promises, outlines=kept)


@pytest.mark.parametrize(
    ("pages", "said"),
    [((7,), "7"), ((3, 4), "3-4"), ((12, 14), "12, 14"), ((3, 4, 5, 8), "3-5, 8"), ((12, 13, 15, 18, 19), "12 … 19")],
)
def test_pages_that_lie_apart_are_no_range(pages: tuple[int, ...], said: str) -> None:
    """As the cut list says them, whose numbers no other check asks for; a range over another part's page is another promise."""
    assert pages_said(pages) == said and NUMERAL.fullmatch(said)


@bad("proof/cut-list", "a range over a page that does not show the part")
def gapped(pack: Any, _kit: Any) -> None:
    row = next(row for row in pack.promises.rows if row.letter == "B")
    last = max(one.page for one in pack.promises.outlines if one.part == row.part)
    moved = tuple(
        replace(one, page=last + 1) if one.part == row.part and one.page == last else one
        for one in pack.promises.outlines
    )
    pack.promises = replace(pack.promises, outlines=moved)


bad("proof/cut-list", "a row without its letter")(drop(3, "cell 1 A"))
bad("proof/cut-list", "no table")(drop(3, "cell 0 Board"))
bad("proof/cut-list", "a part twice")(swap(3, "cell 2 B", lambda kit: kit.words("A", 15.0, 260.5, 3.0)))
bad("proof/print-plan", "a wrong page")(swap(2, "pages 2", lambda kit: kit.words("3-5", 180.0, 258.0, 3.0)))
bad("proof/print-plan", "a task left out")(drop(2, "task 1"))
bad("proof/print-plan", "another task")(swap(2, "task 1", lambda kit: kit.words("Tiles", 110.0, 266.0, 3.0)))

bad("proof/print-list", "a page left out")(
    swap(0, "print list", lambda kit: kit.words("Print list: 1, 3-4", 22.0, 200.0, 3.0))
)
bad("proof/print-list", "a page left out of those to print later")(
    swap(0, "print list", lambda kit: kit.words("Print list: now 1, then 3-4", 22.0, 200.0, 3.0))
)
bad("proof/print-list", "another number of sheets")(
    swap(0, "print list sheets", lambda kit: kit.words("on paper: 5 sheets of paper", 22.0, 195.0, 3.0))
)
bad("proof/print-list", "nothing to be printed before the others")(
    swap(0, "print list", lambda kit: kit.words("Print list: 1-4", 22.0, 200.0, 3.0))
)
bad("proof/print-list", "too many pages before the others")(
    swap(0, "print list", lambda kit: kit.words("Print list: now 1-2, then 3-4", 22.0, 200.0, 3.0))
)
bad("proof/print-list", "no list")(drop(0, "print list"))
bad("proof/key-plan", "another letter")(swap(0, "key 2", lambda kit: kit.words("2: B", 54.0, 185.0, 2.7)))
bad("proof/key-plan", "a letter too many")(swap(0, "key 3", lambda kit: kit.words("3: A, B", 70.0, 185.0, 2.7)))
bad("proof/key-plan", "another page")(swap(0, "key 4", lambda kit: kit.words("3: B", 86.0, 185.0, 2.7)))
bad("proof/key-plan", "a page left out")(drop(0, "key 1"))


def printed_for(page: int, task: str) -> Spoil:
    def spoil(pack: Any, _kit: Any) -> None:
        pages = tuple(replace(p, task=task) if p.page == page else p for p in pack.promises.pages)
        pack.promises = replace(pack.promises, pages=pages)

    return spoil


bad("proof/print-plan", "a page that is printed for another task than the plan says")(printed_for(2, "Tiles of part B"))
bad("proof/print-plan", "a page that no task names")(printed_for(4, ""))
bad("proof/print-plan", "pages of a task apart from each other")(printed_for(4, "Check your printer"))


def carried(key: str, **changes: Any) -> Spoil:
    """Let a page carry a promise otherwise; without changes on no page."""

    def spoil(pack: Any, _kit: Any) -> None:
        kept = [replace(where, **changes) if where.key == key else where for where in pack.promises.carried]
        kept = kept if changes else [where for where in kept if where.key != key]
        pack.promises = replace(pack.promises, carried=tuple(kept))

    return spoil


bad("proof/layout-picture", "a piece 25 mm off on the sheet")(
    swap(2, "piece 2", lambda kit: kit.stroke(kit.ring_code(((32.5, 72.7), (40.5, 72.7), (40.5, 54.7), (32.5, 54.7)))))
)
bad("proof/layout-picture", "two names exchanged")(
    swap(2, "piece 2 name", lambda kit: kit.words("1 A", 33.0, 62.9, 2.4))
)
bad("proof/layout-picture", "two pieces in the wrong order")(
    swap(2, "piece 1 name", lambda kit: kit.words("3 A", 23.0, 67.4, 2.4))
)
bad("proof/layout-picture", "one piece too many")(
    add(2, lambda kit: kit.stroke(kit.ring_code(((22.0, 48.0), (30.0, 48.0), (30.0, 51.0)))))
)
bad("proof/layout-picture", "a straight cut 10 mm off")(
    swap(2, "cut 1", lambda kit: kit.stroke(kit.ring_code(((41.0, 45.0), (41.0, 74.7)), False), 0.5, "4 2"))
)
bad("proof/layout-picture", "no offcut")(drop(2, "left"))
bad("proof/layout-picture", "no picture")(carried("layout:foam:A3:1"))
bad("proof/what-to-buy", "a sheet too few")(swap(1, "way 0", lambda kit: kit.words("or 1 sheet", 20.0, 27.0, 2.4)))
bad("proof/what-to-buy", "another size")(
    swap(1, "way 1", lambda kit: kit.words("A3 (11.7 × 17.5 in)", 60.0, 27.0, 2.4))
)
bad("proof/what-to-buy", "a spare too many")(
    swap(1, "way 2", lambda kit: kit.words("12 or more A, or 4 B", 100.0, 27.0, 2.4))
)
bad("proof/what-to-buy", "more left than there is")(
    swap(1, "way 3", lambda kit: kit.words("215 × 291 mm (8.4 × 11.4 in)", 140.0, 27.0, 2.4))
)
bad("proof/what-to-buy", "feet that are not those of the metres")(
    swap(1, "work 0", lambda kit: kit.words("7.8 m (26.6 ft)", 20.0, 21.0, 2.4))
)
bad("proof/what-to-buy", "holes left out")(swap(1, "work 2", lambda kit: kit.words("none", 88.0, 21.0, 2.4)))
bad("proof/what-to-buy", "too few blades")(swap(1, "work 4", lambda kit: kit.words("1 to 5", 156.0, 21.0, 2.4)))
bad("proof/what-to-buy", "tips last longer than they do")(
    swap(1, "tips", lambda kit: kit.words(TIPS_SAY.replace("7 to 13", "7 to 31"), 20.0, 16.0, 2.3))
)
bad("proof/what-to-buy", "tips of another board")(
    swap(1, "tips", lambda kit: kit.words(TIPS_SAY.partition(" and 1")[0], 20.0, 16.0, 2.3))
)
bad("proof/what-to-buy", "tips that nobody speaks of")(drop(1, "tips"))
bad("proof/what-to-buy", "a way that no page names")(carried("buy:foam:A3"))
LAYOUT_KEY = "layout:foam:A3:1"
bad("proof/layout-measures", "a measure half a millimetre wrong")(
    swap(2, "piece 1 says 0", lambda kit: kit.words("1 A →20.5 ↓20", 20.0, 36.0, 2.4))
)
bad("proof/layout-measures", "measures from the other edges")(
    swap(2, "piece 2 says 0", lambda kit: kit.words("2 B →20 ↓100", 20.0, 32.0, 2.4))
)
bad("proof/layout-measures", "a point of a piece askew left out")(drop(2, "piece 4 says 1"))
bad("proof/layout-measures", "measures of a piece nowhere")(carried(f"{LAYOUT_KEY}:piece:3"))
bad("proof/layout-measures", "measured from the bottom edge")(
    swap(
        2,
        "caption",
        lambda kit: kit.words(
            "foam, A3: sheet 1 of 1. Measured in mm from the left and the bottom edge.", 20.0, 78.0, 3.0
        ),
    )
)
bad("proof/layout-measures", "another sheet")(
    swap(
        2,
        "caption",
        lambda kit: kit.words(
            "foam, A3: sheet 1 of 2. Measured in mm from the left and the top edge.", 20.0, 78.0, 3.0
        ),
    )
)
bad("proof/layout-measures", "cuts in another order")(
    swap(2, "cut 1 says", lambda kit: kit.words("cut 1 across at 115, from 0 to 90", 50.0, 40.0, 2.4))
)
bad("proof/layout-measures", "a cut through all that ends on the way")(
    swap(2, "cut 2 says", lambda kit: kit.words("cut 2 across at 115", 50.0, 36.0, 2.4))
)
bad("proof/layout-measures", "more left than there is")(
    swap(2, "left says", lambda kit: kit.words("224 × 291 mm", 42.0, 60.0, 2.4))
)
bad("proof/layout-cuts", "a cut rounded by a millimetre into a piece")(
    swap(2, "cut 2 says", lambda kit: kit.words("cut 2 across at 109.5, from 0 to 90", 50.0, 36.0, 2.4))
)
bad("proof/layout-cuts", "a piece moved under a cut")(
    swap(2, "piece 2 says 0", lambda kit: kit.words("2 B →120.5 ↓20", 20.0, 32.0, 2.4))
)
bad("proof/layout-cuts", "a cut that runs on into a piece")(
    swap(2, "cut 2 says", lambda kit: kit.words("cut 2 across at 115, from 0 to 120", 50.0, 36.0, 2.4))
)
bad("proof/side-up", "the inside face for the outside")(
    swap(1, "side", lambda kit: kit.words("THIS SIDE UP: the inside face", 120.0, 240.0, 3.0))
)
bad("proof/side-up", "no word against flipping")(drop(1, "flip"))
bad("proof/side-up", "no top")(lambda pack, kit: [drop(1, one)(pack, kit) for one in ("top", "upwards")] and None)
bad("proof/side-up", "a word against flipping what may be flipped")(
    swap(2, "side", lambda kit: kit.words("THIS SIDE UP Do not flip.", 100.0, 132.0, 3.0))
)
bad("proof/side-up", "a side named beside the labels")(
    add(1, lambda kit: kit.words("THIS SIDE UP: the inside face", 120.0, 100.0, 3.0))
)


@bad("proof/side-up", "a side named on what has none")
def sides_of_either(pack: Any, _kit: Any) -> None:
    sides = tuple(replace(side, face="either") if side.part == "deck" else side for side in pack.promises.sides)
    pack.promises = replace(pack.promises, sides=sides)


bad("proof/side-up", "no label carries it")(carried("side:deck"))
bad("proof/sentence", "a digit retyped")(
    swap(3, "say on", lambda kit: kit.words("of 93.2 mm (3.63 in) for about 90 g.", 70.0, 55.0, 3.0))
)
bad("proof/sentence", "a sentence left out")(carried("step:2:say"))


@bad("proof/sentence", "promised and printed alike, and not the fact")
def untrue(pack: Any, _kit: Any) -> None:
    (promise,) = pack.promises.sentences
    numbers = (promise.numbers[0], replace(promise.numbers[1], value=93.3), promise.numbers[2])
    pack.promises = replace(pack.promises, sentences=(replace(promise, numbers=numbers),))


@bad("proof/sentence", "a push that is not the weight of so many grams")
def too_heavy(pack: Any, _kit: Any) -> None:
    (promise,) = pack.promises.sentences
    numbers = (*promise.numbers[:2], replace(promise.numbers[2], value=0.78))
    pack.promises = replace(pack.promises, sentences=(replace(promise, numbers=numbers),))


@bad("proof/sentence", "a push that is said as more than it is")
def rounded_up(pack: Any, _kit: Any) -> None:
    (promise,) = pack.promises.sentences
    numbers = (*promise.numbers[:2], replace(promise.numbers[2], value=0.87))
    pack.promises = replace(pack.promises, sentences=(replace(promise, numbers=numbers),))


@bad("proof/sentence", "inches that are not those of the millimetres beside them")
def two_values(pack: Any, _kit: Any) -> None:
    (promise,) = pack.promises.sentences
    number = replace(promise.numbers[1], text="92.3 mm (3.65 in)")
    text = promise.text.replace("3.63", "3.65")
    pack.promises = replace(
        pack.promises, sentences=(replace(promise, text=text, numbers=(promise.numbers[0], number)),)
    )


bad("proof/half-template", "nothing says that it is half")(drop(1, "half"))


def halved(pack: Any, **changes: Any) -> None:
    first, *others = pack.promises.prints
    pack.promises = replace(pack.promises, prints=(replace(first, **changes), *others))


for called, changes in {
    "flipped along another line": {"mirror": ((89.9, 0.0), (89.9, 60.0))},
    "flipped along a line aslant": {"mirror": ((90.0, 0.0), (90.1, 60.0))},
    "of a wider whole": {"whole": (tuple((x * 1.001, y) for x, y in WHOLE_A[0]), *WHOLE_A[1:])},
    "of a whole with one opening": {"whole": WHOLE_A[:2]},
}.items():
    bad("proof/half-template", called)(lambda pack, _, changes=changes: halved(pack, **changes))


LID_WRONG = {
    "another letter": (0, "K Lid, cut 3 + 1 spare"),
    "another count": (0, "L Lid, cut 4 + 1 spare"),
    "no spare": (0, "L Lid, cut 3"),
    "another width": (1, "80.2 × 30.0 mm (3.16 × 1.18 in), foam."),
    "inches of another width": (1, "80.0 × 30.0 mm (3.18 × 1.18 in), foam."),
    "an opening on its side": (2, "1: an opening, 20.0 × 12.0 mm (0.79 × 0.47 in);"),
    "an opening elsewhere": (3, "11.0 mm (0.43 in) from the left, 5.00 mm (0.20 in) from below."),
    "a hole of another number": (4, "3: a round hole, 6.00 mm (0.24 in) across; its middle"),
    "a wider hole": (4, "2: a round hole, 8.00 mm (0.31 in) across; its middle"),
    "a hole higher up": (5, "60.0 mm (2.36 in) from the left, 16.0 mm (0.63 in) from below."),
    "a level line": (6, "Draw a level line, 40.0 mm (1.57 in) from below."),
    "another bevel": (7, "Bevel 40° at the upper edge: the face underneath is shorter."),
    "a bevel at another edge": (7, "Bevel 45° at the lower edge: the face underneath is shorter."),
    "a bevel the other way": (7, "Bevel 45° at the upper edge: the face underneath is longer."),
    "another rabbet": (9, "6.00 mm (0.24 in) wide; the front paper stays."),
}
for called, (row, said) in LID_WRONG.items():
    bad("proof/sizes", called)(
        swap(3, f"lid says {row}", lambda kit, row=row, said=said: kit.words(said, 70.0, 44.0 - 2.6 * row, 2.3))
    )
bad("proof/sizes", "a hole unsaid")(drop(3, "lid says 5"))
bad("proof/sizes", "on no page")(carried("sizes:lid:words", page=9))


@bad("proof/sizes", "drawn as another piece")
def another_drawing(pack: Any, _: Any) -> None:
    promises = pack.promises
    pack.promises = replace(
        promises,
        drawings=tuple(replace(d, lines=d.lines[:2]) if d.key == "sizes:lid" else d for d in promises.drawings),
    )


bad("proof/step-picture", "dropped")(drop(3, "seen"))
bad("proof/step-picture", "another one in its place")(
    swap(3, "seen", lambda kit: kit.stroke(kit.box_code(Box(20.0, 45.0, 60.0, 65.0)), 0.35))
)
bad("proof/step-picture", "a line too many")(add(3, lambda kit: kit.line((22.0, 46.0), (58.0, 59.0), 0.35)))
bad("proof/step-picture", "no texture")(drop(3, "texture"))
bad("proof/step-picture", "no letter")(drop(3, "label"))
bad("proof/step-picture", "another letter")(swap(3, "label", lambda kit: kit.words("B", 24.0, 52.0, 2.7)))
bad("proof/step-picture", "at another scale")(carried("step:2:picture", scale=0.45))


bad("proof/copies-said", "one more than is cut")(add(1, lambda kit: kit.words("16 × A", 160.0, 30.0, 2.7)))
bad("proof/copies-said", "copies of another part")(add(3, lambda kit: kit.words("14 × L", 160.0, 30.0, 2.7)))
bad("proof/legend", "a thin sample")(swap(3, "sample", lambda kit: kit.line((85.0, 76.0), (100.0, 76.0), 0.25)))
bad("proof/legend", "a dashed sample")(
    swap(
        3, "sample", lambda kit: kit.stroke(f"{85 * PT} {76 * PT} m {100 * PT} {76 * PT} l", 0.5, f"{2 * PT} {2 * PT}")
    )
)
bad("proof/legend", "no sample")(drop(3, "sample"))
bad("proof/part-note", "a rabbet that no piece of the page has")(
    add(2, lambda kit: kit.words("Rabbet: cut the foam away behind, the front paper stays.", 30.0, 30.0, 2.7))
)
for said, why in (
    ("Lay tape over the whole inside face before you bend it.", "covered with something else"),
    ("Glue paper over the whole outside face before you bend it.", "the other face covered"),
    ("Slit the inside face, 3.5 mm deep.", "the other face slit"),
    ("Slit the outside face, 4.5 mm deep.", "slit too deep"),
):
    bad("proof/part-note", why)(add(1, lambda kit, said=said: kit.words(said, 120.0, 100.0, 2.7)))
bad("proof/part-note", "glue lines behind that no piece of the page has")(
    add(2, lambda kit: kit.words("Glue lines: carry their ends round the edges", 30.0, 30.0, 2.7))
)
bad("proof/needed", "one copy less")(swap(3, "needs", lambda kit: kit.words("A 1 × Step", 176.0, 42.0, 2.7)))
bad("proof/needed", "a tool is left out")(drop(3, "needs too"))
bad("proof/needed", "the part is left out")(drop(3, "needs"))
bad("proof/needed", "listed on no page")(carried("step:2:needs"))
bad("proof/done", "the part is not there")(drop(3, "pressed"))
bad("proof/done", "drawn larger")(
    swap(
        3,
        "pressed",
        lambda kit: kit.stroke(
            kit.ring_code(((156.0, 54.0), (182.0, 54.0), (182.0, 63.5), (172.0, 67.0), (156.0, 67.0))), 0.35
        ),
    )
)
bad("proof/done", "one copy less")(swap(3, "pressed count", lambda kit: kit.words("1 × A", 160.0, 50.0, 2.7)))
bad("proof/done", "another part")(swap(3, "pressed count", lambda kit: kit.words("2 × B", 160.0, 50.0, 2.7)))
bad("proof/done", "no tick")(drop(3, "tick"))
bad("proof/done", "nothing crossed out")(drop(3, "cross"))


@bad("proof/tool", "a knife that stands off all outlines")
def beside_its_work(pack: Any, _kit: Any) -> None:
    promises = pack.promises
    cut = tuple(replace(one, act="cut_outlines") for one in promises.done)
    knife = Carried("step:2:does:press:scene:knife", 4, PRESSED.box, Pose(170.0, 58.0, 24.0), 0.3)
    pack.promises = replace(promises, done=cut, carried=(*promises.carried, knife))


bad("proof/caution-named", "the caution of pins left out")(drop(3, "caution"))
bad("proof/sketch-words", "a count left out")(drop(3, "pressed count"))
bad("proof/sketch-words", "on no page")(carried("step:2:does:press"))
bad("proof/picture-number", "no number")(drop(3, "second picture"))
bad("proof/picture-number", "the same twice")(swap(3, "second picture", lambda kit: kit.words("1", 150.5, 65.5, 4.6)))
bad("proof/picture-number", "not from 1 on")(swap(3, "first picture", lambda kit: kit.words("0", 14.5, 60.0, 4.6)))
bad("proof/sketch-place", "a count beside its part")(
    swap(3, "pressed count", lambda kit: kit.words("2 × A", 184.0, 50.5, 2.7))
)


@bad("proof/sketch-letter", "another part's letter")
def letter_of_another(pack: Any, kit: Any) -> None:
    promises = pack.promises
    shown = Carried("step:2:does:press:deck", 4, PRESSED.box, Pose(157.0, 58.0), 0.1)
    pack.promises = replace(promises, carried=(*promises.carried, shown))
    add(3, lambda kit: kit.words("A", 165.0, 61.0, 2.7))(pack, kit)


bad("proof/done", "shown on no page")(carried("step:2:does:press:lid"))


@bad("proof/step-picture", "a photograph that the cover does not show")
def no_photo(pack: Any, _kit: Any) -> None:
    photo = DrawingPromise("cover:picture", "photo:house.jpg", 600.0, 400.0)
    where = Carried("cover:picture", 1, Box(20.0, 200.0, 80.0, 240.0))
    promises = pack.promises
    pack.promises = replace(promises, drawings=(*promises.drawings, photo), carried=(*promises.carried, where))


bad("proof/attachment", "the facts replaced")(
    edit(lambda pdf: pdf.attachments.__setitem__("facts.json", pikepdf.AttachedFileSpec(pdf, b'{"format": 2}')))
)
bad("proof/attachment", "the facts taken out")(edit(lambda pdf: pdf.attachments.__delitem__("facts.json")))
bad("proof/attachment", "one more file")(
    edit(lambda pdf: pdf.attachments.__setitem__("more.txt", pikepdf.AttachedFileSpec(pdf, b"more")))
)
bad("proof/page-box", "a trim box")(set_page("/TrimBox", pikepdf.Array([40, 40, 500, 700])))
bad("proof/page-box", "an art box")(set_page("/ArtBox", pikepdf.Array([40, 40, 500, 700])))
bad("proof/print-wish", "prints the trim box")(preferences(PrintArea=pikepdf.Name.TrimBox))
bad("proof/print-wish", "clips to the bleed box")(preferences(PrintClip=pikepdf.Name.BleedBox))
bad("proof/print-wish", "five copies")(preferences(NumCopies=5))
bad("proof/page-label", "no labels")(edit(lambda pdf: pdf.Root.__delitem__("/PageLabels")))
bad("proof/page-label", "roman ones")(
    edit(lambda pdf: pdf.Root.PageLabels.__setitem__("/Nums", pikepdf.Array([0, pikepdf.Dictionary(S=pikepdf.Name.r)])))
)
bad("proof/drawn", "a word retyped")(swap(0, "square label", lambda kit: kit.words("100 rnm", 120.0, 245.0)))
bad("proof/drawn", "a word moved")(swap(0, "square label", lambda kit: kit.words("100 mm", 120.05, 245.0)))
bad("proof/drawn", "a line less")(drop(0, "tick 7"))
bad("proof/drawn", "a line more")(add(0, lambda kit: kit.line((30.0, 60.0), (60.0, 60.0), 0.2)))
bad("proof/bookmark", "none")(edit(lambda pdf: pdf.Root.__delitem__("/Outlines")))
bad("proof/bookmark", "the part beside its pages, not under them")(
    outlined(("Templates", 1, ()), ("A Step", 1, ()), ("Tiles", 2, ()))
)
bad("proof/bookmark", "a part that leads to another page")(
    outlined(("Templates", 1, (("A Step", 2),)), ("Tiles", 2, ()))
)
bad("proof/bookmark", "one too few")(outlined(("Templates", 1, (("A Step", 1),))))


bad("proof/number", "a length that nobody worked out")(
    swap(3, "sent", lambda kit: kit.words("Tile 2 of 2. It measures 91.0 mm.", 70.0, 48.0, 3.0))
)
bad("proof/number", "a length to the millionth")(
    swap(3, "sent", lambda kit: kit.words("Tile 2 of 2. It measures 90.00000 mm.", 70.0, 48.0, 3.0))
)
bad("proof/number", "a count that nobody made")(
    swap(3, "sent", lambda kit: kit.words("Tile 2 of 2. Cut 7 of them.", 70.0, 48.0, 3.0))
)
bad("proof/page-reference", "a page of another kind")(
    swap(3, "sent", lambda kit: kit.words("Hold the board in the gauge on page 2.", 70.0, 48.0, 3.0))
)
bad("proof/page-reference", "a page that is not there")(
    swap(3, "sent", lambda kit: kit.words("Look at page 9.", 70.0, 48.0, 3.0))
)
bad("proof/page-reference", "a tile that it does not show")(
    swap(3, "sent", lambda kit: kit.words("Tile 1 of 2. Go on.", 70.0, 48.0, 3.0))
)
bad("proof/step-number", "another number")(swap(3, "step number", lambda kit: kit.words("2", 60.0, 66.0, 3.0)))
bad("proof/own-words", "a wrong letter")(
    swap(3, "sent", lambda kit: kit.words("Tile 2 of 2. Cut en the line.", 70.0, 48.0, 3.0))
)
bad("proof/own-words", "another word that is known")(
    swap(3, "sent", lambda kit: kit.words("Tile 2 of 2. Cut the foam under the middle.", 70.0, 48.0, 3.0))
)
bad("proof/own-words", "a word is left out")(
    swap(3, "sent", lambda kit: kit.words("Tile 2 of 2. Cut on line.", 70.0, 48.0, 3.0))
)
bad("proof/piece", "the letter of another part")(
    swap(1, "whose", lambda kit: kit.words("B cut 14 + 1 spare, 90.0 × 60.0 mm", 140.0, 230.0, 3.0))
)
bad("proof/piece", "another count")(
    swap(1, "whose", lambda kit: kit.words("A cut 15 + 1 spare, 90.0 × 60.0 mm", 140.0, 230.0, 3.0))
)
bad("proof/piece", "another size")(
    swap(1, "whose", lambda kit: kit.words("A cut 14 + 1 spare, 90.0 × 61.0 mm", 140.0, 230.0, 3.0))
)
bad("proof/piece", "which of so many it is, where one template serves all")(
    swap(1, "whose", lambda kit: kit.words("A 1 of 15, 90.0 × 60.0 mm", 140.0, 230.0, 3.0))
)
bad("proof/edge-words", "none")(drop(1, "edge letter"))
bad("proof/edge-words", "the letter of another edge")(
    swap(1, "edge letter", lambda kit: kit.words("b", *AT_A.apply((45.0, 52.0)), 3.0))
)


@bad("proof/piece", "another shape, drawn and promised alike")
def other_template(pack: Any, _kit: Any) -> None:
    piece, *others = pack.promises.prints
    ring = ((-1.0, 0.0), *piece.rings[0][1:])
    pack.promises = replace(pack.promises, prints=(replace(piece, rings=(ring, *piece.rings[1:])), *others))


def edge_fill(x: float) -> str:
    """A black bar along the right side of the square: pixels see it, the walk along strokes does not."""
    return f"q 0 g {x * PT} {30 * PT} {0.5 * PT} {50 * PT} re f Q"


TABLED = {check for check, _, _ in BAD}


@pytest.fixture(scope="module")
def good(kit: Any) -> tuple[bytes, Any]:
    pack = kit.good()
    return pack.write(), pack.promises


def test_the_good_pack_has_no_findings(good: tuple[bytes, Any]) -> None:
    proof = prove(good[0], good[1], "good.pdf")
    assert proof.findings == ()
    assert proof.unjudged == ()
    assert len(proof.judged) == len(RULES)


@pytest.mark.keeps("proof/page-code")
def test_two_areas_of_one_path_lie_on_both_sides_of_a_page_code(kit: Any) -> None:
    """Both heads of a long dimension line are one path; the box round them holds the code, and neither head comes near it."""
    pack = kit.good()
    pack.sheets[1].items["heads"] = kit.literal(
        f"q 0 g {150 * PT} {50 * PT} {2 * PT} {1 * PT} re {198 * PT} {80 * PT} {2 * PT} {1 * PT} re f Q"
    )
    proof = prove(pack.write(), pack.promises, "good.pdf")
    assert "proof/page-code" not in {finding.check for finding in proof.findings}


@pytest.fixture(scope="module")
def case(good: tuple[bytes, Any]) -> Case:
    return Case(good[0], read_file(good[0], "good.pdf"), good[1])


@pytest.mark.parametrize("check", RULES, ids=lambda c: c.id)
def test_every_check_looks_at_something_in_the_good_pack(check: Any, case: Case) -> None:
    outcome = check.run(case, check)
    assert outcome.looked_at > 0
    assert outcome.findings == ()


@pytest.mark.parametrize("check", RULES, ids=lambda c: c.id)
def test_every_check_has_a_planted_fault(check: Any) -> None:
    assert check.id in TABLED


@pytest.mark.parametrize(("check", "name", "spoil"), BAD, ids=[f"{c}: {n}" for c, n, _ in BAD])
def test_a_planted_fault_is_found_by_its_own_check(check: str, name: str, spoil: Spoil, kit: Any) -> None:
    pack = kit.good()
    spoil(pack, kit)
    proof = prove(pack.write(), pack.promises, "bad.pdf")
    found = [f for f in proof.findings if f.check == check]
    assert found, [f"{f.check}: {f.message}" for f in proof.findings]
    rule = next(c for c in RULES if c.id == check)
    for finding in found:
        assert finding.severity is rule.severity
        assert finding.message
        assert "Traceback" not in finding.message


@pytest.mark.parametrize(
    ("what", "said"), [(" is wrong", "part A is wrong"), ("is wrong", "part A is wrong"), (": wrong", "part A: wrong")]
)
def test_one_blank_stands_between_what_is_judged_and_what_is_wrong(what: str, said: str) -> None:
    assert about(RULES[0], "part A", what, "mend it").message == said


def test_ids_are_unique_and_every_field_is_filled() -> None:
    assert len({c.id for c in RULES}) == len(RULES) == len(OPENING) + len(ALONE) + len(PROMISED)
    for check in RULES:
        assert check.id.startswith("proof/")
        assert check.title
        assert check.rationale
        assert isinstance(check.severity, Severity)


def test_a_small_shift_within_the_tolerance_is_no_fault(kit: Any) -> None:
    pack = kit.good()
    promise = pack.promises.outlines[0]
    pose = Pose(promise.pose.x + 0.008, promise.pose.y, promise.pose.turn)
    pack.sheets[1].items["outline"] = kit.outline(promise.rings, pose)
    assert prove(pack.write(), pack.promises, "near.pdf").findings == ()


def test_two_score_lines_that_cross_in_a_sketch_are_no_sign(kit: Any) -> None:
    pack = kit.good()
    for number, ends in enumerate((((158.0, 55.0), (170.0, 63.0)), ((158.0, 63.0), (170.0, 55.0)))):
        pack.sheets[3].items[f"scored {number}"] = kit.line(*ends, 0.5)
    found = prove(pack.write(), pack.promises, "good.pdf").findings
    assert [f.message for f in found if f.check == "proof/done"] == []
