"""How many pages a pack may have, said by the first that can know it is more."""

from publisher.basics import Finding, Rule, Severity
from publisher.geometry import Part
from publisher.pages.sheet.draft import Context

MOST_COMPOSED = 400  # pages; proof reads no longer file
TOO_MANY_PAGES = Rule(
    "pages/too-many-pages",
    "A pack has no more pages than someone prints",
    "a slip in a count or a size must not fill hundreds of pages; it is said before they are drawn",
    Severity.ERROR,
)


def too_many_pages(context: Context, count: int, part: Part) -> Finding:
    """Return the finding for a pack of ``count`` pages, at the part that is printed most."""
    return TOO_MANY_PAGES.found(
        f"the pack for {context.paper.title} would have {count} pages or more, most of them for part {part.letter} {part.name}; "
        f"at most {MOST_COMPOSED} are printed",
        subject=context.paper.name,
        hint="check counts and sizes; with use: trace one template serves all copies, and a larger paper takes fewer pages",
        place=part.place,
        value=float(count),
        limit=float(MOST_COMPOSED),
    )
