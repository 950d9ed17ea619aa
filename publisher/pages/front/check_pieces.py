"""The pieces of the print-check page. Each draws itself under the top of a box and returns the height that it used (mm)."""

from collections.abc import Callable
from dataclasses import replace
from math import inf, isinf

from publisher.basics import Box, ClearPromise, Layer, Path, TextPromise, polyline
from publisher.basics.units import inches
from publisher.basics.wording import fixed, paired, rounded_down, rounded_up, say_thickness, trimmed
from publisher.joints import PENCIL_SPREAD, BoardRange, safe_ends
from publisher.pages.front.board_gauges import gauged_boards, taken
from publisher.pages.front.check_squares import (
    INCH_SIDE,
    SQUARE_SIDE,
    CheckForm,
    inch_readings,
    inch_square_words,
    square_box,
    two_squares,
)
from publisher.pages.front.coupon import COUPON_HIGH, Fit, board_name, coupon, fit_of, tried_boards
from publisher.pages.front.scale_range import budget
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet import (
    CARD_HEIGHT,
    CARD_INCHES,
    CARD_WIDTH,
    CODE,
    QUIET_MM,
    Body,
    Context,
    card,
    square_limits,
)
from publisher.pages.type import (
    BODY,
    CELL_GAP,
    GUTTER,
    HEADING,
    LEAST,
    NOTE,
    RULE,
    SMALL,
    Column,
    Setter,
    make_table,
)

CLEAR_ROUND = (
    0.5,
    4.5,
)  # mm from the card's outline and from the square: nothing shows there, so that what lies on the line is seen
OVER_SIZE = 10.0  # mm over the side of the square, where what its readings may be stands over its size
DESCENDERS = 0.6  # mm under the last line of words over the code


def square(context: Context, box: Box, page: int, form: CheckForm) -> tuple[Body, float]:
    """Draw the squares to be measured, the outline of a bank card in them, and room to write the readings down."""
    outline = square_box(box, form)
    squares, said = two_squares(box, page, form)
    left, top = outline.left + (SQUARE_SIDE - CARD_WIDTH) / 2, outline.top - 5.0
    words = _words_in_square(context, outline, said, left, top, form.inch)
    place = Box(left, top - CARD_HEIGHT, left + CARD_WIDTH, top)
    clear = tuple(ClearPromise(page, "card", side) for side in _sides(place, *CLEAR_ROUND))
    outside = outline.right + outline.left - box.left
    beside = Box(outside + CLEAR_ROUND[0], outline.bottom, outside + GUTTER - CLEAR_ROUND[0], outline.top)
    clear += (ClearPromise(page, "ruler", beside),)
    return squares + Body(words, clear=clear) + card(
        left, top, page
    ), box.top - outline.bottom + outline.left - box.left


def _sides(box: Box, near: float, far: float) -> tuple[Box, ...]:
    """Return the four boxes that lie ``near`` to ``far`` mm outside the sides of one: left, right, under, over."""
    inner, outer = box.grown(near), box.grown(far)
    return (
        replace(outer, right=inner.left),
        replace(outer, left=inner.right),
        replace(outer, top=inner.bottom),
        replace(outer, bottom=inner.top),
    )


