"""What seams draw: marks, lines broken at marks, pale glue areas."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Box, LineKind, Purpose, polyline
from publisher.geometry import Mark, Part
from publisher.pages.model import Fill, Stroke
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.templates.template_labels import samples
from publisher.pages.tiles.seam_drawing import seam_bodies
from publisher.pages.tiles.seams import MARK_RADIUS, OVERLAP, TRIM
from publisher.pages.tiles.tile_furniture import size_bands, size_lines
from publisher.pages.tiles.tile_plan import tiling
from publisher.pages.type.rectangles import as_polygon
from publisher.pages.type.styles import REFERENCE
from publisher.pages.type.styles import TRIM as TRIM_LINE


def test_the_first_page_has_the_glue_area_the_second_the_line_to_trim(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(width=480, height=100)
    context = make_context(parts=(part,))
    plan = tiling(context, samples(context, part)[0])
    one, two = plan.cutting.cells
    keys = ((plan.key(one), 5), (plan.key(two), 6))
    first = seam_bodies(context.type, plan, one, Numbers(5, 9, keys, (), ()))
    (fill,) = first.under.drawn
    assert isinstance(fill, Fill) and fill.grey > 0.9
    xs = [p[0] for p in fill.paths[0].points]
    assert max(xs) - min(xs) == OVERLAP - TRIM
    assert max(xs) == plan.window(one).right
    assert [d.style for d in first.over.drawn if isinstance(d, Stroke)].count(REFERENCE) == 1
    assert {s.pages for s in first.over.seams} == {(5, 6)} and {s.part for s in first.over.seams} == {part.id}
    second = seam_bodies(context.type, plan, two, Numbers(6, 9, keys, (), ()))
    assert second.under.drawn == () and second.over.seams == ()
    (line,) = [d for d in second.over.drawn if isinstance(d, Stroke) and d.style == TRIM_LINE]
    for path in line.paths:
        for seam in first.over.seams:
            gap = Box(seam.at[1][0], seam.at[1][1], seam.at[1][0], seam.at[1][1]).grown(MARK_RADIUS)
            ends = [p for p in path.points if Box(*p, *p).beyond(gap) <= 0.0]
            assert not ends
    for box in first.boxes:
        assert as_polygon(plan.window(one)).buffer(1e-6).covers(as_polygon(box))


@pytest.mark.parametrize(
    ("paper", "size"),
    [("a5", (159.2, 162.8)), ("a5", (300.0, 250.0)), ("a4", (300.0, 600.0)), ("letter", (480.0, 330.0))],
)
def test_names_of_marks_keep_off_the_line_that_shows_the_whole_size(
    make_context: Callable[..., Context], make_part: Callable[..., Part], paper: str, size: tuple[float, float]
) -> None:
    """On a small tile its words fill most of the line; beside it a name would be crossed out by the line itself."""
    lines = (((8.0, 0.0), (8.0, size[1])), ((0.0, 8.0), (size[0], 8.0)))  # names find no room between them and the edge
    marks = tuple(Mark(LineKind.REFERENCE, Purpose.BEVEL, polyline(line)) for line in lines)
    part = make_part(width=size[0], height=size[1], marks=marks)
    context = make_context(paper, parts=(part,))
    plan = tiling(context, samples(context, part)[0])
    keys = tuple((plan.key(one), page) for page, one in enumerate(plan.cutting.cells, 5))
    shown = 0
    for cell in plan.cutting.cells:
        bands = shapely.union_all([as_polygon(band) for band in size_bands(plan, cell)])
        seamed = seam_bodies(context.type, plan, cell, Numbers(keys[0][1], 9, keys, (), ()))
        marked = [seam.at[0] for seam in seamed.over.seams]
        names = [
            box
            for box in seamed.boxes
            if not any(box.left <= x <= box.right and box.bottom <= y <= box.top for x, y in marked)
        ]
        assert not any(as_polygon(box).intersects(bands) for box in names)
        drawn = [
            Box.round(p.points)
            for d in size_lines(context.type, plan, cell, "mm")
            if isinstance(d, Stroke)
            for p in d.paths
        ]
        assert all(bands.buffer(1e-6).covers(as_polygon(box.grown(1e-9))) for box in drawn)
        shown += len(drawn)
    assert shown
