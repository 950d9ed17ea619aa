"""The record of a pack: ``facts.json``, attached to its PDF and laid beside it. Whoever judges, measures, compares or shows a pack
later reads it: nothing about a pack has to be worked out again. Its form is ``record.schema.json``, its words are in
``docs/record.md``.

Lengths in mm, angles in degrees; keys sorted, numbers rounded to 0.0001. An unlimited value is null with ``"open": true``.
"""

import json
from dataclasses import replace
from functools import cache
from hashlib import sha256
from math import isinf
from pathlib import Path as FilePath
from typing import Any

from publisher.basics import Arc, AttachmentPromise, Box, Path, Pose, Promises
from publisher.brief import Inputs
from publisher.design import Design, Fact, NeedPlan, Size
from publisher.geometry import Part, Region
from publisher.joints import PENCIL_SPREAD, BoardRange, Joined, Meeting, ScaleBudget
from publisher.material import BoardNeeds, CutRow, Layout, Yield
from publisher.pages.model import Attachment, Pack, Page
from publisher.pages.record.plain import Json, numbers, one_line_each, plain_number
from publisher.pages.sheet import MARK_ARM

RECORD_FORMAT = 2
NAME = "facts.json"


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
            "inputs": _inputs(inputs),
            "versions": [{"name": name, "version": version} for name, version in inputs.versions],
            "design": {
                "slug": design.slug,
                "title": design.title,
                "version": design.version,
                "variant": design.variant,
                "variant_title": design.variant_title,
                "designer": design.designer,
                "licence": design.licence,
                "language": design.language,
                "use": design.use,
            },
            "pack": {
                "id": pack.id,
                "kind": "trial" if pack.trial else "standard",
                "paper": {
                    "name": pack.paper.name,
                    "title": pack.paper.title,
                    "width": plain_number(pack.paper.width),
                    "height": plain_number(pack.paper.height),
                    "margins": numbers(pack.paper.margins),
                },
                "print_plan": [{"task": task, "first": first, "last": last} for task, first, last in pack.print_plan],
            },
            "sizes": [_size(size) for size in design.sizes],
            "facts": [_fact(fact) for fact in joined.facts],
            "needs": [_need(need) for need in design.needs],
            "parts": [_part(part) for part in parts],
            "cut_list": [_cut_row(row) for row in needs.cut_list],
            "boards": [_yield(needed) for needed in needs.yields],
            "budget": _budget(joined.budget, design.use == "trace"),
            "board_ranges": [_board_range(board) for board in joined.boards],
            "meetings": [_meeting(meeting) for meeting in joined.meetings],
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


def _inputs(inputs: Inputs) -> Json:
    return {
        "files": [{"name": f.name, "size": len(f.data), "sha256": f.sha256} for f in inputs.files],
        "sets": [{"name": name, "value": value} for name, value in sorted(inputs.sets)],
    }


def _size(size: Size) -> Json:
    return {"name": size.name, "value": plain_number(size.value), "kind": size.kind, "expression": size.expression}


def _fact(fact: Fact) -> Json:
    said: dict[str, Json] = {"name": fact.name, "value": plain_number(fact.value), "kind": fact.kind}
    if isinf(fact.value):
        said["open"] = True
    return said


def _need(need: NeedPlan) -> Json:
    return {
        "fact": need.fact,
        "at_least": None if need.at_least is None else plain_number(need.at_least),
        "at_most": None if need.at_most is None else plain_number(need.at_most),
        "kind": need.kind,
        "adjust": need.adjust,
    }


def _part(part: Part) -> Json:
    return {
        "id": part.id,
        "letter": part.letter,
        "name": part.name,
        "shape": part.shape,
        "board": part.board,
        "thickness": plain_number(part.thickness),
        "count": part.count,
        "spare": part.spare,
        "mirrored": part.mirrored,
        "whole": part.whole,
        "folded": list(part.folded),
        "trace_allowance": plain_number(part.trace_allowance),
        "outline": region_paths(part.outline),
        "template": region_paths(part.template),
    }


