"""Styles, copies, clips, areas, chains, picks and lines of drawings, each by small drawings with known answers."""

from math import pi
from pathlib import Path

import pytest
import shapely

from publisher.basics import Arc, LineKind, Refusal, polar, polyline
from publisher.geometry import area, look_at, polygon
from publisher.geometry.drawings import areas
from publisher.geometry.drawings.basic_shapes import shape_paths
from publisher.geometry.drawings.chains import loops_of, open_trouble
from publisher.geometry.drawings.css import apply_styles, declarations
from publisher.geometry.drawings.edges import named_edges
from publisher.geometry.drawings.lines import marks_of
from publisher.geometry.drawings.numbers import IDENTITY
from publisher.geometry.drawings.picks import Missing, pick
from publisher.geometry.drawings.regions import region_of
from publisher.geometry.drawings.scene import Scene, read_scene
from publisher.geometry.drawings.styles import painted, stroke_words
from publisher.geometry.drawings.svg_shapes import DrawnShape, box_of
from publisher.geometry.drawings.tree import Unreadable, read_tree

ISLAND = Path(__file__).parents[1] / "cases" / "drawings" / "island.svg"


def scene(body: str, head: str = 'width="100mm" height="100mm" viewBox="0 0 100 100"') -> Scene:
    return read_scene(read_tree(f'<svg xmlns="http://www.w3.org/2000/svg" {head}>{body}</svg>'.encode()))


def only(body: str) -> DrawnShape:
    (drawn,) = scene(body).drawn
    return drawn


# styles


def test_the_cascade() -> None:
    """Attributes, then rules by ids, classes and types, then the style attribute, then what is important (CSS 2.1, 6.4)."""
    text = """<svg xmlns="http://www.w3.org/2000/svg"><style>
      rect { fill: red } .a { fill: blue } #r { fill: green } g > .a.b { stroke: red !important } rect:hover { fill: none }
      svg .c { fill: lime } g > rect.c { fill: teal }
    </style><g><rect id="r" class="a b" fill="black" style="stroke:blue; fill-rule: evenodd"/><rect class="c"/></g></svg>"""
    root = read_tree(text.encode())
    unread = apply_styles(root)
    rect, other = root.children[1].children
    assert rect.own["fill"] == "green" and rect.own["stroke"] == "red" and rect.own["fill-rule"] == "evenodd"
    assert other.own["fill"] == "teal"
    assert len(unread) == 1 and "rect:hover" in unread[0]
    assert declarations("fill:red;;x:1 !important;bad") == (("fill", "red", False), ("x", "1", True))


@pytest.mark.parametrize(
    ("colour", "fills"),
    [
        ("red", True), ("none", False), ("transparent", False), ("#0000", False), ("#000f", True), ("rgba(0,0,0,0)", False),
        ("rgb(0 0 0 / 0.5)", True), ("url(#no)", False), ("url(#no) blue", True), ("url(#g)", True),
    ],
)  # fmt: skip
def test_what_fills(colour: str, fills: bool) -> None:
    found = scene(f'<linearGradient id="g"><stop/></linearGradient><rect width="5" height="5" fill="{colour}"/>')
    assert painted(found.drawn[0].style, "fill", found.ids) is fills


def test_words_for_strokes() -> None:
    assert stroke_words({"stroke": "#F00", "stroke-dasharray": "2 1"}) == {"dashed", "#f00", "#ff0000"}
    assert stroke_words({"stroke": "red", "stroke-dasharray": "none"}) == {"solid", "red"}
    assert stroke_words({}) == frozenset()


# shapes, copies, clips


def test_basic_shapes_have_their_areas() -> None:
    for body, expected in (
        ('<rect width="10" height="20"/>', 200.0),
        ('<rect width="10%" height="20"/>', 200.0),
        ('<circle r="10"/>', 100.0 * pi),
        ('<ellipse rx="10" ry="5"/>', 50.0 * pi),
        ('<polygon points="0,0 10,0 10,10"/>', 50.0),
        ('<rect width="0" height="20"/>', 0.0),
        ('<circle r="-1"/>', 0.0),
    ):
        assert only(body).region().area == pytest.approx(expected, rel=1e-3), body
    line = read_tree(b'<svg xmlns="http://www.w3.org/2000/svg"><line x2="5"/></svg>').children[0]
    (path,), problem = shape_paths(line, (100.0, 100.0), 16.0)
    assert problem == "" and len(path.pieces) == 1


