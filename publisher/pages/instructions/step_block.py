"""One step: its number and title, the words at the left, the picture and what is needed at the right, where its cautions stand."""

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from publisher.basics import Box, Carried, Finding, Layer, SentencePromise, TextPromise, polyline, record
from publisher.basics.wording import series
from publisher.design import StepPlan
from publisher.geometry import Part
from publisher.joints import JOINT, WAYS_UP, acts_of_step, copies_taken, covering_of, parts_in_hand, parts_of_act
from publisher.pages.front import cautions_before
from publisher.pages.instructions.act_cells import (
    TALLEST_STEP,
    ActPicture,
    act_cell,
    act_rows,
    pictures_of,
    sketch_cell,
)
from publisher.pages.instructions.broken_views import broken
from publisher.pages.instructions.pack_acts import Act
from publisher.pages.instructions.part_sketches import FIELD_WIDE
from publisher.pages.instructions.step_acts import guided
from publisher.pages.model import Drawn, Link, Stroke
from publisher.pages.sheet import (
    Caution,
    Context,
    cautions_for,
    coarse_photo,
    columns,
    described,
    place_drawing,
    short_name,
    tools_of_acts,
)
from publisher.pages.type import BODY, GUTTER, HEADING, NOTE, RULE, SMALL, SPACE, STRONG_RULE, TITLE, Block

NOWHERE: Mapping[str, int] = MappingProxyType({})  # pages of templates, before pages have numbers
STEP_NUMBER = 13.0  # column for the step's number
PICTURE_SHARE = 0.43  # of the width
NEEDED_SHARE = 0.37  # of it for what is needed, where no picture stands there
LEAST_PICTURE_WIDE = 60.0  # mm: a narrower picture stands under the words
SILHOUETTE = 13.0  # column for a part's small picture
ACT_NUMBER = 8.0  # mm: column for the number of an act of the pack
ABREAST = 150.0  # mm of width from which acts stand in two columns
THREE_ABREAST = 180.0  # mm of width from which they stand in three
NEEDED_NARROW = 20.0  # mm: in less beside another part names break up
NEEDED_WIDE, NEEDED_GAP = 30.0, 2.0  # mm: a part in the list of what is needed, and between two beside one another
STEP_ROW = 12.0  # height of a part in the list of what is needed

# which of the pack's own tools a stage puts into the hand: a step that names no tool itself needs these, and their cautions
STAGE_TOOLS = {
    "glue_templates": ("craft_knife", "steel_rule", "cutting_mat"),
    "cut": ("craft_knife", "hot_wire_cutter", "steel_rule", "cutting_mat"),
    "texture": ("file",),
    "glue": ("hot_glue_gun",),
    "seal": ("file", "spray_can"),
    "paint": ("spray_can",),
}


@record
class StepBlock:
    """A step laid out under a given top: what is drawn, its height, the cautions that it sends to, where its words and its picture
    stand."""

    drawn: tuple[Drawn, ...]
    height: float
    cautions: tuple[Caution, ...]
    carried: tuple[Carried, ...]
    texts: tuple[TextPromise, ...] = ()


def coarse_picture(context: Context, step: StepPlan, number: int, width: float) -> tuple[Finding, ...]:
    """Return the finding for a step's photograph that is too coarse for a text column of this width (mm)."""
    if step.picture is None or step.picture.kind != "photo":
        return ()
    return coarse_photo(context.design, step.picture, width * PICTURE_SHARE, TALLEST_STEP, f"step {number}")


