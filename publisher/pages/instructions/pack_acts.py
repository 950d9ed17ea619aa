"""What every buyer does before the designer's first step, said by the pack itself: it follows from the paper, the variant and the board.

Print and measure, measure the board, tape what comes in tiles, make the templates, mark out the board; each ends with what to check,
and one number, before what cannot be undone.
"""

from collections.abc import Iterable
from functools import partial

from publisher.basics import Box, record
from publisher.basics.units import inches
from publisher.basics.wording import agreed, counted, fixed, numbered, ordered, paired, say_length, series
from publisher.design import things_used
from publisher.geometry import Part
from publisher.joints import GAUGED, MAKING_CARDS, MARKING_OUT, PRINTING, trials_of
from publisher.material import MOST_TRACINGS, different_sheets
from publisher.pages.front import (
    CARD_THICK,
    CHECK_PAGE,
    INCH_SIDE,
    PILING,
    SQUARE_SIDE,
    boards_to_go_on,
    cautions_before,
    first_to_fail,
    fit_of,
    gauges_on,
    has_two_squares,
    inner_square_words,
    off_within,
    outer_square_words,
    ranges,
    square_between,
)
from publisher.pages.instructions import pack_sketches as sketches
from publisher.pages.instructions.gauge_sketches import gauging
from publisher.pages.instructions.layout_sketches import marking_out
from publisher.pages.instructions.step_acts import ActSketch, guides_of, short_length
from publisher.pages.sheet import PAGE_SQUARE, Context, Numbers
from publisher.pages.templates import Shown, strips_of
from publisher.pages.tiles import Tiling, TruePages, plan_true_pages

WIDEST = (88, 90, 92)  # pages, of which the height of an act is worked out before pages are numbered
MOST_TAPED = 4  # parts of which the sizes are said; of more, their pages say them
SCRAPS = 10  # pieces of it in a pile of which one board's thickness is worked out


@record
class Act:
    """What to do: its title, words, and what must be true before going on; tools and materials that bring their cautions.

    ``key`` is its name on the pages: ``act:tape``.
    """

    key: str
    title: str
    say: str
    check: str = ""
    uses: tuple[str, ...] = ()
    sketch: ActSketch | None = None


def pack_acts(context: Context, numbers: Numbers | None) -> tuple[Act, ...]:
    """Return the acts in their order; without ``numbers`` with page numbers as wide as any. () for a design without parts."""
    if not context.parts:
        return ()
    plan = plan_true_pages(context)
    acts = (_print(context, numbers), _measure(context, numbers), _tape(context, plan, numbers))
    return tuple(act for act in (*acts, _card(context, plan, numbers), _mark_out(context, numbers)) if act is not None)


def act_titles(context: Context) -> tuple[tuple[str, str], ...]:
    """Return key and title of each act that stands before the designer's steps; () where there are none of these."""
    return tuple((act.key, act.title) for act in pack_acts(context, None)) if context.design.steps else ()


def _print(context: Context, numbers: Numbers | None) -> Act:
    others = _beyond_check(numbers.true_pages()) if numbers is not None else WIDEST
    which, must = _square(context)
    outer = f"{INCH_SIDE:g} in" if has_two_squares(context) and outer_square_words(context) else ""
    rest = f" When both readings are right, print {_pages(others)} the same way." if others else ""
    return Act(
        "act:print",
        "Print and measure",
        f"Print page {CHECK_PAGE} at 100 %, one side only, and measure {which} across and down.{rest}",
        must,
        sketch=ActSketch(
            partial(
                sketches.printing,
                check=CHECK_PAGE,
                others=_pages(others) if others else "",
                square=outer or f"{SQUARE_SIDE:g}",
                reading=outer or square_between(context).replace(" and ", " to "),
            ),
            f"Page {CHECK_PAGE} out of a printer, its square measured both ways{'; when that is right, the others' if others else ''}",
            PRINTING,
        ),
    )


