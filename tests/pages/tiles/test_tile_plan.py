"""How a part is laid on tile pages."""

from collections.abc import Callable
from dataclasses import replace

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import LineKind, Pose, Purpose, polyline
from publisher.geometry import Mark, Part, Region, polygon
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.frame import PAGE_SQUARE
from publisher.pages.templates.part_notes import mark_notes
from publisher.pages.templates.template_labels import Sample, samples
from publisher.pages.tiles.seams import OVERLAP
from publisher.pages.tiles.tile_plan import Tiling, lay, stages, tiling
from publisher.pages.type.rectangles import as_polygon
from tests.pages.conftest import a_context, a_part
from tests.searches.profile import cases


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


def beside_edges(width: float, height: float, shares: tuple[float, ...]) -> tuple[Mark, ...]:
    """Letters and angles along all four edges, as the geometry room would set them."""
    words: list[Mark] = []
    for number, share in enumerate(shares):
        for at in (
            (share * width, 7.0),
            (share * width, height - 7.0),
            (7.0, share * height),
            (width - 7.0, share * height),
        ):
            text, purpose = (("57.25° out", Purpose.BEVEL), ("a", Purpose.MATCH))[(number + len(words)) % 2]
            words.append(Mark(LineKind.REFERENCE, purpose, polyline((at,)), text=text))
    return tuple(words)


def parted(plan: Tiling) -> list[str]:
    """Words of marks that no tile shows whole once all is taped: a seam parts them, or the next tile covers them."""
    return [note.text for note in plan.notes if all(note.box.beyond(cell.area) > 0.0 for cell in plan.cutting.cells)]


def test_an_angle_in_the_middle_of_an_even_division_stands_on_one_tile(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    """Two tiles without freedom: the seam runs through the middle of the edge, where its angle is looked for first."""
    mark = Mark(LineKind.REFERENCE, Purpose.BEVEL, polyline(((139.0, 91.0),)), text="57°")
    part = make_part(width=278.9, height=102.5, marks=(mark,))
    context = make_context("a5", parts=(part,))
    plan = tile(context, part)
    laid = lay(context, plan.sample, plan.turn)
    before = laid.with_seams(context, replace(plan, cutting=replace(plan.cutting, cells=())))
    assert parted(replace(before, cutting=plan.cutting)) == ["bevel 57°"]
    assert parted(plan) == [] and [note.text for note in plan.notes] == ["bevel 57°"]
    assert sum(len(plan.notes_on(cell)) for cell in plan.cutting.cells) == 1


@pytest.mark.search
@cases(25, 400)
@given(
    st.sampled_from(("a5", "a4", "letter", "a3")),
    st.floats(40.0, 700.0),
    st.floats(40.0, 500.0),
    st.lists(st.floats(0.15, 0.85), min_size=1, max_size=2),
    st.booleans(),
)
def test_no_seam_parts_words_and_no_tile_covers_them(
    paper: str, width: float, height: float, shares: list[float], pasted: bool
) -> None:
    part = a_part(width=width, height=height, marks=beside_edges(width, height, tuple(shares)))
    context = a_context(paper, parts=(part,))
    for copy in (0, 2) if pasted else (0,):
        plan = tiling(context, Sample(part, copy, bool(copy)))
        assert parted(plan) == []
        pose = Pose(turn=plan.turn, mirrored=bool(copy))
        said = {note.text.removeprefix("bevel ") for note in mark_notes(part, pose, context.type)}
        assert {note.text.removeprefix("bevel ") for note in plan.notes} == said
