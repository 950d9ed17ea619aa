"""All pages of a pack for one paper: makers of pages give drafts; here they are put in order, numbered and drawn."""

from collections.abc import Iterable
from dataclasses import replace

from publisher.basics import (
    BookmarkPromise,
    Box,
    Carried,
    FiducialPromise,
    FileKind,
    Finding,
    FontPromise,
    PagePromise,
    Promises,
    Rule,
    Severity,
    run_checks,
)
from publisher.brief import Inputs
from publisher.design import Design, given_words, promised_paper, text_findings, things_used, trial_words, tried_sizes
from publisher.geometry import Part
from publisher.joints import Joined, sentences_on
from publisher.material import BoardNeeds
from publisher.pages.instructions import (
    act_titles,
    pages_of_use,
    use_links,
    worded_links,
)
from publisher.pages.makers import COVER, ON_SCREEN, PROMISED, TITLES, drafts_of, is_true, makers_of
from publisher.pages.model import Bookmark, Drawn, Pack, PackImage, Page, Paper, Picture, ShownPage
from publisher.pages.record import (
    beside_furniture,
    digests_of,
    drawn_promises,
    ink_id,
    link_promises,
    structure_of,
    tag_promises,
    words_of,
)
from publisher.pages.sheet import (
    CHECKS,
    MOST_COMPOSED,
    SHOWN_DIGITS,
    Body,
    Composed,
    Context,
    Numbers,
    PageDraft,
    PageFault,
    TruePage,
    cleared,
    edition_called,
    furniture,
    heading_of,
    ink_box,
    kept_boxes,
    needs_in,
    own_faults,
    pack_id,
    page_words,
    said_body,
    said_draft,
    said_promises,
    screen_furniture,
    table_words,
    thinned,
    tongue_of,
    too_many_pages,
    untranslated,
)
from publisher.pages.templates import with_top_marks
from publisher.pages.type import Faces, Setter, face, faces_of, tidy

FONT_UNREADABLE = Rule(
    "pages/font-unreadable",
    "A font of the spec cannot be read",
    "words are placed and embedded from the font's own tables",
    Severity.ERROR,
)


