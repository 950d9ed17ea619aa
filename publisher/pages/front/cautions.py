"""The page to read before the first cut: cautions in two columns, how to use a template, what each line means."""

from collections.abc import Callable, Iterator
from functools import partial

from publisher.basics import Box, Carried, Layer, LineKind, Pose, TextPromise, polyline, remembered_few
from publisher.joints import HOW_BEVEL, HOW_TEMPLATE, acts_of_step
from publisher.pages.front.how_to import BEVEL_TALL, TEMPLATE_TALL, bevelling, copying, sketch_shown, tracing
from publisher.pages.front.legend import HATCHED, LOOKS_AWAY, STROKES, STROKES_AND_PATTERN, UPPER_END, kinds_on, legend
from publisher.pages.front.licence import licence_of, licensing
from publisher.pages.front.piles import pile_boxes, piles, piling
from publisher.pages.model import Drawn, Stroke, Words
from publisher.pages.sheet import Body, Caution, Context, Frame, Numbers, PageDraft, cautions_for, columns, make_frame
from publisher.pages.templates import TOP
from publisher.pages.tiles import plan_true_pages
from publisher.pages.type import BODY, GUTTER, HEADING, SMALL, SPACE, STRONG_RULE, Block, TypeStyle

TASK = "Read before you cut"
TITLE = "Before you cut"
CLOSER = ((SMALL, 2 * SPACE), (SMALL, SPACE))
"""Type beside sketches and mm between sections, in turn, where all in larger type does not find room on one page."""

PagesToRead = list[tuple[tuple[Drawn, ...], tuple[str, ...], dict[str, Box]]]
Section = Callable[[float, float, float], Block]  # left side, top and width in mm -> what is drawn
HOW_TALL = {HOW_TEMPLATE: TEMPLATE_TALL, HOW_BEVEL: BEVEL_TALL}