def region_paths(region: Region) -> list[Json]:
    """Return the paths of a region, the outside first: a start, and the lines and arcs that follow it, named by their edge."""
    return [{"start": numbers(path.edges[0].start), "edges": _edges(path)} for path in region.paths]


def _edges(path: Path) -> list[Json]:
    edges: list[Json] = []
    for edge in path.edges:
        said: dict[str, Json] = {"name": edge.name, "to": numbers(edge.end)}
        if isinstance(edge, Arc):
            said |= {
                "centre": numbers(edge.centre),
                "radius": plain_number(edge.radius),
                "sweep": plain_number(edge.sweep),
            }
        edges.append(said)
    return edges


def _cut_row(row: CutRow) -> Json:
    return {
        "part": row.part,
        "letter": row.letter,
        "name": row.name,
        "board": row.board,
        "count": row.count,
        "spare": row.spare,
        "mirrored": row.mirrored,
        "width": plain_number(row.width),
        "height": plain_number(row.height),
        "cut_length": plain_number(row.cut_length),
        "tracings": row.tracings,
        "sturdy": row.sturdy,
    }


def _promises(promises: Promises) -> Json:
    """Return what the rooms promised before there was a page; layouts by the sheet's number, as ``boards`` hold their places."""
    printed = {where.key for where in promises.carried}
    return {
        "layouts": [
            {"key": p.key, "board": p.board, "sheet": p.sheet, "number": p.number, "alike": p.alike, "of": p.total}
            for p in promises.layouts
        ],
        "sides": [
            {"key": p.key, "part": p.part, "mirrored": p.mirrored, "face": p.face, "flip": p.flip, "top": p.top}
            for p in promises.sides
            if p.key in printed
        ],
        "sentences": [
            {
                "key": p.key,
                "text": p.text,
                "numbers": [
                    {
                        "expression": n.expression,
                        "value": plain_number(n.value),
                        "kind": n.kind,
                        "text": n.text,
                    }
                    | ({"open": True} if isinf(n.value) else {})
                    for n in p.numbers
                ],
            }
            for p in promises.sentences
        ],
        "drawings": [
            {
                "key": p.key,
                "drawing": p.drawing,
                "width": plain_number(p.width),
                "height": plain_number(p.height),
                "lines": len(p.lines),
                "fine": len(p.fine),
                "labels": [{"text": text, "at": numbers(at)} for text, at in p.labels],
            }
            for p in promises.drawings
        ],
    }


def _meeting(meeting: Meeting) -> Json:
    return {
        "name": meeting.name,
        "part": meeting.part,
        "what": meeting.what,
        "printed": plain_number(meeting.printed),
        "unprinted_least": plain_number(meeting.unprinted_least),
        "loosest": None if meeting.loosest is None else plain_number(meeting.loosest),
        "grown": plain_number(meeting.grown),
        "kind": meeting.kind,
        "board": meeting.board,
        "boards": plain_number(meeting.boards),
        "thickness": plain_number(meeting.thickness),
        "spread": plain_number(meeting.spread),
    }


def _board_range(board: BoardRange) -> Json:
    """Return the thicknesses that the meetings allow a board; null where nothing limits them."""
    return {
        "board": board.board,
        "sold_as": board.sold_as,
        "thickness": plain_number(board.thickness),
        "spread": plain_number(board.spread),
        "least": plain_number(board.least) if board.least else None,
        "most": None if isinf(board.most) else plain_number(board.most),
        "least_by": board.least_by,
        "most_by": board.most_by,
    }


def _budget(allowed: ScaleBudget, traced: bool) -> Json:
    """Return the allowed print scale; the names are those of meetings, "" for the general band of ±0.5 %. What the pencil strays
    is not counted in it."""
    return {
        "pencil_spread": PENCIL_SPREAD if traced else 0,
        "least": plain_number(allowed.least, 6),
        "most": plain_number(allowed.most, 6),
        "least_by": allowed.least_by,
        "most_by": allowed.most_by,
        "fits_least": plain_number(allowed.fits_least, 6),
        "fits_most": plain_number(allowed.fits_most, 6),
        "fits_least_by": allowed.fits_least_by,
        "fits_most_by": allowed.fits_most_by,
    }


