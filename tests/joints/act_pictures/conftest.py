"""A box of six panels from the text of a spec, whose acts are drawn."""

from collections.abc import Callable

import numpy as np
import pytest

from publisher.joints.act_pictures.planned import draw_acts
from publisher.joints.act_pictures.scene import ActScene
from publisher.joints.act_pictures.scenes import scenes_of
from publisher.joints.assembled import Assembled
from publisher.joints.building import built_by_steps
from publisher.joints.model import Drawing
from tests.joints.building.conftest import BOX, assembled

__all__ = ["assembled"]

WALLS, LID = "box.front, box.left, box.right, box.back", "box.lid"


def drawn(subject: Assembled) -> dict[str, Drawing]:
    return {d.name: d for d in draw_acts(subject, built_by_steps(subject).additions)}


def scenes(subject: Assembled) -> dict[str, ActScene]:
    return {scene.key: scene for scene in scenes_of(subject, built_by_steps(subject).additions)}


def lines(drawing: Drawing, weight: str) -> list[np.ndarray]:
    return [np.array(line.points) for line in drawing.lines if line.weight == weight]


@pytest.fixture
def box(assembled: Callable[..., Assembled]) -> Assembled:
    """A box whose walls are put up in one step and covered in the next."""
    return assembled(BOX, WALLS, LID)
