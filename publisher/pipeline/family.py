"""Several designs, or variants, at a time: on one shopping list, and where they meet each other."""

from functools import partial

from publisher.basics import Finding
from publisher.joints import Member, compare_members
from publisher.material import ListedDesign, Shared, shop_together
from publisher.pipeline.model import Worked
from publisher.pipeline.trying import try_out


def shop(works: tuple[Worked, ...], effort: str = "quick") -> tuple[Shared, ...]:
    """Lay out together what several designs, or variants, cut from the same board. Those that could not be laid out are left out."""
    listed = (
        ListedDesign(f"{one.brief.slug} {one.variant}".strip(), one.design, one.pieces, one.needs)
        for one in works
        if one.design is not None and one.needs is not None
    )
    return shop_together(tuple(listed), effort)


def compare_family(works: tuple[Worked, ...]) -> tuple[Finding, ...]:
    """Return what does not meet among the designs that say at which sizes they meet others."""
    return compare_members(
        tuple(
            Member(one.design, one.joined.facts, partial(try_out, one.brief, one.variant))
            for one in works
            if one.design is not None and one.joined is not None and one.design.meets
        )
    )
