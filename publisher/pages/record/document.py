"""The record of a pack: ``facts.json``, attached to its PDF and laid beside it. Whoever judges, measures, compares or shows a pack
later reads it: nothing about a pack has to be worked out again. Its form is ``record.schema.json``, its words are in
``docs/record.md``.

Lengths in mm, angles in degrees; keys sorted, numbers rounded to 0.0001. An unlimited value is null with ``"open": true``.
"""

import json
from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from hashlib import sha256
from math import isinf
from pathlib import Path as FilePath
from typing import Any, Protocol, TypeVar

from publisher.basics import Arc, AttachmentPromise, Box, NumberPromise, PathEdge, Promises
from publisher.brief import Inputs
from publisher.design import Design, Fact
from publisher.geometry import Part, Region
from publisher.joints import PENCIL_SPREAD, BoardRange, Joined, ScaleBudget
from publisher.material import BoardNeeds, Yield
from publisher.pages.model import Attachment, Pack, Page
from publisher.pages.record.plain import Json, fields, numbers, one_line_each, plain_number
from publisher.pages.sheet import MARK_ARM


class _OnPage(Protocol):
    """What is promised of one page."""

    @property
    def page(self) -> int:
        """Its number."""


Promised = TypeVar("Promised", bound=_OnPage)

RECORD_FORMAT = 2
NAME = "facts.json"
CUT_ROW = "part letter name board count spare mirrored width height cut_length tracings sturdy"
MEETING = "name part what printed unprinted_least loosest grown kind board boards thickness spread"


@cache
def record_schema() -> dict[str, Any]:
    """Return the JSON schema of the record."""
    schema: dict[str, Any] = json.loads((FilePath(__file__).parent / "record.schema.json").read_text(encoding="utf-8"))
    return schema


def record_of(
    design: Design, parts: tuple[Part, ...], joined: Joined, needs: BoardNeeds, pack: Pack, inputs: Inputs
) -> bytes:
    """Return the record of one pack as UTF-8 JSON, ending in a newline. Same input, same bytes."""
    return one_line_each(
        {
            "format": RECORD_FORMAT,
            "inputs": {
                "files": [{"name": f.name, "size": len(f.data), "sha256": f.sha256} for f in inputs.files],
                "sets": [{"name": name, "value": value} for name, value in sorted(inputs.sets)],
            },
            "versions": [{"name": name, "version": version} for name, version in inputs.versions],
            "design": fields(
                design,
                "slug title version variant variant_title designer licence language use",
            ),
            "pack": {
                "id": pack.id,
                "kind": _kind(pack),
                "paper": fields(pack.paper, "name title width height margins"),
                "print_plan": [{"task": task, "first": first, "last": last} for task, first, last in pack.print_plan],
            },
            "sizes": [fields(size, "name value kind expression") for size in design.sizes],
            "facts": [_number(fact, "name value kind") for fact in joined.facts],
            "needs": [fields(need, "fact at_least at_most kind adjust") for need in design.needs],
            "parts": [_part(part) for part in parts],
            "cut_list": [fields(row, CUT_ROW) for row in needs.cut_list],
            "boards": [_yield(needed) for needed in needs.yields],
            "budget": _budget(joined.budget, design.use == "trace"),
            "board_ranges": [_board_range(board) for board in joined.boards],
            "meetings": [fields(meeting, MEETING) for meeting in joined.meetings],
            "promises": _promises(pack.promises),
            "pages": [_page(pack, page) for page in pack.pages],
        }
    )


def with_attachment(pack: Pack, document: bytes) -> Pack:
    """Return the pack with its record attached, and promised: what measures a print trusts it."""
    attached = Attachment(NAME, "What this pack is: sizes, facts, outlines, pages", "application/json", document)
    promised = AttachmentPromise(NAME, sha256(document).hexdigest())
    promises = replace(pack.promises, attachments=(*pack.promises.attachments, promised))
    return replace(pack, attachments=(*pack.attachments, attached), promises=promises)


def _kind(pack: Pack) -> str:
    if pack.purpose != "pack":
        return pack.purpose
    return "trial" if pack.trial else "standard"


def _part(part: Part) -> Json:
    own = "id letter name shape board thickness count spare mirrored whole folded trace_allowance"
    return fields(part, own, outline=region_paths(part.outline), template=region_paths(part.template))


