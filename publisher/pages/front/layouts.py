"""The pictures of all different sheets, as blocks under each other."""

from dataclasses import replace
from functools import partial

from publisher.basics import LayoutPromise
from publisher.basics.units import inches
from publisher.basics.wording import paired
from publisher.material import Layout, different_sheets, layout_key
from publisher.pages.front.layout_notes import NARROW_NOTES, WIDE_NOTES, Columns, column_height, set_columns
from publisher.pages.front.layout_picture import PictureForm, SheetPicture, bare_picture, layout_picture, sheet_picture
from publisher.pages.front.page_blocks import PageBlock, section_head
from publisher.pages.sheet import Body, Context, Frame, Numbers
from publisher.pages.type import LEAST, SPACE

LAYOUTS = "Layouts to copy"
NOTE = (
    "Each piece shows the number of its place, its letter, and how far its {line} lies from the left (→) and the {end} edge ({way}).{askew}"
    "{cuts}{keep}{rest} The numbers name places; the steps say what is cut when."
)
LINE = "cut line"
PENCIL_LINE = "pencil line, {strays} outside the card,"
ASKEW = " One at an angle: its corners ● and ○; its template points to them."
CUTS = (
    " Thick dashes: straight cuts that part the sheet, in their order, once all pieces are marked out and their openings cut; "
    "each piece is then cut on its own line."
)
KEEP = " Dots: a piece worth keeping."
REST = " What has no room stands in the list."
TALLEST = 130.0  # mm: of a sheet's picture as wide as the page
FORMS = (
    PictureForm(TALLEST, NARROW_NOTES, False),
    *(PictureForm(tallest, NARROW_NOTES, True) for tallest in (TALLEST, 118.0, 108.0, 100.0)),
    *(PictureForm(tallest, WIDE_NOTES, True) for tallest in (93.0, 86.0, 80.0)),
    *(PictureForm(tallest, WIDE_NOTES, True, LEAST) for tallest in (80.0, 74.0, 68.0, 62.0)),
)
"""How pictures may be set, the most legible first: as wide as the page, then smaller, with their lists beside them."""


ROUND_PICTURE_HIGH = 64.0  # mm: heading, note, caption and measure over a sheet’s picture, on a narrow page
LEAST_HIGH = 25.0
LEAST_BESIDE = 150.0
"""mm: on narrower pages no list stands beside a picture, which would be too small to copy."""


def forms_for(frame: Frame) -> tuple[PictureForm, ...]:
    """Return the forms that pictures may have on pages of this frame, the most legible first."""
    room = max(LEAST_HIGH, frame.text.height - ROUND_PICTURE_HIGH)
    forms = FORMS if frame.text.width >= LEAST_BESIDE else tuple(form for form in FORMS if not form.beside)
    return tuple(replace(form, tallest=min(form.tallest, room)) for form in forms)


def layout_blocks(context: Context, frame: Frame, form: PictureForm) -> tuple[PageBlock, ...]:
    """Return the pictures of all different sheets in one form."""
    sheets = [sheet_picture(context, promise, layout, frame.text.width, form) for promise, layout in _laid(context)]
    note = _note(context, sheets)
    over = section_head(context, frame, LAYOUTS, note, 0.0)[1]
    blocks: list[PageBlock] = []
    for sheet in sheets:
        said = sheet.caption_height
        shown, rest = sheet.on_pages(frame.text.height - over, frame.text.height - said)
        blocks.append(
            PageBlock(
                over + shown.height + 1.5 * SPACE,
                partial(_draw, context, frame, shown, "" if blocks else note),
            )
        )
        blocks += (
            PageBlock(
                said + max(map(column_height, columns)) + 1.5 * SPACE,
                partial(_draw_list, context, frame, sheet, columns),
            )
            for columns in rest
        )
        over = 0.0
    return tuple(blocks)


def least_heights(context: Context, frame: Frame, form: PictureForm) -> tuple[float, ...]:
    """Return heights (mm) in their order that the pictures of ``layout_blocks`` reach at the least, whatever words they hold."""
    bare = (bare_picture(context, promise, layout, frame.text.width, form) for promise, layout in _laid(context))
    return tuple(sheet.height + 1.5 * SPACE for sheet in bare)


def _laid(context: Context) -> list[tuple[LayoutPromise, Layout]]:
    """Return all different sheets, with what is promised of each."""
    promised = {promise.key: promise for promise in context.needs.layouts}
    return [
        (promised[layout_key(need, alike.number)], alike.layout)
        for need in context.needs.yields
        for alike in different_sheets(need)
    ]


def _note(context: Context, sheets: list[SheetPicture]) -> str:
    """Say how the pictures are read, and which line of a piece is measured: of what they show only."""
    end, way = _measured_from({sheet.words.turned for sheet in sheets})
    promises = [sheet.promise for sheet in sheets]
    listed = (entry for sheet in sheets for column in sheet.columns for entry in column)
    return NOTE.format(
        line=_line_measured(context, promises),
        end=end,
        way=way,
        askew=ASKEW if any(map(_lies_askew, promises)) else "",
        cuts=CUTS if any(promise.cuts for promise in promises) else "",
        rest=REST if any(entry.letter for entry in listed) else "",
        keep=KEEP if any(promise.offcut for promise in promises) else "",
    )


def _measured_from(turned: set[bool]) -> tuple[str, str]:
    """Return from which edge it is measured, and the arrow that way: of sheets that stand as they are, of turned ones, or of both."""
    if len(turned) > 1:
        return "upper or lower", "↓ or ↑"
    return ("upper", "↓") if True in turned else ("lower", "↑")


def _line_measured(context: Context, promises: list[LayoutPromise]) -> str:
    """Return the line of a piece that is measured: where templates are traced, the pencil's."""
    laid = {place.part for promise in promises for place in promise.places}
    allowance = max((part.trace_allowance for part in context.parts if part.id in laid), default=0.0)
    if not allowance:
        return LINE
    return PENCIL_LINE.format(
        strays=paired(f"{round(allowance, 2):g} mm", f"{inches(allowance):.3f} in", context.paper.first)
    )


def _lies_askew(promise: LayoutPromise) -> bool:
    return any(len(place.measures) > 1 for place in promise.places)


def _draw_list(
    context: Context, frame: Frame, sheet: SheetPicture, columns: Columns, top: float, numbers: Numbers
) -> Body:
    """Draw what the list under a picture has no room for there, under the words of the picture."""
    drawn = sheet.set_caption(context.type, frame.text.left, top)
    top -= sheet.caption_height
    words, carried = set_columns(context.type, columns, frame.text.left, top, numbers.page, sheet.form.notes)
    return Body((*drawn, *words), carried=carried)


def _draw(context: Context, frame: Frame, sheet: SheetPicture, note: str, top: float, numbers: Numbers) -> Body:
    head, height = section_head(context, frame, LAYOUTS, note, top) if note else ((), 0.0)
    drawn, carried = layout_picture(context, sheet, frame.text.left, top - height, numbers.page)
    return Body((*head, *drawn), carried=carried)