def acts_abreast(count: int, width: float) -> tuple[tuple[int, int], ...]:
    """Return which acts of the pack stand side by side, as (first, one past the last): two, and three where that saves a row."""
    if width < ABREAST:
        return tuple((at, at + 1) for at in range(count))
    three = 3 if width >= THREE_ABREAST and -(-count // 3) < -(-count // 2) else 2
    return tuple((at, min(at + three, count)) for at in range(0, count, three))


def acts_block(
    context: Context, acts: tuple[Act, ...], number: int, box: Box, pages: tuple[int, int], larger: float = 1.0
) -> StepBlock:
    """Lay out the pack's own acts at the top of ``box``, smaller than steps, side by side in columns of their own. ``number``: that of
    the first; ``pages``: their own, and that of the cautions; ``larger``: of their pictures."""
    if len(acts) < 2 or box.width < ABREAST:
        return _act_column(context, acts, number, box, pages, larger)
    cells = columns(box, len(acts), GUTTER)
    blocks = [
        _act_column(context, (act,), at, cell, pages, larger)
        for at, (act, cell) in enumerate(zip(acts, cells, strict=True), number)
    ]
    return StepBlock(
        tuple(thing for block in blocks for thing in block.drawn),
        max(block.height for block in blocks),
        tuple(dict.fromkeys(caution for block in blocks for caution in block.cautions)),
        tuple(title for block in blocks for title in block.carried),
        tuple(text for block in blocks for text in block.texts),
    )


def _act_column(
    context: Context, acts: tuple[Act, ...], number: int, box: Box, pages: tuple[int, int], larger: float
) -> StepBlock:
    """Set acts under each other: title, what to do, what to check."""
    setter = context.type
    left, width = box.left + ACT_NUMBER, box.width - ACT_NUMBER
    block = StepBlock((), 0.0, (), ())
    y = box.top
    for at, act in enumerate(acts, number):
        drawn = _numbered(context, at, Box(box.left, box.bottom, box.right, y))
        y -= SPACE + 0.7
        top = y
        checked = (f"Stop and check: {act.check}", SMALL.bold())
        sketched: tuple[Carried, ...] = ()
        for text, style in ((act.title, HEADING), (act.say, SMALL), *((checked,) if act.check else ())):
            words = setter.paragraph(text, style, left, y, width)
            drawn += words.drawn
            y -= words.height
            if text == act.title and act.sketch is not None:
                narrow = width < FIELD_WIDE
                room = Box(box.left if narrow else left, box.bottom, box.right, y - SPACE)
                picture = sketch_cell(context, act.sketch, room, pages[0], larger)
                drawn += picture.drawn
                sketched = picture.carried
                y -= picture.height + 2 * SPACE
        carried = Carried(f"{act.key}:title", pages[0], Box(left, y, left + width, top))
        keys = tuple(key for key in act.uses if key in context.design.tools)
        caution, height, shown = _cautions(context, keys, (left, y - 0.7, width), pages[1])
        y -= height + SPACE
        block = StepBlock(
            (*block.drawn, *drawn, *caution),
            box.top - y,
            (*block.cautions, *shown),
            (*block.carried, carried, *sketched),
            (*block.texts, *(TextPromise(pages[0], text) for text in (act.title, act.say, act.check) if text)),
        )
    return block


def _numbered(context: Context, number: int, box: Box) -> list[Drawn]:
    """Draw the rule over a step and its number."""
    setter = context.type
    return [
        Stroke(RULE, (polyline(((box.left, box.top), (box.right, box.top))),), Layer.PAGE, tag="artifact"),
        *setter.line(str(number), TITLE.tagged("h2"), box.left, box.top - SPACE - setter.drop(TITLE)),
    ]


def step_block(
    context: Context,
    step: StepPlan,
    own: int,
    box: Box,
    pages: tuple[int, int],
    number: int = 0,
    templates: Mapping[str, int] = NOWHERE,
    some: tuple[int, int] | None = None,
    *,
    goes_on: bool = False,
    larger: float = 1.0,
) -> StepBlock:
    """Lay out one step at the top of ``box``, the design's ``own``-th; ``number`` is the one that is printed, where acts of the pack
    come before it. ``pages``: the step's own, and that of the cautions; ``templates``: by part, the page that shows it. ``some``: of
    its pictures those from one place up to another, where it goes over several pages; a step that ``goes_on`` shows its pictures
    alone. ``larger``: how large pictures are, of what they must be."""
    every = pictures_of(context, step, own)
    begin, end = some or (0, len(every))
    if goes_on:
        drawn = _numbered(context, number or own, box)
        under = Box(box.left + STEP_NUMBER, box.bottom, box.right, box.top - SPACE)
        cells = act_rows(context, every[begin:end], begin + 1, len(every), under, pages[0], larger)
        begun = Carried(f"step:{own}:goes_on", pages[0], replace(box, bottom=box.top - SPACE))
        return StepBlock((*drawn, *cells.drawn), cells.height + SPACE, (), (begun, *cells.carried))
    told = _Told(step, own, number or own, pages, templates, every[:end], len(every), larger)
    return _with_pictures(context, told, box)


@record
class _Told:
    """A step as it is told: it, its own number and the one that is printed, its page and that of the cautions, where templates are; the
    pictures that are shown here, how many it has ``of`` on all pages, and how large they are."""

    step: StepPlan
    own: int
    number: int
    pages: tuple[int, int]
    templates: Mapping[str, int]
    shown: tuple[ActPicture, ...]
    of: int
    larger: float


def _with_pictures(context: Context, told: _Told, box: Box) -> StepBlock:
    """Lay out a step with its pictures: one alone at the right of words and of what is needed, where there is room beside them;
    several in rows below, so that they are read in one order."""
    left = box.left + STEP_NUMBER
    wide = (box.right - left) * PICTURE_SHARE
    if told.of <= 1 and (wide >= LEAST_PICTURE_WIDE or not told.shown):
        return _worded(context, told, box)
    block = _worded(context, replace(told, shown=()), box)
    if not told.shown:
        return block
    below = Box(left, box.bottom, box.right, box.top - block.height - SPACE)
    cells = act_rows(context, told.shown, 1, told.of, below, told.pages[0], told.larger)
    return StepBlock(
        (*block.drawn, *cells.drawn),
        block.height + SPACE + cells.height,
        block.cautions,
        (*block.carried, *cells.carried),
        block.texts,
    )


def _worded(context: Context, told: _Told, box: Box) -> StepBlock:
    """Lay out the words of a step and what is needed, under the words beside a picture, else beside them."""
    step, own, pages = told.step, told.own, told.pages
    setter = context.type
    left, top = box.left + STEP_NUMBER, box.top
    drawn = _numbered(context, told.number, box)
    share = (box.right - left) * (PICTURE_SHARE if told.shown else NEEDED_SHARE)
    width = box.right - left - share - GUTTER
    y = top - SPACE
    title = setter.paragraph(context.say(step.title), HEADING, left, y - 0.7, width)
    y -= title.height + 0.7
    carried = [Carried(f"step:{own}:title", pages[0], Box(left, y, left + width, y + title.height))]
    drawn += title.drawn
    y -= SPACE / 2
    words = setter.paragraph(context.say(step.say), BODY, left, y, width)
    drawn += words.drawn
    y -= words.height
    carried.append(Carried(f"step:{own}:say", pages[0], Box(left, y, left + width, y + words.height)))
    said = said_beside(context, own)
    if told.shown:
        block, held = _lines(context, said, Box(left, box.bottom, left + width, y - SPACE / 2), pages[0])
        drawn, carried = [*drawn, *block.drawn], [*carried, *held]
        y -= block.height + (SPACE / 2 if said else 0.0)
    keys = (*stage_tools(context, step), *step.uses)
    caution, height, warned = _cautions(context, keys, (left, y - SPACE, width), pages[1])
    drawn += caution
    y -= height
    side = Box(box.right - share, box.bottom, box.right, top - SPACE)
    depth = 0.0
    if told.shown:
        cell = act_cell(context, told.shown[0], 0, side, pages[0], told.larger)
        drawn, depth = [*drawn, *cell.drawn], cell.height + SPACE
        carried += cell.carried
        room = Box(left, box.bottom, left + width, y - SPACE)
        beside, needs = _needed(context, step, room, told.templates)
        y -= needs + SPACE
    else:
        room = side
        beside, needs = _needed(context, step, room, told.templates)
        depth = needs
        for one in said:  # each where it makes the step least taller
            block, held = _lines(context, (one,), replace(side, top=side.top - depth - SPACE / 2), pages[0])
            if side.top - depth - block.height >= y - SMALL.leading:
                depth += block.height + SPACE / 2
            else:
                block, held = _lines(context, (one,), Box(left, box.bottom, left + width, y - SPACE / 2), pages[0])
                y -= block.height + SPACE / 2
            drawn, carried = [*drawn, *block.drawn], [*carried, *held]
    carried.append(Carried(f"step:{own}:needs", pages[0], replace(room, bottom=room.top - needs)))
    height = max(top - y, top - side.top + depth)
    return StepBlock((*drawn, *beside), height, warned, tuple(carried))


def said_beside(context: Context, own: int) -> tuple[SentencePromise, ...]:
    """Return what the design's ``own``-th step says of its joints, then of ways up, beside the designer's words."""
    begins = (f"{JOINT}{own}:", f"{WAYS_UP}{own}")
    return tuple(one for one in context.joined.sentences if one.key.startswith(begins[0]) or one.key == begins[1])


def _lines(
    context: Context, said: tuple[SentencePromise, ...], box: Box, page: int
) -> tuple[Block, tuple[Carried, ...]]:
    """Set sentences of ours under one another at the top of a box; return where each stands too."""
    drawn: list[Drawn] = []
    carried = []
    y = box.top
    for one in said:
        block = context.type.paragraph(one.text, SMALL, box.left, y, box.width)
        drawn += block.drawn
        carried.append(Carried(one.key, page, Box(box.left, y - block.height, box.right, y)))
        y -= block.height
    return Block(tuple(drawn), box.top - y), tuple(carried)


def _cautions(
    context: Context, keys: tuple[str, ...], at: tuple[float, float, float], page: int
) -> tuple[tuple[Drawn, ...], float, tuple[Caution, ...]]:
    """Set the names of the cautions of tools and materials beside a bar, with the pages on which they stand; ``page``: the first of
    cautions."""
    cautions = cautions_for(keys, always=False)
    if not cautions:
        return (), 0.0, ()
    left, top, width = at
    standing: dict[int, list[str]] = {}
    for caution in cautions:
        standing.setdefault(page + cautions_before(context, caution.title), []).append(f"“{caution.title}”")
    drawn: list[Drawn] = []
    y = top
    for on, titles in sorted(standing.items()):
        said = f"Caution: read {series(titles)} on page {on}."
        block = context.type.paragraph(said, SMALL.bold(), left + 3.0, y, width - 3.0)
        drawn += block.drawn
        y -= block.height
    bar = Stroke(STRONG_RULE, (polyline(((left + 0.5, top - 0.5), (left + 0.5, y))),), Layer.PAGE, tag="artifact")
    return (bar, *drawn), top - y + SPACE, cautions


def stage_tools(context: Context, step: StepPlan) -> tuple[str, ...]:
    """Return the pack's own tools that a step of this stage takes in hand; none where it names a tool itself: one that says it only
    takes a pencil needs no word about knives."""
    own = context.design.tools
    if any(key in own for key in step.uses):
        return ()
    return tuple(tool for tool in STAGE_TOOLS.get(step.stage, ()) if tool in own)


def things_needed(context: Context, step: StepPlan) -> tuple[str, ...]:
    """Return the keys of what a step takes in hand beside its parts: what it names, and what the pictures of its acts show."""
    named = (*stage_tools(context, step), *step.uses)
    acts = acts_of_step(context, step)
    return tuple(dict.fromkeys((*named, *tools_of_acts(acts, step.uses), *covering_of(context, step))))


def named_things(context: Context, step: StepPlan) -> list[str]:
    """Return the names of what a step takes in hand beside its parts, last what the buyer made of the pages himself."""
    names = [short_name(key, context.edition) for key in things_needed(context, step)]
    bevelled = (
        [part for part, _ in parts_of_act(context, step, "bevel")] if "bevel" in acts_of_step(context, step) else []
    )
    if any(guided(context, bevelled)):
        names.append("bevel guide")
        if any(edge.bevel > 0.0 for part in bevelled for edge in part.edges):
            names.append("scrap under it where little waste is left")
    return names


def _needed(
    context: Context, step: StepPlan, box: Box, templates: Mapping[str, int]
) -> tuple[tuple[Drawn, ...], float]:
    """List the parts of this step with small silhouettes, each a link to its template, then materials, under “You need now”."""
    setter = context.type
    parts = parts_in_hand(context, step)
    names = named_things(context, step)
    if not parts and not names:
        return (), 0.0
    drawn: list[Drawn] = list(setter.line("You need now", SMALL.bold(), box.left, box.top - setter.drop(SMALL)))
    y = box.top - SMALL.leading - 1.0
    least = 2 if box.width >= 2 * NEEDED_NARROW + NEEDED_GAP else 1
    across = max(least, int((box.width + NEEDED_GAP) // (NEEDED_WIDE + NEEDED_GAP)))
    for row in (parts[i : i + across] for i in range(0, len(parts), across)):
        taken = STEP_ROW
        cells = columns(Box(box.left, y - STEP_ROW, box.right, y), across, NEEDED_GAP)
        for part, cell in zip(row, cells, strict=False):
            own, height = _part_cell(context, part, cell, copies_taken(context, part, step))
            drawn += own
            if part.id in templates:
                drawn.append(Link(replace(cell, bottom=min(cell.bottom, cell.top - height)), templates[part.id]))
            taken = max(taken, height)
        y -= taken + 1.0
    if names:
        block = setter.paragraph(", ".join(names), SMALL, box.left, y, box.width)
        drawn += block.drawn
        y -= block.height
    return tuple(drawn), box.top - y


def _part_cell(context: Context, part: Part, cell: Box, count: int) -> tuple[list[Drawn], float]:
    """Draw a part's silhouette with its letter, count and name beside it; return the height (mm) as well: a long name takes more
    lines than the cell is high."""
    setter = context.type
    drawing = context.joined.drawing(f"part:{part.id}")
    drawn: list[Drawn] = []
    if drawing is not None:
        place = Box(cell.left, cell.bottom, cell.left + SILHOUETTE, cell.top)
        drawn += described(place_drawing(setter, broken(drawing), place.grown(-0.5), labels=False, details=False), "")
    left = cell.left + SILHOUETTE + 1.5
    base = cell.top - setter.drop(SMALL) - 0.6
    drawn += setter.line(part.letter, BODY.bold(), left, base)
    at = left + setter.width(part.letter, BODY.bold()) + 1.5
    said, named = f"{count} ×", part.name
    style = next((one for one in (SMALL, NOTE) if at + setter.width(said, one) <= cell.right), None)
    if count and style is not None:
        drawn += setter.line(said, style, at, base)
    elif count:
        named = f"{said} {part.name}"  # no room beside a long letter
    name = setter.paragraph(named, NOTE, left, base - 1.2, cell.right - left)
    return [*drawn, *name.drawn], cell.top - (base - 1.2) + name.height
