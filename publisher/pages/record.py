"""The record of a design's packs: ``facts.json``, for other programs and for those who measure a print later.

One JSON document, ``format`` 1, one line per part of it; lengths in mm, angles in degrees; keys sorted,
numbers rounded to 0.0001 (outlines to 0.001).
An unlimited value is null with ``"open": true``.
"""

import json
from dataclasses import replace
from hashlib import sha256
from math import isfinite, isinf

from publisher.basics import AttachmentPromise, Box, Point, Pose
from publisher.design import Design, Fact, Size
from publisher.geometry import Part, Region
from publisher.joints import Joined, Meeting, ScaleBudget
from publisher.material import BoardNeeds, Layout, Yield
from publisher.pages.model import Attachment, Pack, Page
from publisher.pages.sheet import MARK_ARM

FORMAT = 1
NAME = "facts.json"

Json = None | bool | int | float | str | list["Json"] | dict[str, "Json"]


def facts_document(
    design: Design, parts: tuple[Part, ...], joined: Joined, needs: BoardNeeds, packs: tuple[Pack, ...]
) -> bytes:
    """Return the record as UTF-8 JSON, ending in a newline. Same input, same bytes."""
    document: dict[str, Json] = {
        "format": FORMAT,
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
        "sizes": [_size(size) for size in design.sizes],
        "facts": [_fact(fact) for fact in joined.facts],
        "parts": [_part(part) for part in parts],
        "budget": _budget(joined.budget),
        "meetings": [_meeting(meeting) for meeting in joined.meetings],
        "boards": [_yield(needed) for needed in needs.yields],
        "packs": [_pack(pack) for pack in packs],
    }
    lines = [f"{json.dumps(key)}: {_text(value)}" for key, value in sorted(document.items())]
    return ("{\n" + ",\n".join(lines) + "\n}\n").encode()


def with_attachment(pack: Pack, document: bytes) -> Pack:
    """Return the pack with the record attached, and promised: what measures a print trusts it."""
    attached = Attachment(
        NAME, "Sizes, facts, outlines and mark positions of this design", "application/json", document
    )
    promised = AttachmentPromise(NAME, sha256(document).hexdigest())
    promises = replace(pack.promises, attachments=(*pack.promises.attachments, promised))
    return replace(pack, attachments=(*pack.attachments, attached), promises=promises)


def _text(value: Json) -> str:
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":"), allow_nan=False)


def _number(value: float, decimals: int = 4) -> Json:
    """Return a finite number rounded, whole where it is whole; what is not finite has no number."""
    if not isfinite(value):
        return None
    rounded = round(value, decimals)
    return int(rounded) if rounded == int(rounded) else rounded


def _numbers(values: tuple[float, ...], decimals: int = 4) -> list[Json]:
    return [_number(value, decimals) for value in values]


def _size(size: Size) -> Json:
    return {"name": size.name, "value": _number(size.value), "kind": size.kind, "expression": size.expression}


def _fact(fact: Fact) -> Json:
    said: dict[str, Json] = {"name": fact.name, "value": _number(fact.value), "kind": fact.kind}
    if isinf(fact.value):
        said["open"] = True
    return said


def _part(part: Part) -> Json:
    return {
        "id": part.id,
        "letter": part.letter,
        "name": part.name,
        "board": part.board,
        "thickness": _number(part.thickness),
        "count": part.count,
        "spare": part.spare,
        "mirrored": part.mirrored,
        "trace_allowance": _number(part.trace_allowance),
        "outline": _rings(part.outline),
        "template": _rings(part.template),
    }


def _rings(region: Region) -> list[Json]:
    """Return the rings of a region, the outside first, as lists of x, y."""
    return [_ring(ring.points) for ring in (region.outer, *region.holes)]


def _ring(points: tuple[Point, ...]) -> list[Json]:
    return [_numbers(point, 3) for point in points]


def _meeting(meeting: Meeting) -> Json:
    return {
        "name": meeting.name,
        "part": meeting.part,
        "what": meeting.what,
        "printed": _number(meeting.printed),
        "unprinted_least": _number(meeting.unprinted_least),
        "loosest": None if meeting.loosest is None else _number(meeting.loosest),
        "grown": _number(meeting.grown),
    }


