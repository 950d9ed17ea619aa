"""Piles of rectangles and discs written twice: as the layers of one stack, and as things on things. Their figures are the same, and
so is what is found."""

from dataclasses import dataclass, replace
from pathlib import Path
from random import Random

import pytest

from publisher.joints import put_together
from tests.reference.solids import Built, build
from tests.searches.profile import seeds

SAME = ("height", "mass", "balance_margin", "balance_with_figures", "push_to_tip", "push_to_slide")
DECKS = ("deck_span", "deck_overhang", "deck_strength_factor", "deck_carries", "deck_sag")
JUDGED = (
    "joints/falls-over",
    "joints/tips-over",
    "joints/thing-not-carried",
    "joints/layers-do-not-touch",
    "joints/neck-too-weak",
    "joints/step-too-weak",
    "joints/deck-too-weak",
    "joints/deck-sags",
    "joints/deck-reaches-far",
    "joints/glued-too-little",
)


@dataclass(frozen=True)
class Tier:
    """Layers of one part: ``wide`` × ``deep`` mm, or a disc of radius ``wide`` (``deep`` 0), with a hole of radius ``hole`` if any;
    ``at``: how far their middle lies from that of the tier below."""

    wide: float
    deep: float
    layers: int = 1
    at: tuple[float, float] = (0.0, 0.0)
    hole: float = 0.0

    @property
    def part(self) -> str:
        if self.deep:
            return f"shape: rectangle, with: {{width: {self.wide} mm, height: {self.deep} mm}}"
        hole = f", hole_radius: {self.hole} mm" if self.hole else ""
        return f"shape: {'ring' if self.hole else 'disc'}, with: {{radius: {self.wide} mm{hole}}}"

    @property
    def origin(self) -> tuple[float, float]:
        """Where its origin lies from its middle."""
        return (-self.wide / 2, -self.deep / 2) if self.deep else (0.0, 0.0)


PILES: dict[str, tuple[Tier, ...]] = {
    "a plate on a column": (Tier(80, 80, 2), Tier(30, 30, 6), Tier(90, 60)),
    "a plate aside on a block": (Tier(60, 60, 4), Tier(60, 140, 1, (0, 35))),
    "two boards aside on a block": (Tier(60, 60, 4), Tier(60, 140, 2, (0, 35))),
    "a lid on a ring": (Tier(60, 0, 4, hole=50), Tier(60, 0)),
    "two lids on a ring": (Tier(60, 0, 4, hole=50), Tier(60, 0, 2)),
    "a wide disc on a small one": (Tier(20, 0, 4), Tier(60, 0)),
    "steps that climb out": (Tier(60, 60, 4), Tier(60, 90, 1, (0, 15)), Tier(60, 120, 1, (0, 15))),
    "a terrace": (Tier(100, 100), Tier(60, 60), Tier(20, 20)),
    "a slim column that breaks": (Tier(80, 80, 2), Tier(5, 5, 8), Tier(90, 60)),
    "a slim foot under a column": (Tier(80, 80, 2), Tier(5, 5, 3), Tier(14, 14, 5), Tier(90, 60, 1, (3, 0))),
    "a plate on a strip": (Tier(120, 140, 2), Tier(100, 4, 2), Tier(100, 140)),
    "a sliver of glue": (Tier(60, 60, 4), Tier(60, 60, 3, (54, 0))),
    "a plate on a narrow strip that breaks": (Tier(60, 60, 4), Tier(8, 400), Tier(60, 400)),
    "a ring beside its column": (Tier(28, 32, 5), Tier(28.5, 0, 4, (-4, 6), hole=24)),
    "a tower on a lid": (Tier(60, 0, 4, hole=50), Tier(60, 0), Tier(24, 24, 20)),
    "a tower on an arm": (Tier(60, 60, 4), Tier(60, 180), Tier(30, 30, 30, (0, 70))),
    "a plate that tips": (Tier(30, 60, 4), Tier(90, 60, 1, (20, 0))),
}
BESIDE = {"joints/thing-not-carried": "joints/layers-do-not-touch"}
STIFFNESS = 6.0  # MPa, that decks have a sag to compare


