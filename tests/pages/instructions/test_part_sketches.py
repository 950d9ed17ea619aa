"""What is done to parts: each sketch keeps to its field, shows every part with its count, and a tool."""

from collections.abc import Callable
from dataclasses import replace

import pytest
import shapely

from publisher.basics import Box, Path
from publisher.geometry import Part
from publisher.pages.instructions import part_sketches as sketches
from publisher.pages.instructions.act_sketches import TOP
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.step_acts import OF_PARTS
from publisher.pages.model import Drawn, Fill, LineStyle, Stroke, Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context
from publisher.pages.type.styles import (
    CUT,
    HATCH,
    PICTURE_ADDED_CONTOUR,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_OUTLINE,
)
from publisher.pages.type.text import Setter


def drawn(context: Context, act: str, parts: tuple[Part, ...]) -> list[Drawn]:
    pen = SketchPen(context.type, (100.0, 50.0))
    OF_PARTS[act][0](pen, [(part, 3) for part in parts])
    return pen.drawn


@pytest.mark.parametrize("act", OF_PARTS)
@pytest.mark.parametrize("slug", ["toll-house", "bridge", "lock-stair", "island", "quay"])
def test_a_sketch_keeps_to_its_field_and_counts_its_parts(slug: str, act: str, demo: Callable[..., Context]) -> None:
    context = demo(slug)
    fits = {
        "cut_openings": [part for part in context.parts if part.outline.holes or part.openings],
        "glue": [
            part for part in context.parts if any(s.name.endswith(".tab") for s in part.outline.outer.stretches())
        ],
        "slit": [part for part in context.parts if part.bending is not None],
        "roll": [part for part in context.parts if part.bending is not None],
        "bevel": [part for part in context.parts if any(edge.bevel for edge in part.edges)],
        "cover": list(context.parts[:1]),
    }
    parts = tuple(fits.get(act, context.parts))
    if not parts:
        return
    things = drawn(context, act, parts)
    field = Box(100.0, 50.0, 100.0 + FIELD_WIDE, 50.0 + FIELD_TALL).grown(1.0)
    assert max(box.beyond(field) for thing in things if (box := ink_box(context.type.faces, thing))) <= 0.0
    said = [thing.text for thing in things if isinstance(thing, Words)]
    assert all(said.count(f"3 × {part.letter}") == 1 for part in parts)