def test_copies_and_what_they_go_by() -> None:
    found = scene(
        '<defs><g id="a"><rect id="r" width="5" height="5"/></g></defs><use id="u" href="#a" x="10"/><use href="#a" transform="scale(2)"/>'
    )
    assert [drawn.name for drawn in found.drawn] == ["u", "r"]
    assert [drawn.region().area for drawn in found.drawn] == pytest.approx([25.0, 100.0])
    assert found.drawn[0].region().bounds == pytest.approx((10.0, 95.0, 15.0, 100.0))
    assert box_of([found.drawn[0]], IDENTITY) == pytest.approx((10.0, 95.0, 15.0, 100.0))


def test_clips_and_windows() -> None:
    clip = '<clipPath id="c"><rect width="5" height="5"/></clipPath><rect width="9" height="9" clip-path="url(#c)"/>'
    assert only(clip).region().area == pytest.approx(25.0)
    assert only('<svg width="5" height="4"><circle r="50"/></svg>').region().area == pytest.approx(20.0)
    assert scene('<rect width="5" height="5" clip-path="url(#no)"/>').left_out[0].startswith("rect (line 1): its clip")


def test_what_is_left_out_is_said() -> None:
    body = (
        '<text>x</text><image href="photo.png"/><foreignObject/><filter id="f"/>'
        '<rect id="r" filter="url(#f)" width="5" height="5"/><use href="#no"/>'
    )
    told = " / ".join(scene(body).left_out)
    for words in (
        "text (line 1): words",
        "image (line 1): a picture",
        "rect “r” (line 1): a filter on it",
        "copies “no”",
    ):
        assert words in told


def test_transforms_that_would_be_guessed_are_refused() -> None:
    turned = '<rect width="5" height="5" transform="rotate(180)" transform-origin="{}"/>'
    assert only(turned.format("5 5")).region().bounds == pytest.approx((5.0, 90.0, 10.0, 95.0))
    for origin in ("50% 50%", "center"):
        with pytest.raises(Unreadable, match="turns about"):
            scene(turned.format(origin))
    with pytest.raises(Unreadable, match="page itself"):
        scene("", 'width="5mm" height="5mm" transform="scale(2)"')


# areas


def test_areas_by_rule() -> None:
    square, inner = [(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0)], [(3.0, 3.0), (6.0, 3.0), (6.0, 6.0), (3.0, 6.0)]
    assert areas.filled([square, inner], "evenodd").area == pytest.approx(72.0)
    assert areas.filled([square, inner], "nonzero").area == pytest.approx(81.0)
    assert areas.filled([square, inner[::-1]], "nonzero").area == pytest.approx(72.0)
    assert areas.filled([[(0.0, 0.0), (9.0, 9.0), (9.0, 0.0), (0.0, 9.0)]], "nonzero").area == pytest.approx(40.5)
    assert areas.filled([], "nonzero").is_empty and areas.filled([[(0.0, 0.0)] * 4, square[:2]], "nonzero").area == 0.0
    ring = shapely.Polygon(square, [inner])
    assert areas.united(
        [ring, shapely.box(4.0, 4.0, 5.0, 5.0), shapely.box(8.0, 8.0, 10.0, 10.0)]
    ).area == pytest.approx(76.0)
    assert areas.clipped(ring, [shapely.box(9.0, 0.0, 12.0, 9.0)]).is_empty  # it only touches


def test_endless_crossings_are_refused() -> None:
    few = [(float(k % 2) * 10.0, k / 10.0) for k in range(300)]
    areas.guard([few])
    many = [(float(k % 2) * 10.0, float(k * 7919 % 1000)) for k in range(1000)]
    with pytest.raises(Unreadable, match="cross each other too often"):
        areas.guard([many])


# chains