def written(tiers: tuple[Tier, ...], assembly: str) -> str:
    parts = "".join(f"  tier_{i}: {{name: Tier {i}, board: foam, {tier.part}}}\n" for i, tier in enumerate(tiers))
    return f"sizes: {{board: 5 mm}}\nparts:\n{parts}assembly:\n{assembly}"


def as_stack(tiers: tuple[Tier, ...]) -> str:
    rows, middle, before = [], (0.0, 0.0), tiers[0].origin
    for i, tier in enumerate(tiers):
        middle = (middle[0] + tier.at[0], middle[1] + tier.at[1])
        here = (middle[0] + tier.origin[0], middle[1] + tier.origin[1])
        rows.append(f"{{part: tier_{i}, shift: [{here[0] - before[0]} mm, {here[1] - before[1]} mm]}}")
        rows += [f"{{part: tier_{i}, count: {tier.layers - 1}}}"] if tier.layers > 1 else []
        before = here
    rows[0] = "{part: tier_0}"
    return written(tiers, f"  all: {{stack: [{', '.join(rows)}]}}\n")


def as_things(tiers: tuple[Tier, ...]) -> str:
    own = "".join(f"  pile_{i}: {{stack: [{{part: tier_{i}, count: {t.layers}}}]}}\n" for i, t in enumerate(tiers))
    things = ["t0: {assembly: pile_0}"]
    things += [
        f"t{i}: {{assembly: pile_{i}, on_top_of: [t{i - 1}], at: [{tier.at[0]} mm, {tier.at[1]} mm]}}"
        for i, tier in enumerate(tiers[1:], 1)
    ]
    return written(tiers, f"{own}  all: {{things: {{{', '.join(things)}}}}}\n")


def figures(made: Built, names: tuple[str, ...]) -> dict[str, float]:
    facts = {fact.name.removeprefix("all."): fact.value for fact in made.joined.facts if fact.name.startswith("all.")}
    return {name: facts[name] for name in names if name in facts}


def found(made: Built) -> list[tuple[str, str]]:
    """What is found of the whole pile, each rule once. That something lies beside what should carry it is said by the one rule of
    layers, by the other of things."""
    rules = {(one.check, one.severity.value) for one in made.findings if one.check in JUDGED and one.subject == "all"}
    return sorted({(BESIDE.get(rule, rule), severity) for rule, severity in rules})


def stiff(made: Built) -> Built:
    """The same of a board whose stiffness is known."""
    design = replace(made.design, boards=tuple(replace(board, stiffness=STIFFNESS) for board in made.design.boards))
    joined = put_together(design, tuple(made.parts.values()))
    return Built(design, made.parts, joined, joined.findings)


def both(folder: Path, tiers: tuple[Tier, ...]) -> tuple[Built, Built]:
    return stiff(build(as_stack(tiers), folder)), stiff(build(as_things(tiers), folder))


def drawn(random: Random) -> tuple[Tier, ...]:
    """Two to four tiers, each over some of the one below."""
    tiers: list[Tier] = []
    for _ in range(random.randint(2, 4)):
        wide, deep = (round(random.uniform(8.0, 120.0), 1) for _ in range(2))
        if tiers and tiers[-1].hole:
            wide = deep = round(random.uniform(2 * tiers[-1].hole, 3 * tiers[-1].hole), 1)  # over the rim all round
        at = (round(random.uniform(-0.4, 0.4) * wide, 1), round(random.uniform(-0.4, 0.4) * deep, 1))
        round_ = random.random() < 0.3
        hole = (
            round(random.uniform(0.4, 0.7) * wide / 2, 1) if round_ and wide > 60.0 and random.random() < 0.5 else 0.0
        )
        tiers.append(
            Tier(
                wide / 2 if round_ else wide,
                0 if round_ else deep,
                random.randint(1, 5),
                at if tiers else (0.0, 0.0),
                hole,
            )
        )
    return tuple(tiers)


