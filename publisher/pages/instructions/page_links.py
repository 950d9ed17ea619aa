"""Links for readers on a screen that follow from what pages show: from a page number in words to that page, from a template to the step
that takes its part in hand. What a maker of pages links itself (rows of tables, parts of a step) it draws."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from publisher.basics import Carried
from publisher.pages.model import Drawn, Link, Words
from publisher.pages.sheet import Context, PageDraft, words_box
from publisher.pages.type import Faces

PAGE_WORDS = re.compile(r"\bpages? (\d+(?:-\d+)?(?:(?:, | and )\d+(?:-\d+)?)*)", re.IGNORECASE)
RUN_OF_PAGES = re.compile(r"(\d+)(?:-\d+)?")
BEFORE_USE = ("print", "glue_templates", "cut")  # stages that take templates in hand, and not yet the pieces


def worded_links(
    faces: Faces, drawn: Iterable[Drawn], page: int, total: int, saying: re.Pattern[str] = PAGE_WORDS
) -> Iterator[Link]:
    """Yield a link over each number of another page in level words such as ``page 3`` or ``pages 2, 4-8``; a run leads to its first.
    ``saying``: finds such words in another language."""
    for words in drawn:
        if not isinstance(words, Words) or words.turn:
            continue
        for found in saying.finditer(words.text):
            start = found.start()
            for run in RUN_OF_PAGES.finditer(words.text, *found.span(1)):
                if 1 <= int(run[1]) <= total and int(run[1]) != page:
                    left = words_box(faces, replace(words, text=words.text[:start])).right
                    box = words_box(faces, replace(words, text=words.text[: run.end()]))
                    yield Link(replace(box, left=left), int(run[1]))
                start = run.end()


def pages_of_use(context: Context, drafts: Iterable[PageDraft]) -> dict[str, int]:
    """Return for each part that a step takes in hand the page of the first step that does: of those that take the piece, where any does."""
    pages = {key: number for number, draft in enumerate(drafts, 1) for _, _, key in draft.bookmarks if key}
    found: dict[str, int] = {}
    steps = tuple(enumerate(context.design.steps, 1))
    for late in (True, False):
        for own, step in steps:
            page = pages.get(f"step:{own}:title")
            if page is None or late != (step.stage not in BEFORE_USE):
                continue
            for part in (part for name in step.parts for part in context.to_take(name)):
                found.setdefault(part.id, page)
    return found


def use_links(context: Context, carried: Iterable[Carried], uses: dict[str, int]) -> Iterator[Link]:
    """Yield a link from the words of each template's sides to the page of the step that takes its part in hand."""
    parts = {side.key: side.part for side in context.joined.sides}
    for where in carried:
        if (page := uses.get(parts.get(where.key, ""))) is not None:
            yield Link(where.box, page)
