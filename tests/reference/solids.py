"""Placed panels as solids of manifold3d, and whole assemblies from the text of a spec: what tests of joints are held against.

A solid is the finished outline, extruded by the board's thickness and cut by a plane along every bevelled edge: none of the
package's own computing of inside faces, sections or gaps is in it.
"""

from dataclasses import dataclass
from math import cos, radians, sin, tan
from pathlib import Path

import numpy as np
from manifold3d import Manifold

from publisher.basics import Finding
from publisher.brief import read_brief
from publisher.design import Design, work_out
from publisher.geometry import Part, make_parts
from publisher.joints import Joined, put_together
from tests.random_designs.solids import placed, plate

HEAD = """format: 2
title: Test
version: 1.0.0
use: paste
boards: {foam: {thickness: board, sheets: [20 x 30 in], faces: paper_both, paper: 0.3 mm}}
"""


@dataclass(frozen=True, slots=True)
class Built:
    """A spec worked out as far as it went."""

    design: Design
    parts: dict[str, Part]
    joined: Joined
    findings: tuple[Finding, ...]

    def says(self) -> set[str]:
        """The ids of all that was found."""
        return {finding.check for finding in self.findings}

    def solids(self, assembly: str) -> dict[str, Manifold]:
        """The placed panels of an assembly by place."""
        places = next(places for name, places in self.joined.placed if name == assembly)
        return {p.place: solid(self.parts[p.part], p.matrix) for p in places}


def build(text: str, folder: Path, use: str = "paste") -> Built:
    """Work out a spec: what stands under ``sizes``, ``parts`` and ``assembly`` is the text's."""
    place = folder / "piece"
    place.mkdir(exist_ok=True)
    (place / "spec.yaml").write_text(HEAD.replace("use: paste", f"use: {use}") + text, encoding="utf-8")
    brief = read_brief(place)
    design = work_out(brief)
    parts, found = make_parts(design)
    joined = put_together(design, parts)
    findings = (*brief.findings, *design.findings, *found, *joined.findings)
    return Built(design, {part.id: part for part in parts}, joined, findings)


def solid(part: Part, matrix: tuple[float, ...]) -> Manifold:
    """A placed panel: z = 0 is the drawn face and z = -thickness the inside face of the part."""
    holes = [hole.points for hole in part.outline.holes]
    body = plate(part.outline.outer.points, part.thickness, -part.thickness, holes)
    for edge in part.edges:
        way = np.subtract(edge.end, edge.start)
        if edge.rabbet is not None:
            # cut right through to the rim: these shapes have no inner corner at the ends of an edge
            along, inward = way / np.hypot(*way), edge.rabbet.width * np.array([-way[1], way[0]]) / np.hypot(*way)
            first, last = edge.start - 1000.0 * along, edge.end + 1000.0 * along
            corners = [tuple(first), tuple(last), tuple(last + inward), tuple(first + inward)]
            body = body - plate(corners, part.thickness - edge.rabbet.paper, -part.thickness)
        if edge.bevel == 0.0 or edge.centre is not None:
            continue
        inward = np.array([-way[1], way[0]]) / np.hypot(*way)
        if edge.bevel < 0.0:  # the inside face is the longer one
            out = part.thickness * tan(radians(edge.bevel)) * inward
            corners = [edge.start, edge.end, tuple(edge.end + out), tuple(edge.start + out)]
            body = body + plate(corners, part.thickness, -part.thickness)
        # the plane through the edge that leans into the panel, by the bevel, from the drawn face to the inside face
        normal = np.array([*(cos(radians(edge.bevel)) * inward), sin(radians(edge.bevel))])
        body = body.trim_by_plane(tuple(normal), float(normal[:2] @ np.asarray(edge.start)))
    return placed(body, np.asarray(matrix).reshape(3, 4))
