"""Match letters as the pages show them: one for each distinct joint, on both sides of it, and none where any part fits."""

import re
from collections import defaultdict
from dataclasses import replace
from itertools import combinations, product
from pathlib import Path

import pytest
import shapely
from shapely.affinity import affine_transform

from publisher import api
from publisher.design import Design
from publisher.geometry import Part, polygon
from publisher.pages import Pack
from publisher.pages.model import Words
from tests.random_designs.make import true_design
from tests.random_designs.tool import written
from tests.searches.profile import seeds
from tests.whole.conftest import demo, demo_pack

JOINED = ("box", "house", "lean-to", "ring", "crate", "spire", "slopes")
Side = tuple[str, str, float]  # part, edge, mm from it


def words_inside(pack: Pack) -> dict[tuple[str, int], list[Words]]:
    """The words that begin inside the outline of each printed copy, on all its pages."""
    found: dict[tuple[str, int], list[Words]] = defaultdict(list)
    for outline in pack.promises.outlines:
        rings = [outline.pose.apply_all(ring) for ring in outline.rings]
        ground = shapely.Polygon(rings[0], rings[1:])
        if window := outline.window:
            ground &= shapely.box(window.left, window.bottom, window.right, window.top)
        words = (thing for thing in pack.pages[outline.page - 1].drawn if isinstance(thing, Words))
        found[outline.part, outline.copy] += [w for w in words if ground.contains(shapely.Point(w.x, w.y))]
    return found


def drawn_letters(pack: Pack) -> dict[tuple[str, int], set[str]]:
    """The small bold letters that stand alone in each printed copy."""
    return {
        copy: {one.text for one in words if one.font == "bold" and re.fullmatch("[a-z]{1,2}", one.text)}
        for copy, words in words_inside(pack).items()
    }


def ways(part: Part) -> list[dict[str, str]]:
    """How a part lies upon itself, turned by quarters or turned over, by the middles of its edges; but for how it lies."""
    shape = polygon(part.outline)
    x, y = shapely.box(*shape.bounds).centroid.coords[0]
    found = []
    for matrix in [
        (a, b, c, d) for a, b, c, d in product((-1, 0, 1), repeat=4) if abs(a * d - b * c) == 1 and a * b == c * d == 0
    ]:
        a, b, c, d = matrix
        by = (a, b, c, d, x - a * x - b * y, y - c * x - d * y)
        if shape.boundary.hausdorff_distance(affine_transform(shape, by).boundary) > 0.03:
            continue
        middles = {
            e.name: shapely.LineString([e.nominal_start, e.nominal_end]).centroid for e in part.edges if e.joined
        }
        laid = {
            name: next((o for o, at in middles.items() if at.distance(affine_transform(middle, by)) < 0.03), "")
            for name, middle in middles.items()
        }
        if matrix != (1, 0, 0, 1) and all(laid.values()):
            found.append(laid)
    return found


def joints(design: Design, parts: tuple[Part, ...]) -> list[set[Side]]:
    """What meets what, directly or by way of others, or would where parts are laid upon themselves: what can be taken for each other is
    one joint."""
    groups = met(design)
    laid = {part.id: ways(part) for part in parts}

    def own(group: set[Side], part: str) -> set[Side]:
        return {side for side in group if side[0] == part}

    def alike(one: set[Side], other: set[Side]) -> bool:
        names = {side[0] for side in one}
        if names != {side[0] for side in other} or any(side[0] not in laid for side in one):
            return False
        return all(
            own(one, name) == own(other, name)
            or any({(p, way[e], mm) for p, e, mm in own(one, name)} == own(other, name) for way in laid[name])
            for name in names
        )

    while pair := next((pair for pair in combinations(groups, 2) if alike(*pair)), None):
        groups = [group for group in groups if group not in pair] + [pair[0] | pair[1]]
    return groups


