"""Things that touch what carries them in a few places, and things that lie on each other by a sliver."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.design import PanelPlan, ThingPlan, WholePlan
from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.checks.glued_too_little import glued_too_little
from publisher.joints.checks.thing_gapes import thing_gapes
from publisher.joints.put_together import assemble
from publisher.joints.wholes import bearings_of

At = tuple[float, float]


def on_top(
    make: SimpleNamespace, panels: tuple[PanelPlan, ...], parts: tuple[Part, ...], at: At = (0, 0), turn: float = 0.0
) -> Assembled:
    """The second of two assemblies of panels on the first."""
    low, top = (plan.name for plan in panels)
    things = (
        ThingPlan("low", low, (), (0, 0), 0.0, False, make.here),
        ThingPlan("top", top, ("low",), at, turn, False, make.here),
    )
    design = replace(make.design(panels=panels), wholes=(WholePlan("all", things, make.here),))
    return assemble(design, parts)[0]


def walls(make: SimpleNamespace, name: str) -> tuple[PanelPlan, tuple[Part, ...]]:
    """Four walls round 120 × 80 mm, open at the top."""
    long, short = f"{name}long", f"{name}short"
    around = {"f": long, "r": short, "b": long, "l": short}
    ways = (("f.right", "r.left"), ("b.left", "r.right"), ("b.right", "l.left"), ("f.left", "l.right"))
    plan = make.panels(name, around, "f.bottom", *(make.join(a, b, "butt") for a, b in ways))
    return plan, (make.wall(long, 120, 60), make.wall(short, 70, 60))


def storeys(make: SimpleNamespace, at: At, turn: float = 0.0) -> Assembled:
    (low, its), (top, own) = walls(make, "low"), walls(make, "top")
    return on_top(make, (low, top), its + own, at, turn)


def tent(make: SimpleNamespace, turn: float) -> Assembled:
    """A roof of two slopes of 45° over the walls; the eaves are 130 mm long and 110 mm apart."""
    low, its = walls(make, "low")
    roof = make.wall("roof", 130, 110 / 2**0.5)
    plan = make.panels("tent", {"l": "roof", "r": "roof"}, "l.bottom", make.join("l.top", "r.top", corner=90.0))
    return on_top(make, (low, plan), (*its, roof), (0, 0), turn)


def slabs(make: SimpleNamespace, at: At, *, glued: bool = True) -> Assembled:
    """A plank of 100 × 30 mm on a slab of 60 × 60 mm."""
    parts = make.rectangle("slab", 0, 0, 60, 60), make.rectangle("plank", 0, 0, 100, 30)
    stacks = make.stack("low", ("slab", 1, 0.0, (0, 0))), make.stack("beam", ("plank", 1, 0.0, (0, 0)))
    things = (
        ThingPlan("low", "low", (), (0, 0), 0.0, False, make.here),
        ThingPlan("top", "beam", ("low",), at, 0.0, not glued, make.here),
    )
    return assemble(replace(make.design(stacks=stacks), wholes=(WholePlan("all", things, make.here),)), parts)[0]


@pytest.mark.keeps("joints/thing-gapes")
def test_a_storey_on_its_walls_and_a_plank_anywhere_on_a_slab(make: SimpleNamespace) -> None:
    for subject in (storeys(make, (0, 0)), storeys(make, (0, 2)), tent(make, 0.0), slabs(make, (20, 10))):
        outcome = thing_gapes.run(subject, thing_gapes)
        assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/thing-gapes")
@pytest.mark.parametrize(("at", "turn"), [((0, 0), 90.0), ((6, 6), 0.0)])
def test_a_storey_that_crosses_the_walls_below(make: SimpleNamespace, at: At, turn: float) -> None:
    """Turned, each wall of one crosses two of the other on 5 × 5 mm: at four spots, of which each counts with what is beside it."""
    (found,) = thing_gapes.run(storeys(make, at, turn), thing_gapes).findings
    assert found.subject == "all" and "top stands on low and leaves" in found.message
    assert found.value is not None and found.value < 0.5


def test_a_roof_that_is_turned_gapes(make: SimpleNamespace) -> None:
    """Eaves 110 mm apart over walls that are 120 mm long: it touches them in four spots and stands over the middle of them."""
    (found,) = thing_gapes.run(tent(make, 90.0), thing_gapes).findings
    (bearing,) = bearings_of(tent(make, 90.0).things[0])
    assert bearing.gap > 5.0 and "gapes up to" in found.message


@pytest.mark.parametrize(("turn", "told"), [(0.0, False), (45.0, True)])
def test_a_square_over_the_corners_of_a_square(make: SimpleNamespace, turn: float, told: bool) -> None:
    """Walls round 116 mm on walls round 100 mm, turned by half a right angle: they cross near the corners, which alone lie
    under them; straight they lie beside each other and are not put on the corners at all."""
    plans, parts = zip(
        *(_square(make, name, wide) for name, wide in (("low", 100.0), ("top", 116.0 if told else 104.0))), strict=True
    )
    found = thing_gapes.run(on_top(make, plans, parts, turn=turn), thing_gapes).findings
    assert bool(found) == told


def _square(make: SimpleNamespace, name: str, wide: float) -> tuple[PanelPlan, Part]:
    wall = make.wall(name, wide, 60)
    sides = [f"{name}{i}" for i in range(4)]
    joins = [
        make.join(f"{a}.right", f"{b}.left", corner=90.0) for a, b in zip(sides, (*sides[1:], sides[0]), strict=True)
    ]
    return make.panels(name, dict.fromkeys(sides, name), f"{sides[0]}.bottom", *joins), wall


def tents(make: SimpleNamespace, upper: float, lower: float, at: At = (0, 0)) -> Assembled:
    """A tent of slopes ``upper`` mm long over one of slopes of ``lower`` mm, both of 45°."""
    parts = make.wall("roof", 130, upper), make.wall("under", 130, lower)
    plans = [
        make.panels(name, {"l": part.id, "r": part.id}, "l.bottom", make.join("l.top", "r.top", corner=90.0))
        for name, part in (("low", parts[1]), ("top", parts[0]))
    ]
    return on_top(make, tuple(plans), parts, at)


def test_a_cap_of_two_faces_on_a_roof(make: SimpleNamespace) -> None:
    """Its inside lies on the outside of the roof: on two faces, in plan 130 mm by what both have of the slopes."""
    subject = tents(make, 60.0, 80.0)
    (bearing,) = bearings_of(subject.things[0])
    assert bearing.broad.area == pytest.approx(130 * 2 * (60.0 - 5.0) / 2**0.5, rel=0.01)
    assert glued_too_little.run(subject, glued_too_little).findings == ()
    assert thing_gapes.run(subject, thing_gapes).findings == ()


def test_a_roof_on_its_eaves_is_no_face_on_a_face(make: SimpleNamespace) -> None:
    """Its slopes meet the slab at 45°, in lines."""
    roof, slab = make.wall("roof", 100, 60), make.rectangle("slab", 0, 0, 140, 140)
    plan = make.panels("tent", {"l": "roof", "r": "roof"}, "l.bottom", make.join("l.top", "r.top", corner=90.0))
    things = (
        ThingPlan("low", "pile", (), (0, 0), 0.0, False, make.here),
        ThingPlan("top", "tent", ("low",), (0, 0), 0.0, False, make.here),
    )
    stacks = (make.stack("pile", ("slab", 1, 0.0, (0, 0))),)
    design = replace(make.design(stacks=stacks, panels=(plan,)), wholes=(WholePlan("all", things, make.here),))
    subject = assemble(design, (roof, slab))[0]
    (bearing,) = bearings_of(subject.things[0])
    assert bearing.broad.is_empty and bearing.share == 1.0
    assert glued_too_little.run(subject, glued_too_little).findings == ()


@pytest.mark.parametrize(("at", "words"), [((0, 2), ""), ((0, 3), "2.00 mm"), ((0, 4), "1.00 mm")])
def test_edges_are_held_over_their_thickness(make: SimpleNamespace, at: At, words: str) -> None:
    said = [finding.message for finding in glued_too_little.run(storeys(make, at), glued_too_little).findings]
    assert len(said) == (words != "") and all(f"top lies on low with {words}" in message for message in said)


@pytest.mark.parametrize(
    ("at", "glued", "words"),
    [
        ((40, 0), True, ""),
        ((0, 30), True, ""),  # half of its depth, over 60 mm
        ((58, 0), True, "with 22% of the smaller face"),
        ((58, 0), False, ""),
        ((0, 39), True, "with 12% of the smaller face"),
        ((0, 39), False, "with a strip 6.00 mm"),
    ],
)
def test_broad_faces_need_a_quarter_or_a_strip(make: SimpleNamespace, at: At, glued: bool, words: str) -> None:
    """The smaller face is the plank's, 3000 mm²; what lifts off needs the strip alone."""
    said = [
        finding.message for finding in glued_too_little.run(slabs(make, at, glued=glued), glued_too_little).findings
    ]
    assert len(said) == (words != "") and all(words in message for message in said)