def compose(
    design: Design,
    parts: tuple[Part, ...],
    joined: Joined,
    needs: BoardNeeds,
    paper: Paper,
    inputs: Inputs,
    purpose: FileKind = "pack",
    acts: tuple[tuple[str, str], ...] = (),
    shown_pages: tuple[ShownPage, ...] = (),
) -> Pack:
    """Return the pack of one design for one paper, with the promises that the finished file must keep; with another ``purpose`` one of
    the small files that are given beside it; ``acts``: those of the pack, for a phone copy; ``shown_pages``:
    its pages, for the pictures of a shop.

    Raises Refusal when the paper cannot hold a page, PageFault when something of ours stands where it must not.
    """
    faces, findings = _faces(design)
    needs = needs_in(edition_called(paper.edition), needs)
    joined = replace(joined, sentences=sentences_on(design, parts, joined, paper.first))
    trial = trial_words(tried_sizes(design.sizes, (name for name, _ in inputs.sets)))
    tongue = tongue_of(design, paper.title, (name for name, _ in joined.layers), joined.facts)
    context = Context(
        design,
        with_top_marks(parts, joined),
        joined,
        needs,
        paper,
        Setter(faces, tongue),
        trial,
        purpose,
        acts,
        shown_pages,
    )
    findings += text_findings(design, context.facts)
    drafts = tuple(said_draft(draft, tongue) for draft in _within(drafts_of(context), context))
    bodies = _drawn(drafts, context)
    known_as = pack_id(inputs, design.variant, paper, purpose)
    if tongue is not None:
        tongue.known(known_as, known_as[:SHOWN_DIGITS])
    scales = (joined.budget.least, joined.budget.most)
    heading = heading_of(design, paper, known_as, trial, context.boards, purpose, scales)
    pictures = (PackImage(file.name, file.data) for file in design.files if file.kind == "picture")
    digests = digests_of((*faces.files(), *pictures, *(page.image for page in shown_pages)))
    untitled = replace(heading, title="", variant_title="")  # the cover says both itself
    pages: list[Page] = []
    promised: list[PagePromise] = []
    boxes: list[tuple[Box | None, ...]] = []
    whole, uses = Body(), pages_of_use(context, drafts)
    for number, draft in enumerate(drafts, start=1):
        seen, own = bodies[number - 1]
        said = untitled if draft.kind == COVER else heading
        true = own.drawn if is_true(purpose, draft) else None
        around = (
            Body()
            if purpose == "shop"
            else screen_furniture(context.type, draft.frame, draft.title, seen)
            if purpose in ON_SCREEN
            else furniture(context.type, draft.frame, said, draft.title, seen, true)
        )
        body = said_body(own + around, tongue)
        findings += (*draft.findings, *body.findings)
        frame, label = draft.frame, str(number)
        links = (
            *worded_links(faces, own.drawn, number, len(drafts), *page_words(tongue)),
            *use_links(context, own.carried, uses),
        )
        drawn = (*thinned(cleared(body.drawn), frame.width * frame.height), *links)
        reach = tuple(ink_box(faces, thing) for thing in drawn)
        shown = beside_furniture(drawn, reach, body.furniture)
        inked = _unnumbered(faces, draft, seen, around) if seen.names_others else shown
        pages.append(
            Page(
                number,
                label,
                draft.kind,
                tidy(draft.title),
                frame.width,
                frame.height,
                drawn,
                body.tiles,
                ink_id(digests, inked),
                words_of(shown),
                structure_of(drawn, context.type.say(_true_figure(context, draft))),
            )
        )
        boxes.append(reach)
        promised.append(
            PagePromise(
                number,
                frame.width,
                frame.height,
                label,
                draft.kind,
                frame.limit,
                purpose not in ON_SCREEN,
                _task(draft),
                is_true(purpose, draft),
            )
        )
        whole += replace(body, drawn=(), tiles=(), findings=())
    named = f"{design.title}, {design.variant_title}" if design.variant_title else design.title
    title = context.type.say(tidy(" · ".join(filter(None, (named, TITLES[purpose], context.boards, trial)))))
    bookmarks = _bookmarks(context, drafts, whole.carried)
    promises = Promises(
        title, design.language, tuple(promised), whole.lengths, whole.outlines, whole.seams, whole.texts, whole.codes,
        marks=whole.marks, furniture=whole.furniture, rows=needs.promises,
        sheets=needs.ways, work=needs.work, layouts=needs.layouts, sides=joined.sides,
        sentences=joined.sentences, drawings=joined.pictures,
        carried=whole.carried, compasses=whole.compasses,
        drawn=tuple(promise for page in pages for promise in drawn_promises(page.number, page.drawn)),
        bookmarks=tuple(BookmarkPromise(b.title, b.page, b.depth) for b in bookmarks), fiducials=whole.fiducials,
        clear=whole.clear,
        links=tuple(promise for page in pages for promise in link_promises(page.number, page.drawn)),
        tags=tuple(promise for page in pages for promise in tag_promises(page.number, page.structure, page.drawn)),
        prints=joined.prints, figures=joined.figures, sizes=joined.sizes, boards=joined.bought,
        given=(
            trial, paper.title, known_as[:SHOWN_DIGITS], *given_words(design, context.facts, paper.first), *table_words(context.edition),
        ),
        fonts=tuple(FontPromise(font.name, font.data) for font in faces.files()),
        used=things_used(design),
        done=joined.done, needed=joined.needed, said=joined.said,
        paper=None if purpose in ON_SCREEN else promised_paper(design.papers, paper.name),
    )  # fmt: skip
    promises = said_promises(promises, tongue)
    promises = PROMISED[purpose](promises)
    fonts_at = next((file.place for file in design.files if file.kind == "font"), None)
    kept = _kept(drafts, whole.fiducials)
    composed = Composed(tuple(pages), tuple(promised), tuple(boxes), faces, fonts_at, whole.lengths, kept)
    findings += (*run_checks(CHECKS, composed), *untranslated(design, tongue))
    if fault := next(own_faults(composed), ""):
        raise PageFault(fault)
    return Pack(
        id=known_as,
        trial=bool(trial),
        slug=design.slug,
        version=design.version,
        variant=design.variant,
        title=title,
        designer=design.designer,
        licence=design.licence,
        summary=tidy(context.say(design.summary)),
        language=design.language,
        paper=paper,
        pages=tuple(pages),
        bookmarks=bookmarks,
        print_plan=_ranges((_task(draft), number) for number, draft in enumerate(drafts, start=1) if draft.task),
        fonts=faces.files(),
        images=_images(design, shown_pages, pages),
        attachments=(),
        promises=promises,
        findings=tuple(dict.fromkeys(findings)),
        purpose=purpose,
        acts=act_titles(context) if purpose == "pack" else acts,
    )


def _unnumbered(faces: Faces, draft: PageDraft, seen: Numbers, around: Body) -> tuple[Drawn, ...]:
    """Return what a page shows beside its furniture with all numbers of pages 0: it is the same page wherever the others stand."""
    body = draft.body(seen.unnumbered()) + around
    alike = thinned(cleared(body.drawn), draft.frame.width * draft.frame.height)
    return beside_furniture(alike, tuple(ink_box(faces, thing) for thing in alike), around.furniture)


def _kept(drafts: tuple[PageDraft, ...], fiducials: tuple[FiducialPromise, ...]) -> tuple[tuple[Box, ...], ...]:
    """Return for each page where no words may stand: the corner of square and code, and round each fiducial mark."""
    clear: dict[int, tuple[Box, ...]] = {}
    for mark in fiducials:
        clear[mark.page] = (*clear.get(mark.page, ()), *mark.clear)
    return tuple((*kept_boxes(draft.frame), *clear.get(number, ())) for number, draft in enumerate(drafts, start=1))


