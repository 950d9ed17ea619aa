"""Panels that are taped and folded: flat and edge on edge first, then turned over, at their angle."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from publisher.brief import read_brief
from publisher.design import Rest, work_out
from publisher.geometry import make_parts
from publisher.joints import as_glued
from publisher.joints.act_pictures.fold_scenes import fold_scenes
from publisher.joints.act_pictures.planned import draw_acts
from publisher.joints.act_pictures.scene import ActScene
from publisher.joints.act_pictures.scenes import scenes_of
from publisher.joints.assembled import Assembled
from publisher.joints.building import built_by_steps, movers_of
from publisher.joints.put_together import assemble


@pytest.fixture(scope="module")
def house() -> Assembled:
    design = work_out(read_brief(Path("designs/toll-house")))
    return assemble(design, as_glued(design, make_parts(design)[0]))[0]


def folds(house: Assembled) -> list[ActScene]:
    bodies = {body.name: body for body in movers_of(house, "house")}
    return [scene for act in built_by_steps(house).additions for scene in fold_scenes(house, act, bodies)]


def test_slopes_lie_flat_edge_on_edge_with_their_outside_up(house: Assembled) -> None:
    flat, _ = folds(house)
    one, other = flat.before
    assert np.allclose(one.frame.outward, (0, 0, 1)) and np.allclose(other.frame.outward, (0, 0, 1))
    ends = [
        {tuple(np.round(solid.frame.carry(np.array([[*p, 0.0]]))[0], 3)) for p in solid.part.outline.outer.points}
        for solid in flat.before
    ]
    assert len(ends[0] & ends[1]) == 2, "they share both ends of the ridge"
    assert [label.text for label in flat.labels] == ["2 × C", "tape", "THIS SIDE UP"]


def test_they_are_turned_over_and_folded_to_the_corner_of_the_join(house: Assembled) -> None:
    _, folded = folds(house)
    (one,), (other,) = folded.before, folded.added
    assert np.allclose(one.frame.outward, (0, 0, -1))
    angle = np.degrees(np.arccos(np.clip(one.frame.outward @ other.frame.outward, -1.0, 1.0)))
    assert angle == pytest.approx(90.0) and folded.sweep is not None and folded.sweep.text == "90°"
    heights = other.frame.carry(np.array([(x, y, 0.0) for x, y in other.part.outline.outer.points]))[:, 2]
    assert heights.max() > 50.0 and folded.sweep.path[-1][2] > folded.sweep.path[0][2], "it folds upwards"


def test_what_is_put_together_otherwise_is_not_folded(assembled: Callable[..., Assembled]) -> None:
    from tests.joints.act_pictures.conftest import LID, WALLS, scenes
    from tests.joints.building.conftest import BOX

    assert all(scene.sweep is None for scene in scenes(assembled(BOX, WALLS, LID)).values())


def test_a_roof_that_lifts_off_is_kept_off_by_paper_while_its_glue_dries(house: Assembled) -> None:
    """Where the spec says that it is loose; else it is glued where it rests."""
    additions = built_by_steps(house).additions
    roof = [scene for scene in scenes_of(house, additions) if {s.name for s in scene.added} >= {"left_roof"}][-1]
    assert roof.note == "paper between" and roof.alt.endswith("not glued to it")
    assert all(not scene.note for scene in scenes_of(house, additions) if scene is not roof and scene.key != roof.key)
    drawing = next(one for one in draw_acts(house, additions) if one.name == roof.key)
    assert "paper between" in [label.text for label in drawing.labels]
    kept = [
        replace(
            m,
            assembly=replace(m.assembly, plan=replace(m.assembly.plan, rests=tuple(map(glued, m.assembly.plan.rests)))),
        )
        for m in house.panels
    ]
    assert not any(scene.note for scene in scenes_of(replace(house, panels=tuple(kept)), additions))


def glued(rest: Rest) -> Rest:
    return replace(rest, loose=False)