def test_lines_put_end_to_end() -> None:
    """Four lines drawn in any order and direction, with gaps of 0, 0.05 and 0.09 mm."""
    found = scene(
        '<path id="a" d="M0 0H20"/><path id="c" d="M0 10H20.05"/><path id="b" d="M20 0V10"/><path id="d" d="M0.09 0.01V10"/>'
    )
    (loop,), opens, troubles = loops_of(found.drawn)
    assert opens == [] and loop.name == "a, b, c, d"
    assert [t.rule.id for t in troubles] == ["geometry/gap-mended"] * 3
    assert "a gap of 0.050 mm in “b” and “c” at x 20.05, y 90.00 mm was closed" in [t.message for t in troubles]


def test_gaps_from_a_tenth_of_a_millimetre_stay_open() -> None:
    _, (chain,), troubles = loops_of(scene('<path id="a" d="M0 0H20V10H0V0.11"/>').drawn)
    assert (
        troubles == []
        and "0.11 mm lie between its ends at x 0.00, y 100.00 mm and x 0.00, y 99.89 mm" in open_trouble(chain).message
    )
    (_,), opens, troubles = loops_of(scene('<path id="a" d="M0 0H20V10H0V0.09"/>').drawn)
    assert opens == [] and [t.rule.id for t in troubles] == ["geometry/gap-mended"]


def test_doubles_are_dropped() -> None:
    (loop,), _, troubles = loops_of(scene('<rect id="a" width="9" height="9"/><path id="b" d="M9 9H0V0H9Z"/>').drawn)
    assert loop.name == "a" and "“b” lies on “a”" in troubles[0].message


# picks, regions, lines, edges


def test_picking_by_id_class_layer_and_stroke() -> None:
    found = scene(
        '<g id="Cuts"><rect id="a" class="x y" width="5" height="5"/></g><circle id="stroke:red" stroke="red" r="3" class="x"/>'
    )
    for wanted, count in (
        ("a", 1),
        ("#a", 1),
        (".x", 2),
        ("layer:Cuts", 1),
        ("stroke:solid", 1),
        ("stroke:red", 1),
        ("Cuts", 1),
    ):
        assert len(pick(found, wanted)) == count, wanted
    for wanted, words in (
        ("b", "no element with the id or label"),
        (".z", "class “z”"),
        ("layer:cut", "layer “cut”"),
        ("stroke:dashed", "dashed"),
    ):
        with pytest.raises(Missing, match=words):
            pick(found, wanted)
    with pytest.raises(Missing) as missing:
        pick(found, "layer:cuts")
    assert "did you mean “Cuts”?" in missing.value.hint


def test_filled_shapes_are_united_with_the_runs_that_survive() -> None:
    found = scene('<g id="o"><rect id="a" width="40" height="20"/><circle id="b" cx="40" cy="10" r="10"/></g>')
    region, troubles = region_of(found, pick(found, "o"), (), "o")
    assert region is not None and troubles == []
    assert area(region) == pytest.approx(800.0 + 50.0 * pi, rel=1e-6)
    assert {(run.name, round(run.radius, 9) if isinstance(run, Arc) else 0.0) for run in region.outer.edges} == {
        ("a", 0.0),
        ("b", 10.0),
    }


def test_clipped_outlines_are_cut() -> None:
    found = scene(
        '<clipPath id="c"><rect width="20" height="20"/></clipPath><circle id="o" r="10" cx="10" cy="20" clip-path="url(#c)"/>'
    )
    region, _ = region_of(found, pick(found, "o"), (), "o")
    assert region is not None and polygon(region).area == pytest.approx(50.0 * pi, rel=1e-3)
    assert {run.name for run in region.outer.edges} == {"o", "clip"}


def test_marks_lie_on_the_part() -> None:
    found = scene(
        '<rect id="o" width="20" height="20"/><circle id="in" cx="10" cy="10" r="2"/><path id="over" d="M10 10H30"/>'
    )
    region, _ = region_of(found, pick(found, "o"), (), "o")
    assert region is not None
    marks, troubles = marks_of(found, (("draw", ("in",)), ("score", ("over",)), ("cut", ("o",))), region, "o")
    assert [(m.kind, m.path.closed) for m in marks] == [(LineKind.DRAW, True), (LineKind.SCORE, False)]
    assert marks[1].path.points == ((10.0, 90.0), (20.0, 90.0))
    assert [t.value for t in troubles] == [pytest.approx(10.0)]


