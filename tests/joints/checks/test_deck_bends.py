"""Decks on walls: judged by the rules of the room, and in random cases by a reckoning of their own."""

from dataclasses import dataclass, replace
from itertools import pairwise
from math import cos, hypot, inf, radians, sin
from random import Random
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.basics import Severity
from publisher.design import Figure, PanelPlan, ThingPlan, WholePlan
from publisher.joints.assembled import Assembled, mate
from publisher.joints.checks.deck_bends import reaches_far, sags, too_weak
from publisher.joints.checks.falls_over import falls_over as FALLS
from publisher.joints.checks.tips_over import tips_over as TIPS
from publisher.joints.panels import PanelAssembly, facts_of_decks
from publisher.joints.panels.place import Panel
from publisher.joints.panels.space import PanelFrame
from publisher.joints.put_together import assemble
from tests.searches.profile import seeds

UPRIGHT = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, -1.0], [0.0, 1.0, 0.0]])  # its x across, its y up, looking to -y
ACROSS = np.array([[0.0, 0.0, 1.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]])  # its x to the back, its y up, looking to +x


FIGURE = Figure(25.0, 30.0)
STEP = 7.0  # mm between the places of the own reckoning


@dataclass(frozen=True)
class Table:
    """A deck of ``wide`` × ``deep`` on cross walls that begin at ``walls`` (mm from the left), and on walls along its front and
    back where ``sides``; the walls reach over the whole depth less ``in_by`` at the front and at the back."""

    wide: float
    deep: float
    walls: tuple[float, ...]
    sides: bool
    thick: float = 5.0
    board: float = 5.0
    high: float = 60.0
    in_by: float = 0.0
    figure: Figure = FIGURE
    stiffness: float | None = None

    def built(self, make: SimpleNamespace) -> Assembled:
        """Placed by hand: no join is asked where anything stands."""
        deck = make.wall("deck", self.wide, self.deep, thickness=self.thick)
        cross = make.wall("cross", self.deep - 2 * self.in_by, self.high, thickness=self.board)
        side = make.wall("side", self.wide, self.high, thickness=self.board)
        placed = [("deck", deck, np.eye(3), (0.0, 0.0, self.high + self.thick))]
        placed += [(f"w{i}", cross, ACROSS, (x + self.board, self.in_by, 0.0)) for i, x in enumerate(self.walls)]
        if self.sides:
            placed += [
                ("front", side, UPRIGHT, (0.0, 0.0, 0.0)),
                ("back", side, UPRIGHT, (0.0, self.deep - self.board, 0.0)),
            ]
        panels = tuple(
            Panel(name, part, PanelFrame(axes, np.array(at)), False, make.here) for name, part, axes, at in placed
        )
        plan: PanelPlan = make.panels("table", {p.name: p.part.id for p in panels}, "w0.bottom")
        board = replace(make.board(), stiffness=self.stiffness)
        mated = mate(PanelAssembly(plan, panels, ()), {"foam": board}, self.figure)
        design = replace(make.design(panels=(plan,), boards=(board,)), figure=self.figure)
        return Assembled(design, (deck, cross, side), (), (mated,), ())

    @property
    def rectangles(self) -> list[tuple[float, float, float, float]]:
        """What lies under the deck: left, low, right, high."""
        t = self.board
        found = [(x, self.in_by, x + t, self.deep - self.in_by) for x in self.walls]
        return found + ([(0.0, 0.0, self.wide, t), (0.0, self.deep - t, self.wide, self.deep)] if self.sides else [])


def weak(subject: Assembled) -> tuple[bool, bool, bool]:
    """Whether it breaks, sags, and falls or tips."""
    breaks, bows, tips, falls = (bool(check.run(subject, check).findings) for check in (too_weak, sags, TIPS, FALLS))
    return breaks, bows, tips or falls


@pytest.mark.keeps("joints/deck-too-weak", "joints/deck-sags", "joints/deck-reaches-far")
def test_a_deck_on_two_near_walls_holds(make: SimpleNamespace) -> None:
    subject = Table(120.0, 60.0, (0.0, 115.0), sides=False, stiffness=15.0).built(make)
    for check in (too_weak, sags, reaches_far):
        outcome = check.run(subject, check)
        assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/deck-too-weak")
