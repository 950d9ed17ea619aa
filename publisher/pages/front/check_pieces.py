"""The pieces of the print-check page. Each draws itself under the top of a box and returns the height that it used (mm)."""

from publisher.basics import Box, Layer, LengthPromise, Path, polyline
from publisher.basics.units import INCH_MM
from publisher.pages.front.coupon import COUPON_HIGH, Fit, coupon, fit_of
from publisher.pages.front.gauge import FOOT, MARKER, RANGE, gauge, gauge_from
from publisher.pages.front.scale_range import ScaleRange, budget
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet import CARD_HEIGHT, CARD_INCHES, CARD_WIDTH, CODE, QUIET_MM, Body, Context, card
from publisher.pages.type import BODY, GAUGE, HEADING, LEAST, NOTE, RULE, SMALL, Column, Setter, make_table

SQUARE_SIDE = 100.0  # of the square


def square(context: Context, box: Box, page: int) -> tuple[Body, float]:
    """Draw the square of 100 mm, the outline of a bank card in it, and room to write the readings down."""
    outline = Box(box.left, box.top - SQUARE_SIDE, box.left + SQUARE_SIDE, box.top)
    corners = outline.corners()
    said = f"{SQUARE_SIDE:g} mm"
    lengths = tuple(
        LengthPromise(page, corners[a], corners[b], SQUARE_SIDE, "calibration", said if a in {0, 3} else "")
        for a, b in ((0, 1), (1, 2), (2, 3), (3, 0))
    )
    left, top = outline.left + (SQUARE_SIDE - CARD_WIDTH) / 2, outline.top - 5.0
    words = _words_in_square(context.type, outline, left, top)
    line = Stroke(GAUGE, (polyline(corners, True),), Layer.PAGE)
    return Body((line, *words), lengths=lengths) + card(left, top, page), SQUARE_SIDE


def _words_in_square(setter: Setter, outline: Box, left: float, top: float) -> tuple[Drawn, ...]:
    middle, centre = left + CARD_WIDTH / 2, top - CARD_HEIGHT / 2
    full = f"{SQUARE_SIDE:g} mm ({SQUARE_SIDE / INCH_MM:.2f} in)"
    size = f"{CARD_WIDTH:.2f} × {CARD_HEIGHT:.2f} mm ({CARD_INCHES})"
    y = outline.bottom + 31.4
    hiding = "If it hides the line, or leaves paper inside it: print again at 100 %."
    drawn: list[Drawn] = [
        *setter.line("Bank card", HEADING, middle, centre + 3.0, align="centre"),
        *setter.line(size, SMALL, middle, centre - 3.4, align="centre"),
        *setter.line(
            "No ruler? A card’s edges must meet the line all round.", SMALL, middle, centre - 8.4, align="centre"
        ),
        *setter.line(hiding, LEAST, middle, centre - 12.6, align="centre"),
        *setter.line(full, HEADING, left, outline.bottom + 4.6),
        *setter.line(full, NOTE, outline.left + 4.8, outline.bottom + 30.0, turn=90.0),
        *setter.line("Your readings", SMALL.bold(), left, y),
    ]
    right, above = outline.right - QUIET_MM - 2.5, outline.bottom + QUIET_MM + 2.5 + CODE + QUIET_MM
    drawn += setter.line("page code: which page of", LEAST, right, above + LEAST.leading, align="right")
    drawn += setter.line("which pack this is", LEAST, right, above, align="right")
    lines: list[Path] = []
    for name in ("across", "down"):
        y -= 8.8
        drawn += setter.line(name, SMALL, left, y)
        drawn += setter.line("mm", SMALL, left + 44.0, y)
        lines.append(polyline(((left + 13.0, y - 0.8), (left + 43.0, y - 0.8))))
    drawn.append(Stroke(RULE, tuple(lines), Layer.PAGE))
    return tuple(drawn)


def how(context: Context, box: Box, _page: int) -> tuple[Body, float]:
    """Say what to do, step by step, and which size of the design decides what scale will do."""
    setter, allowed = context.type, budget(context.joined)
    low, high = SQUARE_SIDE * allowed.least, SQUARE_SIDE * allowed.most
    steps = (
        "Print at 100 %: choose “actual size” or “no scaling”, never “fit”, “shrink” or “fill”; "
        f"{context.paper.title}, one side only.",
        f"Measure the square across and down. Both must lie between {low:.1f} and {high:.1f} mm "
        f"({low / INCH_MM:.2f} and {high / INCH_MM:.2f} in). The long rulers judge finer.",
        "Look for all four corner marks. One is missing: the page was clipped.",
        "Hold a scrap of your board in the gauge. Read the page “Before you cut”, then cut the coupon from that scrap.",
    )
    drawn: list[Drawn] = []
    y = box.top
    for number, step in enumerate(steps, start=1):
        drawn += setter.line(f"{number}", HEADING, box.left, y - setter.drop(BODY))
        block = setter.paragraph(step, BODY.tagged("li"), box.left + 6.0, y, box.width - 6.0)
        drawn += block.drawn
        y -= block.height + 2.6
    deciding = _deciding(allowed)
    if deciding:
        block = setter.paragraph(deciding, NOTE, box.left + 6.0, y, box.width - 6.0)
        drawn += block.drawn
        y -= block.height
    return Body(tuple(drawn)), box.top - y


