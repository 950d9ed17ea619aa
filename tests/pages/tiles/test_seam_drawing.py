"""What seams draw: marks, lines broken at marks, pale glue areas."""

from collections.abc import Callable

from publisher.basics import Box
from publisher.geometry import Part
from publisher.pages.model import Fill, Stroke
from publisher.pages.sheet.draft import Context, Numbers
from publisher.pages.templates.template_labels import samples
from publisher.pages.tiles.seam_drawing import seam_bodies
from publisher.pages.tiles.seams import MARK_RADIUS, OVERLAP, TRIM
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
