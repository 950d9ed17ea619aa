"""How it is done: the acts of the trade that this pack asks for, each with a sketch, and what to do where something went wrong.

Acts and remedies are common practice, no source.
"""

from collections.abc import Callable, Iterator
from functools import partial

from publisher.basics import Box, Carried, Layer, Pose, TextPromise, polyline, record
from publisher.basics.wording import series
from publisher.geometry import BEVEL_OUT
from publisher.joints import TRADE, steep_bevels, trades_of
from publisher.pages.front import coverings_of, fit_of
from publisher.pages.instructions import act_sketches as sketches
from publisher.pages.instructions.act_sketches import TALL, WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.step_acts import guided
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet import Body, Context, Numbers, PageDraft, columns, described, make_frame, share_out
from publisher.pages.type import GUTTER, HEADING, SMALL, SPACE, STRONG_RULE, Column, Setter, make_table

TASK = "Read how it is done"
TITLE = "How it is done"
WENT_WRONG = "If it went wrong"
NO_GUIDE = "Cut a triangle of the printed angle from card and glue it flush on a scrap of board: a guide that stands. "
MOST_ABREAST = 3  # acts beside one another, at most


@record
class TradeAct:
    """An act: the scene under which its sketch is promised, its name, what to do, its sketch, and what that shows, in words."""

    scene: str
    title: str
    say: str
    sketch: Callable[[SketchPen], None]
    shows: str


PLAIN = {
    act.scene: act
    for act in (
        TradeAct(
            "peeling",
            "Peel the paper",
            "Lift the paper at a corner and pull it back slowly, flat along the board.",
            sketches.peeling,
            "Paper pulled back flat along a board",
        ),
        TradeAct(
            "tracing",
            "Pencil upright",
            "Hold the card down and lead the pencil round it. A pencil that leans draws the piece too large.",
            sketches.tracing,
            "An upright pencil at the edge of a card, ticked; a leaning one, crossed out",
        ),
        TradeAct(
            "knife_off_the_card",
            "Lift the card first",
            "Cut on the pencil line. Never run the knife along the card: it cuts the card.",
            sketches.knife_off_the_card,
            "A knife on the pencil line, ticked; a knife along the card, crossed out",
        ),
        TradeAct(
            "strokes",
            "Blade upright",
            "Cut in three light strokes, each deeper than the one before. Extend the blade just through the board.",
            sketches.strokes,
            "An upright blade and cuts of three depths, ticked; a leaning blade, crossed out",
        ),
        TradeAct(
            "corners",
            "Cut from the corners",
            "Cut openings and slots first. Begin in each corner and stop before the next: a cut past a corner weakens the piece.",
            sketches.corners,
            "An opening with an arrow from each corner, ticked; cuts that run past their corners, crossed out",
        ),
        TradeAct(
            "turning",
            "Turn the work",
            "Pull the knife towards you and turn the board under it. Keep the holding hand behind the blade.",
            sketches.turning,
            "A board turned under a knife that is pulled straight",
        ),
        TradeAct(
            "pushing",
            "Push tabs home",
            "Put glue on the tab and on the edge beside it. Push until the end of the tab is level with the outside.",
            sketches.pushing,
            "A tab before its slot, and the tab in it, level with the outside",
        ),
        TradeAct(
            "pinning",
            "Pin what dries",
            "Push two pins crosswise through the joint, away from your hand. Take them out when it is dry.",
            sketches.pinning,
            "Two boards in a corner and two pins that cross",
        ),
        TradeAct(
            "weighing",
            "Press the layers",
            "Lay a flat board on the layers and a book on the board, so that all layers are pressed alike.",
            sketches.weighing,
            "Layers under a flat board and a book",
        ),
        TradeAct(
            "sanding",
            "Sand along a block",
            "Stand a block with square corners beside the edge and lead the sanding stick along it.",
            sketches.sanding,
            "A sanding stick between the work and an upright block",
        ),
    )
}
"""The acts that are told in the same words whatever the design."""

