"""Values between rooms as lines of text, one thing a line, lengths in mm with three decimals, angles in degrees; and as JSON.

For those who look at what a room made, and for the golden dumps of the tests.
"""

import re
from collections.abc import Iterable
from dataclasses import fields, is_dataclass
from enum import Enum
from hashlib import sha256
from math import dist, isfinite
from typing import Any

from publisher.basics import Box, Path, Point, Pose
from publisher.design import Design
from publisher.geometry import Part
from publisher.joints import Joined
from publisher.material import BoardNeeds
from publisher.pages import Fill, Link, Pack, Page, Picture, Stroke, Words

PAGE_NUMBER, NUMBER = re.compile(r"\bpages? \d+(?:(?: of | to | and |–|, )\d+)*"), re.compile(r"\d+")
DUMP_DECIMALS = 6  # of numbers in JSON: far below any cut

Json = None | bool | int | float | str | list["Json"] | dict[str, "Json"]


def as_json(value: Any) -> Json:
    """Return any record as JSON: fields by name, tuples as lists, what is not finite as null, bytes by their sum."""
    found: Json
    match value:
        case Enum():
            found = as_json(value.value)
        case None | bool() | int() | str():
            found = value
        case float():
            found = round(value, DUMP_DECIMALS) + 0.0 if isfinite(value) else None
        case bytes():
            found = {"bytes": len(value), "sha256": sha256(value).hexdigest()}
        case dict():
            found = {str(key): as_json(one) for key, one in value.items()}
        case _ if is_dataclass(value):
            found = {field.name: as_json(getattr(value, field.name)) for field in fields(value)}
        case _:
            found = [as_json(one) for one in value]
    return found


def sizes_lines(design: Design) -> list[str]:
    """Return the sizes of a design: name, kind, value, expression."""
    return [f"size {s.name} {s.kind} {s.value:.3f} {s.expression}".rstrip() for s in design.sizes]


def parts_lines(parts: Iterable[Part]) -> list[str]:
    """Return parts with their edges, openings and marks."""
    lines = []
    for part in parts:
        copies = f"{part.count} {part.spare} {part.mirrored}"
        lines.append(f"part {part.letter} {part.id} {part.shape} {part.board} {part.thickness:.3f} {copies}")
        for edge in part.edges:
            arc = "" if edge.centre is None else f" {_point(edge.centre)} {edge.radius:.3f}"
            lines.append(f"edge {edge.name} {_point(edge.start)} {_point(edge.end)}{arc}")
        for hole in part.openings:
            size = f"{hole.width:.3f} {hole.height:.3f}"
            lines.append(f"opening {hole.name} {hole.kind} {size} {hole.centre:.3f} {hole.sill:.3f}")
        for mark in part.marks:
            drawn = (
                f"{len(mark.path.points)} {_around(mark.path.points)} {_length(mark.path.points, mark.path.closed):.2f}"
            )
            lines.append(f"mark {as_json(mark.kind)} {as_json(mark.purpose)} {drawn} {mark.name} {mark.text}".rstrip())
    return lines


def assembly_lines(joined: Joined) -> list[str]:
    """Return how parts go together: layers, placed panels, what each step adds and the way it travels to its place, facts, meetings, the
    print scale that they allow."""
    lines = [
        f"layer {stack} {one.number} {one.part} {one.bottom:.3f} {_pose(one.pose)} {one.section}".rstrip()
        for stack, layers in joined.layers
        for one in layers
    ]
    lines += (
        f"panel {name} {one.place} {one.part} {' '.join(f'{number:.3f}' for number in one.matrix)}"
        for name, placed in joined.placed
        for one in placed
    )
    for act in joined.additions:
        added = "+".join(act.added) if act.together else ",".join(act.added)
        ways = " then ".join(" ".join(f"{number:.3f}" for number in way) for way in act.ways)
        lines.append(f"added {act.step}.{act.number} {act.assembly} {added} {act.how} {ways}".rstrip())
    lines += (f"fact {fact.name} {fact.kind} {fact.value:.3f}" for fact in joined.facts)
    for meeting in joined.meetings:
        loosest = "-" if meeting.loosest is None else f"{meeting.loosest:.3f}"
        lines.append(f"meeting {meeting.name} {meeting.printed:.3f} {meeting.unprinted_least:.3f} {loosest}")
    return [*lines, f"print scale {joined.budget.least:.4f} {joined.budget.most:.4f}"]


