"""Letters of joins."""

from dataclasses import replace

from publisher.basics import Place
from publisher.design.assembly.match_letters import lettered
from publisher.design.records import EdgeRef, EndSwap, Join, PanelPlace, PanelPlan

HERE = Place("spec.yaml")


def plan(places: dict[str, str], *joins: str, name: str = "house", insets: tuple[float, ...] = ()) -> PanelPlan:
    """An assembly: place -> part, and joins such as ``front.right east.left``."""
    made = []
    for number, text in enumerate(joins):
        a, b = (EdgeRef(*end.split(".")) for end in text.split())
        inset = insets[number] if insets else 0.0
        made.append(Join(a, b, "butt", 90.0, a.panel, "", 0, inset, 0.0, None, "", HERE))
    first = next(iter(places))
    return PanelPlan(
        name,
        tuple(PanelPlace(p, part, HERE) for p, part in places.items()),
        EdgeRef(first, "bottom"),
        tuple(made),
        (),
        HERE,
    )


def letters(*plans: PanelPlan, swaps: tuple[EndSwap, ...] = ()) -> list[str]:
    return [join.match for made in lettered(plans, swaps) for join in made.joins]


def test_each_distinct_joint_has_its_letter() -> None:
    box = plan(
        {"f": "front", "b": "back", "l": "left", "r": "right"}, "f.right r.left", "r.right b.left", "b.right l.left"
    )
    assert letters(box) == ["a", "b", "c"]


def test_interchangeable_parts_share_one() -> None:
    house = plan(
        {"f": "gable", "b": "gable", "l": "side", "r": "side"},
        "f.right r.left", "r.right b.left", "b.right l.left", "l.right f.left",
    )  # fmt: skip
    assert letters(house) == ["a", "b", "a", "b"]


def test_ribs_that_fit_any_slot_and_lie_under_a_deck() -> None:
    quay = plan(
        {"s": "side", "n": "side", "d": "deck", "p": "rib", "q": "rib"},
        "s.left p.right", "n.right p.left", "s.left q.right", "n.right q.left", "d.left p.top", "d.left q.top",
        insets=(10.0, 10.0, 90.0, 90.0, 10.0, 90.0),
    )  # fmt: skip
    assert letters(quay) == ["a", "b", "a", "b", "c", "c"]


def test_where_any_part_fits_any_place_there_is_none() -> None:
    ring = plan({"p": "wall", "q": "wall", "r": "wall"}, "p.right q.left", "q.right r.left", "r.right p.left")
    assert letters(ring) == ["", "", ""]
    roofed = plan({"p": "wall", "q": "wall", "t": "roof"}, "p.right q.left", "q.right p.left", "p.top t.eave")
    assert letters(roofed) == ["a", "a", "b"]


def test_two_assemblies_do_not_use_a_letter_for_two_joints() -> None:
    def two(name: str) -> PanelPlan:
        return plan(
            {"f": f"{name} f", "b": f"{name} b", "c": f"{name} c"}, "f.right b.left", "b.right c.left", name=name
        )

    assert letters(two("lodge"), two("barn")) == ["a", "b", "c", "d"]


HOUSE = plan(
    {"f": "gable", "b": "gable", "l": "side", "r": "side", "t": "roof"},
    "f.right r.left", "r.right b.left", "b.right l.left", "l.right f.left", "f.top t.eave",
)  # fmt: skip
ENDS = (("left", "right"), ("right", "left"), ("top", "top"))


def test_ends_that_lie_upon_each_other_share_a_letter() -> None:
    both = (EndSwap("gable", ENDS), EndSwap("side", ENDS))
    assert letters(HOUSE) == ["a", "b", "a", "b", "c"]
    assert letters(HOUSE, swaps=both) == ["a", "a", "a", "a", "b"]


def test_one_of_two_parts_that_lies_upon_itself_is_not_enough() -> None:
    assert letters(HOUSE, swaps=(EndSwap("gable", ENDS),)) == ["a", "b", "a", "b", "c"]


def test_where_ends_are_all_that_could_be_mistaken_there_is_no_letter() -> None:
    bare = replace(HOUSE, joins=HOUSE.joins[:4])
    assert letters(bare) == ["a", "b", "a", "b"]
    assert letters(bare, swaps=(EndSwap("gable", ENDS), EndSwap("side", ENDS))) == ["", "", "", ""]


def test_a_joint_with_another_part_stays_another() -> None:
    porch = plan({"f": "gable", "r": "side", "p": "post"}, "f.right r.left", "f.left p.left", "r.right p.right")
    assert letters(porch, swaps=(EndSwap("gable", ENDS), EndSwap("side", ENDS))) == letters(porch) == ["a", "b", "c"]


def test_ribs_that_cross_alike_from_both_ends_share_a_letter() -> None:
    def at(join: Join, one: float, other: float) -> Join:
        return replace(join, joint="cross_lap", at=(one, other))

    grid = plan({"x": "long", "p": "rib", "q": "rib"}, "x.top p.bottom", "x.top q.bottom")
    grid = replace(grid, joins=(at(grid.joins[0], 20.0, 30.0), at(grid.joins[1], 80.0, 30.0)))
    end = replace(plan({"x": "long", "l": "lid"}, "x.top l.under"), name="lid")
    swap = EndSwap("long", (("top", "top"),), ((("top", 20.0), ("top", 80.0)), (("top", 80.0), ("top", 20.0))))
    assert letters(grid, end, swaps=(swap,)) == ["a", "a", "b"]