BENDS = ("slitting", "covering_and_slitting", "covering")


def trade_act_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the pages: one, as a rule; none for a design without steps, which has no instructions."""
    if not context.design.steps or not context.parts:
        return ()
    frame = make_frame(context.read_on, False, 0.0)
    text, setter = frame.text, context.type
    across = max(1, min(MOST_ABREAST, int((text.width + GUTTER) // (WIDE + GUTTER))))
    cells = columns(text, across, GUTTER)
    acts = trade_acts(context)
    rows = [acts[start : start + across] for start in range(0, len(acts), across)]
    blocks: list[_SetUnder] = [partial(_row, setter, row, cells) for row in rows]
    blocks.append(partial(_mending, setter, remedies(context), text.left, text.width))
    heights = [block(0.0, 0)[1] + 2 * SPACE for block in blocks]
    room = text.height + 2 * SPACE
    return tuple(
        PageDraft(
            "acts",
            f"acts:{number}",
            TITLE,
            frame,
            partial(_body, tuple(blocks[first:last]), text.top),
            TASK,
        )
        for number, (first, last) in enumerate(share_out(heights, room, room), 1)
    )


def trade_acts(context: Context) -> tuple[TradeAct, ...]:
    """Return the acts that the pack asks for, in the order in which they come."""
    return tuple(_acts(context))


def _acts(context: Context) -> Iterator[TradeAct]:
    told: dict[str, Callable[[Context], TradeAct]] = {"bevelling": _bevel}
    told |= dict.fromkeys(BENDS, _bends)
    for name in trades_of(context.design, context.parts, context.joined):
        yield told[name](context) if name in told else PLAIN[name]


def _bevel(context: Context) -> TradeAct:
    """Return how the steep bevels are cut, along guides that stand."""
    bevels = steep_bevels(context.parts)
    inwards, outwards = any(bevel > 0.0 for bevel in bevels), any(bevel < 0.0 for bevel in bevels)
    on = (
        "what is kept"
        if not inwards
        else f"the waste or a scrap (“{BEVEL_OUT}”: on what is kept)"
        if outwards
        else "the waste or a scrap"
    )
    line = "pencil line" if context.design.use == "trace" else "cut line"
    made = "" if all(guided(context, context.parts)) else NO_GUIDE
    return TradeAct(
        "bevelling",
        "Bevel by its guide",
        f"{made}Stand the guide on {on} at the {line}, fingers behind it. "
        "Lean the blade along it, out through the board; move both.",
        partial(sketches.bevelling, outwards=not inwards, bevel=max(map(abs, bevels))),
        "A triangle on a board; the blade leans along it, between what is kept and what is waste",
    )


def _bends(context: Context) -> TradeAct:
    """Return how pieces are bent: what is glued over them before, and their slits."""
    covers = coverings_of(context.parts, context.needs.cut_list)
    slit = any(part.bending is not None and part.bending.slits for part in context.parts)
    first = [
        f"{'Glue paper' if what == 'paper' else 'Lay tape, strip beside strip,'} over the whole {face} of "
        f"{series(one.letter for one in covers if (one.what, one.face) == (what, face))}"
        for what, face in dict.fromkeys((one.what, one.face) for one in covers)
    ]
    said = f"{'. '.join(first)}. " if covers else ""
    if slit:
        return TradeAct(
            "covering_and_slitting" if covers else "slitting",
            "Cover, slit and bend" if covers else "Slit and bend",
            f"{said}Cut each slit with a blade taped to the depth that its step says. Bend slowly, slits on the hollow side.",
            partial(sketches.slitting, covered=bool(covers)),
            f"A strip with slits that are not cut through{', paper on its other face' if covers else ''}, and the strip bent with its "
            "slits inside",
        )
    return TradeAct(
        "covering",
        "Cover, then bend",
        f"{said}Let it dry flat, then bend it slowly over something round, no narrower than the bend.",
        partial(sketches.slitting, covered=True, slit=False),
        "A strip with paper on one face, and the same bent, the paper outside",
    )


def _used(context: Context) -> set[str]:
    """Return the keys of the tools and materials that a design names."""
    design = context.design
    own = (*design.tools, *(material.name for material in design.materials))
    return {*own, *(one for step in design.steps for one in step.uses)}


def remedies(context: Context) -> tuple[tuple[str, str], ...]:
    """Return what may have gone wrong with this pack’s pieces, each with what helps."""
    found = []
    filling = "filler" if "filler" in _used(context) else "a sliver of foam and glue"
    fit = fit_of(context)
    if fit is not None and fit.slot:
        found.append(("A slot you cut is too wide", "Glue a strip of thin card into it and try again."))
        found.append(
            (
                "A tab you cut sticks",
                "Shave a little off the tab, not off the slot. Do not press harder: crushed foam stays crushed.",
            )
        )
    found += [
        (
            "A joint gapes",
            f"When the glue is dry, fill it with {filling}, and glue a scrap of board behind it.",
        ),
        (
            "A piece broke",
            "Glue the break and let it dry flat. Or cut the piece once more, from a new sheet where what is left is too small.",
        ),
        ("A board is warped", "Give its other face the same coat of thinned glue, and let it dry flat under a weight."),
    ]
    if context.templates:
        found.append(
            ("A template is torn or wet", "Print its page once more in the same way, and measure its square again.")
        )
    return tuple(found)


_SetUnder = Callable[[float, int], tuple[Body, float]]
"""Sets something under a top (mm) of the page with this number; returns it, and how tall it is (mm)."""


def _row(
    setter: Setter, acts: tuple[TradeAct, ...], cells: tuple[Box, ...], top: float, page: int
) -> tuple[Body, float]:
    """Set acts side by side: over each a rule, then its name, its sketch, and what to do."""
    drawn: list[Drawn] = []
    carried = []
    tall = 0.0
    heads = [
        setter.paragraph(act.title, HEADING, cell.left, top - SPACE, cell.width)
        for act, cell in zip(acts, cells[: len(acts)], strict=True)
    ]
    head = max(block.height for block in heads)
    for act, cell, title in zip(acts, cells[: len(acts)], heads, strict=True):
        low = top - SPACE - head - SPACE / 2 - TALL
        pen = SketchPen(setter, (cell.left, low))
        act.sketch(pen)
        words = setter.paragraph(act.say, SMALL, cell.left, low - SPACE, cell.width)
        rule = Stroke(STRONG_RULE, (polyline(((cell.left, top), (cell.right, top))),), Layer.PAGE, tag="artifact")
        drawn += (rule, *title.drawn, *described(pen.drawn, act.shows), *words.drawn)
        field = Box(cell.left, low, cell.left + WIDE, low + TALL).grown(SPACE / 2)
        carried.append(Carried(f"{TRADE}{act.scene}", page, field, Pose(cell.left, low)))
        tall = max(tall, top - low + SPACE + words.height)
    texts = tuple(TextPromise(page, act.say) for act in acts)
    return Body(tuple(drawn), texts=texts, carried=tuple(carried)), tall


def _mending(
    setter: Setter, rows: tuple[tuple[str, str], ...], x: float, width: float, top: float, _page: int
) -> tuple[Body, float]:
    head = setter.paragraph(WENT_WRONG, HEADING, x, top, width)
    wide = min(50.0, width / 3)
    table = make_table(setter, (Column("What you see", wide, bold=True), Column("What to do", width - wide)), rows)
    drawn = (*head.drawn, *table.place(x, top - head.height - SPACE / 2))
    return Body(drawn), head.height + SPACE / 2 + table.height()


def _body(blocks: tuple[_SetUnder, ...], top: float, numbers: Numbers) -> Body:
    body = Body()
    for block in blocks:
        made, tall = block(top, numbers.page)
        body += made
        top -= tall + 2 * SPACE
    return body
