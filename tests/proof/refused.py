"""What proof refuses of a pack that page makers made while one of them is spoilt: promises that they do not make themselves hold."""

from functools import cache
from pathlib import Path

from publisher.basics import errors
from publisher.brief import read_brief
from publisher.pipeline import Worked, building, extras, work
from publisher.press import write_pdf
from publisher.proof import prove

DESIGNS = Path(__file__).parents[2] / "designs"


@cache
def worked_out(slug: str) -> Worked:
    """Return a demo as it is worked out before any page."""
    return work(read_brief(DESIGNS / slug))


def refused_by(slug: str, paper: str = "a4", *, phone: bool = False) -> set[str]:
    """Return the checks that refuse the pack of a demo as it is made now, or its phone copy."""
    worked = worked_out(slug)
    packs, _ = building.compose_packs(worked, (paper,))
    if phone:
        packs = extras.phone_copies(worked, packs)
    return {one.check for pack in packs for one in errors(prove(write_pdf(pack), pack.promises, "a.pdf").findings)}
