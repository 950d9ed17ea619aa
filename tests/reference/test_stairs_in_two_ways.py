"""Stairs and other stacks written again as things on things, one for each layer: their figures and findings are the same. So are those of
a stack whose rows are written one by one."""

from math import cos, radians, sin
from pathlib import Path
from random import Random

import numpy as np
import pytest
import shapely

from publisher.geometry import polygon
from publisher.joints import StackLayer
from tests.reference.solids import Built, build
from tests.reference.test_one_thing_in_two_ways import DECKS, SAME, figures, found, stiff
from tests.searches.profile import seeds

ROOTS = ("weakest_step", "root_stress", "strength_factor", "step_carries")

PARTS = """  plinth: {name: Plinth, board: foam, shape: disc, with: {radius: PLINTH mm}}
  landing: {name: Landing, board: foam, shape: rectangle, with: {width: 120 mm, height: 70 mm}}
  tread: {name: Tread, board: foam, shape: rectangle, with: {width: 60 mm, height: 70 mm}}
  step: {name: Step, board: foam, shape: spiral_stair_layer,
         with: {core_radius: CORE mm, reach: REACH mm, step_angle: SWEEP deg, turn: TURN deg}}
"""
SIZES = {"PLINTH": 92.0, "CORE": 30.0, "REACH": 92.0, "SWEEP": 40.0, "TURN": 20.0}

Row = tuple[str, int, float, tuple[float, float]]

STAIRS: dict[str, tuple[Row, ...]] = {
    "a stair that winds": (("plinth", 1, 0, (0, 0)), ("step", 9, 20, (0, 0))),
    "a stair that winds down to the table": (("step", 9, 20, (0, 0)),),
    "a stair with a doubled top step": (("plinth", 1, 0, (0, 0)), ("step", 6, 20, (0, 0)), ("step", 1, 0, (0, 0))),
    "a stair whose lowest step is doubled": (("plinth", 1, 0, (0, 0)), ("step", 1, 0, (0, 0)), ("step", 6, 20, (0, 0))),
    "a stair that goes on over a doubled step": (
        ("plinth", 1, 0, (0, 0)),
        ("step", 4, 20, (0, 0)),
        ("step", 1, 0, (0, 0)),
        ("step", 3, 20, (0, 0)),
    ),
    "a stair that winds faster higher up": (("plinth", 1, 0, (0, 0)), ("step", 4, 20, (0, 0)), ("step", 4, 30, (0, 0))),
    "a stair to a landing": (
        ("plinth", 1, 0, (0, 0)),
        ("step", 6, 20, (0, 0)),
        ("landing", 1, 0, (-60, -35)),
    ),
    "a straight stair": (("tread", 6, 0, (15, 0)),),
    "a straight stair to a landing": (("tread", 3, 0, (8, 0)), ("landing", 1, 0, (0, 0))),
}  # fmt: skip


def parts(sizes: dict[str, float]) -> str:
    text = PARTS
    for name, value in sizes.items():
        text = text.replace(name, f"{value}")
    return text


def spec(sizes: dict[str, float], assembly: str) -> str:
    return f"sizes: {{board: 5 mm}}\nparts:\n{parts(sizes)}assembly:\n{assembly}"


def row(part: str, count: int, turn: float, shift: tuple[float, float], lowest: bool = False) -> str:
    moved = "" if lowest and count == 1 else f", turn: {turn} deg, shift: [{shift[0]} mm, {shift[1]} mm]"
    return f"{{part: {part}, count: {count}{moved}}}"


def as_rows(rows: tuple[Row, ...]) -> str:
    return f"  all: {{stack: [{', '.join(row(*one, not k) for k, one in enumerate(rows))}]}}\n"


def one_by_one(rows: tuple[Row, ...]) -> str:
    """Each layer a row of its own."""
    every = [(part, 1, turn, shift) for part, count, turn, shift in rows for _ in range(count)]
    return as_rows(tuple(every))


def as_things(made: Built) -> str:
    """Each layer a thing on the next lower one, its middle (of the upright box round it) put where that of the layer is."""
    layers = next(layers for name, layers in made.joined.layers if name == "all")
    middles = []
    for layer in layers:
        points = shapely.get_coordinates(polygon(made.parts[layer.part].outline))
        c, s = cos(radians(layer.pose.turn)), sin(radians(layer.pose.turn))
        xs, ys = c * points[:, 0] - s * points[:, 1], s * points[:, 0] + c * points[:, 1]
        middles.append((layer.pose.x + (xs.min() + xs.max()) / 2, layer.pose.y + (ys.min() + ys.max()) / 2))
    own = "".join(f"  one_{part}: {{stack: [{{part: {part}}}]}}\n" for part in dict.fromkeys(x.part for x in layers))
    things = []
    for k, layer in enumerate(layers):
        on = f", on_top_of: [t{k - 1}]" if k else ""
        way = [middles[k][i] - middles[k - 1][i] for i in (0, 1)] if k else [0.0, 0.0]
        at = f", at: [{way[0]:.9f} mm, {way[1]:.9f} mm]" if k else ""
        things.append(f"t{k}: {{assembly: one_{layer.part}, turn: {layer.pose.turn:.9f} deg{on}{at}}}")
    return f"{own}  all: {{things: {{{', '.join(things)}}}}}\n"


def compare(one: Built, other: Built) -> None:
    for names in (SAME, DECKS, ROOTS):
        assert figures(other, names) == pytest.approx(figures(one, names), rel=1e-5, abs=1e-4), names
    assert len(figures(one, SAME)) == len(SAME)
    assert found(other) == found(one)