def _square(context: Context) -> tuple[str, str]:
    """Name the square that is measured, of two where the print check has them, and say what it must measure, as that page does."""
    between = square_between(context)
    if not has_two_squares(context):
        return "its square", f"both readings lie between {between}."
    outer = outer_square_words(context)
    if not outer:
        return "its inner square", f"both readings of the inner square ({SQUARE_SIDE:g} mm) lie between {between}."
    return (
        f"its outer square ({INCH_SIDE:g} in) or its inner one ({SQUARE_SIDE:g} mm)",
        f"both readings of the outer square are {outer}, or both of the inner one {inner_square_words(context)}.",
    )


def _measure(context: Context, numbers: Numbers | None) -> Act | None:
    every = boards_to_go_on(context)
    known = [(name, ends) for name, ends in every if ends]
    piles = trials_of(context.design, context.joined)
    if not known and not piles:
        return None
    several, gauged = len(every) > 1, gauges_on(context)
    said = [_in_gauge(gauged, all_of_them=len(gauged) == len(every))]
    thick = {
        name: f"the {f'{name} board' if several else 'board'} is {ends.removeprefix('of ')} thick"
        for name, ends in known
    }
    check = f"{'; '.join(thick.values())}."
    sketch = ActSketch(
        partial(gauging, check=CHECK_PAGE, ends="" if several or not known else known[0][1].removeprefix("from ")),
        "A strip of the board on its edge in the gauge, ticked where it fits; too thick for its gap and loose in it, crossed out",
        GAUGED,
    )
    if piles:
        page = (numbers.page_of("cautions:1") if numbers is not None else None) or WIDEST[0]
        page += cautions_before(context, PILING)
        counts = series(f"{pile.scraps} scraps, the layers of the {_words(pile.name)}" for pile in piles)
        said.append(
            f"Cut scraps from board that the layouts leave free, and press them together in a pile: {counts}. "
            f"For another height see “{PILING}” from page {page} on."
        )
        first = context.paper.first
        heights = (f"{pile.scraps} scraps are between {pile.limits_words(first)} high" for pile in piles)
        others = (said for name, said in thick.items() if name != every[0][0])  # the first is that of the pile
        check = f"{'; '.join((series(heights), *others))}."
        high = [(pile.scraps, say_length(pile.height, first=first)) for pile in piles]
        sketch = ActSketch(partial(sketches.piling, piles=high), "Scraps pressed together in a pile beside a rule")
    else:
        said.append(
            f"{'Of each other one' if len(gauged) < len(every) else 'Or'} cut a strip off where the layouts leave board free, "
            f"not at an edge that they measure from, cut it into {SCRAPS} pieces, press them together, measure the pile, "
            f"and divide by {SCRAPS}."
        )
    words = " ".join((*said, *first_to_fail(context)))
    return Act("act:board", f"Measure your board{'s' if several else ''}", words, check, ("craft_knife",), sketch)


def _in_gauge(names: tuple[str, ...], *, all_of_them: bool) -> str:
    """Say what is stood in which gauge."""
    if len(names) > 1:
        which = "each" if all_of_them else series(names)
        return f"Stand a strip of {which} board on its edge in its gauge on page {CHECK_PAGE}."
    which = "your" if all_of_them else f"the {names[0]}"
    return f"Stand a strip of {which} board on its edge in the gauge on page {CHECK_PAGE}."


def _tape(context: Context, plan: TruePages, numbers: Numbers | None) -> Act | None:
    taped = {one.name.strip(): one for one in plan.cut}
    if not taped:
        return None
    first = context.paper.first
    where = {
        name: numbers.pages_of_part(one.sample.part.id) if numbers is not None else WIDEST
        for name, one in taped.items()
    }
    lots = len(taped) > MOST_TAPED
    parts = {one.sample.part.letter: pages for (name, pages), one in zip(where.items(), taped.values(), strict=True)}
    said = "; ".join(f"{letter}: {_pages(pages)}" for letter, pages in parts.items())
    sizes = {name: one.taped(first) for name, one in taped.items()}
    alike = len(set(sizes.values())) == 1
    checks = [f"{'each' if alike and len(sizes) > 1 else name} measures {size}" for name, size in sizes.items()]
    return Act(
        "act:tape",
        "Tape the tiles",
        "Trim one tile of each pair along its trim line, lay it over the other until match marks of the same name cover each other, and "
        f"fix it with masking tape at both ends of the seam. {said}.",
        "taped, each measures what its tiles say."
        if lots and not alike
        else f"taped, {series(dict.fromkeys(checks))}, to within {_taped_off(context, taped.values())}.",
        sketch=ActSketch(
            partial(
                sketches.taping,
                tilings=tuple(taped.values()),
                pages=[f"{letter}: {_pages(pages)}" for letter, pages in parts.items()],
                said=[f"1 × {letter}" for letter in parts],
            ),
            "Tiles with match marks; laid over one another, mark on mark, with tape over both ends of each seam",
            "act:tape:does:tape",
        ),
    )