def _words_in_square(
    context: Context, outline: Box, full: str, left: float, top: float, two: bool
) -> tuple[Drawn, ...]:
    setter, first = context.type, context.paper.first
    middle, centre = left + CARD_WIDTH / 2, top - CARD_HEIGHT / 2
    size = paired(f"{CARD_WIDTH:.2f} × {CARD_HEIGHT:.2f} mm", CARD_INCHES, first)
    y = outline.bottom + 33.6
    hiding = "If it hides the line, or leaves paper inside it: print again at 100 %."
    drawn: list[Drawn] = [
        *setter.line("Bank card", HEADING, middle, centre + 3.0, align="centre"),
        *setter.line(size, SMALL, middle, centre - 3.4, align="centre"),
        *setter.line(
            "No ruler? A card’s edges must meet the line all round.", SMALL, middle, centre - 8.4, align="centre"
        ),
        *setter.line(hiding, LEAST, middle, centre - 12.6, align="centre"),
        *setter.line(full, HEADING, left, outline.bottom + 4.6),
        *setter.line(
            full.replace(" outside,", " and").replace(" inside", ""),
            NOTE,
            outline.left + 4.8,
            outline.bottom + 13.0,
            turn=90.0,
        ),
        *setter.line(
            f"inside: {inner_square_words(context)}" if two else inner_square_words(context),
            SMALL.bold(),
            left,
            outline.bottom + OVER_SIZE,
        ),
        *setter.line("Your readings", SMALL.bold(), left, y),
    ]
    right, above = outline.right - QUIET_MM - 2.5, outline.bottom + QUIET_MM + 2.5 + CODE + QUIET_MM + DESCENDERS
    drawn += setter.line("page code: which page of", LEAST, right, above + LEAST.leading, align="right")
    drawn += setter.line("which pack this is", LEAST, right, above, align="right", goes_on=True)
    lines: list[Path] = []
    for name in ("across", "down"):
        y -= 8.8
        drawn += setter.line(name, SMALL, left, y)
        drawn += setter.line("mm" if first == "mm" else "in or mm", SMALL, left + 44.0, y)
        lines.append(polyline(((left + 13.0, y - 0.8), (left + 43.0, y - 0.8))))
    drawn.append(Stroke(RULE, tuple(lines), Layer.PAGE))
    return tuple(drawn)


def how(context: Context, box: Box, page: int, form: CheckForm) -> tuple[Body, float]:
    """Say what to do, step by step."""
    setter = context.type
    measure, figures = _measure(context, form)
    templates = "the templates, then " if context.design.use == "trace" and context.templates else ""
    then = f"Read “Before you cut”. Make {templates}the coupon, then the pieces."
    rest = "Print the rest. "
    if context.purpose == "test_page":
        rest = ""
        then = "Make the coupon, then go on with the next page."
    steps = (
        "Print at 100 %: choose “actual size” or “no scaling”, never “fit”, “shrink” or “fill”; "
        f"{context.paper.title}, one side only.",
        measure,
        "Look for all four corner marks. One is missing: the page was clipped, print it again.",
        f"{rest}{_tried(context, form)} {then}",
    )
    drawn: list[Drawn] = []
    y, style = box.top, SMALL if form.small else BODY
    for number, step in enumerate(steps, start=1):
        drawn += setter.line(f"{number}", HEADING.tagged("lbl"), box.left, y - setter.drop(style))
        block = setter.paragraph(step, style.tagged("li"), box.left + 6.0, y, box.width - 6.0)
        drawn += block.drawn
        y -= block.height + 2.6
    return Body(tuple(drawn), texts=tuple(TextPromise(page, said) for said in figures)), box.top - y


def _tried(context: Context, form: CheckForm) -> str:
    """Say that boards are tried in the gauge."""
    several = len(tried_boards(context))
    if several > 1 and len(gauged_boards(context, form)) == several:
        return "Try a strip of each board in its gauge."
    return "Measure each board." if several > 1 else "Try a strip of your board in the gauge."


def _measure(context: Context, form: CheckForm) -> tuple[str, tuple[str, ...]]:
    """Say what to measure, and what it must be; return the figures of that too."""
    alike = f"{SQUARE_SIDE:g} mm" if context.paper.first == "mm" else f"{INCH_SIDE:g} in"
    longer = f"measure {alike} of the long rulers too."
    outer = outer_square_words(context) if form.inch else ""
    if outer:
        inner = inner_square_words(context)
        said = f"Measure the outer square across and down: {outer}. Or the inner one: {inner}. Near a limit, {longer}"
        return said, (outer, inner)
    between = f"between {square_between(context)}"
    which = "inner square" if form.inch else "square"
    said = f"Measure the {which} across and down. Both must lie {between}. Near a limit, {longer}"
    return said, (between,)


def outer_square_words(context: Context) -> str:
    """Return what the square of 4 in must measure (``4 in, less than 1/64 in more or less``); '' where the design allows less than any
    mark shows."""
    return inch_square_words(budget(context.joined))


