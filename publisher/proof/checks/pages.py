"""The pages: all there, each in its one size, upright, numbered and labelled as promised."""

import re

from publisher.basics import Box, Check, Findings, PagePromise
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import PageRead, normal

SAME_BOX = 0.005  # mm
SAME_SIZE = 0.01  # mm


@judged(
    "proof/page-box",
    "One page size, from the origin",
    "print programs centre and scale by the CropBox; one that differs from the MediaBox "
    f"(by more than {SAME_BOX:g} mm) shifts or enlarges the print",
)
def page_boxes(case: Case, check: Check[Case]) -> Findings:
    """Compare each page's boxes: the MediaBox begins at the origin, and no box differs from it."""
    for page in case.file.pages:
        who, media, crop = page_name(page.number), page.media, page.crop
        shift = max(abs(media.left), abs(media.bottom))
        if media.width < 1 or media.height < 1:
            yield about(check, who, "has no size", "give it a MediaBox")
        elif shift > SAME_BOX:
            what = "does not start at its origin: its lower left corner is at "
            what += f"{media.left:.2f}, {media.bottom:.2f} mm"
            yield about(check, who, what, "let the MediaBox begin at 0 0", shift, 0.0)
        for name, box in page.other_boxes:
            off = _farthest(media, box)
            if off > SAME_BOX:
                what = f"names a {name} of {_size(box)} in a page of {_size(media)}, "
                what += "by which some programs scale or cut the print"
                yield about(check, who, what, f"leave the {name} out", off, 0.0)
        off = _farthest(media, crop)
        if off > SAME_BOX:
            what = f"is cropped: viewers show {_size(crop)} of {_size(media)}, "
            what += "and print programs enlarge or shift such pages"
            yield about(check, who, what, "leave the CropBox out", off, 0.0)
    return len(case.file.pages)


@judged(
    "proof/page-rotated",
    "No turned pages",
    "print programs that turn pages themselves choose another paper direction and scale to fit it",
)
def page_rotated(case: Case, check: Check[Case]) -> Findings:
    """Look at each page's Rotate."""
    for page in case.file.pages:
        if page.rotate:
            what = f"is turned by {page.rotate}° after it was drawn"
            hint = "draw it the way it is to be read, and leave Rotate out"
            yield about(check, page_name(page.number), what, hint, float(page.rotate), 0.0)
    return len(case.file.pages)


@judged(
    "proof/user-unit",
    "Units of 1/72 inch",
    "viewers that ignore UserUnit print at another size than those that follow it",
)
def user_unit(case: Case, check: Check[Case]) -> Findings:
    """Look at each page's UserUnit."""
    for page in case.file.pages:
        if page.user_unit != 1.0:
            what = f"sets its unit to {page.user_unit:g} times 1/72 inch, which some viewers follow and others do not"
            yield about(check, page_name(page.number), what, "leave UserUnit out", page.user_unit, 1.0)
    return len(case.file.pages)


@judged(
    "proof/page-count",
    "All pages there",
    "a missing page is a missing part; a page too many moves all page numbers of the print plan",
)
def page_count(case: Case, check: Check[Case]) -> Findings:
    """Count pages."""
    there, wanted = len(case.file.pages), len(case.promises.pages)
    if there != wanted:
        what = f"has {there} page{'s' * (there != 1)}; promised are {wanted}"
        yield about(check, case.file.name, what, "make the file again", float(there), float(wanted))
    return there


@judged(
    "proof/page-size",
    "Page size as promised",
    f"a page that is not exactly its paper, to {SAME_SIZE:g} mm, is scaled or shifted by print programs",
)
def page_size(case: Case, check: Check[Case]) -> Findings:
    """Compare width and height as a viewer shows them."""
    pages = case.there(case.promises.pages)
    for promise, page in pages:
        off = max(abs(page.width - promise.width), abs(page.height - promise.height))
        if off > SAME_SIZE:
            what = f"is {_size(page)}; promised is {_size(promise)}"
            hint = "give the page the exact size of its paper"
            yield about(check, page_name(page.number), what, hint, off, SAME_SIZE)
    return len(pages)


@judged(
    "proof/page-number",
    "Pages numbered",
    "a buyer prints single pages by the number in the print dialogue, and must find that number on the page",
)
def page_numbers(case: Case, check: Check[Case]) -> Findings:
    """Look for “page n of m” on page n of m."""
    total = len(case.promises.pages)
    pages = case.there(case.promises.pages)
    for number in (promise.page for promise, _ in pages):
        pattern = re.compile(rf"\b[Pp]age {number} of {total}(?![\d.,]?\d)")
        if not any(pattern.search(normal(line.text)) for line in case.lines(number)):
            what = f"does not say that it is page {number} of {total}"
            hint = "print “page n of m” on every page, counted as print programs count"
            yield about(check, page_name(number), what, hint)
    return len(pages)


@judged(
    "proof/page-label",
    "Pages labelled",
    "viewers show the labels in their list of pages; with others than those printed a buyer prints the wrong page",
    may_be_empty=True,
)
def page_labels(case: Case, check: Check[Case]) -> Findings:
    """Compare the labels of pages in the file's own list."""
    labels = case.file.labels
    wanted = [promise for promise, _ in case.there(case.promises.pages) if promise.label]
    if wanted and not labels:
        yield about(check, case.file.name, "has no page labels", "write the labels into the file")
        return len(wanted)
    for promise in wanted:
        label = labels[promise.page - 1]
        if label != promise.label:
            what = f"is labelled “{label}”; promised is “{promise.label}”"
            yield about(check, page_name(promise.page), what, "label pages as print programs count them")
    return len(wanted)


def _size(box: Box | PageRead | PagePromise) -> str:
    return f"{box.width:.2f} × {box.height:.2f} mm"


def _farthest(a: Box, b: Box) -> float:
    """Return how far the farthest side of one box lies from the other's, in mm."""
    return max(a.beyond(b), b.beyond(a))
