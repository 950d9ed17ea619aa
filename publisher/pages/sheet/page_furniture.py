"""What stands on every page: corner marks, header, footer; on some fiducial marks, and the calibration square with the page code in it."""

from publisher.basics import (
    Box,
    FileKind,
    Finding,
    FurniturePromise,
    Layer,
    LengthPromise,
    Rule,
    Severity,
    TextPromise,
    polyline,
    record,
)
from publisher.basics.units import INCH_MM
from publisher.design import Design
from publisher.pages.model import Drawn, Paper, Stroke
from publisher.pages.sheet.code import page_code, page_text
from publisher.pages.sheet.draft import Body, Numbers
from publisher.pages.sheet.fiducials import corner_marks, fiducials
from publisher.pages.sheet.frame import HEADER, PAGE_SQUARE, QUIET_MM, Frame
from publisher.pages.sheet.rulers import SQUARE_EIGHTHS, SQUARE_MILLIMETRES, graduation
from publisher.pages.sheet.square_limits import square_limits
from publisher.pages.type import (
    BODY,
    GAUGE,
    GUTTER,
    HEADING,
    LEAST,
    NOTE,
    RULE,
    SMALL,
    STRONG_RULE,
    Setter,
    TypeStyle,
    tidy,
)

PRINT_SO = "Print at 100 % / actual size, single-sided"
WAYS = {
    True: (
        "The card is smaller than the piece: trace, lift it, cut on the pencil line.",
        "The card is smaller than the piece.",
        "To trace.",
    ),
    False: ("To paste: glue to the board, cut through paper and board.", "To paste."),
}
"""How a pack's templates are used, in the longest words that fit."""
CLIPPED_SHORT = "A corner mark missing: page clipped."
AROUND_FURNITURE = 0.3  # mm that the boxes of header and footer reach beyond the rule and the column of words
ABOVE_BOX, BELOW = 1.0, 0.9  # between these boxes and the printable limit
LINES_UP = (5.0, 1.6)  # baselines of the footer over the printable limit: clear of the mark at the bottom
SHOWN_DIGITS = 4  # digits of the pack's id in the footer
TITLES = (HEADING, BODY.bold(), SMALL.bold())  # sizes to try for a page's title
PAGE_SHARE = 0.6  # of the header's width, that a page's title may take
CLIPPED = "Each corner of the page has a mark. A corner missing: this page was clipped."

TITLE_TOO_LONG = Rule(
    "pages/title-too-long",
    "A title does not fit the header",
    "a page must say in one line what it is; a title that runs on pushes everything else off the page",
    Severity.WARNING,
)


@record
class Heading:
    """What the furniture says about the pack. ``trial``: the other sizes than those of the spec that it was built with, in words;
    ``traced``: its templates are glued to card and traced, and not pasted on the board; ``boards``: those that it is drawn for."""

    slug: str
    title: str
    version: str
    variant_title: str
    paper: Paper
    pack: str  # its id
    trial: str
    traced: bool = True
    boards: str = ""
    purpose: FileKind = "pack"
    scales: tuple[float, float] | None = None


def heading_of(
    design: Design,
    paper: Paper,
    pack: str,
    trial: str,
    boards: str = "",
    purpose: FileKind = "pack",
    scales: tuple[float, float] | None = None,
) -> Heading:
    """Return a design's heading on one paper; ``pack`` is the pack's id, ``trial`` what is tried, "" for nothing; ``boards``: those
    that it is drawn for; ``purpose``: what the pages are for; ``scales``: the least and the largest at which they may be printed."""
    return Heading(
        design.slug,
        design.title,
        design.version,
        design.variant_title,
        paper,
        pack,
        trial,
        design.use == "trace",
        boards,
        purpose,
        scales,
    )


def furniture(
    setter: Setter,
    frame: Frame,
    heading: Heading,
    page_title: str,
    numbers: Numbers,
    true: tuple[Drawn, ...] | None = None,
) -> Body:
    """Draw the furniture of one page. ``true``: what else it shows when it must print true, so that it has fiducial marks."""
    body = _header(setter, frame, heading, page_title, numbers.page) + _footer(setter, frame, heading, numbers)
    if frame.calibration is not None:
        body += calibration(setter, frame.calibration, numbers.page, heading.scales)
    if frame.code is not None:
        said = page_text(
            slug=heading.slug,
            page=numbers.page,
            total=numbers.total,
            pack=heading.pack,
            trial=bool(heading.trial),
            purpose=heading.purpose,
        )
        quiet = frame.code.grown(QUIET_MM)
        body += page_code(frame.code, said, numbers.page)
        body += Body(furniture=(FurniturePromise(numbers.page, "code", quiet),))
    if true is None:
        return Body((corner_marks(frame.limit),)) + body
    return fiducials(frame.limit, (*true, *body.drawn), setter.faces, numbers.page) + body


