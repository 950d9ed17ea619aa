"""Where the labels of templates stand."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Pose
from publisher.design import Design
from publisher.geometry import Part
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.part_strokes import region_polygon
from publisher.pages.templates.template_forms import GAP
from publisher.pages.templates.template_labels import UPRIGHT, Inside, Labels, samples


def corners(found: Inside) -> tuple[tuple[float, float], ...]:
    wide, tall = found.label.width, found.label.height
    return Pose(*found.at, found.lean).apply_all(((0, 0), (wide, 0), (wide, tall), (0, tall)))


def test_one_template_to_trace_every_copy_to_paste(
    make_context: Callable[..., Context], make_design: Callable[..., Design], make_part: Callable[..., Part]
) -> None:
    part = make_part(count=4, mirrored=1, spare=2)
    assert [(s.copy, s.mirrored) for s in samples(make_context(), part)] == [(0, False)]
    pasted = samples(make_context(design=make_design(use="paste")), part)
    assert [(s.copy, s.mirrored) for s in pasted] == [
        (1, False), (2, False), (3, False), (4, True), (5, False), (6, False)
    ]  # fmt: skip


@pytest.mark.parametrize("turn", [0.0, 17.0, 90.0, 123.0, 180.0, 271.0, 355.0])
@pytest.mark.parametrize("mirrored", [False, True])
def test_a_label_lies_inside_at_any_turn_and_never_upside_down(
    make_context: Callable[..., Context], make_part: Callable[..., Part], turn: float, mirrored: bool
) -> None:
    part = make_part(width=62, height=34)
    labels = Labels(make_context(parts=(part,)))
    sample = samples(labels.context, part)[0]
    sample = type(sample)(part, 0, mirrored)
    assert labels.fits_inside(sample)
    found = labels.inside(sample, turn)
    assert found
    assert -90.0 <= found.lean <= 90.0
    assert region_polygon(part.template, Pose(turn=turn, mirrored=mirrored)).covers(shapely.Polygon(corners(found)))


def test_words_stand_upright_where_they_can(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(width=120, height=110)
    labels = Labels(make_context(parts=(part,)))
    found = labels.inside(samples(labels.context, part)[0], 30.0)
    assert found and found.lean == 0.0


def test_a_part_with_no_room_has_its_label_beside_it(make_context: Callable[..., Context], stair_layer: Part) -> None:
    labels = Labels(make_context(parts=(stair_layer,)))
    sample = samples(labels.context, stair_layer)[0]
    assert not labels.fits_inside(sample) and labels.inside(sample, 0.0) is None
    forms = labels.forms(sample, UPRIGHT)
    assert [f.turn for f in forms] == [0.0, 90.0]
    for form in forms:
        assert form.label
        shape = region_polygon(stair_layer.template, Pose(turn=form.turn))
        x, y = form.label_at
        assert shapely.box(x, y, x + form.label.width, y + form.label.height).distance(shape) >= GAP - 1e-6


def test_a_part_with_room_goes_bare(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    part = make_part(width=120, height=110)
    labels = Labels(make_context(parts=(part,)))
    (form,) = labels.forms(samples(labels.context, part)[0], UPRIGHT)
    assert form.label is None and shapely.Polygon(form.ring).area == pytest.approx(120 * 110)


def test_copies_share_a_place_that_is_wide_enough_for_all(
    make_context: Callable[..., Context], make_design: Callable[..., Design], make_part: Callable[..., Part]
) -> None:
    part = make_part(width=20, height=15, count=12, spare=1)
    labels = Labels(make_context(design=make_design(use="paste"), parts=(part,)))
    copies = samples(labels.context, part)
    (form,) = labels.forms(copies[0], (0.0,))
    assert form.label
    for sample in copies:
        assert labels.forms(sample, (0.0,)) == (form,)
        own = labels.label_of(form, sample)
        assert own and own.width <= form.label.width + 1e-9 and own.height <= form.label.height + 1e-9
        assert f"this is {sample.copy} of 13" in own.says.count
