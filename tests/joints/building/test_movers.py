"""What moves as one."""

from collections.abc import Callable

import numpy as np
import pytest

from publisher.geometry import polygon
from publisher.joints.building.movers import faces_of, movers_of, place_of
from tests.joints.building.conftest import BOX


def test_panels_layers_and_things_move_as_one(assembled: Callable) -> None:
    pile = """
  pile: {stack: [{part: lid, count: 3}]}
  yard: {things: {house: {assembly: box}, step: {assembly: pile, at: [200 mm, 0 mm]}}}
"""
    subject = assembled(BOX + pile)
    assert [mover.name for mover in movers_of(subject, "box")] == ["front", "back", "left", "right", "lid"]
    assert [(m.name, m.part) for m in movers_of(subject, "pile")] == [(f"layer_{n}", "lid") for n in (1, 2, 3)]
    assert [(m.name, m.part, len(m.panels)) for m in movers_of(subject, "yard")] == [("house", "", 5), ("step", "", 3)]
    assert movers_of(subject, "hut") == ()
    assert place_of(movers_of(subject, "box")[0]).line == 14


def test_the_faces_of_a_board_close_it(assembled: Callable) -> None:
    """The areas of the faces of a closed body, each along its normal, sum to nothing; by its volume they are a third of position times
    area (the divergence theorem)."""
    for mover in movers_of(assembled(BOX), "box"):
        faces = faces_of(mover)
        vectors, volume = np.zeros(3), 0.0
        for rings, normal in zip(faces.broad, faces.broad_normals, strict=True):
            out = sum(area_of(ring) for ring in rings)
            out = out if out @ normal > 0 else -out
            vectors += out
            volume += float(out @ rings[0][0]) / 3.0
        for quad, normal in zip(faces.narrow, faces.narrow_normals, strict=True):
            out = -area_of(quad)
            assert out @ normal == pytest.approx(np.linalg.norm(out))
            vectors += out
            volume += float(out @ quad[0]) / 3.0
        assert vectors == pytest.approx(np.zeros(3), abs=1e-6)
        part = mover.panels[0].part
        assert volume == pytest.approx(float(polygon(part.outline).area) * part.thickness)


def area_of(ring: np.ndarray) -> np.ndarray:
    return np.cross(ring, np.roll(ring, -1, axis=0)).sum(axis=0) / 2.0
