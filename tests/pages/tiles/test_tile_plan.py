"""How a part is laid on tile pages."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import polyline
from publisher.geometry import Part, polygon
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.frame import PAGE_SQUARE
from publisher.pages.templates.template_labels import samples
from publisher.pages.tiles.seams import OVERLAP
from publisher.pages.tiles.tile_plan import Tiling, stages, tiling
from publisher.pages.type.rectangles import as_polygon


def tile(context: Context, part: Part) -> Tiling:
    return tiling(context, samples(context, part)[0])


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize(("width", "height"), [(480.0, 100.0), (480.0, 80.0)])
def test_quay_parts_are_two_landscape_tiles(
    make_context: Callable[..., Context], make_part: Callable[..., Part], paper: str, width: float, height: float
) -> None:
    part = make_part(width=width, height=height)
    plan = tile(make_context(paper, parts=(part,)), part)
    frame = plan.places[0].frame
    assert frame.landscape and (plan.cutting.rows, plan.cutting.columns) == (1, 2)
    assert frame.calibration and frame.calibration.width == PAGE_SQUARE


@pytest.mark.parametrize("size", [(480, 100), (284, 284), (700, 500), (60, 900)])
def test_windows_keep_clear_of_furniture_and_tiles_are_few(
    make_context: Callable[..., Context], make_part: Callable[..., Part], size: tuple[float, float]
) -> None:
    part = make_part(width=size[0], height=size[1])
    plan = tile(make_context(parts=(part,)), part)
    frame = plan.places[0].frame
    for cell in plan.cutting.cells:
        window = plan.window(cell)
        assert window.beyond(frame.live) <= 0.0
        assert all(not as_polygon(window).intersects(as_polygon(b)) for b in frame.blocked)
        assert not as_polygon(window).intersects(as_polygon(plan.places[0].info))
        shown = polygon(part.template, plan.pose(cell)).intersection(as_polygon(window))
        assert shown.area > 100
    room = (frame.live.width - OVERLAP) * (frame.live.height - OVERLAP)
    assert len(plan.cutting.cells) <= 2 * size[0] * size[1] / room + 2


def test_every_stage_has_room_for_words(make_context: Callable[..., Context]) -> None:
    for paper in ("a4", "letter", "a3"):
        for stage in stages(make_context(paper)):
            assert stage.info.width >= 27 and stage.info.height >= 27
            assert stage.info.beyond(stage.frame.live) <= 0.0
            assert not as_polygon(stage.info).intersects(as_polygon(stage.area))


def test_seams_keep_off_slots(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    from dataclasses import replace

    from publisher.geometry import Region

    part = make_part(width=480, height=100)
    slot = polyline(((237.0, 10.0), (237.0, 90.0), (243.0, 90.0), (243.0, 10.0)), True)
    part = replace(part, template=Region(part.template.outer, (slot,)))
    plan = tile(make_context(parts=(part,)), part)
    (at,) = plan.cutting.across
    assert not 233 < at < 247
    assert plan.laid.interiors and isinstance(plan.laid, shapely.Polygon)


def test_copies_have_names_of_their_own(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    part = make_part(width=480, height=100)
    context = make_context(parts=(part,))
    traced = tiling(context, samples(context, part)[0])
    pasted = tiling(context, type(samples(context, part)[0])(part, 2, True))
    assert (traced.name, pasted.name) == ("A", "A.2 ")
    assert traced.key(traced.cutting.cells[0]) != pasted.key(pasted.cutting.cells[0])
    assert pasted.pose(pasted.cutting.cells[0]).mirrored