def _budget(allowed: ScaleBudget) -> Json:
    """Return the allowed print scale; the names are those of meetings, "" for the general band of ±0.5 %."""
    return {
        "least": _number(allowed.least, 6),
        "most": _number(allowed.most, 6),
        "least_by": allowed.least_by,
        "most_by": allowed.most_by,
        "fits_least": _number(allowed.fits_least, 6),
        "fits_most": _number(allowed.fits_most, 6),
        "fits_least_by": allowed.fits_least_by,
        "fits_most_by": allowed.fits_most_by,
    }


def _yield(needed: Yield) -> Json:
    return {
        "board": needed.board,
        "sheet": {
            "label": needed.sheet.label,
            "width": _number(needed.sheet.width),
            "height": _number(needed.sheet.height),
        },
        "sheets": [_layout(layout) for layout in needed.sheets],
        "grid_sheets": needed.grid_sheets,
        "bound": needed.bound,
        "offcut_share": _number(needed.offcut_share),
        "cut_length": _number(needed.cut_length),
        "score_length": _number(needed.score_length),
        "cut_lengths": [_number(length) for length in needed.cut_lengths],
        "pieces": needed.pieces,
        "free_spares": [{"part": s.part, "copies": s.copies, "or_more": s.capped} for s in needed.spares],
        "alone": [{"part": row.part, "careful": row.careful, "grid": row.grid} for row in needed.rows],
    }


def _layout(layout: Layout) -> Json:
    return {
        "key": layout.key,
        "engine": layout.engine,
        "seed": layout.seed,
        "items": [{"part": item.part, "copy": item.copy, "pose": _pose(item.pose)} for item in layout.items],
    }


def _pose(pose: Pose) -> Json:
    return {"x": _number(pose.x), "y": _number(pose.y), "turn": _number(pose.turn, 6), "mirrored": pose.mirrored}


def _box(box: Box) -> list[Json]:
    return _numbers((box.left, box.bottom, box.right, box.top))


def _pack(pack: Pack) -> Json:
    return {
        "paper": {
            "name": pack.paper.name,
            "width": _number(pack.paper.width),
            "height": _number(pack.paper.height),
            "margins": _numbers(pack.paper.margins),
        },
        "print_plan": [{"task": task, "first": first, "last": last} for task, first, last in pack.print_plan],
        "pages": [_page(pack, page) for page in pack.pages],
    }


def _page(pack: Pack, page: Page) -> Json:
    promise = next(p for p in pack.promises.pages if p.page == page.number)
    tiles: list[Json] = [
        {
            "part": tile.part,
            "copy": tile.copy,
            "row": tile.row,
            "column": tile.column,
            "pose": _pose(tile.pose),
            "window": None if tile.window is None else _box(tile.window),
        }
        for tile in page.tiles
    ]
    return {
        "number": page.number,
        "kind": page.kind,
        "title": page.title,
        "width": _number(page.width),
        "height": _number(page.height),
        "limit": _box(promise.limit),
        "corner_marks": {"at": [_numbers(c) for c in promise.limit.corners()], "arm": MARK_ARM},
        "calibration": _calibration(pack, page.number),
        "code": [{"box": _box(c.box), "text": c.text} for c in pack.promises.codes if c.page == page.number],
        "tiles": tiles,
        "match_marks": _match_marks(pack, page.number),
    }


def _calibration(pack: Pack, number: int) -> list[Json]:
    """Return the sides of the calibration squares of a page."""
    return [
        {"start": _numbers(line.start), "end": _numbers(line.end), "length": _number(line.length)}
        for line in pack.promises.lengths
        if line.page == number and line.purpose == "calibration"
    ]


def _match_marks(pack: Pack, number: int) -> list[Json]:
    return [
        {"label": seam.label, "part": seam.part, "copy": seam.copy, "at": _numbers(at), "radius": _number(seam.radius)}
        for seam in pack.promises.seams
        for page, at in zip(seam.pages, seam.at, strict=True)
        if page == number
    ]