def _header(setter: Setter, frame: Frame, heading: Heading, page_title: str, page: int) -> Body:
    """Set the page's title at the left and the pack's at the right, over a rule."""
    left, right = frame.text.left, frame.text.right
    base = frame.limit.top - 6.4
    drawn: list[Drawn] = []
    findings: list[Finding] = []
    pack = tidy(f"{heading.title}, {heading.variant_title}" if heading.variant_title else heading.title)
    page_said, page_style = _one_line(setter, tidy(page_title), TITLES, (right - left) * PAGE_SHARE)
    rest = right - left - setter.width(page_said, page_style) - GUTTER
    pack_said, pack_style = _one_line(setter, pack, (SMALL.quiet(), NOTE.quiet()), rest)
    tag = "h1" if pack else "artifact"  # a cover has a title of its own
    drawn += setter.line(page_said, page_style.tagged(tag), left, base)
    drawn += setter.line(pack_said, pack_style.tagged("artifact"), right, base, align="right")
    for text, said in ((tidy(page_title), page_said), (pack, pack_said)):
        if said != text:
            findings.append(
                TITLE_TOO_LONG.found(
                    f"the title “{text[:30]}…” of {len(text)} letters does not fit the header and is cut there",
                    subject=text[:30],
                    hint="give it a shorter title; the cover has room for more words, in the summary",
                )
            )
    y = frame.limit.top - HEADER + 1.5
    drawn.append(Stroke(STRONG_RULE, (polyline(((left, y), (right, y))),), Layer.PAGE, tag="artifact"))
    box = Box(left - AROUND_FURNITURE, y - AROUND_FURNITURE, right + AROUND_FURNITURE, frame.limit.top - ABOVE_BOX)
    return Body(tuple(drawn), findings=tuple(findings), furniture=(FurniturePromise(page, "header", box),))


def title_fits(setter: Setter, frame: Frame, title: str) -> bool:
    """Say whether a page's title goes on the page's header whole."""
    return _one_line(setter, tidy(title), TITLES, (frame.text.right - frame.text.left) * PAGE_SHARE)[0] == tidy(title)


def _one_line(setter: Setter, text: str, styles: tuple[TypeStyle, ...], width: float) -> tuple[str, TypeStyle]:
    """Return the text and the largest style that takes it on one line; cut with an ellipsis when none does."""
    style = setter.fitting(text[:400], styles, width) if len(text) <= 400 else None
    if style is not None:
        return text, style
    style, text = styles[-1], setter.say(text[:400])
    while text and setter.wide(text + "…", style) > width:
        text = text[:-1]
    cut = text.rstrip() + "…"
    if setter.tongue is not None:
        setter.tongue.known(cut)
    return cut, style