def square_between(context: Context, side: float = SQUARE_SIDE) -> str:
    """Return between which readings a printed square of this side (mm) may lie: ``99.5 and 100.5 mm (3.92 and 3.95 in)``."""
    allowed = budget(context.joined)
    low, high = square_limits(allowed.least, allowed.most, side)
    for decimals in (2, 3, 4) if side >= SQUARE_SIDE else (3, 4):  # as few as leave room between the ends
        ends = (rounded_up(inches(float(low)), decimals), rounded_down(inches(float(high)), decimals))
        if ends[0] < ends[1]:
            break
    imperial = f"{' and '.join(fixed(end, decimals) for end in ends)} in"
    return paired(f"{low} and {high} mm", imperial, context.paper.first)


def inner_square_words(context: Context) -> str:
    """Return what the square of 100 mm must measure beside one of 4 in: ``99.5 to 100.5 mm``."""
    allowed = budget(context.joined)
    return "{} to {} mm".format(*square_limits(allowed.least, allowed.most))


def off_within(context: Context, side: float) -> str:
    """Return by how much a printed length (mm) may be off, as its print may be: ``1.0 mm (0.04 in)``."""
    allowed = budget(context.joined)
    off = side * min(1.0 - allowed.least, allowed.most - 1.0)
    decimals = 1 if off >= 0.1 else 2
    off = rounded_down(off, decimals)
    return paired(f"{fixed(off, decimals)} mm", f"{fixed(inches(off), 2)} in", context.paper.first)


def limits(context: Context, box: Box, _page: int, _form: CheckForm) -> tuple[Body, float]:
    """Name the meetings that bound the print scale of this design, and what these bounds do not count."""
    allowed = budget(context.joined)
    said: list[str] = []
    if allowed.tightest is not None:
        said.append(f"Printed smaller than that, the {allowed.tightest.what} gets too tight.")
    if allowed.loosest is not None:
        said.append(f"Printed larger, the {allowed.loosest.what} gets too loose.")
    if context.design.use == "trace":
        said.append(
            f"A sharp pencil strays by up to {_said(context, PENCIL_SPREAD)} a side: "
            "that comes on top of the print, and the coupon tries both."
        )
    if not said:
        return Body(), 0.0
    block = context.type.paragraph(" ".join(said), NOTE, box.left, box.top, box.width)
    return Body(block.drawn), block.height


def scrap(context: Context, box: Box, page: int, _form: CheckForm) -> tuple[Body, float]:
    """Draw the fit coupon under its heading, and say what it tells."""
    fit = fit_of(context)
    if fit is None:
        return Body(), 0.0
    setter = context.type
    high = COUPON_HIGH + fit.thickness
    y = box.top - HEADING.leading - high - 1.6
    board = f"{board_name(fit)} board, {say_thickness(fit.thickness, context.paper.first)}"
    traced = context.design.use == "trace"
    made = (
        "Glue it to card, cut it out, trace it on a free strip of the sheet, lift the card, cut on the pencil line."
        if traced
        else "Glue the print on a free strip of the sheet, and cut on the line, through paper and board."
    )
    words = setter.paragraph(f"For {board}. {made}", NOTE, box.left, y - 1.6, box.width)
    rows = _meanings(context, fit, taken(context, fit), traced)
    first = max(setter.width(name, NOTE.bold()) for name, _ in rows) + CELL_GAP
    columns = (Column("", first, bold=True), Column("", box.width - first))
    table = make_table(setter, columns, rows, style=NOTE, headed=False)
    top = y - 1.6 - words.height - 1.0
    drawn = (
        *setter.line("Fit coupon", HEADING, box.left, box.top - setter.drop(HEADING)),
        *words.drawn,
        *table.place(box.left, top),
    )
    texts = tuple(TextPromise(page, meaning) for _, meaning in rows)
    return Body(drawn, texts=texts) + coupon(context, fit, page, (box.left, y)), box.top - top + table.height()


