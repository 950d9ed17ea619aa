"""Where the labels of templates stand."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import LineKind, Pose, Purpose, polyline
from publisher.design import Design
from publisher.geometry import Mark, Part, polygon
from publisher.pages.sheet.draft import Context
from publisher.pages.templates.template_forms import PADDING, PART_GAP
from publisher.pages.templates.template_labels import UPRIGHT, Labels, samples


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
    assert labels.enough(sample)
    found = labels.inside(sample, turn)
    assert found.all and found.spots
    ground = polygon(part.template, Pose(turn=turn, mirrored=mirrored))
    for spot in found.spots:
        assert -90.0 <= spot.turn <= 90.0
        assert ground.covers(spot.polygon)


def test_words_stand_upright_where_they_can(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(width=120, height=110)
    labels = Labels(make_context(parts=(part,)))
    assert [spot.turn for spot in labels.inside(samples(labels.context, part)[0], 30.0).spots] == [0.0]


@pytest.mark.parametrize("turn", [0.0, 33.0, 200.0])
def test_a_part_with_no_room_for_all_keeps_inside_what_it_must_not_lose(
    make_context: Callable[..., Context], stair_layer: Part, turn: float
) -> None:
    labels = Labels(make_context(parts=(stair_layer,)))
    sample = samples(labels.context, stair_layer)[0]
    found = labels.inside(sample, turn)
    assert labels.enough(sample) and found.enough and not found.all
    ground = polygon(stair_layer.template, Pose(turn=turn))
    assert all(ground.covers(spot.polygon) for spot in found.spots)
    assert {"A", "cut 14 + 1 spare", "THIS SIDE UP", "Do not flip."} <= {
        t for s in found.spots for t in s.label.promised
    }
    (form,) = labels.forms(sample, UPRIGHT)
    assert form.label is None


def test_a_narrow_ring_carries_its_words_along_itself(
    make_context: Callable[..., Context], draw: Callable[..., Part]
) -> None:
    ring = draw("ring", radius=60, hole_radius=49)
    labels = Labels(make_context(parts=(ring,)))
    found = labels.inside(samples(labels.context, ring)[0], 0.0)
    assert found.enough and not found.all
    ground = polygon(ring.template)
    assert all(ground.covers(spot.polygon) for spot in found.spots)


def test_a_textured_part_has_its_long_words_elsewhere(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    line = ((0.0, 10.0), (120.0, 10.0))
    for name, whole in (("", False), ("coping", True)):
        part = make_part(
            width=120, height=110, marks=(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(line), name=name),)
        )
        labels = Labels(make_context(parts=(part,)))
        assert labels.inside(samples(labels.context, part)[0], 0.0).all is whole


@pytest.mark.parametrize(("width", "height", "letter"), [(16.0, 5.0, True), (3.4, 3.0, True), (3.4, 2.4, False)])
def test_a_part_too_small_has_the_rest_on_a_flag(
    make_context: Callable[..., Context], make_part: Callable[..., Part], width: float, height: float, letter: bool
) -> None:
    part = make_part(width=width, height=height)
    labels = Labels(make_context(parts=(part,)))
    sample = samples(labels.context, part)[0]
    assert not labels.enough(sample)
    assert [s.label.promised for s in labels.inside(sample, 0.0).spots] == [("A",)] * letter
    forms = labels.forms(sample, UPRIGHT)
    assert [f.turn for f in forms] == [0.0, 90.0]
    for form in forms:
        assert form.label and form.label.form == "flag"
        shape = polygon(part.template, Pose(turn=form.turn))
        x, y = form.label_at
        assert (
            shapely.box(x, y, x + form.label.width, y + form.label.height).distance(shape) >= PART_GAP + PADDING - 1e-6
        )


def test_a_part_with_room_goes_bare(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    part = make_part(width=120, height=110)
    labels = Labels(make_context(parts=(part,)))
    (form,) = labels.forms(samples(labels.context, part)[0], UPRIGHT)
    assert form.label is None and shapely.Polygon(form.ring).area == pytest.approx(120 * 110)


def test_copies_share_a_place_that_is_wide_enough_for_all(
    make_context: Callable[..., Context], make_design: Callable[..., Design], make_part: Callable[..., Part]
) -> None:
    part = make_part(width=12, height=5, count=12, spare=1)
    labels = Labels(make_context(design=make_design(use="paste"), parts=(part,)))
    copies = samples(labels.context, part)
    (form,) = labels.forms(copies[0], (0.0,))
    assert form.label
    for sample in copies:
        assert labels.forms(sample, (0.0,)) == (form,)
        own = labels.flag_of(form, sample)
        assert own and own.width <= form.label.width + 1e-9 and own.height <= form.label.height + 1e-9
        assert f"this is {sample.copy}\u00a0of\u00a013" in own.says.copies