def test_a_long_deck_on_two_walls_breaks(make: SimpleNamespace) -> None:
    """By hand: L 390, w 60, F 1.471 N: 3·F·L/(2·w·25) = 0.574 MPa, and 3·q·L²/(4·25) = 0.007 of its own weight of 1.47e-6 N/mm²."""
    (found,) = too_weak.run(
        Table(400.0, 60.0, (0.0, 395.0), sides=False, figure=Figure(60.0, 150.0)).built(make), too_weak
    ).findings
    assert found.severity is Severity.ERROR
    assert found.value == pytest.approx(
        1.5 * 0.150 * 9.80665 * 390 / (60 * 25) + 0.75 * 1.471e-6 * 390**2 / 25, rel=1e-3
    )
    assert "deck of table breaks under a figure of 150 g" in found.message
    assert "between supports 390.0 mm (15.35 in) apart" in found.message
    assert "put supports no more than 232.0 mm" in found.hint
    assert "glue 2 boards on each other" in found.hint


def test_a_long_deck_on_one_wall_breaks(make: SimpleNamespace) -> None:
    """400 mm on one wall of 40 mm in the middle: 180 mm overhang on each side."""
    table = Table(400.0, 80.0, (180.0,), sides=False, board=40.0, figure=Figure(40.0, 80.0))
    (found,) = too_weak.run(table.built(make), too_weak).findings
    assert "180.0 mm (7.09 in) beyond its support" in found.message
    assert "no more than" in found.hint and "reaches beyond it" in found.hint


@pytest.mark.breaks("joints/deck-sags")
def test_a_soft_deck_sags(make: SimpleNamespace) -> None:
    table = Table(200.0, 60.0, (0.0, 195.0), sides=False, stiffness=5.0)
    (found,) = sags.run(table.built(make), sags).findings
    own = 150e-6 * 9.80665e-3
    by_hand = 0.030 * 9.80665 * 190**3 / (4 * 5.0 * 60 * 125) + 5 * own * 190**4 / (32 * 5.0 * 125)
    assert found.value == pytest.approx(by_hand, rel=1e-3)
    assert "half of the board, 2.50 mm" in found.message


def test_a_board_of_unknown_stiffness_is_not_judged_by_its_sag(make: SimpleNamespace) -> None:
    outcome = sags.run(Table(400.0, 60.0, (0.0, 395.0), sides=False).built(make), sags)
    assert (outcome.looked_at, outcome.findings) == (0, ())


@pytest.mark.breaks("joints/deck-reaches-far")
def test_an_overhang_of_more_than_four_boards_is_warned_of(make: SimpleNamespace) -> None:
    (found,) = reaches_far.run(Table(100.0, 60.0, (21.0, 95.0), sides=False).built(make), reaches_far).findings
    assert found.severity is Severity.WARNING
    assert (found.value, found.limit) == (pytest.approx(21.0), 20.0)


# ---- decks across things


def over_piers(
    make: SimpleNamespace, clear: float, layers: int = 1, figure: Figure = FIGURE, more: tuple[str, ...] = ()
) -> Assembled:
    """A slab 60 mm deep over two piers 40 mm wide, each a thing; ``more``: piers set between them."""
    half = clear / 2 + 20
    places = {"w": -half, "e": half, **dict.fromkeys(more, 0.0)}
    things = [ThingPlan(name, "pier", (), (x, 0.0), 0.0, False, make.here) for name, x in places.items()]
    things.append(ThingPlan("road", "slab", tuple(places), (0.0, 0.0), 0.0, False, make.here))
    stacks = make.stack("pier", ("block", 6, 0.0, (0, 0))), make.stack("slab", ("board", layers, 0.0, (0, 0)))
    plan = WholePlan("all", tuple(things), make.here)
    design = replace(make.design(stacks=stacks), wholes=(plan,), figure=figure)
    return assemble(design, (make.rectangle("block", 0, 0, 40, 60), make.rectangle("board", 0, 0, clear + 80, 60)))[0]