def test_edges_are_named_from_the_lowest_left_corner() -> None:
    corners = [(30.0, 0.0), (30.0, 10.0), (0.0, 10.0), (0.0, 0.0), (15.0, 0.0)]
    named, edges = named_edges(polyline(corners, True, "o"))
    assert [e.name for e in edges] == ["edge_1", "edge_2", "edge_3", "edge_4"] and len(named.edges) == 4
    assert (edges[0].start, edges[0].end) == ((0.0, 0.0), (30.0, 0.0))


# what others call


def test_the_island_of_the_tests_has_its_size() -> None:
    island = read_scene(read_tree(ISLAND.read_bytes()))
    region, _ = region_of(island, pick(island, "shore"), (), "shore")
    assert region is not None
    left, bottom, right, top = polygon(region).bounds
    assert (right - left, top - bottom) == pytest.approx((282.0, 188.0), abs=0.005)
    assert {run.name for run in region.outer.edges} == {"shore"} and region.holes == ()
    none, troubles = region_of(island, pick(island, "landing"), (), "landing")
    assert none is None and any("is open" in trouble.message for trouble in troubles)


def test_looking_at_a_drawing() -> None:
    look = look_at(ISLAND.read_bytes(), "island.svg")
    assert (look.width, look.height) == pytest.approx((300.0, 210.0))
    (seen,) = look.outlines
    assert seen.id == "shore" and seen.bounds == pytest.approx((9.0, 11.0, 291.0, 199.0), abs=0.002)
    assert look.filled_area == 0.0 and look.bounds is None and look.findings == ()
    assert look.left_out == ("text (line 17): words, no outline", "landing (line 16): an open line, no outline")
    with pytest.raises(Refusal) as refused:
        look_at(ISLAND.read_bytes(), "island.svg", "shores")
    (finding,) = refused.value.findings
    assert finding.check == "geometry/not-in-drawing" and "did you mean “shore”?" in finding.hint


def test_a_drawing_without_a_page_is_as_large_as_what_it_draws() -> None:
    look = look_at(b'<svg xmlns="http://www.w3.org/2000/svg"><rect x="96" width="96" height="192"/></svg>', "a.svg")
    assert (look.width, look.height) == pytest.approx((25.4, 50.8))
    assert [f.check for f in look.findings] == ["geometry/drawing-size-unsaid"]


def test_five_thousand_points_are_read() -> None:
    corners = [polar(100.0 + 2.0 * (k % 2), 2.0 * pi * k / 5000, (150.0, 150.0)) for k in range(5000)]
    path = " ".join(f"{x:.3f},{y:.3f}" for x, y in corners)
    text = f'<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="300mm" viewBox="0 0 300 300"><path id="o" d="M{path}z"/></svg>'
    drawn = read_scene(read_tree(text.encode()))
    region, _ = region_of(drawn, pick(drawn, "o"), (), "o")
    assert region is not None
    assert len(region.outer.points) == 5000
    assert look_at(text.encode(), "a.svg").filled_area == pytest.approx(area(region), rel=1e-6)


@pytest.mark.parametrize(
    ("style", "square_mm"), [('fill="none" stroke="black"', 48.0), ("", 64.0), ('fill-rule="evenodd"', 48.0)]
)
def test_an_outline_is_shown_with_the_area_that_a_part_gets(style: str, square_mm: float) -> None:
    """Two squares drawn the same way round, one inside the other: by the rule of lines a hole, by that of fills none."""
    body = f'<path id="o" {style} d="M0 0h8v8h-8z M2 2h4v4h-4z"/>'
    text = f'<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">{body}</svg>'.encode()
    (seen,) = look_at(text, "a.svg").outlines
    assert seen.area == pytest.approx(square_mm)
    (taken,) = look_at(text, "a.svg", "o").outlines  # as a part is taken
    assert taken.area == pytest.approx(square_mm)


def test_open_lines_are_seen_with_their_points() -> None:
    text = b'<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm"><path id="p" d="M0 0H9" stroke="red"/></svg>'
    look = look_at(text, "a.svg")
    assert [line.id for line in look.open_lines] == ["p"] and len(look.open_lines[0].points) == 2
    assert look.outlines == ()
