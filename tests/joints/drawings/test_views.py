"""Whole, exploded and plan views: what they must hold, whatever they look like."""

from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
import shapely

from publisher.basics import LineKind, Purpose, polyline
from publisher.brief import read_brief
from publisher.design import PicturePlan, Rabbet, work_out
from publisher.geometry import Mark, make_parts
from publisher.joints import Drawing, put_together
from publisher.joints.drawings import draw
from publisher.joints.drawings.letter_spots import shown
from publisher.joints.drawings.panel_solids import solids_of
from publisher.joints.drawings.panel_views import SHOWN_SHARE, SPREADS, apart, exploded_view
from publisher.joints.drawings.view import PANEL_VIEW
from publisher.joints.panels.bent import is_facet
from publisher.joints.panels.place import PanelAssembly, place_panels


def picture(make: SimpleNamespace, kind: str, target: str, layer: int = 0) -> PicturePlan:
    return PicturePlan(kind, target, layer, None, make.here)  # type: ignore[arg-type]


def lines(drawing: Drawing | None, weight: str) -> list[shapely.LineString]:
    assert drawing is not None
    return [shapely.LineString(line.points) for line in drawing.lines if line.weight == weight]


def box(make: SimpleNamespace) -> object:
    return make.panels(
        "box", {"front": "long", "right": "short", "back": "long", "left": "short"}, "front.bottom",
        make.join("front.right", "right.left"), make.join("right.right", "back.left"), make.join("back.right", "left.left"),
    )  # fmt: skip


def test_pictures_of_steps_are_made_once_and_nothing_else(make: SimpleNamespace) -> None:
    wishes = [
        picture(make, "plan", "s", 2),
        picture(make, "plan", "s", 2),
        picture(make, "exploded", "s"),
        picture(make, "photo", "x"),
    ]
    plan = make.design(stacks=(make.stack("s", ("step", 4, 20.0, (0, 0))),), pictures=tuple(wishes))
    names = [d.name for d in draw(make.assembled(plan, make.stair_layer()))]
    assert names == ["whole:s", "plan:s:2", "exploded:s", "front:s", "above:s", "part:step"]


def test_a_plan_of_a_layer_that_is_not_there_is_left_out(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("step", 4, 20.0, (0, 0))),), pictures=(picture(make, "plan", "s", 9),))
    assert "plan:s:9" not in [d.name for d in draw(make.assembled(plan, make.stair_layer()))]


def test_a_plan_points_at_the_notch_and_shows_what_lies_below(make: SimpleNamespace) -> None:
    plan = make.design(stacks=(make.stack("s", ("step", 4, 20.0, (0, 0))),), pictures=(picture(make, "plan", "s", 3),))
    joined = put_together(plan, (make.stair_layer(notch_at=19.0, joints=27),))
    drawing = joined.drawing("plan:s:3")
    assert len(lines(drawing, "cue")) == 3  # a shaft and two barbs
    assert sum(line.length for line in lines(drawing, "ghost")) > 80  # the front edge below and its stretch of rim
    assert len(lines(drawing, "detail")) > 20
    assert drawing is not None
    assert [label.text for label in drawing.labels] == ["S", "S"]


def test_layers_are_drawn_apart_with_the_letters_of_their_parts(make: SimpleNamespace) -> None:
    stack = make.stack("s", ("plinth", 1, 0.0, (0, 0)), ("step", 4, 20.0, (0, 0)))
    plan = make.design(stacks=(stack,), pictures=(picture(make, "exploded", "s"),))
    joined = put_together(plan, (make.disc(), make.stair_layer()))
    apart, whole = joined.drawing("exploded:s"), joined.drawing("whole:s")
    assert apart is not None
    assert whole is not None
    assert apart.height > 1.5 * whole.height
    assert [label.text for label in apart.labels] == ["P", "S", "S"]


def test_a_box_of_panels_shows_three_faces(make: SimpleNamespace) -> None:
    joined = put_together(make.design(panels=(box(make),)), (make.wall("long", 120, 50), make.wall("short", 80, 50)))
    whole = joined.drawing("whole:box")
    assert whole is not None
    assert whole.width == pytest.approx(120 * np.cos(np.radians(38)) + 80 * np.sin(np.radians(38)), abs=0.02)
    # an open box: the inside of the far walls shows above the near ones, so more than the nine edges of a solid
    assert len(lines(whole, "outline")) > 9