def region_paths(region: Region) -> list[Json]:
    """Return the paths of a region, the outside first: a start, and the lines and arcs that follow it, named by their edge."""
    return [
        {"start": numbers(path.edges[0].start), "edges": [_edge(edge) for edge in path.edges]} for path in region.paths
    ]


def _edge(edge: PathEdge) -> Json:
    return fields(edge, "name centre radius sweep" if isinstance(edge, Arc) else "name", to=numbers(edge.end))


def _number(thing: Fact | NumberPromise, names: str) -> Json:
    """Return what has a value, which may be without limit."""
    return fields(thing, names, open=True) if isinf(thing.value) else fields(thing, names)


def _promises(promises: Promises) -> Json:
    """Return what the rooms promised before there was a page; layouts by the sheet's number, as ``boards`` hold their places."""
    printed = {where.key for where in promises.carried}
    return {
        "layouts": [fields(p, "key board sheet number alike", of=p.total) for p in promises.layouts],
        "sides": [fields(p, "key part mirrored face flip top") for p in promises.sides if p.key in printed],
        "sentences": [
            fields(p, "key text", numbers=[_number(n, "expression value kind text") for n in p.numbers])
            for p in promises.sentences
        ],
        "drawings": [
            fields(
                p,
                "key drawing width height",
                lines=len(p.lines),
                fine=len(p.fine),
                labels=[{"text": text, "at": numbers(at)} for text, at in p.labels],
            )
            for p in promises.drawings
        ],
    }


def _board_range(board: BoardRange) -> Json:
    """Return the thicknesses that the meetings allow a board; null where nothing limits them."""
    least = plain_number(board.least) if board.least else None
    return fields(board, "board sold_as thickness spread most least_by most_by", least=least)


def _budget(allowed: ScaleBudget, traced: bool) -> Json:
    """Return the allowed print scale; the names are those of meetings, "" for the general band of ±0.5 %. What the pencil strays
    is not counted in it."""
    scales = "least most least_by most_by fits_least fits_most fits_least_by fits_most_by"
    return fields(allowed, scales, 6, pencil_spread=PENCIL_SPREAD if traced else 0)


def _yield(needed: Yield) -> Json:
    return fields(
        needed,
        "board fresh left_out grid_sheets bound offcut_share cut_length score_length cut_lengths pieces",
        sheet=fields(needed.sheet, "label width height"),
        sheets=[
            fields(layout, "key engine seed made_with", items=[fields(item, "part copy pose") for item in layout.items])
            for layout in needed.sheets
        ],
        free_spares=[{"part": s.part, "copies": s.copies, "or_more": s.capped} for s in needed.spares],
        alone=[fields(row, "part careful grid") for row in needed.rows],
    )


def _page(pack: Pack, page: Page) -> Json:
    promises, number = pack.promises, page.number
    limit = next(p.limit for p in promises.pages if p.page == number)
    return fields(
        page,
        "number kind title width height ink text",
        limit=numbers(limit.sides),
        parts=[fields(tile, "part copy row column pose window") for tile in page.tiles],
        match_marks=[
            fields(seam, "label part copy radius", at=numbers(at))
            for seam in promises.seams
            for on, at in zip(seam.pages, seam.at, strict=True)
            if on == number
        ],
        carried=[
            fields(where, "key box pose copy", scale=plain_number(where.scale, 6))
            for where in _on(number, promises.carried)
        ],
        furniture=[fields(f, "kind box") for f in _on(number, promises.furniture)],
    ) | _measured(promises, number, limit)


def _measured(promises: Promises, number: int, limit: Box) -> dict[str, Json]:
    """Return what a person or a picture of a page measures it by, and the clear space beside that."""
    codes = (fields(c, "box text", modules=len(c.modules)) for c in _on(number, promises.codes))
    fiducials = _on(number, promises.fiducials)
    arm = next((mark.size for mark in fiducials if not mark.gap), MARK_ARM)
    lines = (line for line in _on(number, promises.lengths) if line.purpose != "tick")  # no single graduations
    return {
        "corner_marks": {"at": [numbers(c) for c in limit.corners()], "arm": arm},
        "code": next(codes, None),
        "rulers": [fields(line, "label start end length", kind=line.purpose) for line in lines],
        "fiducials": [fields(mark, "place centre size gap width") for mark in fiducials],
        "clear": [fields(space, "kind box") for space in _on(number, promises.clear)],
    }


def _on(number: int, promised: Iterable[Promised]) -> list[Promised]:
    """Return what is promised of one page."""
    return [one for one in promised if one.page == number]