def _taped_off(context: Context, taped: Iterable[Tiling]) -> str:
    """Return by how much what is taped may be off: as much as its print may be, over the shortest of the longer sides of any, and over
    the shortest side: a print that the print check passes fails neither."""
    sides = [sorted((box.width, box.height)) for box in (Box(*one.laid.bounds) for one in taped)]
    short, long = (off_within(context, min(side[which] for side in sides)) for which in (0, 1))
    return short if short == long else f"{long} along the longer side and {short} along the shorter"


def _card(context: Context, plan: TruePages, numbers: Numbers | None) -> Act | None:
    if context.design.use != "trace" or not context.templates:
        return None
    shown = (*plan.templates, *(page.shown for page in plan.shared))
    strips = {strip.part.id: strip.part.letter for page in shown for strip, _, _ in strips_of(context, page)}
    cards = _cards(context, shown, set(strips))
    guides = len(guides_of(context))
    listed = series(
        [counted(number, what) for number, what in ((len(cards), "template"), (guides, "bevel guide")) if number]
    )
    count = f": {listed}" if listed else ""
    coupon = f", and the fit coupon of page {CHECK_PAGE}," if fit_of(context) else ""
    stick = " with a glue stick" if "stick_glue" in things_used(context.design) else ""
    squares_too = " with their squares" if plan.cut else ""  # which are cut out roughly beside them
    said = [
        f"Stick the prints{squares_too}{coupon}{stick} to thin card, {ordered(CARD_THICK, context.paper.first)}, "
        "and let them dry flat under books.",
        "Measure before you cut.",
        f"Cut along the cut line with a fresh blade{_inside(context)}{count}.",
    ]
    if any(page.nests for page in shown):
        said.append("Of nested templates cut the outermost alone.")
    if strips:
        said.append(f"The compass strip of {series(strips.values())} gets two holes, for a pin and for the pencil.")
    if halves := [part.letter for part in context.templates if part.half]:
        said.append(
            f"Of {series(halves)} half is printed: trace all but its marked side, flip it over along that side, and trace again."
        )
    often = [f"{row.letter} ({row.tracings} times)" for row in context.needs.cut_list if row.sturdy]
    if often:
        said.append(
            f"What is traced more than {MOST_TRACINGS} times wants two layers of card and a spare: {series(often)}."
        )
    squares = (round(page.corner, 3) for page in numbers.previews() if page.corner) if numbers else (PAGE_SQUARE,)
    side = max(squares, default=0.0)  # of the largest a reading tells most
    measured = (
        f"dry on the card, the {side:g} mm square measures between {square_between(context, side)}: half a millimetre off is too much. "
        "If not, print its page again."
    )
    return Act(
        "act:card",
        "Make the templates",
        " ".join(said),
        measured if side else "",
        ("craft_knife",),
        ActSketch(
            partial(
                sketches.making_cards,
                parts=cards,
                guide=max((guide.bevel for guide in guides_of(context)), default=0.0),
                pages=_pages(_beyond_check(numbers.true_pages()) if numbers is not None else WIDEST),
                thick=ordered(CARD_THICK, context.paper.first).partition(" (")[0],
                rough=[part.letter for part in cards] if plan.cut else [],
                square=short_length(context, side) if side else "",
            ),
            "Prints glued on card, dried under books, and the templates that are cut out of it",
            MAKING_CARDS,
        ),
    )