def drawn(random: Random) -> tuple[dict[str, float], tuple[Row, ...]]:
    """A stair that winds, on a plinth or not, with a landing or not."""
    turn = round(random.uniform(12, 40), 1)
    core = round(random.uniform(12, 40), 1)
    reach = round(core + random.uniform(20, 70), 1)
    sizes = {
        "PLINTH": round(random.uniform(core + 5, reach + 10), 1),
        "CORE": core,
        "REACH": reach,
        "SWEEP": round(turn * random.uniform(1.3, 2.5), 1),
        "TURN": turn,
    }
    rows: list[Row] = [("plinth", random.randint(1, 2), 0, (0, 0))] if random.random() < 0.7 else []
    rows.append(("step", random.randint(2, 8), turn, (0, 0)))
    if random.random() < 0.4:
        rows.append(("step", random.randint(1, 2), 0, (0, 0)))
    if random.random() < 0.4:
        rows.append(("landing", 1, 0, (round(random.uniform(-75, -45), 1), round(random.uniform(-45, -25), 1))))
    return sizes, tuple(rows)


@pytest.mark.parametrize("name", STAIRS)
def test_a_stair_has_the_same_figures_and_findings_however_it_is_written(tmp_path: Path, name: str) -> None:
    rows = STAIRS[name]
    stack = stiff(build(spec(SIZES, as_rows(rows)), tmp_path))
    compare(stack, stiff(build(spec(SIZES, as_things(stack)), tmp_path)))
    compare(stack, stiff(build(spec(SIZES, one_by_one(rows)), tmp_path)))
    if "winds" in name:
        assert figures(stack, ROOTS).keys() == set(ROOTS)


@pytest.mark.search
@seeds(4, 200)
def test_random_stairs_too(tmp_path_factory: pytest.TempPathFactory, seed: int) -> None:
    folder = tmp_path_factory.mktemp("stair")
    sizes, rows = drawn(Random(seed))
    stack = stiff(build(spec(sizes, as_rows(rows)), folder))
    compare(stack, stiff(build(spec(sizes, as_things(stack)), folder)))
    compare(stack, stiff(build(spec(sizes, one_by_one(rows)), folder)))


def test_a_braced_stair_on_a_thing_bears_two_figures_as_one_on_a_layer(tmp_path: Path) -> None:
    """Braces stand on edge, and yet it is a pile of layers."""
    brace = "brace: {run: 35 mm, drop: 30 mm, under: [9]}"
    stack = build(
        spec(SIZES, f"  all: {{stack: [{{part: plinth}}, {{part: step, count: 9, turn: 20 deg}}], {brace}}}\n"),
        tmp_path,
    )
    layers = next(layers for name, layers in stack.joined.layers if name == "all")
    low_x, low_y, high_x, high_y = (
        _outline(stack, layers[1:]).min(axis=0).tolist() + _outline(stack, layers[1:]).max(axis=0).tolist()
    )
    things = (
        "  base: {stack: [{part: plinth}]}\n"
        f"  flight: {{stack: [{{part: step, count: 9, turn: 20 deg}}], {brace}}}\n"
        "  all: {things: {b: {assembly: base}, f: {assembly: flight, on_top_of: [b], turn: 20 deg, "
        f"at: [{(low_x + high_x) / 2:.9f} mm, {(low_y + high_y) / 2:.9f} mm]}}}}}}\n"
    )
    made = build(spec(SIZES, things), tmp_path)
    assert figures(made, SAME) == pytest.approx(figures(stack, SAME), rel=1e-4, abs=1e-3)
    assert figures(made, ROOTS) == pytest.approx(figures(stack, ROOTS), rel=1e-4)


def test_figures_stand_on_a_landing_as_well_as_on_the_steps(tmp_path: Path) -> None:
    """A landing that reaches far out tips its stair: moments about the rim of a round plinth, with one figure or two at its corners."""
    rows: tuple[Row, ...] = (("plinth", 1, 0, (0, 0)), ("step", 3, 20, (0, 0)), ("landing", 1, 0, (-20, -35)))
    plinth = 50.0
    made = build(spec({**SIZES, "PLINTH": plinth}, as_rows(rows)), tmp_path)
    layers = next(layers for name, layers in made.joined.layers if name == "all")
    grams, moment = 0.0, np.zeros(2)
    for layer in layers:
        area = polygon(made.parts[layer.part].outline)
        mass = area.area * (30e-6 * layer.thickness + 2 * 75e-6)
        grams, moment = grams + mass, moment + mass * np.array(layer.pose.apply((area.centroid.x, area.centroid.y)))
    corners = [layers[-1].pose.apply(at) for at in ((0, 0), (120, 0), (120, 70), (0, 70))]
    turns = np.radians(np.arange(0.0, 360.0, 0.1))
    ways = np.column_stack([np.cos(turns), np.sin(turns)])
    reach = (ways @ np.array(corners).T).max(
        axis=1
    )  # of the landing, the highest tread; the plinth's rim is at its own edge
    margins = [plinth - (ways @ moment + n * 30.0 * reach) / (grams + n * 30.0) for n in (1,)]
    second = np.maximum((ways @ _outline(made, layers[:-1]).T).max(axis=1), plinth)
    margins.append(plinth - (ways @ moment + 30.0 * (reach + second)) / (grams + 60.0))
    found = figures(made, ("balance_with_figures",))["balance_with_figures"]
    assert found == pytest.approx(min(float(margin.min()) for margin in margins), abs=0.1) and found < 0.0


def _outline(made: Built, layers: tuple[StackLayer, ...]) -> np.ndarray:
    return np.vstack(
        [
            layer.pose.apply_all(tuple(map(tuple, shapely.get_coordinates(polygon(made.parts[layer.part].outline)))))
            for layer in layers
        ]
    )
