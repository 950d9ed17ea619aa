"""The only module of the rehearsal that asks the tool what is true: the parts that a design is to have, and where its panels stand."""

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import numpy as np
import numpy.typing as npt
import shapely

from publisher import api
from publisher.basics import Pose
from publisher.geometry import polygon


@lru_cache(maxsize=1)
def _worked(folder: Path, variant: str) -> api.Worked:
    return api.work(api.read(folder), variant)


@dataclass(frozen=True, slots=True, eq=False)
class TruePart:
    """A part as ``geometry`` has it: what is drawn and what is cut, in mm, and how many."""

    letter: str
    template: shapely.Polygon
    outline: shapely.Polygon
    count: int
    spare: int
    mirrored: int
    thickness: float


def true_parts(folder: Path, variant: str = "") -> tuple[TruePart, ...]:
    """Return the parts of the design in a folder."""
    worked = _worked(folder, variant)
    return tuple(
        TruePart(p.letter, polygon(p.template), polygon(p.outline), p.count, p.spare, p.mirrored, p.thickness)
        for p in worked.parts or ()
    )


@dataclass(frozen=True, slots=True, eq=False)
class TruePanel:
    """A panel as ``joints`` places it: the matrix (4 × 4) carries its part's own coordinates to the assembly."""

    part: TruePart
    matrix: npt.NDArray[np.float64]


def true_panels(folder: Path, variant: str = "") -> tuple[tuple[TruePanel, ...], ...]:
    """Return, of each assembly of panels, where they stand; what is bent is left out."""
    worked = _worked(folder, variant)
    parts = {p.id: part for p, part in zip(worked.parts or (), true_parts(folder, variant), strict=True)}
    bent = {p.id for p in worked.parts or () if p.bending is not None}
    assemblies = worked.joined.placed if worked.joined else ()
    return tuple(
        tuple(
            TruePanel(parts[panel.part], np.vstack((np.array(panel.matrix).reshape(3, 4), (0.0, 0.0, 0.0, 1.0))))
            for panel in panels
            if panel.part in parts and panel.part not in bent
        )
        for _, panels in assemblies
    )


def true_stacks(folder: Path, variant: str = "") -> tuple[tuple[TruePanel, ...], ...]:
    """Return, of each stack, where its layers lie: a part's drawn face is its upper one."""
    worked = _worked(folder, variant)
    parts = {p.id: part for p, part in zip(worked.parts or (), true_parts(folder, variant), strict=True)}
    stacks = worked.joined.layers if worked.joined else ()
    return tuple(
        tuple(
            TruePanel(parts[layer.part], _lying(layer.pose, layer.bottom + layer.thickness))
            for layer in layers
            if layer.part in parts
        )
        for _, layers in stacks
    )


def _lying(pose: Pose, height: float) -> npt.NDArray[np.float64]:
    """Return the matrix of a level board: its pose in plan, its drawn face at a height (mm)."""
    (ox, oy), (ax, ay), (bx, by) = pose.apply((0.0, 0.0)), pose.apply((1.0, 0.0)), pose.apply((0.0, 1.0))
    return np.array(
        ((ax - ox, bx - ox, 0.0, ox), (ay - oy, by - oy, 0.0, oy), (0.0, 0.0, 1.0, height), (0.0, 0.0, 0.0, 1.0))
    )