def _mark_out(context: Context, numbers: Numbers | None) -> Act | None:
    copies = {row.letter: row.count + row.spare for row in context.needs.cut_list}
    if not copies or not context.needs.layouts:
        return None
    pages = (numbers.range_of("cut_list") if numbers is not None else None) or WIDEST[:2]
    where = _pages(range(pages[0], pages[1] + 1))
    trace = context.design.use == "trace"
    coupon = "Trace the fit coupon" if trace else "Glue the fit coupon"
    fit = fit_of(context)
    tried = (
        f"{coupon} of page {CHECK_PAGE} first, on board that the layouts leave free, and cut it as you will cut the pieces. "
        if fit
        else ""
    )
    fits = "goes in with a light push" if fit and fit.slot else "lies flush"
    apart = f"{_apart(context)} Lay them"
    laid = ("Lay the templates" if trace else apart) if context.templates else "Lay the pieces out"
    measured = _measured(context, numbers)
    listed, pieces = series(f"{count} × {letter}" for letter, count in copies.items()), sum(copies.values())
    room = (
        " finds room on the board before you cut it"
        if pieces == 1
        else f"{', traced in turn,' if trace else ''} find room on the board before you cut the first"
    )
    return Act(
        "act:mark",
        "Mark out the board",
        f"{tried}{laid} on the board as {where} {'show' if pages[0] != pages[1] else 'shows'}.{measured}{_parted(context)}",
        f"{f'the coupon {fits}, and ' if tried else ''}{counted(pieces, 'piece')} ({listed}){room}.",
        ("craft_knife",) if tried else (),
        sketch=ActSketch(
            partial(
                marking_out,
                layouts=[alike.layout for need in context.needs.yields for alike in different_sheets(need)],
                parts={part.id: part for part in context.parts},
                counted=[(part, context.copies(part)) for part in context.parts],
                coupon=("slot" if fit.slot else "step") if fit is not None else "",
                pages=(str(CHECK_PAGE), ranges(range(pages[0], pages[1] + 1))),
            ),
            "The board with all pieces as the layout shows them; before them the coupon, which fits",
            MARKING_OUT,
        ),
    )


def _apart(context: Context) -> str:
    """Say how close prints are cut out before they are pasted: pieces lie as near to each other as the knife lets them."""
    gap = min(board.knife_gap for board in context.design.boards)
    if gap <= 0.0:
        return "Cut the prints apart along their cut lines."
    said = paired(f"{round(gap, 2):g} mm", f"{fixed(inches(gap), 2)} in", context.paper.first)
    return f"Cut the prints apart, outside their cut lines but by less than half of the {said} that the layout leaves between pieces."


def _parted(context: Context) -> str:
    """Say when the straight cuts come that part a sheet: no step of a design knows of them."""
    straight = any(layout.cuts for layout in context.needs.layouts)
    return (
        " Make the straight cuts there once all is marked out and openings are cut, before any outline."
        if straight
        else ""
    )


def _measured(context: Context, numbers: Numbers | None) -> str:
    """Say which parts have no template, and which pages show their sizes."""
    letters = [part.letter for part in context.measured]
    if not letters:
        return ""
    found = {page for part in context.measured for page in numbers.pages_of_part(part.id)} if numbers else {*WIDEST[:1]}
    return (
        f" {series(letters)} {agreed(len(letters), 'has', 'have')} no template: draw {agreed(len(letters), 'it', 'them')} with "
        f"pencil and rule, by the sizes on {_pages(sorted(found))}."
    )


def _cards(context: Context, shown: Iterable[Shown], strips: set[str]) -> tuple[Part, ...]:
    """Return the parts whose cards are cut out: of a nest the outermost, of ``strips`` none."""
    nested = {sample.part.id for page in shown for nest, _ in page.nests for sample in nest.samples[1:]}
    return tuple(part for part in context.templates if part.id not in strips | nested)


def _inside(context: Context) -> str:
    return ", openings and slots too" if any(part.template.holes or part.openings for part in context.templates) else ""


def _beyond_check(pages: Iterable[int]) -> tuple[int, ...]:
    return tuple(page for page in pages if page != CHECK_PAGE)


def _pages(pages: Iterable[int]) -> str:
    found = tuple(pages)
    return f"{numbered(len(found), 'page')} {ranges(found)}"


def _words(name: str) -> str:
    return name.replace("_", " ")