def compare(stack: Built, things: Built) -> None:
    assert figures(things, SAME) == pytest.approx(figures(stack, SAME), rel=1e-6, abs=1e-6)
    assert figures(things, DECKS) == pytest.approx(figures(stack, DECKS), rel=1e-6, abs=1e-6)
    assert len(figures(stack, SAME)) == len(SAME)
    assert found(things) == found(stack)


@pytest.mark.parametrize("name", PILES)
def test_a_pile_has_the_same_figures_and_findings_written_either_way(tmp_path: Path, name: str) -> None:
    stack, things = both(tmp_path, PILES[name])
    compare(stack, things)
    if "breaks" in name:
        assert (f"joints/{'deck' if 'strip' in name else 'neck'}-too-weak", "error") in found(stack)
    if "tips" in name:
        assert ("joints/tips-over", "error") in found(stack)


@pytest.mark.search
@seeds(8, 400)
def test_random_piles_too(tmp_path_factory: pytest.TempPathFactory, seed: int) -> None:
    compare(*both(tmp_path_factory.mktemp("pile"), drawn(Random(seed))))


def test_what_is_narrow_bends_under_the_figure_on_the_wide_layer_over_it(tmp_path: Path) -> None:
    """A strip 8 mm wide reaches a mm beyond its block, glued to a plate that is as long: 6·F·a/(w·h²) of both boards, and their weight."""
    for arm in (40.0, 170.0):
        tiers = (Tier(60, 60, 4), Tier(8, 60 + 2 * arm), Tier(60, 60 + 2 * arm))
        stack = build(as_stack(tiers), tmp_path)
        load, own, thick = 30.0 * 9.80665e-3, (30e-6 * 5 + 2 * 75e-6) * 9.80665e-3 * 2, 10.0
        stress = 6 * load * arm / (8.0 * thick**2) + 3 * own * arm**2 / thick**2
        assert figures(stack, DECKS)["deck_strength_factor"] == pytest.approx(0.345 / stress, rel=0.01)
        assert (("joints/deck-too-weak", "error") in found(stack)) == (stress > 0.345)


def test_what_stands_on_a_deck_bends_it_by_its_own_weight(tmp_path: Path) -> None:
    """A tower of W on the end of an arm a beyond its block, c mm wide: W·(a − c/2) besides the figure and the board."""
    tiers = (Tier(60, 60, 4), Tier(60, 180), Tier(30, 30, 30, (0, 75)))
    made = build(as_stack(tiers), tmp_path)
    area, arm, wide, newton = 30e-6 * 5 + 2 * 75e-6, 60.0, 60.0, 9.80665e-3
    spread = min(wide, 25.0 + arm)
    tower = 30 * 30 * 30 * area * newton
    stress = 6 * (30.0 * newton * arm + tower * (arm - 15.0)) / (spread * 25.0) + 3 * area * newton * arm**2 / 25.0
    assert figures(made, DECKS)["deck_strength_factor"] == pytest.approx(0.345 / stress, rel=0.02)


def test_what_lies_loose_on_a_lid_does_not_stiffen_it(tmp_path: Path) -> None:
    """Lifted off, it leaves the lid alone; as long as it stands there, the lid bears so much less as it weighs, and no more."""
    tiers = (Tier(150, 0, 4, hole=140), Tier(150, 0), Tier(60, 0, 3))
    alone = build(as_stack(tiers[:2]), tmp_path)
    sections = (
        "  all:\n    stack:\n      - {section: low, stack: [{part: tier_0, count: 4}, {part: tier_1}]}\n"
        "      - {section: top, stands_on: low, loose: LOOSE, stack: [{part: tier_2, count: 3}]}\n"
    )
    loose, glued = (build(written(tiers, sections.replace("LOOSE", word)), tmp_path) for word in ("true", "false"))
    bears = [figures(made, ("deck_carries",)).get("deck_carries", 0.0) for made in (alone, loose, glued)]
    weighs = 3 * 3.14159 * 60.0**2 * (30e-6 * 5 + 2 * 75e-6) * 9.80665e-3
    assert bears[0] - weighs < bears[1] < bears[0] and bears[2] >= bears[1] > 0.0, bears
