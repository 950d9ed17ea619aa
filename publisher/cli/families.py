"""The family part of ``publisher check``: packs that meet, compared on every board that one of them is made for."""

from dataclasses import replace

from publisher.basics import Finding
from publisher.brief import Brief
from publisher.design import Design, Size, say
from publisher.joints import MeetingSize, compare_meets, meeting_sizes
from publisher.pipeline import Worked, try_out

BOARD = "board"  # the size that every design of a family calls its board's thickness


def compare_families(worked: tuple[Worked, ...]) -> tuple[Finding, ...]:
    """Return what does not meet among the designs that say ``meets``; () when there are not two of them.

    Each variant is compared as it is, and once more for every other board thickness that the family has.
    """
    members = [w for w in worked if w.design is not None and w.design.meets and w.joined is not None]
    sizes: list[MeetingSize] = []
    findings: list[Finding] = []
    boards = dict.fromkeys(round(s.value, 4) for w in members if w.design and (s := _board(w.design)))
    for one in members:
        if one.design is None or one.joined is None:
            continue
        own, problems = meeting_sizes(_name(one.brief, one.design), one.design, one.joined.facts)
        sizes += own
        findings += problems
        board = _board(one.design)
        for thickness in boards:
            if board is None or abs(thickness - board.value) < 1e-3:
                continue
            tried = try_out(one.brief, one.design.variant, replace(board, value=thickness))
            if tried is not None:
                name = f"{_name(one.brief, one.design)} on {say(thickness, 'length')} board"
                sizes += meeting_sizes(name, *tried)[0]
    if len({size.slug for size in sizes}) < 2:
        return tuple(findings)
    return (*findings, *compare_meets(tuple(sizes)))


def _board(design: Design) -> Size | None:
    return next((s for s in design.sizes if s.name == BOARD and s.kind == "length"), None)


def _name(brief: Brief, design: Design) -> str:
    return f"{brief.slug} ({design.variant})" if design.variant else brief.slug