def _yield(needed: Yield) -> Json:
    return {
        "board": needed.board,
        "sheet": {
            "label": needed.sheet.label,
            "width": plain_number(needed.sheet.width),
            "height": plain_number(needed.sheet.height),
        },
        "sheets": [_layout(layout) for layout in needed.sheets],
        "fresh": needed.fresh,
        "left_out": list(needed.left_out),
        "grid_sheets": needed.grid_sheets,
        "bound": needed.bound,
        "offcut_share": plain_number(needed.offcut_share),
        "cut_length": plain_number(needed.cut_length),
        "score_length": plain_number(needed.score_length),
        "cut_lengths": [plain_number(length) for length in needed.cut_lengths],
        "pieces": needed.pieces,
        "free_spares": [{"part": s.part, "copies": s.copies, "or_more": s.capped} for s in needed.spares],
        "alone": [{"part": row.part, "careful": row.careful, "grid": row.grid} for row in needed.rows],
    }


def _layout(layout: Layout) -> Json:
    return {
        "key": layout.key,
        "engine": layout.engine,
        "seed": layout.seed,
        "made_with": layout.made_with,
        "items": [{"part": item.part, "copy": item.copy, "pose": _pose(item.pose)} for item in layout.items],
    }


def _pose(pose: Pose) -> Json:
    return {
        "x": plain_number(pose.x),
        "y": plain_number(pose.y),
        "turn": plain_number(pose.turn, 6),
        "mirrored": pose.mirrored,
    }


def _box(box: Box) -> list[Json]:
    return numbers((box.left, box.bottom, box.right, box.top))


def _page(pack: Pack, page: Page) -> Json:
    promises, number = pack.promises, page.number
    limit = next(p.limit for p in promises.pages if p.page == number)
    return {
        "number": number,
        "kind": page.kind,
        "title": page.title,
        "width": plain_number(page.width),
        "height": plain_number(page.height),
        "ink": page.ink,
        "limit": _box(limit),
        "corner_marks": {"at": [numbers(c) for c in limit.corners()], "arm": MARK_ARM},
        "code": next((_code(c.box, c.text, len(c.modules)) for c in promises.codes if c.page == number), None),
        "rulers": _rulers(pack, number),
        "parts": [
            {
                "part": tile.part,
                "copy": tile.copy,
                "row": tile.row,
                "column": tile.column,
                "pose": _pose(tile.pose),
                "window": None if tile.window is None else _box(tile.window),
            }
            for tile in page.tiles
        ],
        "match_marks": _match_marks(pack, number),
        "carried": [
            {
                "key": where.key,
                "box": _box(where.box),
                "pose": _pose(where.pose),
                "scale": plain_number(where.scale, 6),
                "copy": where.copy,
            }
            for where in promises.carried
            if where.page == number
        ],
        "furniture": [{"kind": f.kind, "box": _box(f.box)} for f in promises.furniture if f.page == number],
        "text": list(page.text),
    }


def _code(box: Box, text: str, modules: int) -> Json:
    return {"box": _box(box), "text": text, "modules": modules}


def _rulers(pack: Pack, number: int) -> list[Json]:
    """Return the lines that a person or a scan may measure: all promised lengths but single graduations."""
    return [
        {
            "kind": line.purpose,
            "label": line.label,
            "start": numbers(line.start),
            "end": numbers(line.end),
            "length": plain_number(line.length),
        }
        for line in pack.promises.lengths
        if line.page == number and line.purpose != "tick"
    ]


def _match_marks(pack: Pack, number: int) -> list[Json]:
    return [
        {
            "label": seam.label,
            "part": seam.part,
            "copy": seam.copy,
            "at": numbers(at),
            "radius": plain_number(seam.radius),
        }
        for seam in pack.promises.seams
        for page, at in zip(seam.pages, seam.at, strict=True)
        if page == number
    ]
