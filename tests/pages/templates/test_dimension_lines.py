"""Lengths on a template stand clear of all else, as long as they say, in mm and inches."""

from collections.abc import Callable
from math import dist

import pytest
import shapely

from publisher.basics import LengthPromise, Place, Pose
from publisher.basics.wording import say_length
from publisher.design import OpeningPlan, Parameter
from publisher.geometry import Part, polygon
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet import Context
from publisher.pages.templates import Sample, dimension_lines, said_off_part
from publisher.pages.templates.page_words import Lying
from publisher.pages.templates.template_pages import template_drawn
from publisher.pages.tiles import true_page_drafts
from publisher.pages.type import HATCH, Setter, TypeStyle

ARCH = {
    "form": "segmental", "span": 90, "rise": 25, "springing": 10, "spandrel": 22, "length": 180, "voussoirs": 9,
    "voussoir_depth": 12,
}  # fmt: skip


def arch_side(draw: Callable[..., Part]) -> Part:
    return draw("arch_side", trace_allowance=0.4, **ARCH)


@pytest.mark.parametrize("pose", [Pose(), Pose(200.0, 90.0, 90.0), Pose(120.0, 50.0, 25.0, True)])
def test_each_is_as_long_as_it_says_clear_of_what_is_taken(
    draw: Callable[..., Part], setter: Setter, pose: Pose
) -> None:
    part = arch_side(draw)
    label = shapely.Point(pose.apply((150.0, 40.0))).buffer(9.0)
    (line,) = dimension_lines(part, pose, setter, "mm", [label])
    assert dist(line.start, line.end) == pytest.approx(12.0) == line.length
    assert line.note.text == "arch stones 12.0 mm (0.47 in) high"
    assert polygon(part.template, pose).contains(line.note.area(0.2))
    track = shapely.LineString((line.start, line.end))
    assert not track.intersects(line.note.area(0.2)) and not label.intersects(shapely.union(track, line.note.area()))
    assert line.promise(3) == LengthPromise(3, line.start, line.end, line.length, "dimension", line.note.text)


def test_what_finds_no_room_is_left_out(draw: Callable[..., Part], setter: Setter) -> None:
    part = arch_side(draw)
    assert dimension_lines(part, Pose(), setter, "mm", [polygon(part.template)]) == ()
    left = shapely.box(0.0, 0.0, 70.0, 80.0)  # a tile's own area
    (line,) = dimension_lines(part, Pose(), setter, "in", [], left)
    assert left.covers(shapely.union(shapely.LineString((line.start, line.end)), line.note.area()))
    assert line.note.text == "arch stones 0.47 in (12.0 mm) high"


@pytest.mark.parametrize(("allowance", "said"), [(0.4, "finished "), (0.0, "")])
def test_a_length_from_edge_to_edge_is_told_from_the_smaller_card(
    allowance: float, said: str, draw: Callable[..., Part], setter: Setter
) -> None:
    part = draw("pier", trace_allowance=allowance, length=100, width=100, nose=25)
    lines = dimension_lines(part, Pose(), setter, "mm", [])
    assert lines
    assert [line.note.text for line in lines] == [f"{said}{say_length(line.length)}" for line in lines]


def test_what_ends_off_the_part_is_a_sentence(draw: Callable[..., Part]) -> None:
    part = arch_side(draw)
    assert said_off_part(part, "mm") == (
        "Arch: radius 53.0 mm (2.09 in), centre 28.0 mm (1.10 in) below the arch’s ends.",
    )


@pytest.mark.parametrize("paper", ["a4", "letter", "a3"])
def test_the_bridge_says_what_its_arch_is_drawn_by(
    demo: Callable[..., Context], numbers: Callable[..., object], words: Callable[..., str], paper: str
) -> None:
    context = demo("bridge", paper)
    bodies = [draft.body(numbers(page)) for page, draft in enumerate(true_page_drafts(context), 1)]  # type: ignore[arg-type]
    said = " ".join(map(words, bodies))
    radius = "93.6 mm (3.69 in)" if context.paper.first == "mm" else "3.69 in (93.6 mm)"
    assert f"Arch: radius {radius}, centre" in said and "below the arch’s ends." in said
    high = "14.0 mm (0.55 in)" if context.paper.first == "mm" else "0.55 in (14.0 mm)"
    assert f"Arch stones {high} high." in said, "among the joints of the wall an arrow would read as one more"
    assert not [line for body in bodies for line in body.lengths if line.label.startswith("arch stones")]
    promised = {text.text for body in bodies for text in body.texts}
    assert any(text.startswith("Arch: radius") for text in promised)


@pytest.mark.parametrize("between", [True, False])
def test_a_length_leads_through_no_other_opening(draw: Callable[..., Part], setter: Setter, between: bool) -> None:
    """From the right edge to the hole’s middle a window lies in the way, or it does not."""
    place = Place("spec.yaml", 3, 5)

    def opening(name: str, kind: str, **sizes: float | str) -> OpeningPlan:
        return OpeningPlan(name, kind, tuple(Parameter(key, value, "", place) for key, value in sizes.items()), place)

    openings = (
        opening("vent", "round_hole", diameter=8.0, centre=200.0, up=110.0),
        opening("w", "window", head="square", width=12.0, height=40.0, sill=90.0, centre=250.0 if between else 40.0),
    )
    part = draw("wall_panel", width=300, height=260, openings=openings)
    lines = dimension_lines(part, Pose(), setter, "mm", [])
    window = max(map(shapely.Polygon, polygon(part.template).interiors), key=lambda hole: hole.area)
    assert not any(shapely.LineString((line.start, line.end)).intersects(window) for line in lines)
    said = {line.note.text.split(" mm")[0] for line in lines}
    assert ("100.0" in said) is not between


def test_no_word_and_no_hatching_lies_on_a_length_into_a_hole(
    make_context: Callable[..., Context], draw: Callable[..., Part]
) -> None:
    part = draw("quay_side", length=150, height=90, rings=1, ring_radius=14, ring_drop=35)
    context = make_context(parts=(part,))
    lying = Lying(Sample(part, 0, False), Pose(20.0, 60.0))
    drawn, lines = template_drawn(context, lying, shapely.GeometryCollection())
    into = [line for line in lines if line.note.text.endswith("middle")]
    assert len(into) == 2
    tracks = shapely.union_all([shapely.LineString((line.start, line.end)) for line in into])
    hatch = [path for thing in drawn if isinstance(thing, Stroke) and thing.style == HATCH for path in thing.paths]
    assert hatch and all(shapely.LineString(path.points).distance(tracks) > 0.9 for path in hatch)
    for words in (thing for thing in drawn if isinstance(thing, Words)):
        wide = context.type.width(words.text, TypeStyle("", "regular", words.size, 1.0))
        if words.turn == 0.0:
            assert not shapely.box(words.x, words.y, words.x + wide, words.y + 1.5).intersects(tracks), words.text


def test_a_length_hides_no_row_of_bricks(demo: Callable[..., Context]) -> None:
    """Beside its line a surface is broken: along a row that would be all of it, so the line is moved between two rows."""
    context = demo("toll-house")
    side = next(part for part in context.parts if part.letter == "B")
    (line,) = dimension_lines(side, Pose(), context.type, "mm", ())
    rows = [mark.path.points for mark in side.marks if len(mark.path.points) == 2]
    level = [a[1] for a, b in rows if abs(a[1] - b[1]) < 1e-6]
    assert min(abs(y - line.start[1]) for y in level) > 0.6
    assert polygon(side.outline).boundary.distance(shapely.Point(line.start)) < 1e-6
