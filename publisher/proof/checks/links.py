"""Links lead to the pages that they were made for."""

from publisher.basics import Check, Findings, LinkPromise
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import LinkRead

LINK_OFF = 0.05  # mm that a side of a link's rectangle may be off


@judged(
    "proof/link",
    "Links lead where they should",
    "a reader on a screen goes by links: one that leads to another page shows another part under the same name",
    may_be_empty=True,
)
def links_lead(case: Case, check: Check[Case]) -> Findings:
    """Compare each page's links inside the file with the promised ones: rectangle and page, in any order, none left over."""
    looked = 0
    promised: dict[int, list[LinkPromise]] = {}
    for promise in case.promises.links:
        promised.setdefault(promise.page, []).append(promise)
    for page in case.file.pages:
        there, wanted = list(page.inner_links), promised.get(page.number, [])
        looked += len(there) + len(wanted)
        for promise in wanted:
            found = [link for link in there if _lies(link, promise)]
            right = next((link for link in found if link.page == promise.to), None)
            if right is not None:
                there.remove(right)
                continue
            there = [link for link in there if link not in found]
            leads = (
                f"leads to page {found[0].page}"
                if found and found[0].page
                else "leads nowhere"
                if found
                else "is missing"
            )
            at = f"{promise.box.left:.0f}, {promise.box.bottom:.0f} mm"
            what = f": the link at {at} to page {promise.to} {leads}"
            yield about(check, page_name(page.number), what, "write each link with the page that it was made for")
        if there:
            what = f": it has {len(there)} links that nobody promised, for one to page {there[0].page}"
            yield about(check, page_name(page.number), what, "write the promised links, and no others")
    return looked


def _lies(link: LinkRead, promise: LinkPromise) -> bool:
    return all(abs(a - b) <= LINK_OFF for a, b in zip(link.box.sides, promise.box.sides, strict=True))
