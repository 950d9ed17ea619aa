"""Parts and bars that are too thin to cut and to keep."""

from collections.abc import Iterator

import shapely

from publisher.basics import Check, Finding, Findings, Severity, checked
from publisher.basics.wording import lengths_apart, say_length
from publisher.design import Board
from publisher.geometry import Part, behind_paper, polygon
from publisher.joints.assembled import Assembled
from publisher.joints.facts import Narrow, arch_of, narrow_places, short_side, slots_of, tabs_of
from publisher.joints.least_sizes import (
    BAR,
    CROWN,
    FOOT,
    LONG_BAR,
    PAPERED,
    SHORT_BAR,
    TAB,
    THICKNESS,
    WHOLE_PART,
    least,
)
from publisher.joints.outlines import whole_polygon, widest_strip
from publisher.joints.panels import backed_area

THIN_DUST = 0.01  # mm
WINDS = 3.0
"""A part that is this many times longer than its widest place is a strip, however it winds."""

UNBACKED = 0.25
"""Share of a narrow place that no glued board stands behind, from which on it has to hold by itself."""


@checked(
    "joints/part-too-thin",
    "Parts, bars, arches and tabs are wide enough to cut and to keep",
    f"narrow foam tears under the knife or breaks in the hand: in bare foam up to {THICKNESS:g} mm a part is {WHOLE_PART.foam:g} mm "
    f"wide, a bar {SHORT_BAR.foam:g} mm, one longer than {BAR:g} mm {LONG_BAR.foam:g} mm, a crown {CROWN.foam:g} mm, a foot "
    f"{FOOT.foam:g} mm, a tab {TAB.foam:g} mm; more in thicker board, {PAPERED:g} of it with paper; card {WHOLE_PART.card:g} mm "
    "(common practice, no source)",
    Severity.WARNING,
    may_be_empty=True,
)
def part_too_thin(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure every part, every bar, neck, rim and tongue of its outline with its openings, crowns and feet of arches, and tabs."""
    boards = {board.id: board for board in subject.design.boards}
    yield from [finding for part in subject.parts for finding in _thin(part, boards[part.board], subject, check)]
    return len(subject.parts)


def _thin(part: Part, board: Board, subject: Assembled, check: Check[Assembled]) -> Iterator[Finding]:
    wide, wanted = _whole(part), least(WHOLE_PART, board)
    who = f"part {part.letter} ({part.name})"
    if wide < wanted - THIN_DUST:
        has, keeps = lengths_apart(wide, wanted)
        yield check.found(
            f"{who} is {has} wide; {keeps} can be cut and kept (common practice)",
            subject=part.id,
            hint="make it wider, or cut it from card",
            place=part.place,
            value=wide,
            limit=wanted,
        )
    arch = list(_arch(part, board, check))
    yield from arch or _bars(part, board, subject, check)
    limit = least(TAB, board)
    short = min(tabs_of(part), key=lambda tab: tab[1], default=None)
    if short is not None and short[1] < limit - THIN_DUST:
        has, holds = lengths_apart(short[1], limit)
        yield check.found(
            f"{who} has tabs {has} long on its edge “{short[0]}”; {holds} hold (common practice)",
            subject=part.id,
            hint="use fewer tabs there, or make the edge longer",
            place=part.place,
            value=short[1],
            limit=limit,
        )


def _whole(part: Part) -> float:
    """Return how wide a part is (mm): the short side of a rectangle about it, or of one that winds its widest place."""
    body = polygon(part.outline.outer)
    strip = widest_strip(body)
    return strip if body.area > WINDS * strip**2 else short_side(part)


def _bars(part: Part, board: Board, subject: Assembled, check: Check[Assembled]) -> Iterator[Finding]:
    """Find the weakest bar, neck, rim or tongue of a part. Line-up notches and slots have rules of their own, and so has an arch."""
    slots = [polygon(slot) for slot in slots_of(part)]
    body = shapely.union_all([whole_polygon(part), *slots]) if slots else whole_polygon(part)
    places = list(_too_narrow(part, body, least(SHORT_BAR, board), least(LONG_BAR, board)))
    backed = backed_area(part, subject.design.panels, {p.id: p for p in subject.parts}) if places else shapely.Polygon()
    weak = [case for case in places if shapely.difference(case[0].over, backed).area > UNBACKED * case[0].over.area]
    if not weak:
        return
    place, wanted = min(weak, key=lambda case: case[0].width / case[1])
    beside = next(
        (o.name for o in part.openings if polygon(o.ring).distance(shapely.Point(place.at)) <= place.width), ""
    )
    wide, holds = lengths_apart(place.width, wanted)
    yield check.found(
        f"part {part.letter} ({part.name}) is {wide} wide over about {say_length(place.long)} at x {place.at[0]:.1f}, "
        f"y {place.at[1]:.1f} mm{f', beside the opening {beside}' if beside else ''}; {holds} hold (common practice)",
        subject=part.id,
        hint="leave more board there: move openings and cuts apart or make them smaller; frames and glazing bars are cut from card",
        place=part.place,
        value=place.width,
        limit=wanted,
    )


def _too_narrow(part: Part, body: shapely.Polygon, short: float, long: float) -> Iterator[tuple[Narrow, float]]:
    """Yield the places that are narrower than ``short`` mm, and long ones narrower than ``long``, each with what it should be; so of
    what a rabbet leaves behind its paper."""
    for place in narrow_places(body, short):
        yield place, short
    for place in narrow_places(body, long) if long > short else ():
        if place.long > BAR + THIN_DUST:
            yield place, long
    if any(edge.rabbet for edge in part.edges):
        for place in narrow_places(polygon(behind_paper(part)), short):
            yield place, short


def _arch(part: Part, board: Board, check: Check[Assembled]) -> Iterator[Finding]:
    arch = arch_of(part)
    if arch is None:
        return
    for what, size, wanted, hint in (
        (
            "is {} thick over the crown of its arch",
            arch[0],
            least(CROWN, board),
            "raise its top or make the arch flatter",
        ),
        ("has a foot {} wide beside its arch", arch[1], least(FOOT, board), "make it longer or the arch narrower"),
    ):
        if size < wanted - THIN_DUST:
            has, holds = lengths_apart(size, wanted)
            yield check.found(
                f"part {part.letter} ({part.name}) {what.format(has)}; {holds} hold (common practice)",
                subject=part.id,
                hint=hint,
                place=part.place,
                value=size,
                limit=wanted,
            )