def _meanings(context: Context, fit: Fit, takes: BoardRange | None, traced: bool) -> tuple[tuple[str, str], ...]:
    """Return what each outcome of the coupon means."""
    least, most = safe_ends(takes) if takes else (0.0, inf)
    thin = f", or board under {_said(context, least, rounded_up)}: take another board" if least else ""
    thick = f", or board over {_said(context, most, rounded_down)}: take another board" if not isinf(most) else ""
    if not fit.slot:
        return (
            ("Lies flush", "A second piece of board, stood on edge in the step, ends level with the first: go on."),
            (
                "Higher or lower",
                "Measure the board again. As far off as the board itself: go on. Farther: you did not cut on the line.",
            ),
        )
    card = "You cut along the card" if fit.allowance else "You did not cut on the pencil line"
    loose, tight = (
        (card, "A blunt pencil, or you cut inside its line")
        if traced
        else ("You cut outside the line", "You cut inside the line")
    )
    return (
        ("A light push", "Right: go on."),
        ("Loose", f"{loose}{thin}."),
        ("Stuck", f"{tight}{thick}."),
    )


def _said(context: Context, mm: float, rounds: Callable[[float, int], float] = round) -> str:
    metric = f"{trimmed(mm, 2)} mm"
    return metric if context.paper.first == "mm" else paired(metric, f"{rounds(inches(mm), 3):.3f} in", "in")


def wrong(context: Context, box: Box, page: int, form: CheckForm) -> tuple[Body, float]:
    """Set the table of what a wrong reading means.

    A page is scaled to fit the printable area of its own or another paper, to fill it, or over the edges by a borderless mode. Each
    gives figures of several rows, as other causes do: so each row names all that give its figures.
    """
    setter, allowed = context.type, budget(context.joined)
    low, high = square_limits(allowed.least, allowed.most)
    near = f"98 to under {low} mm" if float(low) > 98.15 else "about 98 mm"
    rows: tuple[tuple[str, ...], ...] = (
        (f"{low} to {high} mm", "True size.", "Go on."),
        (near, "Scaled, damp, or printer runs small.", "100 %; then dry paper, other printer."),
        ("95 to under 98 mm", "“Fit” or “fill”: margins, other paper.", "Set 100 % and this page’s paper."),
        ("under 95 mm", "“Fit” or “fill”: other paper, margins.", "100 %, this paper; from a PDF viewer."),
        (
            f"over {high} mm",
            "“Fill”, borderless, or other paper.",
            "100 %, this paper; borderless off.",
        ),
        ("true one way only", "The paper slipped or stretched.", "Print again on dry, flat paper."),
    )
    titles: tuple[str, ...] = ("The square is", "What happened", "What to do")
    if form.inch:
        titles = ("Outer square", "Inner square", *titles[1:])
        rows = tuple((inch, *row) for inch, row in zip(inch_readings(allowed), rows, strict=True))
    columns = _as_wide_as_their_words(setter, titles, rows, box.width)
    table = make_table(setter, columns, rows)
    texts = tuple(TextPromise(page, said) for row in rows for said in row[:-2])
    return Body(table.place(box.left, box.top), texts=texts), table.height()


def glued(context: Context, box: Box, _page: int, _form: CheckForm) -> tuple[Body, float]:
    """Say what to do after gluing."""
    onto = "gluing to card" if context.design.use == "trace" else "gluing"
    after = (
        f"After {onto} measure each page’s square again: wet paper grows by 2 to 3 % across its grain. Let it dry flat."
    )
    words = context.type.paragraph(after, SMALL.bold(), box.left, box.top, box.width)
    return Body(words.drawn), words.height


def _as_wide_as_their_words(
    setter: Setter, titles: tuple[str, ...], rows: tuple[tuple[str, ...], ...], width: float
) -> tuple[Column, ...]:
    """Return columns, the first of them bold, as wide as their longest words, that share what is left of the width evenly; where
    it does not do, the widest give way, down to a width that they share."""
    styles = (SMALL.bold(), *(SMALL for _ in titles[1:]))
    wide = [
        max(setter.width(title, SMALL.bold()), *(setter.width(row[n], style) for row in rows)) + CELL_GAP
        for n, (title, style) in enumerate(zip(titles, styles, strict=True))
    ]
    left = width + CELL_GAP
    for n, one in enumerate(sorted(wide)):
        if one * (len(wide) - n) > left:
            wide = [min(every, left / (len(wide) - n)) for every in wide]
            break
        left -= one
    more = (width + CELL_GAP - sum(wide)) / len(wide)
    last = len(titles) - 1
    return tuple(
        Column(title, one + more - (CELL_GAP if n == last else 0.0), bold=n == 0)
        for n, (title, one) in enumerate(zip(titles, wide, strict=True))
    )