def met(design: Design) -> list[set[Side]]:
    """What meets what, directly or by way of others."""
    groups: list[set[Side]] = []
    for plan in design.panels:
        part_at = {place.name: place.part for place in plan.places}
        for join in plan.joins:
            at = join.at or (join.inset, 0.0)
            pair = {(part_at[e.panel], e.edge, round(mm, 3)) for e, mm in zip((join.a, join.b), at, strict=True)}
            touched = [group for group in groups if group & pair]
            groups = [group for group in groups if not group & pair] + [pair.union(*touched)]
    return groups


def assert_letters(design: Design, parts: tuple[Part, ...], pack: Pack) -> int:
    """Hold what is drawn against the joins; return how many joints have a letter."""
    groups, drawn = joints(design, parts), drawn_letters(pack)
    met = {part: [g for g in groups if any(side[0] == part for side in g)] for g in groups for part, *_ in g}
    wanted = dict.fromkeys(met, 0)
    names: list[str] = []
    lettered: list[tuple[set[str], set[str]]] = []
    for group in groups:
        parts = {part for part, *_ in group}
        if all(len(met[part]) == 1 for part in parts):
            continue  # whichever of its edges meet, they fit
        shown = [letters for (part, _), letters in drawn.items() if part in parts]
        assert {part for part, _ in drawn} >= parts, (group, drawn)
        lettered.append((parts, set.intersection(*shown)))
    for parts, both in sorted(lettered, key=lambda one: len(one[1])):  # whichever has least to choose from comes first
        assert both - set(names), (parts, drawn)
        names.append(min(both - set(names)))
        for part in parts:
            wanted[part] += 1
    for (part, copy), letters in drawn.items():
        assert len(letters) == wanted.get(part, 0), (part, copy, letters)
    assert len(set().union(*drawn.values())) == len(names)
    return len(names)


def assert_named(pieces: tuple[Part, ...], pack: Pack) -> None:
    """Each word of a part's marks (letters, angles, names that steps speak of) stands in each of its printed copies."""
    for (part_id, copy), words in words_inside(pack).items():
        said = {word.text.removeprefix("bevel ") for word in words}
        (part,) = [piece for piece in pieces if piece.id == part_id]
        assert {m.text.replace("\u00a0", " ") for m in part.marks if m.text} <= said, (part_id, copy)


@pytest.mark.parametrize(("slug", "count"), [("quay", 3), ("bridge", 3), ("toll-house", 0), ("lock-stair", 0)])
def test_the_demos_have_a_letter_for_each_distinct_joint(slug: str, count: int) -> None:
    design = demo(slug).design
    assert design is not None
    pack = demo_pack(slug, "a4")
    assert assert_letters(design, demo(slug).parts, pack) == count
    assert_named(demo(slug).pieces, pack)


def test_a_letter_on_one_side_only_is_noticed() -> None:
    design, pack = demo("quay").design, demo_pack("quay", "a4")
    assert design is not None

    def a_letter(thing: object) -> bool:
        return isinstance(thing, Words) and thing.font == "bold" and thing.text == "a"

    sides = {outline.page for outline in pack.promises.outlines if outline.part == "side"}
    pages = tuple(
        replace(page, drawn=tuple(thing for thing in page.drawn if not a_letter(thing)))
        if page.number in sides
        else page
        for page in pack.pages
    )
    with pytest.raises(AssertionError):
        assert_letters(design, demo("quay").parts, replace(pack, pages=pages))


@pytest.mark.search
@seeds(1, 300)
def test_letters_of_random_designs(seed: int, tmp_path: Path) -> None:
    made = true_design(seed, JOINED[seed % len(JOINED)])
    worked = api.work(api.read(written(tmp_path, made.spec, made.files)))
    assert worked.design is not None and worked.joined is not None
    for pack in api.compose(worked)[0]:
        assert_letters(worked.design, worked.parts, pack)
        assert_named(worked.pieces, pack)