def test_a_deck_over_things_is_judged_as_the_same_in_one_assembly(make: SimpleNamespace) -> None:
    heavy = Figure(60.0, 150.0)
    (found,) = too_weak.run(over_piers(make, 320.0, figure=heavy), too_weak).findings
    assert "road of all breaks" in found.message
    (same,) = too_weak.run(
        Table(400.0, 60.0, (0.0, 360.0), sides=False, board=40.0, figure=heavy).built(make), too_weak
    ).findings
    assert found.value == pytest.approx(same.value, rel=1e-6)


@pytest.mark.parametrize(
    ("clear", "layers", "more"),
    [(220.0, 1, ()), (320.0, 2, ()), (320.0, 1, ("m",))],
    ids=["nearer", "doubled", "propped"],
)
def test_a_deck_over_things_holds(make: SimpleNamespace, clear: float, layers: int, more: tuple[str, ...]) -> None:
    outcome = too_weak.run(over_piers(make, clear, layers, Figure(60.0, 150.0), more), too_weak)
    assert (outcome.looked_at, outcome.findings) == (1, ())


def test_facts_tell_of_decks_over_things(make: SimpleNamespace) -> None:
    subject = over_piers(make, 220.0)
    span, factor = subject.fact("all.deck_span"), subject.fact("all.deck_strength_factor")
    assert span is not None and span.value == pytest.approx(220.0)
    assert factor is not None and factor.value > 1.0


@pytest.mark.parametrize(("high", "found"), [(60.0, 0), (8.0, 1)], ids=["a house", "a kerb"])
def test_high_walls_carry_the_floor_on_which_they_stand(make: SimpleNamespace, high: float, found: int) -> None:
    """A floor 400 × 80 over two piers, with a wall on each of its long sides."""
    sides = [make.join(f"floor.{edge}", f"{edge}.bottom", "butt") for edge in ("bottom", "top")]
    panels = make.panels("house", {"floor": "floor", "bottom": "wall", "top": "wall"}, "bottom.bottom", *sides)
    stack = make.stack("pier", ("block", 6, 0.0, (0, 0)))
    at = (("w", -180.0), ("e", 180.0))
    things = [ThingPlan(name, "pier", (), (x, 0.0), 0.0, False, make.here) for name, x in at]
    things.append(ThingPlan("house", "house", ("w", "e"), (0.0, 0.0), 0.0, False, make.here))
    design = replace(
        make.design(stacks=(stack,), panels=(panels,)), wholes=(WholePlan("all", tuple(things), make.here),),
        figure=Figure(60.0, 150.0),
    )  # fmt: skip
    parts = make.wall("floor", 400, 80), make.wall("wall", 400, high), make.rectangle("block", 0, 0, 40, 80)
    outcome = too_weak.run(assemble(design, parts)[0], too_weak)
    assert (outcome.looked_at, len(outcome.findings)) == (1, found)


def test_card_of_unknown_strength_has_no_figure_of_strength(make: SimpleNamespace) -> None:
    subject = Table(200.0, 60.0, (0.0, 195.0), sides=False).built(make)
    (mated,) = subject.panels
    facts = facts_of_decks("table", make.here, mated.decks)
    known = {fact.name for fact in facts}
    relied_on = {fact.name for fact in facts if fact.rounds == "down"}
    assert relied_on == {"table.deck_strength_factor", "table.deck_carries"}  # never said as more than they are
    unknown = tuple(replace(deck, strength=inf) for deck in mated.decks)
    assert known - {fact.name for fact in facts_of_decks("table", make.here, unknown)} == {
        "table.deck_strength_factor",
        "table.deck_carries",
    }


# ---- random decks, against a reckoning of their own