def _faces(design: Design) -> tuple[Faces, tuple[Finding, ...]]:
    """Return the fonts; a font that cannot be read is a finding, and the pack is set without it."""
    try:
        return faces_of(design), ()
    except ValueError as fault:
        plain = Faces(face("regular"), face("bold"))
        place = next((f.place for f in design.files if f.kind == "font"), None)
        hint = "name a TrueType font (.ttf) that is whole"
        return plain, (FONT_UNREADABLE.found(str(fault), subject="fonts", hint=hint, place=place),)


def _within(drafts: tuple[PageDraft, ...], context: Context) -> tuple[PageDraft, ...]:
    """Return the drafts, or one empty page with the finding that they are too many."""
    if len(drafts) <= MOST_COMPOSED:
        return drafts
    finding = too_many_pages(context, len(drafts), max(context.parts, key=context.copies))
    return (replace(drafts[0], body=lambda _: Body(), bookmarks=(), parts=(), findings=(finding,)),)


PrintPlan = tuple[tuple[str, int, int], ...]


def _drawn(drafts: tuple[PageDraft, ...], context: Context) -> tuple[tuple[Numbers, Body], ...]:
    """Return each page's numbers and its body; pages that must print true are drawn first, so that the others may show them."""
    pages = tuple(enumerate(drafts, start=1))
    keys = tuple((draft.key, page) for page, draft in pages)
    parts = tuple((part, page) for page, draft in pages for part in draft.parts)
    plan = _ranges((_task(draft), page) for page, draft in pages)
    true = tuple(page for page, draft in pages if is_true(context.purpose, draft))
    numbers = Numbers(0, len(drafts), keys, _ranges((d.kind, n) for n, d in pages), parts, plan, true)
    made: dict[int, tuple[Numbers, Body]] = {}
    shown: list[TruePage] = []
    for page in true:
        seen = replace(numbers, page=page)
        draft, body = drafts[page - 1], drafts[page - 1].body(seen)
        made[page] = seen, body
        squares = tuple(line for line in body.lengths if line.purpose == "calibration")
        letters = tuple(part.letter for name in draft.parts if (part := context.part(name)))
        frame = draft.frame
        corner = frame.calibration.width if frame.calibration else 0.0
        size = (frame.width, frame.height)
        shown.append(TruePage(page, *size, letters, body.outlines, squares, corner, body.compasses))
    for page, draft in pages:
        if page not in made:
            seen = replace(numbers, page=page, shown=tuple(shown))
            made[page] = seen, draft.body(seen)
    return tuple(made[page] for page, _ in pages)


def _task(draft: PageDraft) -> str:
    return draft.task[:1].upper() + draft.task[1:]


def _true_figure(context: Context, draft: PageDraft) -> str:
    """Say what the lines of a page at true size show."""
    names = [f"{part.letter} {part.name}" for one in draft.parts if (part := context.part(one))]
    return f"{draft.title}. Outlines at true size: {'; '.join(names)}" if names else draft.title


def _ranges(named: Iterable[tuple[str, int]]) -> PrintPlan:
    """Join pages of one name that follow each other: (name, first, last)."""
    found: list[tuple[str, int, int]] = []
    for name, page in named:
        if found and found[-1][0] == name:
            found[-1] = (name, found[-1][1], page)
        else:
            found.append((name, page, page))
    return tuple(found)


def _bookmarks(context: Context, drafts: tuple[PageDraft, ...], carried: tuple[Carried, ...]) -> tuple[Bookmark, ...]:
    """One entry for each kind of page at depth 0; under it what the drafts ask for, each at the height where its page carries
    what it names."""
    tops = {(where.page, where.key): where.box.top for where in carried}
    called = dict(kind for maker in makers_of(context.purpose) for kind in maker.kinds)
    found: list[Bookmark] = []
    kind = ""
    for number, draft in enumerate(drafts, start=1):
        if draft.kind != kind:
            kind = draft.kind
            found.append(Bookmark(context.type.say(called[draft.kind]), number))
        for title, depth, key in draft.bookmarks:
            found.append(Bookmark(tidy(title), number, max(1, depth), tops.get((number, key))))
    return tuple(found)


def _images(design: Design, shown: tuple[ShownPage, ...], pages: list[Page]) -> tuple[PackImage, ...]:
    """Return the bytes of every picture that a page shows, each once, in the order of the spec's files, then those of pages."""
    placed = {thing.image for page in pages for thing in page.drawn if isinstance(thing, Picture)}
    own = tuple(PackImage(f.name, f.data) for f in design.files if f.name in placed)
    return (*own, *(page.image for page in shown if page.image.name in placed))
