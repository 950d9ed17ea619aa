"""Tile pages: put together by their printed marks they give the part back."""

from collections.abc import Callable
from math import atan2, cos, dist, sin

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Arc, Box, OutlinePromise, Path, Point, SeamPromise
from publisher.design import Design
from publisher.geometry import Part, polygon
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet.draft import Body, Context, Numbers, PageDraft
from publisher.pages.templates.template_labels import samples
from publisher.pages.templates.template_plan import planner_of
from publisher.pages.tiles import tile_pages
from publisher.pages.tiles.seams import MARK_RADIUS
from publisher.pages.tiles.tile_plan import tiling
from publisher.pages.type.rectangles import as_polygon
from publisher.pages.type.styles import CUT, GAUGE, HATCH, LEAST, LEAST_SIZE
from publisher.pages.type.text import Setter
from tests.searches.profile import cases


def tile_drafts(context: Context) -> tuple[PageDraft, ...]:
    """The pages of tiles that share theirs with nothing."""
    large = [p for p in context.parts if not planner_of(context).fits(p)]
    refused = tuple(draft for p in large if (draft := tile_pages.tiles_refusal(context, p)))
    return refused or tile_pages.tile_drafts(context, [tiling(context, s) for p in large for s in samples(context, p)])


def bodies(drafts: tuple[PageDraft, ...]) -> tuple[Body, ...]:
    keys = tuple((d.key, n) for n, d in enumerate(drafts, 1))
    return tuple(d.body(Numbers(n, len(drafts), keys, (), ())) for n, d in enumerate(drafts, 1))


def marks_drawn(body: Body) -> dict[str, Point]:
    """The printed marks of a page, as a reader finds them: a circle with a cross through its middle and a name beside it."""
    found: dict[str, Point] = {}
    words = [w for w in body.drawn if isinstance(w, Words) and "·" in w.text]
    for stroke in (d for d in body.drawn if isinstance(d, Stroke) and d.style == GAUGE):
        circle, across, up = stroke.paths
        arc = circle.edges[0]
        assert isinstance(arc, Arc)
        middle = arc.centre
        assert all(dist(p, middle) == pytest.approx(MARK_RADIUS) for p in circle.points)
        for line in (across, up):
            a, b = line.points
            assert ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) == pytest.approx(middle)
            assert dist(a, b) == pytest.approx(2 * MARK_RADIUS)
        name = min(words, key=lambda w: dist((w.x, w.y), middle))
        assert name.text not in found
        found[name.text] = middle
    return found


def clipped(path: Path, window: Box) -> shapely.Geometry:
    return shapely.LinearRing(path.points).intersection(as_polygon(window))


def undone(made: tuple[Body, ...]) -> shapely.Geometry:
    """All tiles of one part carried to the first page's coordinates by the printed marks alone."""
    marks = [marks_drawn(b) for b in made]
    carried = {0: lambda p: p}
    waiting = [0]
    while waiting:
        here = waiting.pop()
        for there in range(len(made)):
            common = sorted(set(marks[here]) & set(marks[there]))
            if there in carried or len(common) < 2:
                continue
            a, b = marks[there][common[0]], marks[there][common[-1]]
            c, d = (carried[here](marks[here][n]) for n in (common[0], common[-1]))
            turn = atan2(d[1] - c[1], d[0] - c[0]) - atan2(b[1] - a[1], b[0] - a[0])
            carried[there] = lambda p, a=a, c=c, t=turn: (
                c[0] + (p[0] - a[0]) * cos(t) - (p[1] - a[1]) * sin(t),
                c[1] + (p[0] - a[0]) * sin(t) + (p[1] - a[1]) * cos(t),
            )
            waiting.append(there)
    assert len(carried) == len(made)
    lines = []
    for number, body in enumerate(made):
        for stroke in (d for d in body.drawn if isinstance(d, Stroke) and d.style == CUT):
            assert stroke.clip
            for path in stroke.paths:
                for piece in shapely.get_parts(clipped(path, stroke.clip)):
                    if piece.length:
                        lines.append(shapely.LineString([carried[number](p) for p in shapely.get_coordinates(piece)]))
    return shapely.union_all(lines)


def put_back(made: tuple[Body, ...], part: Part) -> None:
    first: OutlinePromise = made[0].outlines[0]
    wanted = polygon(part.template, first.pose).boundary
    found = undone(made)
    assert shapely.hausdorff_distance(wanted.segmentize(1.0), found.segmentize(1.0)) < 1.01
    assert wanted.difference(found.buffer(1e-6)).length < 1e-3  # nothing of the outline is missing
    assert found.difference(wanted.buffer(1e-6)).length < 1e-3  # nothing else is there


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_undoing_the_tiles_gives_the_part_back(
    make_context: Callable[..., Context], draw: Callable[..., Part], paper: str
) -> None:
    for part in (
        draw("wall_panel", width=480, height=100),
        draw("disc", radius=142),
        draw("regular_polygon", sides=5, radius=260),
        draw("spiral_stair_layer", core_radius=80, reach=330, step_angle=40, turn=20, notch=6, joints=40),
    ):
        drafts = tuple(d for d in tile_drafts(make_context(paper, parts=(part,))) if d.kind == "tiles")
        assert len(drafts) >= 2
        put_back(bodies(drafts), part)


@pytest.mark.search
@cases(2, 100)
@given(width=st.floats(280, 900), height=st.floats(120, 600))
def test_any_wall_comes_back(
    make_context: Callable[..., Context], draw: Callable[..., Part], width: float, height: float
) -> None:
    part = draw("wall_panel", width=width, height=height)
    drafts = tuple(d for d in tile_drafts(make_context(parts=(part,))) if d.kind == "tiles")
    if drafts:
        put_back(bodies(drafts), part)