def reckoned(table: Table) -> tuple[float, float, float]:
    """Return the greatest stress (MPa), the greatest sag of a board of 1 MPa (mm) and the margin (mm) with a figure: rays over
    rectangles from many places, by the rules that the docs state."""
    load, own = table.figure.mass * 9.80665e-3, 150e-6 / 5.0 * table.thick * 9.80665e-3
    base, h = table.figure.base, table.thick
    boxes = table.rectangles
    left, right = min(b[0] for b in boxes), max(b[2] for b in boxes)
    low, high = min(b[1] for b in boxes), max(b[3] for b in boxes)
    options: list[list[tuple[bool, float, float]]] = []
    for x in np.arange(STEP / 2, table.wide, STEP):
        for y in np.arange(STEP / 2, table.deep, STEP):
            if any(b[0] <= x <= b[2] and b[1] <= y <= b[3] for b in boxes):
                continue
            if left <= x <= right and low <= y <= high:  # walls in a row: their hull is a rectangle
                options.append(inside(table, float(x), float(y), boxes))
    for end in (left, table.wide - right):
        if end > 0.05:
            arm = hypot(end, low)
            ends = [rim(table, end, low, sign * low / arm, -sign * end / arm) for sign in (1, -1)]
            options.append([(True, arm, sum(ends))])
    if low > 0.05:
        options.append([(True, low, table.wide)])

    def stress(one: tuple[bool, float, float]) -> float:
        free, length, across = one
        width = min(across, base + length / (1 if free else 2))
        return (6 if free else 1.5) * load * length / (width * h**2) + (3 if free else 0.75) * own * length**2 / h**2

    def sag(one: tuple[bool, float, float]) -> float:
        free, length, across = one
        width = min(across, base + length / (1 if free else 2))
        by_load = (4 if free else 0.25) * load * length**3 / (width * h**3)
        return by_load + (1.5 if free else 5 / 32) * own * length**4 / h**3

    gram = 150e-6 / 5.0 * table.board * table.high  # of each mm of a wall's length
    walls = [(gram * max(b[2] - b[0], b[3] - b[1]), (b[0] + b[2]) / 2) for b in boxes]
    deck = 150e-6 / 5.0 * h * table.wide * table.deep
    mass = deck + sum(m for m, _ in walls)
    at = (deck * table.wide / 2 + sum(m * x for m, x in walls)) / mass
    whole = mass + table.figure.mass
    margin = min(
        right - (mass * at + table.figure.mass * table.wide) / whole, (mass * at) / whole - left,
        high - (mass * table.deep / 2 + table.figure.mass * table.deep) / whole,
    )  # fmt: skip
    return max(min(map(stress, ways)) for ways in options), max(min(map(sag, ways)) for ways in options), margin


def inside(
    table: Table, x: float, y: float, boxes: list[tuple[float, float, float, float]]
) -> list[tuple[bool, float, float]]:
    rays = {}
    for angle in range(0, 360, 15):
        cx, cy = cos(radians(angle)), sin(radians(angle))
        end = rim(table, x, y, cx, cy)
        hits = [hit for box in boxes if (hit := enters(x, y, cx, cy, box)) is not None]
        rays[angle] = (min(hits), True) if hits and min(hits) < end + 1e-6 else (end, False)
    found = []
    for angle in range(0, 360, 15):
        far, held = rays[angle]
        back, held_back = rays[(angle + 180) % 360]
        across = rays[(angle + 90) % 360][0] + rays[(angle + 270) % 360][0]
        if held:
            found.append((True, far, across))
        if held and held_back and angle < 180:
            found.append((False, far + back, across))
    return found


def rim(table: Table, x: float, y: float, cx: float, cy: float) -> float:
    """Return how far it is from a place to the rim of the deck."""
    return min(
        (table.wide - x) / cx if cx > 1e-9 else -x / cx if cx < -1e-9 else inf,
        (table.deep - y) / cy if cy > 1e-9 else -y / cy if cy < -1e-9 else inf,
    )


def enters(x: float, y: float, cx: float, cy: float, box: tuple[float, float, float, float]) -> float | None:
    near, far = 0.0, inf
    for at, way, low, high in ((x, cx, box[0], box[2]), (y, cy, box[1], box[3])):
        if abs(way) < 1e-9:
            if not low < at < high:
                return None
            continue
        a, b = sorted(((low - at) / way, (high - at) / way))
        near, far = max(near, a), min(far, b)
    return near if near < far else None


