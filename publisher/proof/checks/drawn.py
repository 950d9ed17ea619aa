"""All that the pages were to show, and nothing else: the last net under the checks that know what a thing means."""

from publisher.basics import Check, DrawnPromise, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import DRAWN_TOLERANCE, Case, first_other

KINDS = {"lines": "lines", "area": "an area", "picture": "a picture"}


@judged(
    "proof/drawn",
    "Pages draw what was placed, and nothing else",
    "any word or line that was changed, moved, added or left out after the pages were made may be one that a buyer acts on; "
    f"words and lines stand within {DRAWN_TOLERANCE:g} mm of their place, in their order",
    may_be_empty=True,
)
def all_drawn(case: Case, check: Check[Case]) -> Findings:
    """Hold what each page paints against what was placed on it; the first difference of a page is named."""
    promised: dict[int, list[DrawnPromise]] = {}
    for promise in case.promises.drawn:
        promised.setdefault(promise.page, []).append(promise)
    for number, things in promised.items():
        page = case.page(number)
        other = None if page is None else first_other(page, things)
        if other is not None:
            what = f": {_said(other.promised)} should come here, and {_said(other.found)} does"
            yield about(check, page_name(number), what, "build the pack again, and leave its pages as they are")
    return len(case.promises.drawn)


def _said(thing: DrawnPromise | None) -> str:
    """Return in words what a thing is and where it stands."""
    if thing is None:
        return "nothing"
    x, y = thing.first
    what = f"“{thing.text.strip()[:60]}”" if thing.kind == "words" else KINDS[thing.kind]
    wide = f" {thing.width:.2f} mm wide" if thing.kind == "lines" else ""
    return f"{what}{wide} at {x:.1f}, {y:.1f} mm"
