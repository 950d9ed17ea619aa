"""The gauges of the print-check page in which boards are measured, and which boards will do. A piece draws itself under the top of a
box and returns the height that it used (mm)."""

from collections.abc import Iterator
from dataclasses import replace

from publisher.basics import Box, TextPromise
from publisher.basics.wording import say_thickness
from publisher.joints import BoardRange, board_ends, safe_ends, sold_words, spread_words, takes_words
from publisher.pages.front.check_squares import SQUARE_SIDE, CheckForm
from publisher.pages.front.coupon import Fit, board_name, tried_boards
from publisher.pages.front.gauge import FOOT, MARKER, RANGE, gauge, gauge_from
from publisher.pages.sheet import Body, Context
from publisher.pages.type import HEADING, NOTE, SMALL, SPACE

OVER_BAR = 2.6  # mm over the narrow end of a gauge: words there keep clear of its heavy bar
LEAST_GAUGED = 1.0  # mm: no gauge is narrower


def gauged_boards(context: Context, form: CheckForm) -> tuple[Fit, ...]:
    """Return the boards that have a gauge on the page: paper and thin card have none."""
    first, *others = tried_boards(context) or (None,)
    if first is None:
        return ()
    return (first, *(fit for fit in others if form.gauges and fit.thickness >= LEAST_GAUGED))


def board(context: Context, box: Box, page: int, form: CheckForm) -> tuple[Body, float]:
    """Draw the board gauge under its heading; where several boards are used, one for each, and how thick those without one must be."""
    fits, gauged = tried_boards(context), gauged_boards(context, form)
    body, y = Body(), box.top
    for fit in gauged:
        name = f"Board gauge: {board_name(fit)}" if len(fits) > 1 else "Board gauge"
        one, high = _gauge(context, replace(box, top=y), page, fit, name, whole=fit is gauged[0])
        body += one
        y -= high + (SPACE if fit is not gauged[-1] else 0.0)
    left = [(fit, ends) for fit in fits if fit not in gauged and (ends := thick_words(context, fit))]
    if left:
        said = " ".join(
            f"Of {board_name(fit)} press ten pieces together: a tenth of that is {ends}." for fit, ends in left
        )
        words = context.type.paragraph(said, NOTE, box.left, y - 0.6, SQUARE_SIDE)
        body += Body(words.drawn, texts=tuple(TextPromise(page, ends) for _, ends in left))
        y -= words.height + 0.6
    return body, box.top - y


def _gauge(context: Context, box: Box, page: int, fit: Fit, name: str, *, whole: bool) -> tuple[Body, float]:
    """Draw the gauge of one board under its heading; of the first in ``whole`` words, of the others what it takes alone, with the heading
    over the narrow end, where the gauge leaves room."""
    setter, x, title = context.type, box.left, HEADING if whole else SMALL.bold()
    y = box.top - (title.leading if whole else 0.0) - MARKER - gauge_from(fit.thickness) - RANGE
    named = box.top - setter.drop(title) if whole else y + gauge_from(fit.thickness) + OVER_BAR
    drawn_for = say_thickness(fit.thickness, context.paper.first)
    takes = taken(context, fit)
    before = "Slide a short strip of your board, on its edge, to where it fills the gap: at its left end stands its thickness in mm. "
    after = " For any other board find the pack that is drawn for it."
    said = f"This pack is drawn for {drawn_for}, at the arrow{_go_on(context, fit, takes)}"
    words = setter.paragraph(f"{before}{said}{after}" if whole else said, NOTE, x, y - FOOT - 0.6, SQUARE_SIDE)
    drawn = (*setter.line(name, title, x, named), *words.drawn)
    texts = (TextPromise(page, drawn_for), *(TextPromise(page, t) for t in _promised(context, fit, takes)))
    ends = safe_ends(takes) if takes else board_ends(fit.thickness, fit.spread)
    return Body(drawn, texts=texts) + gauge(
        setter, page, (x, y), fit.thickness, ends
    ), box.top - y + FOOT + 0.6 + words.height


def taken(context: Context, fit: Fit) -> BoardRange | None:
    """Return the boards that the design takes; None where it takes any."""
    found = next((b for b in context.joined.boards if b.board == fit.board), None)
    return found if found is not None and takes_words(found) else None


def _go_on(context: Context, fit: Fit, takes: BoardRange | None) -> str:
    """Say which boards will do."""
    if takes is not None:
        sold = sold_words(takes, context.paper.first)
        return f", and takes board {takes_words(takes, context.paper.first)}, under the heavy bar.{' ' if sold else ''}{sold}"
    if not fit.spread:
        return ". Go on with a board of that thickness."
    return f". Go on {spread_words(fit.thickness, fit.spread, context.paper.first)}, under the heavy bar."


def thick_words(context: Context, fit: Fit) -> str:
    """Return how thick a board must be (``from 4.7 to 5.3 mm (0.186 to 0.208 in)``); '' where nobody knows."""
    takes, first = taken(context, fit), context.paper.first
    if takes is not None:
        return takes_words(takes, first)
    return spread_words(fit.thickness, fit.spread, first) if fit.spread else ""


def boards_to_go_on(context: Context) -> tuple[tuple[str, str], ...]:
    """Return the name of each board that is measured, that of the coupon first, and how thick it must be; '' where nobody knows."""
    return tuple((board_name(fit), thick_words(context, fit)) for fit in tried_boards(context))


def first_to_fail(context: Context) -> tuple[str, ...]:
    """Return for thinner and thicker board, in sentences, what of it fails first; of several boards each is named."""
    fits = tried_boards(context)
    return tuple(said for fit in fits for said in _fails(context, fit, board_name(fit) if len(fits) > 1 else ""))


def _fails(context: Context, fit: Fit, name: str) -> Iterator[str]:
    takes = taken(context, fit)
    ends = ((takes.least_by, "thinner"), (takes.most_by, "thicker")) if takes is not None else ()
    fails = {way: meeting.what for by, way in ends if (meeting := context.joined.meeting(by))}
    of = f"{name} board" if name else "board"
    if len(fails) > 1 and len(set(fails.values())) == 1:
        yield f"In thinner or thicker {of} the {fails['thinner']} is the first that no longer fits."
    else:
        yield from (f"In {way} {of} the {what} is the first that no longer fits." for way, what in fails.items())


def _promised(context: Context, fit: Fit, takes: BoardRange | None) -> tuple[str, ...]:
    """Return the words of the gauge that have figures."""
    if takes is None:
        return (spread_words(fit.thickness, fit.spread, context.paper.first),) if fit.spread else ()
    first = context.paper.first
    return tuple(said for said in (takes_words(takes, first), sold_words(takes, first)) if said)