def layouts_lines(needs: BoardNeeds) -> list[str]:
    """Return the sheets of the whole cut list, with the place of each copy."""
    lines = []
    for one in needs.yields:
        for number, sheet in enumerate(one.sheets, 1):
            size = f"{one.sheet.width:.3f} {one.sheet.height:.3f}"
            lines.append(f"sheet {one.board} {number} {size} {sheet.engine} {sheet.seed}")
            lines += (f"copy {item.part} {item.copy} {_pose(item.pose)}" for item in sheet.items)
    return lines


def page_lines(page: Page, pack: Pack) -> list[str]:
    """Return what stands on a page, without what another page or another word of the spec decides: the pack's id and page numbers.

    A line that holds one has no ``x`` either, as it moves with the width of the number.
    """
    lines = [f"page {page.kind} {page.title} {page.width:.3f} {page.height:.3f}"]
    for thing in page.drawn:
        if isinstance(thing, Words):
            text, x = thing.text, f"{thing.x:.3f}"
            if f"· {pack.id[:4]} ·" in text:
                text, x = text.replace(f"· {pack.id[:4]} ·", "· #### ·"), "#"
            if PAGE_NUMBER.search(text):
                text, x = PAGE_NUMBER.sub(lambda found: NUMBER.sub("#", found[0]), text), "#"
            lines.append(
                f"words {thing.layer.value} {x} {thing.y:.3f} {thing.size:.3f} {thing.turn:g} {thing.font} {text}"
            )
        elif isinstance(thing, Stroke):
            style = thing.style
            drawn = f"{len(thing.paths)} {_around(_points(thing.paths))}"
            length = sum(_length(path.points, path.closed) for path in thing.paths)
            lines.append(f"stroke {thing.layer.value} {style.name} {style.width:g} {drawn} {length:.2f}")
        elif isinstance(thing, Fill):
            codes = [promise.box for promise in pack.promises.codes if promise.page == page.number]
            count = "code" if any(_within(thing.paths, code) for code in codes) else len(thing.paths)
            lines.append(f"fill {thing.layer.value} {thing.grey:g} {count} {_around(_points(thing.paths))}")
        elif isinstance(thing, Link):
            lines.append(f"link {thing.box.left:.3f} {thing.box.bottom:.3f}")
        elif isinstance(thing, Picture):
            lines.append(f"picture {thing.image} {thing.box.left:.3f} {thing.box.bottom:.3f}")
    return lines


def _point(point: Point) -> str:
    return f"{point[0]:.3f} {point[1]:.3f}"


def _pose(pose: Pose) -> str:
    return f"{pose.x:.3f} {pose.y:.3f} {pose.turn:.3f}{' mirrored' if pose.mirrored else ''}"


def _points(paths: tuple[Path, ...]) -> tuple[Point, ...]:
    return tuple(point for path in paths for point in path.points)


def _around(points: tuple[Point, ...]) -> str:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return f"{min(xs):.3f} {min(ys):.3f} {max(xs):.3f} {max(ys):.3f}"


def _length(points: tuple[Point, ...], closed: bool) -> float:
    return sum(dist(a, b) for a, b in zip(points, points[1:] + (points[:1] if closed else ()), strict=False))


def _within(paths: tuple[Path, ...], room: Box) -> bool:
    return all(
        room.left - 0.01 <= x <= room.right + 0.01 and room.bottom - 0.01 <= y <= room.top + 0.01
        for x, y in _points(paths)
    )