def test_a_mirrored_copy_comes_back_mirrored(
    make_context: Callable[..., Context], make_design: Callable[..., Design], draw: Callable[..., Part]
) -> None:
    part = draw("spiral_stair_layer", count=1, mirrored=1, core_radius=80, reach=330, step_angle=40, turn=20, notch=6)
    drafts = tile_drafts(make_context(design=make_design(use="paste"), parts=(part,)))
    made = bodies(tuple(d for d in drafts if d.kind == "tiles"))
    assert all(o.pose.mirrored for b in made for o in b.outlines)
    put_back(made, part)


def test_seam_promises_are_what_is_drawn(make_context: Callable[..., Context], draw: Callable[..., Part]) -> None:
    part = draw("disc", radius=142)
    drafts = tile_drafts(make_context(parts=(part,)))
    made = bodies(drafts)
    promised: list[SeamPromise] = [s for b in made for s in b.seams]
    assert len({s.label for s in promised}) == len(promised) >= 8
    for seam in promised:
        for page, at in zip(seam.pages, seam.at, strict=True):
            body = made[page - 1]
            assert marks_drawn(body)[seam.label] == pytest.approx(at)
            window = body.outlines[0].window
            assert window and Box(*at, *at).grown(MARK_RADIUS).beyond(window) <= 0.0


def test_names_of_marks_touch_no_line_and_no_other_words(
    make_context: Callable[..., Context], draw: Callable[..., Part], setter: Setter
) -> None:
    for part in (draw("disc", radius=142), draw("wall_panel", width=480, height=100)):
        for body in bodies(tile_drafts(make_context(parts=(part,)))):
            names = [w for w in body.drawn if isinstance(w, Words) and "·" in w.text]
            cut = [p for d in body.drawn if isinstance(d, Stroke) and d.style in (CUT, GAUGE) for p in d.paths]
            for name in names:
                box = shapely.box(name.x, name.y, name.x + setter.width(name.text, LEAST), name.y + 1.6)
                for path in cut:
                    points = (*path.points, path.points[0]) if path.closed else path.points
                    assert not shapely.LineString(points).intersects(box)


def test_one_tile_carries_the_whole_label_and_every_tile_the_letter(
    make_context: Callable[..., Context], draw: Callable[..., Part], words: Callable[[Body], str]
) -> None:
    part = draw("wall_panel", name="Quay side", width=480, height=100)
    drafts = tile_drafts(make_context(parts=(part,)))
    assert [d.title for d in drafts] == [
        "A Quay side — tile 1 of 2",
        "A Quay side — tile 2 of 2",
    ]
    first, second = bodies(drafts)
    assert {"A", "Quay side", "cut 2", "480.0 × 100.0 mm", "THIS SIDE UP"} <= {t.text for t in first.texts}
    assert "A" in {t.text for t in second.texts} and "cut 2" not in words(second)
    assert "479.2 mm (18.87 in), whole template" in words(first)
    assert "page 2 lies on it" in words(first) and "lay over page 1" in words(second)
    for body in (first, second):
        for promise in body.texts:
            assert promise.text in words(body)
        assert all(w.size >= LEAST_SIZE for w in body.drawn if isinstance(w, Words))


def test_a_name_too_long_for_the_header_leaves_it_to_the_letter(
    make_context: Callable[..., Context], draw: Callable[..., Part]
) -> None:
    """A title that is cut ends within a word, which no page of ours says."""
    part = draw("wall_panel", name="Quay side " * 12, width=480, height=100)
    assert [d.title for d in tile_drafts(make_context(parts=(part,)))] == ["A — tile 1 of 2", "A — tile 2 of 2"]


@pytest.mark.keeps("pages/too-many-tiles")
def test_more_than_two_tiles_get_a_map_page(make_context: Callable[..., Context], draw: Callable[..., Part]) -> None:
    kinds = [d.kind for d in tile_drafts(make_context(parts=(draw("disc", radius=142),)))]
    assert kinds == ["overview", "tiles", "tiles", "tiles", "tiles"]


def test_parts_that_fit_a_page_are_not_tiled(make_context: Callable[..., Context]) -> None:
    assert tile_drafts(make_context()) == ()


@pytest.mark.breaks("pages/too-many-tiles")
def test_more_tiles_than_a_pack_takes_are_a_finding(
    make_context: Callable[..., Context], make_part: Callable[..., Part], numbers: Callable[..., Numbers]
) -> None:
    (draft,) = tile_drafts(make_context(parts=(make_part(width=5000, height=5000),)))
    (finding,) = draft.findings
    assert finding.check == "pages/too-many-tiles" and finding.value and finding.value > 200
    assert draft.body(numbers()) == Body()
    assert not any(d.findings for d in tile_drafts(make_context(parts=(make_part(width=1200, height=900),))))


def test_words_in_a_glue_area_stand_on_no_hatching(
    make_context: Callable[..., Context], draw: Callable[..., Part]
) -> None:
    drafts = tile_drafts(make_context(parts=(draw("ring", radius=250, hole_radius=215),)))
    looked = 0
    for body in bodies(drafts):
        lines = [p.points for d in body.drawn if isinstance(d, Stroke) and d.style == HATCH for p in d.paths]
        for word in (w for w in body.drawn if isinstance(w, Words) and w.text.startswith("glue area") and w.turn):
            box = shapely.box(word.x - 1.9, word.y, word.x, word.y + 20)
            assert not any(shapely.LineString(line).intersects(box) for line in lines)
            looked += 1
    assert looked