def _footer(setter: Setter, frame: Frame, heading: Heading, numbers: Numbers) -> Body:
    """Set how to print, what this is a page of, and its number; four digits of the pack's id tell two drafts apart."""
    left, right = frame.text.left, frame.text.right
    first, second = (frame.limit.bottom + up for up in LINES_UP)
    bold, note = SMALL.bold().tagged("artifact"), NOTE.quiet().tagged("artifact")
    page = f"page {numbers.page} of {numbers.total}"
    said = tidy(f"version {heading.version} · {heading.pack[:SHOWN_DIGITS]} · {heading.paper.title}")
    of, _ = _one_line(setter, said, (note,), (right - left) * 0.45)
    boards = "" if heading.trial else tidy(heading.boards)  # a trial's sizes say it, and need the room
    short = setter.width(CLIPPED_SHORT, note)
    if boards and setter.width(f"{boards} · {said}", note) + short + GUTTER <= right - left:
        of = f"{boards} · {said}"
    else:
        boards = ""
    tried = ""
    if heading.trial:  # comes before all else that stands in this line
        taken = setter.width(f" · {of}", note) + short + GUTTER
        tried, _ = _one_line(setter, tidy(heading.trial), (note,), right - left - taken)
        of = f"{tried} · {of}"
    room = right - left - setter.width(of, note) - GUTTER
    clipped = CLIPPED if setter.width(CLIPPED, note) <= room else CLIPPED_SHORT
    drawn: list[Drawn] = [
        *setter.line(PRINT_SO, bold, left, first),
        *setter.line(page, bold, right, first, align="right"),
        *setter.line(of, note, right, second, align="right"),
        *setter.line(clipped, note, left, second),
    ]
    way_at = left + setter.width(PRINT_SO, bold) + GUTTER / 2
    way = next(
        (
            said
            for said in WAYS[heading.traced]
            if setter.width(said, note) <= right - way_at - setter.width(page, bold) - GUTTER / 2
        ),
        "",
    )
    drawn += setter.line(way, note, way_at, first) if way else ()
    y = frame.live.bottom
    drawn.append(Stroke(RULE, (polyline(((left, y), (right, y))),), Layer.PAGE, tag="artifact"))
    texts = tuple(TextPromise(numbers.page, said) for said in (PRINT_SO, page, way, tried, boards) if said)
    box = Box(left - AROUND_FURNITURE, frame.limit.bottom + BELOW, right + AROUND_FURNITURE, y + AROUND_FURNITURE)
    return Body(tuple(drawn), texts=texts, furniture=(FurniturePromise(numbers.page, "footer", box),))


def calibration(setter: Setter, square: Box, page: int, scales: tuple[float, float] | None = None) -> Body:
    """Draw a calibration square: millimetres along its bottom and left side, inches along top and right, its size in words, and what
    readings of it may be at these ``scales``."""
    side = square.width
    outline = Stroke(GAUGE, (polyline(square.corners(), closed=True),), Layer.PAGE, tag="artifact")
    said = f"{side:g} mm"
    corners = square.corners()
    lengths = tuple(
        LengthPromise(page, corners[a], corners[b], side, "calibration", said if a in {0, 3} else "")
        for a, b in ((0, 1), (1, 2), (2, 3), (3, 0))
    )
    body = Body((outline,), lengths=lengths)
    lower_left, upper_left, lower_right = corners[0], corners[3], corners[1]
    numbered = side >= PAGE_SQUARE
    body += graduation(setter, page, lower_left, side, SQUARE_MILLIMETRES, False, 1, ends=False)
    body += graduation(setter, page, lower_left, side, SQUARE_MILLIMETRES, True, 1, ends=False)
    body += graduation(setter, page, upper_left, side, SQUARE_EIGHTHS, False, -1, ends=False)
    body += graduation(setter, page, lower_right, side, SQUARE_EIGHTHS, True, -1, ends=False)
    between = "{} to {} mm".format(*square_limits(*scales, side)) if scales is not None else ""
    return body + Body(tuple(_words_in_square(setter, square, said, between, numbered)))


def _words_in_square(setter: Setter, square: Box, said: str, between: str, roomy: bool) -> list[Drawn]:
    """Say the size along both measured sides, and what to do with it where there is room."""
    inches = f"({square.width / INCH_MM:.2f} in)"
    if not roomy:
        style = LEAST.tagged("artifact")
        x, y = square.left + 5.6, square.bottom + 5.4
        return [*setter.line(f"{said} {inches}", style, x, y), *setter.line(said, style, x + 2.8, y + 4.0, turn=90.0)]
    style = NOTE.bold().tagged("artifact")
    x, y = square.left + 12.0, square.bottom + 6.6
    drawn: list[Drawn] = [
        *setter.line(f"{said} {inches}", style, x, y),
        *setter.line(f"{said} {inches}", style, x - 3.2, y + 4.0, turn=90.0),
        *setter.line("1 in", LEAST.tagged("artifact"), square.left + INCH_MM + 1.2, square.top - 4.6, align="right"),
        *setter.line(
            "1 in", LEAST.tagged("artifact"), square.right - 3.0, square.bottom + INCH_MM - 0.8, align="right"
        ),
    ]
    if between:
        drawn += setter.line(between, NOTE.tagged("artifact"), x, y + 4.2)
    note = setter.paragraph("Measure both ways before you cut.", NOTE.tagged("artifact"), x, square.bottom + 24.0, 25.0)
    return drawn + list(note.drawn)