def caution_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return as many pages as cautions, sketches and legend fill: one, as a rule."""
    frame = make_frame(context.read_on, False, 0.0)
    return tuple(
        PageDraft("cautions", f"cautions:{number}", TITLE, frame, partial(_body, drawn, said, boxes), TASK)
        for number, (drawn, said, boxes) in enumerate(_pages(context), 1)
    )


@remembered_few
def cautions_before(context: Context, title: str) -> int:
    """Return on how many of these pages before its own a caution or section of this title does not stand: 0 for the first page."""
    forms = (title, context.type.say(title))
    for index, (drawn, _, _) in enumerate(_pages(context)):
        if any(isinstance(one, Words) and one.text in forms for one in drawn):
            return index
    return 0


def licence_stands_here(context: Context) -> bool:
    """Tell whether the last of these pages has room for a licence whose text is ours."""
    licence = licence_of(context)
    pages = _pages(context) if licence is not None else []
    return any(licence.title in said for _, said, _ in pages) if licence is not None else False


def _body(drawn: tuple[Drawn, ...], said: tuple[str, ...], boxes: dict[str, Box], numbers: Numbers) -> Body:
    texts = tuple(TextPromise(numbers.page, text) for text in said)
    carried = (Carried(key, numbers.page, box, Pose(box.left, box.bottom)) for key, box in boxes.items())
    return Body(drawn, texts=texts, carried=tuple(carried))


def _sections(context: Context, style: TypeStyle) -> list[tuple[Section, tuple[str, ...], str]]:
    """Return what else a cutter must know: only what this pack's own templates call for; with each its words that have figures, and
    the key of its sketch. ``style``: of what is said beside sketches."""
    setter, parts = context.type, context.templates
    found: list[tuple[Section, tuple[str, ...], str]] = []
    tiles = bool(plan_true_pages(context).cut)
    inside = any(part.template.holes or part.openings for part in parts)
    trials = tuple(piles(context).values())
    if trials:
        found.append((partial(piling, setter, trials), trials, ""))
    allowance = max((part.trace_allowance for part in parts), default=0.0)
    if context.design.use == "trace" and allowance > 0.0:
        lined = not kinds_on(parts).isdisjoint((LineKind.DRAW, LineKind.GLUE))
        section = partial(tracing, setter, allowance, context.paper.first, inside, lined=lined, style=style)
        found.append((section, (), HOW_TEMPLATE))
    if any(edge.matches for part in parts for edge in part.edges):
        found.append((partial(copying, setter), (), ""))
    bevels = [edge.bevel for part in parts for edge in part.edges if edge.bevel]
    if bevels:
        found.append((partial(bevelling, setter, min(bevels) < 0.0, style=style), (), HOW_BEVEL))
    slits = any(part.bending is not None and part.bending.slits for part in parts)

    waste = any(part.outline.holes for part in parts)

    def lines(x: float, top: float, width: float) -> Block:
        return legend(
            setter,
            x,
            top,
            width,
            kinds_on(parts),
            across=2 if width >= 130.0 else 1,
            trim=tiles,
            slits=slits,
            waste=waste,
            signs=tuple(_signs(context)),
        )

    return [*found, (lines, (), "")]


def _signs(context: Context) -> Iterator[str]:
    """Yield what the signs mean that the pictures of this pack have."""
    drawings = context.joined.drawings
    weights = {line.weight for drawing in drawings for line in drawing.lines}
    if "hatch" in weights:
        yield STROKES_AND_PATTERN if any(plan.surface for plan in context.design.parts) else STROKES
    if any(label.text == TOP for drawing in drawings for label in drawing.labels):
        yield UPPER_END
    if "behind" in weights:
        yield LOOKS_AWAY
    if any("cut_outlines" in acts_of_step(context, step) for step in context.design.steps):
        yield HATCHED


@remembered_few
def _pages(context: Context) -> PagesToRead:
    """Return what is drawn on each page, its words that are promised: those with figures, and the licence's; and where trials stand. What
    is said beside sketches is set as small as the cautions are, and all closer together, where that saves a page."""
    frame = make_frame(context.read_on, False, 0.0)
    pages = _set(context, frame, BODY, 2 * SPACE)
    for style, gap in CLOSER:
        if len(pages) > 1 and len(closer := _set(context, frame, style, gap)) < len(pages):
            return closer
    return pages


def _set(context: Context, frame: Frame, style: TypeStyle, gap: float) -> PagesToRead:
    """Return the same with one type beside sketches and one gap (mm) between all that stands under each other."""
    design = context.design
    cautions = cautions_for(
        (*design.tools, *(m.name for m in design.materials), *(k for s in design.steps for k in s.uses))
    )
    text = frame.text
    top = text.top - SPACE
    cells = columns(text, 2, GUTTER * 1.5)
    if max((context.type.width(caution.title, HEADING) for caution in cautions), default=0.0) > cells[0].width:
        cells = columns(text, 1, 0.0)  # a small paper: a title is never broken
    pages: list[list[Drawn]] = [[]]
    heights = [_block(context, c, 0.0, 0.0, cells[0].width).height + gap for c in cautions]
    # the columns of a page that is not full are made as alike as can be
    ends = range(len(heights) + 1) if len(cells) > 1 else (0,)
    alike = min(max(sum(heights[:k]), sum(heights[k:])) for k in ends)
    room = min(top - text.bottom, alike)
    column, y, low = 0, top, top
    for caution, height in zip(cautions, heights, strict=True):
        if top - (y - height) > room + 1e-6 and y < top:
            column, y = column + 1, top
            if column == len(cells):
                pages.append([])
                column, y, top, room = 0, text.top - SPACE, text.top - SPACE, text.height
                low = top
        pages[-1] += _block(context, caution, cells[column].left, y, cells[column].width).drawn
        y -= height
        low = min(low, y)
    said: list[tuple[str, ...]] = [() for _ in pages]
    boxes: list[dict[str, Box]] = [{} for _ in pages]
    for section, figures, shows in _sections(context, style):
        low -= gap
        block = section(text.left, low, text.width)
        if low - block.height < text.bottom:
            pages.append([])
            said.append(())
            boxes.append({})
            low = text.top - SPACE
            block = section(text.left, low, text.width)
        pages[-1] += block.drawn
        said[-1] += figures
        if figures:
            places = pile_boxes(context.type, figures, text.left, low, text.width)
            boxes[-1].update(zip(piles(context), places, strict=True))
        if shows:
            boxes[-1][shows] = sketch_shown(text.left, low, HOW_TALL[shows])
        low -= block.height
    licence = licence_of(context)
    if licence is not None:
        block = licensing(context.type, licence, text.left, low - gap, text.width)
        if low - gap - block.height >= text.bottom:
            pages[-1] += block.drawn
            said[-1] += (licence.title, *licence.text)
    return [(tuple(page), words, where) for page, words, where in zip(pages, said, boxes, strict=True)]


def _block(context: Context, caution: Caution, x: float, top: float, width: float) -> Block:
    setter = context.type
    title = setter.line(caution.title, HEADING.tagged("h2"), x, top - setter.drop(HEADING) - 1.0)
    words = setter.paragraph(caution.text, SMALL, x, top - HEADING.leading - 1.0, width)
    rule = Stroke(STRONG_RULE, (polyline(((x, top), (x + width, top))),), Layer.PAGE, tag="artifact")
    return Block((rule, *title, *words.drawn), HEADING.leading + 1.0 + words.height)
