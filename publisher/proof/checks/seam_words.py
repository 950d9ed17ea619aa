"""What stands beside a seam: “glue area” on the page on which the other lies, “trim line” on the page that is cut and laid over it."""

import re

from publisher.basics import Check, Findings, SeamPromise
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import TextLine, normal

GLUE = re.compile(r"glue area(?:: page (\d+) lies on it)?")
TRIM = re.compile(r"trim line(?:: cut, then (?:lay )?over page (\d+)(?: lay)?)?")
SIDES = {0: GLUE, 1: TRIM}  # by the place of a page in the promise of a seam: the other lies on the first
SEAM_REACH = 14.0  # mm from the line of a seam's marks to words beside it


@judged(
    "proof/seam-words",
    "Glue areas and trim lines where they belong",
    "whoever trims the page that is to be glued on, or glues over the wrong page, has lost a tile: the page with the glue area is that on "
    f"which the other lies, the words stand on its side of the marks, at most {SEAM_REACH:g} mm off, and they name the other page",
    may_be_empty=True,
)
def seam_words(case: Case, check: Check[Case]) -> Findings:
    """Read the words beside the match marks of each page."""
    looked = 0
    hint = "say on each tile what is done with its own edge, and which page lies beyond it"
    for number in sorted({page for seam in case.promises.seams for page in seam.pages}):
        for line in case.lines(number):
            for place, saying in SIDES.items():
                found = saying.fullmatch(normal(line.text))
                if found is None:
                    continue
                looked += 1
                beside = [
                    seam for seam in case.promises.seams if seam.pages[place] == number and _beside(line, seam, place)
                ]
                others = {seam.pages[1 - place] for seam in beside}
                if not beside:
                    what = f": “{line.text}” stands where no {'other page lies on this' if place == 0 else 'edge of this page is trimmed'}"
                    yield about(check, page_name(number), what, hint)
                elif found[1] and int(found[1]) not in others:
                    what = f": “{line.text}”; it is page {', '.join(map(str, sorted(others)))}"
                    yield about(check, page_name(number), what, hint)
    return looked


def _beside(line: TextLine, seam: SeamPromise, place: int) -> bool:
    """Say whether words stand where a seam's glue area is, right of its marks or under them; or where its edge is trimmed off, left or
    over."""
    (x, y), (at_x, at_y) = line.middle(), seam.at[place]
    way = 1.0 if place == 0 else -1.0
    return 0.0 < way * (x - at_x) <= SEAM_REACH or 0.0 < way * (at_y - y) <= SEAM_REACH