def test_what_is_traced_says_which_side_is_up(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    said = [thing.text for thing in drawn(context, "trace", context.parts) if isinstance(thing, Words)]
    assert sketches.UP in said


def test_a_line_is_pricked_at_its_ends_and_drawn_once_the_card_is_gone(demo: Callable[..., Context]) -> None:
    """No pin is left in a card, as it would seem to hold it; a card without lines within shows nothing of pins."""
    house = demo("toll-house")
    for letters, wanted in (("AB", 1), ("C", 0)):
        pen = SketchPen(house.type, (0.0, 0.0))
        sketches.tracing_round(pen, [(part, 2) for part in house.parts if part.letter in letters], pricked=True)
        shown = [name for name, _, _ in pen.parts]
        assert shown.count("scene:pricking") == wanted and "scene:pin" not in shown
        assert shown.count("scene:pencil") == 1, "the one that stands at a card"
        pricks = [thing for thing in pen.drawn if isinstance(thing, Fill) and len(thing.paths[0].points) > 4]
        assert len([thing for thing in pricks if thing.grey == 0.0]) == 4 * wanted


def test_what_is_pricked_is_seen_for_itself(demo: Callable[..., Context]) -> None:
    """The longest lines of the bridge's cards run along the edges of its deck: there a line between pricks would not be seen."""
    bridge = demo("bridge")
    pen = SketchPen(bridge.type, (0.0, 0.0))
    cards = [(part, 1) for part in bridge.parts if part.letter in "BF"]
    sketches.tracing_round(pen, cards, pricked=True)
    (line,) = [
        thing.paths[0].points
        for thing in pen.drawn
        if isinstance(thing, Stroke) and thing.style == PICTURE_GHOST and len(thing.paths[0].points) == 2
        if thing.paths[0].points[0][1] > sketches.PRICKED_TALL
    ]
    letters = {thing.text: thing.x for thing in pen.drawn if isinstance(thing, Words) and thing.text in "BF"}
    assert line[0][0] < letters["F"] < line[1][0]


@pytest.mark.parametrize("outwards", [False, True])
def test_what_is_kept_of_a_bevel_says_which_side_is_up(demo: Callable[..., Context], outwards: bool) -> None:
    house = demo("toll-house")
    roof = next(part for part in house.parts if part.letter == "C")
    edges = tuple(replace(edge, bevel=-abs(edge.bevel) if outwards else abs(edge.bevel)) for edge in roof.edges)
    pen = SketchPen(house.type, (0.0, 0.0))
    sketches.bevelling_edges(pen, [(replace(roof, edges=edges), 2)])
    said = {thing.text: thing.x for thing in pen.drawn if isinstance(thing, Words)}
    face = sketches.BEVEL_AT[1] + TOP
    ends = [
        thing.paths[0].points[-1]
        for thing in pen.drawn
        if isinstance(thing, Stroke) and thing.style == PICTURE_DETAIL and len(thing.paths[0].points) == 2
    ]
    assert sketches.UP in said
    assert [end for end in ends if abs(end[1] - face) < 0.5 and said["keep"] < end[0] < said["waste"] - 8.0]


def test_the_bottle_keeps_to_the_field_beside_a_tall_part(demo: Callable[..., Context]) -> None:
    """A screen shows no more than the field: what stands over it would be cut off."""
    wall = next(part for part in demo("bridge").parts if part.letter == "C")
    pen = SketchPen(demo("bridge").type, (0.0, 0.0))
    sketches.glueing(pen, [(wall, 4)])
    (at,) = (pose.y for scene, pose, _ in pen.parts if scene == "scene:bottle")
    assert at + 10.2 <= sketches.FIELD_TALL


def test_slits_are_counted_and_an_angle_is_said(demo: Callable[..., Context]) -> None:
    bridge, house = demo("bridge"), demo("toll-house")
    soffit = next(part for part in bridge.parts if part.bending is not None)
    assert soffit.bending is not None
    said = [thing.text for thing in drawn(bridge, "slit", (soffit,)) if isinstance(thing, Words)]
    assert f"{soffit.bending.slits} ×" in said
    roof = next(part for part in house.parts if any(edge.bevel for edge in part.edges))
    assert "45°" in [thing.text for thing in drawn(house, "bevel", (roof,)) if isinstance(thing, Words)]


def test_angles_in_many_words_leave_the_tick_of_a_bevel_whole(demo: Callable[..., Context]) -> None:
    house = demo("toll-house")
    roof = next(part for part in house.parts if any(edge.bevel for edge in part.edges))
    edges = tuple(replace(edge, bevel=bevel) for edge, bevel in zip(roof.edges, (11.5, 22.5, 33.5, 44.5), strict=False))
    pen = SketchPen(house.type, (0.0, 0.0))
    OF_PARTS["bevel"][0](pen, [(replace(roof, edges=edges), 3)])
    assert any(isinstance(thing, Words) and " / " in thing.text for thing in pen.seen())
    seen = [path.points for thing in pen.seen() if isinstance(thing, Stroke) for path in thing.paths]
    assert any(len(points) == 3 and abs(points[2][1] - points[1][1] - 4.2) < 1e-6 for points in seen)


def test_what_is_bevelled_later_is_dashed_where_outlines_are_cut_and_else_cut_now(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    roof = next(part for part in context.parts if any(edge.bevel for edge in part.edges))
    every = replace(roof, edges=tuple(replace(edge, bevel=45.0) for edge in roof.edges))
    runs = {}
    for name, part, later in (("later", roof, True), ("now", roof, False), ("every", every, True)):
        pen = SketchPen(context.type, (0.0, 0.0))
        sketches.cutting_outlines(pen, [(part, 2)], frozenset({part.id} if later else ()))
        strokes = [thing for thing in pen.drawn if isinstance(thing, Stroke)]
        runs[name] = [
            sum(len(path.points) - 1 + path.closed for one in strokes if one.style == style for path in one.paths)
            for style in (PICTURE_ADDED_CONTOUR, PICTURE_GHOST)
        ]
        knives = [scene for scene, _, _ in pen.parts if scene == "scene:knife"]
        assert bool(knives) is (name != "every")  # with nothing to cut yet no knife is in hand
    assert runs == {"later": [3, 1], "now": [4, 0], "every": [0, 4]}


def test_a_pencil_that_traces_stands_upright_and_a_line_that_would_fill_notches_is_left_out(
    demo: Callable[..., Context],
) -> None:
    context = demo("toll-house")
    gable, side, roof = context.parts
    lean = {tuple(p[0] for p in path.points) for path in pencils(context, (gable, side, roof))}
    assert lean and all(min(xs) + max(xs) == pytest.approx(2 * xs[0]) for xs in lean)  # its tip under its middle
    pen = SketchPen(context.type, (0.0, 0.0))
    OF_PARTS["trace"][0](pen, [(part, 2) for part in (gable, side, roof)])
    heavy = [path for thing in pen.drawn if isinstance(thing, Stroke) and thing.style == CUT for path in thing.paths]
    assert not [
        path for path in heavy if path.closed
    ]  # between the tabs of the side it would close up: all are as fine
    assert len(heavy) == len(gable.outline.holes)  # slots too narrow for a second line: that of the pencil alone
    alone = SketchPen(context.type, (0.0, 0.0))
    OF_PARTS["trace"][0](alone, [(part, 2) for part in (gable, roof)])
    lines = [path for thing in alone.drawn if isinstance(thing, Stroke) and thing.style == CUT for path in thing.paths]
    assert len([path for path in lines if path.closed]) == 1  # that round the roof


def test_an_opening_at_an_edge_has_no_line_at_its_foot_and_is_thin_once_it_is_open(
    demo: Callable[..., Context],
) -> None:
    context = demo("toll-house")
    gable = next(part for part in context.parts if part.id == "gable")
    door = gable.openings[0].ring.box
    openings, before, after = (SketchPen(context.type, (0.0, 0.0)) for _ in range(3))
    sketches.cutting_openings(openings, [(gable, 2)])
    sketches.cutting_outlines(before, [(gable, 2)])
    sketches.cutting_outlines(after, [(gable, 2)], opened=frozenset({gable.id}))
    found = {
        name: (
            _inks(pen, gable, (door.left + door.right) / 2, door.bottom),
            _inks(pen, gable, door.left, door.bottom + 9.0),
        )
        for name, pen in (("openings", openings), ("before", before), ("after", after))
    }
    assert found["openings"] == (set(), {PICTURE_ADDED_CONTOUR})
    assert found["before"] == (set(), {PICTURE_ADDED_CONTOUR})
    assert found["after"] == (set(), {PICTURE_OUTLINE})
    hatched = {name: _hatched_at(pen, gable, door) for name, pen in (("before", before), ("after", after))}
    assert hatched == {"before": True, "after": False}


def _place(pen: SketchPen, x: float, y: float) -> shapely.Point:
    _, at, scale = pen.parts[0]
    return shapely.Point(at.x + scale * x, at.y + scale * y)


def _inks(pen: SketchPen, part: Part, x: float, y: float) -> set[LineStyle]:
    """The styles of full lines at a point of a part."""
    spot = _place(pen, x, y).buffer(0.15)
    return {
        thing.style
        for thing in pen.drawn
        if isinstance(thing, Stroke) and thing.style not in (PICTURE_GHOST, HATCH, PICTURE_DETAIL)
        for path in thing.paths
        if shapely.LineString([*path.points, path.points[0]] if path.closed else path.points).intersects(spot)
    }


def _hatched_at(pen: SketchPen, part: Part, door: Box) -> bool:
    spot = _place(pen, (door.left + door.right) / 2, door.bottom + 15.0).buffer(2.0)
    return any(
        shapely.LineString(path.points).intersects(spot)
        for thing in pen.drawn
        if isinstance(thing, Stroke) and thing.style == HATCH
        for path in thing.paths
    )


def test_one_weight_in_a_sketch_and_a_narrow_part_stays_white(make_part: Callable[..., Part], setter: Setter) -> None:
    wide, kerb = make_part("wall", "A", 60.0, 40.0), make_part("kerb", "E", 280.0, 8.0)
    styles = {}
    for name, parts in (("wide", [(wide, 1)]), ("both", [(wide, 1), (kerb, 2)])):
        pen = SketchPen(setter, (0.0, 0.0), 0.8)
        sketches.cutting_outlines(pen, parts)
        own = [thing.style for thing in pen.drawn if isinstance(thing, Stroke) and thing.paths[0].closed]
        styles[name] = {style for style in own if style.width > 0.2}
    assert styles["wide"] == {PICTURE_ADDED_CONTOUR}
    assert len(styles["both"]) == 1 and styles["both"] != styles["wide"]


def pencils(context: Context, parts: tuple[Part, ...]) -> list[Path]:
    return [
        path
        for thing in drawn(context, "trace", parts)
        if isinstance(thing, Stroke) and thing.style == PICTURE_DETAIL
        for path in thing.paths
        if len(path.points) == 3 and path.closed
    ]


def test_tape_stops_the_blade_that_slits(demo: Callable[..., Context]) -> None:
    context = demo("bridge")
    soffit = next(part for part in context.parts if part.bending is not None)
    assert "tape" in [thing.text for thing in drawn(context, "slit", (soffit,)) if isinstance(thing, Words)]