def _deciding(allowed: ScaleRange) -> str:
    """Name the meetings that bound the print scale of this design."""
    said: list[str] = []
    if allowed.tightest is not None:
        said.append(f"Printed smaller than that, the {allowed.tightest.what} gets too tight.")
    if allowed.loosest is not None:
        said.append(f"Printed larger, the {allowed.loosest.what} gets too loose.")
    return " ".join(said)


def board(context: Context, box: Box, page: int) -> tuple[Body, float]:
    """Draw the board gauge under its heading."""
    fit = fit_of(context)
    if fit is None:
        return Body(), 0.0
    setter, x = context.type, box.left
    y = box.top - HEADING.leading - MARKER - gauge_from(fit.thickness) - RANGE
    said = (
        "Stand a board on its edge and slide it to where it fills the gap: that is its thickness in mm. "
        f"This pack is drawn for {fit.thickness:.2f} mm ({fit.thickness / INCH_MM:.3f} in), at the arrow. {_go_on(fit)}"
    )
    words = setter.paragraph(said, NOTE, x, y - FOOT - 0.6, SQUARE_SIDE)
    drawn = (*setter.line("Board gauge", HEADING, x, box.top - setter.drop(HEADING)), *words.drawn)
    return Body(drawn) + gauge(setter, page, (x, y), fit.thickness, fit.spread), box.top - y + FOOT + 0.6 + words.height


def _go_on(fit: Fit) -> str:
    """Say which boards will do, and what to do with another."""
    low, high = fit.thickness - fit.spread, fit.thickness + fit.spread
    within = (
        f"between {low:.1f} and {high:.1f} mm ({low / INCH_MM:.3f} and {high / INCH_MM:.3f} in), under the heavy bar"
    )
    if not fit.spread:
        within = "with a board of that thickness"
    return (
        f"Go on {within}. Any other board needs other sizes: find the pack drawn for it, "
        "or have this one built for the thickness that you measured."
    )


def scrap(context: Context, box: Box, page: int) -> tuple[Body, float]:
    """Draw the fit coupon under its heading."""
    fit = fit_of(context)
    if fit is None:
        return Body(), 0.0
    setter = context.type
    high = COUPON_HIGH + fit.thickness
    y = box.top - HEADING.leading - high - 1.6
    board = f"{fit.board.replace('_', ' ')} board, {fit.thickness:.2f} mm ({fit.thickness / INCH_MM:.3f} in)"
    said = (
        f"For {board}. Lay the print on scrap and cut on the line, through paper and board: here no pencil is allowed for. "
        "A light push: right. If it falls out or will not go in, measure your board again."
        if fit.slot
        else f"For {board}. Lay the print on scrap and cut on the line, through paper and board. "
        "A piece of board in the step lies flush: right. If not, measure your board again."
    )
    words = setter.paragraph(said, NOTE, box.left, y - 1.6, box.width)
    drawn = (*setter.line("Fit coupon", HEADING, box.left, box.top - setter.drop(HEADING)), *words.drawn)
    return Body(drawn) + coupon(context, fit, page, (box.left, y)), box.top - y + 1.6 + words.height


def wrong(context: Context, box: Box, _page: int) -> tuple[Body, float]:
    """Set the table of what a wrong reading means, and what to do after gluing.

    The figures are those of pages fitted to other papers (0.973, 0.941) and to usual printer margins (0.88 to 0.97); several
    causes give the same figure, so no row names one alone.
    """
    setter, allowed = context.type, budget(context.joined)
    low, high = SQUARE_SIDE * allowed.least, SQUARE_SIDE * allowed.most
    near = f"98 to {low - 0.1:.1f} mm" if low > 98.15 else "about 98 mm"
    rows = (
        (f"{low:.1f} to {high:.1f} mm", "True size.", "Go on."),
        (near, "A printer that runs small, or damp paper.", "Print again on dry paper, or on another printer."),
        (
            "95 to 97.9 mm",
            "Shrunk to fit other paper or small margins.",
            "Set 100 % and the paper that this page names.",
        ),
        ("under 95 mm", "Shrunk to fit shorter paper, or twice.", "The same, from a PDF viewer."),
        (f"{high + 0.1:.1f} mm or more", "Enlarged to fill the sheet.", "Turn borderless printing off and set 100 %."),
        ("the two differ", "The paper slipped or stretched.", "Print again on dry, flat paper."),
    )
    shares = (0.20, 0.395, 0.405)
    titles = ("The square is", "What happened", "What to do")
    columns = tuple(Column(t, box.width * s, bold=t == titles[0]) for t, s in zip(titles, shares, strict=True))
    table = make_table(setter, columns, rows)
    after = "Measure again after gluing to card: wet paper grows by 2 to 3 % across its grain. Let it dry flat."
    y = box.top - table.height() - 2.0
    words = setter.paragraph(after, SMALL.bold(), box.left, y, box.width)
    return Body(table.place(box.left, box.top) + words.drawn), box.top - y + words.height