def drawn(dice: Random) -> Table:
    wide, deep = dice.uniform(60, 360), dice.uniform(40, 120)
    count = dice.randint(2, 4)
    first, last = (
        dice.choice((0.0, dice.uniform(0, wide / 4))),
        wide - 5 - dice.choice((0.0, dice.uniform(0, wide / 4))),
    )
    walls = sorted({first, last, *(dice.uniform(first + 6, last - 6) for _ in range(count - 2))})
    base, mass = dice.choice(((25.0, 30.0), (32.0, 45.0), (40.0, 80.0), (60.0, 150.0)))
    kept = tuple(a for a, b in pairwise([*walls, inf]) if b - a > 6)
    return Table(wide, deep, kept, dice.random() < 0.4, figure=Figure(base, mass), stiffness=dice.uniform(3, 20))


def agrees(make: SimpleNamespace, table: Table) -> list[bool]:
    """Hold the verdicts against the own reckoning, where that is clear by 8 % (of a sag, 20 %, as it grows with the third
    power of lengths that both look at in places of their own) or half a millimetre; return what was wrong by it."""
    stress, sag, margin = reckoned(table)
    said = weak(table.built(make))
    truths = []
    for name, found, share, clear in (
        ("stress", said[0], stress / 0.345, 0.08),
        ("sag", said[1], sag / (table.stiffness or 1.0) / (0.5 * table.thick), 0.2),
    ):
        if not 1.0 - clear < share < 1.0 + clear:
            assert found is (share > 1.0), (name, share, table)
            truths.append(share > 1.0)
    if abs(margin) > 0.5:
        assert said[2] is (margin < 0.0), ("margin", margin, table)
        truths.append(margin < 0.0)
    return truths


@pytest.mark.search
@seeds(3, 400)
def test_random_decks_are_judged_as_an_own_reckoning_does(make: SimpleNamespace, seed: int) -> None:
    """True ones are never refused; with a support taken away, a thinner deck or a narrower foot each is found."""
    dice = Random(seed)
    table = drawn(dice)
    agrees(make, table)
    agrees(make, replace(table, thick=2.0))
    if len(table.walls) > 2:
        gone = dice.randrange(len(table.walls))
        agrees(make, replace(table, walls=table.walls[:gone] + table.walls[gone + 1 :]))
    if not table.sides:
        agrees(make, replace(table, in_by=table.deep * dice.uniform(0.1, 0.4)))
        agrees(make, replace(table, walls=tuple(table.wide / 2 + (x - table.wide / 2) * 0.4 for x in table.walls)))


def test_both_verdicts_come_up_among_random_decks(make: SimpleNamespace) -> None:
    found = [truth for seed in range(2) for truth in agrees(make, replace(drawn(Random(seed)), thick=3.0))]
    assert 1 <= sum(found) < len(found)


@pytest.mark.parametrize(("neck", "said"), [(3.0, True), (30.0, False)])
def test_a_plate_that_sticks_out_breaks_at_its_neck(make: SimpleNamespace, neck: float, said: bool) -> None:
    """On a block that ends at 40 mm it is 60 mm wide, but from 60 to 70 mm; 70 mm beyond that 30 g bend 3 mm of it at 1.65 MPa."""
    low, high = 30.0 - neck / 2, 30.0 + neck / 2
    ring = [
        (0, 0),
        (60, 0),
        (60, low),
        (70, low),
        (70, 0),
        (130, 0),
        (130, 60),
        (70, 60),
        (70, high),
        (60, high),
        (60, 60),
        (0, 60),
    ]
    plate = make.polygon("plate", ring, tuple(f"e{i}" for i in range(len(ring))))
    plan = make.stack("s", ("block", 6, 0.0, (0, 0)), ("plate", 1, 0.0, (0, 0)))
    subject = assemble(make.design(stacks=(plan,)), (make.rectangle("block", 0, 0, 40, 60), plate))[0]
    found = too_weak.run(subject, too_weak).findings
    assert bool(found) is said
    if said:
        assert found[0].value == pytest.approx(6 * 0.294 * 70 / (3 * 25), rel=0.01)
        assert "70.0 mm (2.76 in) beyond a neck 3.00 mm" in found[0].message and found[0].hint.startswith(
            "make its neck wider"
        )
