"""Labels of parts of every shape at random sizes, on template and tile pages of every paper: where they stand, and what they say."""

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from random import Random

import pytest
import shapely
from shapely import affinity

from publisher.basics import Box, Pose
from publisher.design import Design, EdgeRef, PanelPlace, PanelPlan, PaperWish
from publisher.geometry import Part, polygon, shape_infos
from publisher.joints import Joined, Placed, budget_of, side_key, sides_of
from publisher.pages.model import Words
from publisher.pages.sheet.draft import Body, Context, Numbers
from publisher.pages.sheet.page_checks import words_box
from publisher.pages.sheet.paper_table import paper_for
from publisher.pages.templates.top_marks import with_top_marks
from publisher.pages.tiles import true_page_drafts
from tests.geometry.test_random_sizes import EITHER, SAID, USUAL, USUAL_OF
from tests.searches.profile import seeds

STANDING = (1.0, 0.0, 0.0, 0.0, 0.0, 0.0, -1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
FACES = {"": "", "outside": "the outside face", "inside": "the inside face", "climbs": "the arrow climbs"}
NARROWEST = 3.0  # mm: a narrower piece holds no letter
LONGEST = 700.0  # mm of a part
TOUCH = 0.05  # mm² in which words may overlap


def sizes(dice: Random, shape: str) -> dict[str, float]:
    """Sizes as a designer would write them; choices stay as they are unsaid."""
    info = next(i for i in shape_infos() if i.name == shape)
    ranges = {**USUAL, **USUAL_OF.get(shape, {})}
    one, other = EITHER.get(shape, ("", ""))
    picked, left = dice.sample((one, other), 2)
    found = {}
    for p in info.parameters:
        needed = p.default is None or p.name == picked or p.name in SAID.get(shape, ())
        if p.kind == "choice" or p.name == left or not (needed or dice.random() < 0.4):
            continue
        low, high = ranges.get(p.name, (p.least or 0.0, min(p.most or 300.0, 300.0)))
        found[p.name] = float(dice.randint(int(low), int(high))) if p.kind == "count" else dice.uniform(low, high)
    return found


def some_parts(dice: Random, draw: Callable[..., Part]) -> tuple[Part, ...]:
    parts: list[Part] = []
    for _ in range(60):
        shape = dice.choice(shape_infos()).name
        letter = ("" if dice.random() < 0.9 else "A") + chr(65 + len(parts))
        plan = {
            "count": dice.randint(1, 20),
            "spare": dice.choice((0, 0, 1)),
            "trace_allowance": dice.choice((0.0, 0.4)),
        }
        try:
            part = draw(shape, letter, thickness=dice.choice((3.0, 5.0, 10.0)), **plan, **sizes(dice, shape))
        except (AssertionError, TypeError):  # together these sizes give no part: geometry says so
            continue
        left, bottom, right, top = polygon(part.template).bounds
        if max(right - left, top - bottom) < LONGEST:
            parts.append(replace(part, mirrored=dice.choice((0, 0, dice.randint(1, part.count)))))
        if len(parts) == 5:
            break
    return tuple(parts[: dice.randint(1, 5)])


def a_case(
    dice: Random, make_context: Callable[..., Context], make_design: Callable[..., Design], draw: Callable[..., Part]
) -> Context:
    parts = some_parts(dice, draw)
    use = dice.choice(("trace", "trace", "paste"))
    if use == "paste":
        parts = tuple(replace(p, count=min(p.count, 4), mirrored=min(p.mirrored, p.count, 2)) for p in parts)
    design = make_design(use=use)
    placed: tuple[tuple[str, tuple[Placed, ...]], ...] = ()
    if dice.random() < 0.5:
        here = design.parts[0].place
        places = tuple(PanelPlace(p.id, p.id, here) for p in parts)
        design = replace(design, panels=(PanelPlan("box", places, EdgeRef(parts[0].id, "bottom"), (), (), here),))
        placed = (("box", tuple(Placed(p.id, p.id, STANDING) for p in parts)),)
    own = dice.choice(((420.0, 594.0), (dice.uniform(150.0, 450.0), dice.uniform(200.0, 620.0))))
    design = replace(design, papers=(PaperWish("own", *own, None, design.parts[0].place),))
    context = make_context(design=design, parts=parts)
    joined = Joined((), placed, (), (), (), (), budget_of(()), sides_of(design, parts, placed))
    paper = paper_for(design, dice.choice(("a4", "letter", "a4", "letter", "a3", "tabloid", "own")))
    return replace(context, parts=with_top_marks(parts, joined), joined=joined, paper=paper)


def band(context: Context, words: Words) -> shapely.Polygon:
    """The letters of a line without accents, turned with it."""
    box = words_box(context.type.faces, replace(words, turn=0.0))
    low, high = words.y - 0.05 * words.size, words.y + 0.72 * words.size
    return affinity.rotate(shapely.box(box.left, low, box.right, high), words.turn, (words.x, words.y))


def told(body: Body, context: Context, box: Box) -> list[str]:
    """The lines whose middle stands in a box."""
    inside = []
    for thing in body.drawn:
        if isinstance(thing, Words):
            x, y = band(context, thing).centroid.coords[0]
            if box.left - 0.5 <= x <= box.right + 0.5 and box.bottom - 0.5 <= y <= box.top + 0.5:
                inside.append(thing.text)
    return inside


@pytest.mark.search
@seeds(3, 1000, a_side_that_found_no_place=1027)
def test_labels_stand_inside_their_parts_and_clear_of_everything(
    seed: int,
    make_context: Callable[..., Context],
    make_design: Callable[..., Design],
    draw: Callable[..., Part],
) -> None:
    context = a_case(Random(seed), make_context, make_design, draw)
    said: dict[tuple[str, int], list[str]] = {}
    held: dict[tuple[str, int], list[str]] = {}
    mirrored: dict[tuple[str, int], bool] = {}
    for draft in true_page_drafts(context):
        assert not draft.findings
        body = draft.body(Numbers(1, 9, (), (), ()))
        lines = [(thing, band(context, thing)) for thing in body.drawn if isinstance(thing, Words)]
        limit = shapely.box(
            draft.frame.limit.left, draft.frame.limit.bottom, draft.frame.limit.right, draft.frame.limit.top
        )
        assert [words.text for words, area in lines if not limit.covers(area)] == []
        meets = [
            (a.text, b.text) for (a, one), (b, two) in combinations(lines, 2) if one.intersection(two).area > TOUCH
        ]
        assert meets == []
        for outline in body.outlines:
            rings = [outline.pose.apply_all(ring) for ring in outline.rings]
            ground = shapely.Polygon(rings[0], rings[1:])
            window = outline.window
            edge = ground.boundary
            if window is not None:
                edge = edge.intersection(shapely.box(window.left, window.bottom, window.right, window.top))
            assert [words.text for words, area in lines if edge.intersects(area)] == []
            key = (outline.part, outline.copy)
            mirrored[key] = outline.pose.mirrored
            held.setdefault(key, []).extend(words.text for words, area in lines if ground.covers(area))
        for where in body.carried:
            part = where.key.split(":")[1]
            said.setdefault((part, where.copy), []).extend(told(body, context, where.box))
    for (part_id, copy), inside in held.items():
        part = context.part(part_id)
        assert part is not None
        side = context.side(part, mirrored[part_id, copy])
        assert side.key == side_key(part_id, mirrored[part_id, copy])
        shape = polygon(part.template)
        wide = 2 * shapely.length(shapely.maximum_inscribed_circle(shape, 0.05))
        if wide > NARROWEST * len(part.letter):
            assert part.letter in " ".join(inside).split(), (part.shape, shape.bounds, inside)
        words = " ".join(said[part_id, copy])
        assert (
            "THIS SIDE UP" in words
            and FACES[side.face] in words
            and f"cut {part.count}" in words.replace("\u00a0", " ")
        )
        assert ("Do not flip." in words) != side.flip
        if side.top:
            assert "top" in words.split() or "top" in inside


def test_a_part_with_no_room_for_its_top_shows_it_on_a_flag(
    make_context: Callable[..., Context], make_design: Callable[..., Design], make_part: Callable[..., Part]
) -> None:
    narrow, wide = make_part("narrow", "N", 3.6, 60.0), make_part("wide", "W", 60.0, 40.0)
    design = make_design()
    placed = (("box", (Placed("n", "narrow", STANDING), Placed("w", "wide", STANDING))),)
    joined = Joined((), placed, (), (), (), (), budget_of(()), sides_of(design, (narrow, wide), placed))
    context = replace(
        make_context(design=design, parts=(narrow, wide)), joined=joined, parts=with_top_marks((narrow, wide), joined)
    )
    (draft,) = true_page_drafts(context)
    body = draft.body(Numbers(1, 1, (), (), ()))
    (box,) = [where.box for where in body.carried if where.key == "side:narrow" and where.box.width > 3.6]
    assert "top" in told(body, context, box)
    (outline,) = [o for o in body.outlines if o.part == "wide"]
    assert isinstance(outline.pose, Pose)
    ground = shapely.Polygon(outline.pose.apply_all(outline.rings[0]))
    tops = [band(context, thing) for thing in body.drawn if isinstance(thing, Words) and thing.text == "top"]
    assert [ground.covers(area) for area in tops].count(True) == 1
