"""The picture of the finished piece on the cover: what the spec asks for, else every assembly; a photograph beside the drawing."""

from publisher.basics import Box, Carried, Finding, Pose, Rule, Severity
from publisher.basics.wording import say_length
from publisher.design import PicturePlan
from publisher.joints import COVER_PICTURE, LEAST_PICTURE, Drawing, drawing_name, whole_names
from publisher.pages.sheet import Body, Context, coarse_photo, drawing_pose, photo_size, place_drawing, place_photo
from publisher.pages.type import GUTTER

TALLEST_PHOTO = 80.0  # mm
PHOTO_SHARE = 0.5  # of the width: the drawing beside it reads where a printer turns the photograph into coarse dots

NO_COVER_PICTURE = Rule(
    "pages/no-cover-picture",
    "The cover has room for the picture that is asked for",
    f"under {LEAST_PICTURE:g} mm of height nobody sees what the piece is; the words that a cover must carry come first",
    Severity.WARNING,
)


def finished_piece(context: Context, box: Box, page: int) -> Body:
    """Draw the finished piece in the middle of a box of the cover; nothing in one that is too low, with a finding where the spec asks
    for a picture."""
    plan = context.design.cover
    if box.height < LEAST_PICTURE:
        return Body(findings=() if plan is None else (_no_room(plan, box.height),))
    if plan is None:
        return _side_by_side(context, box, page)
    if plan.kind == "photo":
        return _with_photo(context, plan, box, page)
    drawing = context.joined.drawing(drawing_name(plan))
    if drawing is None:
        return Body()
    drawn = place_drawing(context.type, drawing, box, labels=False)
    return Body(drawn, carried=(Carried(COVER_PICTURE, page, box, *drawing_pose(drawing, box)),))


def _with_photo(context: Context, plan: PicturePlan, box: Box, page: int) -> Body:
    """Place a photograph as large as it bears at the left of the box, and the drawing in what it leaves."""
    width, height = (box.width - GUTTER) * PHOTO_SHARE, min(box.height, TALLEST_PHOTO)
    size = photo_size(context.design, plan.target, width, height)
    if size is None:
        return Body()
    photo = Box(box.left, box.bottom, box.left + size[0], box.top)
    beside = Box(photo.right + GUTTER, box.bottom, box.right, box.top)
    drawn = place_photo(context.design, plan.target, photo, context.say(plan.alt))
    return _side_by_side(context, beside, page) + Body(
        drawn,
        carried=(Carried(COVER_PICTURE, page, photo, Pose(), 1.0),),
        findings=coarse_photo(context.design, plan, width, height, "the cover"),
    )


def _side_by_side(context: Context, box: Box, page: int) -> Body:
    """Draw every assembly, without one the first parts, at one scale, side by side in the middle of the box. What stands on or under
    another thing is shown there."""
    names = {f"whole:{name}" for name in whole_names(context.design, context.joined.drawings)}
    whole = [d for d in context.joined.drawings if d.name in names]
    shown: list[Drawing] = whole or [d for d in context.joined.drawings if d.name.startswith("part:")][:3]
    if not shown:
        return Body()
    gaps = GUTTER * (len(shown) - 1)
    wide = sum(d.width for d in shown)
    scale = min((box.width - gaps) / max(wide, 1e-6), box.height / max(1e-6, *(d.height for d in shown)), 1.0)
    left = (box.left + box.right - wide * scale - gaps) / 2
    body = Body()
    for drawing in shown:
        right = left + drawing.width * scale
        place = Box(left, box.bottom, right, box.top)
        carried = (Carried(f"cover:{drawing.name}", page, place, *drawing_pose(drawing, place)),) if whole else ()
        body += Body(place_drawing(context.type, drawing, place, labels=False), carried=carried)
        left = right + GUTTER
    return body


def _no_room(plan: PicturePlan, height: float) -> Finding:
    what = f"the cover leaves {say_length(max(height, 0.0))} of height for the picture, which takes {say_length(LEAST_PICTURE)}"
    hint = "name a larger paper, or shorten title and summary"
    return NO_COVER_PICTURE.found(f"{what}: it has none", subject="the cover", hint=hint, place=plan.place)