def test_exploded_panels_carry_their_letters(make: SimpleNamespace) -> None:
    plan = make.design(panels=(box(make),), pictures=(picture(make, "exploded", "box"),))
    joined = put_together(plan, (make.wall("long", 120, 50), make.wall("short", 80, 50)))
    drawing = joined.drawing("exploded:box")
    assert drawing is not None
    assert sorted(label.text for label in drawing.labels) == ["L", "L", "S", "S"]


def test_a_pattern_is_drawn_on_the_face_that_shows(make: SimpleNamespace) -> None:
    rows = tuple(
        Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, 10.0 * i), (120.0, 10.0 * i)))) for i in range(1, 5)
    )
    front = replace(make.wall("long", 120, 50), marks=rows)
    joined = put_together(make.design(panels=(box(make),)), (front, make.wall("short", 80, 50)))
    assert len(lines(joined.drawing("whole:box"), "detail")) == 4  # the back wall looks away
    dense = replace(front, marks=rows * 300)
    joined = put_together(make.design(panels=(box(make),)), (dense, make.wall("short", 80, 50)))
    assert lines(joined.drawing("whole:box"), "detail") == []


def test_a_part_shows_outline_openings_and_marks(make: SimpleNamespace) -> None:
    hole = make.hole(((10.0, 10.0), (10.0, 20.0), (20.0, 20.0), (20.0, 10.0)), "window")
    mark = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((30.0, 5.0), (30.0, 35.0))))
    part = make.part("w", make.wall("w", 60, 40).outline.outer, holes=(hole,), marks=(mark,))
    drawing = put_together(make.design(), (part,)).drawing("part:w")
    assert (drawing.width, drawing.height) == (60, 40)  # type: ignore[union-attr]
    assert [line.length for line in lines(drawing, "contour")] == pytest.approx([200])
    assert [line.length for line in lines(drawing, "outline")] == pytest.approx([40])
    assert [line.length for line in lines(drawing, "detail")] == pytest.approx([30])


def test_every_panel_of_an_exploded_view_shows_a_third_of_its_face(make: SimpleNamespace) -> None:
    """A house whose back would hide behind its sides when all panels move out alike: so it goes farther."""
    designs = Path(__file__).parents[3] / "designs"
    for slug in ("toll-house", "quay", "bridge"):
        design = work_out(read_brief(designs / slug))
        by_id = {part.id: part for part in make_parts(design)[0]}
        assembly = place_panels(design.panels[0], by_id)
        tried = [solids_of(apart(assembly, *spread), PANEL_VIEW, slots=True, surface=False) for spread in SPREADS]
        flat = [i for i, board in enumerate(assembly.boards) if not is_facet(board.part)]
        least = [min(shown(solids, solids.main[i]) for i in flat if solids.main[i] >= 0) for solids in tried]
        assert max(least) >= SHOWN_SHARE
        letters = {text for text, *_ in exploded_view(assembly).labels}
        assert letters == {by_id[place.part].letter for place in design.panels[0].places}
        if slug == "toll-house":
            assert least[0] < 0.1


def test_a_panel_let_into_others_is_lifted_out_of_their_slots(make: SimpleNamespace) -> None:
    assembly = place_panels(*make.crate())
    heights = {p.name: float(p.frame.origin[2]) for p in assembly.panels}
    moved = dict(zip(heights, (frame for _, frame in apart(assembly, *SPREADS[0])), strict=True))
    for panel in assembly.panels:
        shift = moved[panel.name].origin - panel.frame.origin
        assert shift[:2] == pytest.approx([0, 0])
        assert (shift[2] > 20.0) if panel.name.startswith("s") else (shift[2] == 0.0)


def test_a_rabbet_shows_only_paper_at_its_end(make: SimpleNamespace) -> None:
    """Of two walls seen from the right, the one with the rabbet ends in 0.3 mm of paper and the other runs up to it."""
    front = make.wall("w", 60, 40)
    edges = tuple(replace(e, rabbet=Rabbet(5.0, 0.3)) if e.name == "right" else e for e in front.edges)
    plan = make.panels("b", {"f": "w"}, "f.bottom")
    plain = place_panels(plan, {"w": front})
    cut = place_panels(plan, {"w": replace(front, edges=edges)})

    def areas(assembly: PanelAssembly) -> list[float]:
        panels = [(p.part, p.frame) for p in assembly.panels]
        return sorted(float(area.area) for area in solids_of(panels, PANEL_VIEW, slots=True, surface=False).areas)

    whole, left = areas(plain), areas(cut)
    assert len(whole) == 3  # the face, the top and the right end
    assert max(left) == pytest.approx(max(whole))
    assert len(left) == 6  # the paper's three, and those of the foam behind it
