"""What stands in whose way, and what random orders make impossible, held against solids swept by a general boolean library.

A search prints how many pairs and ways agree, and of how many it depends on half a millimetre: ``python -m tests.searches sweeps -s``.
"""

from dataclasses import dataclass
from pathlib import Path
from random import Random

import numpy as np
import pytest
from manifold3d import Manifold

from publisher.brief import read_brief
from publisher.design import work_out
from publisher.geometry import make_parts
from publisher.joints import as_glued
from publisher.joints.building.additions import built_by_steps
from publisher.joints.building.orders import order_of
from publisher.joints.building.sites import Site, sites_of
from publisher.joints.building.words import items_of
from publisher.joints.put_together import assemble
from tests.random_designs.make import true_design
from tests.random_designs.solids import shared, united
from tests.random_designs.tool import written
from tests.reference.solids import solid
from tests.reference.sweeps import MET, depends_on, meets
from tests.searches.profile import rounds, seeds

NEAR = 0.5  # mm: what foam gives on both sides together, and what is allowed of play


@dataclass(slots=True)
class Tally:
    """How many pairs and ways were compared, and of how many it depends on half a millimetre."""

    assemblies: int = 0
    compared: int = 0
    near: int = 0
    wrong: int = 0


ALL = Tally()


@pytest.mark.search
@seeds(2, 330)
def test_what_stands_in_the_way_of_what(seed: int, tmp_path: Path) -> None:
    dice, wrong = Random(seed), list[str]()
    for site in sites(seed, tmp_path):
        solids = solids_of(site)
        ALL.assemblies += 1
        chosen = dice.sample(range(len(site.ways.out)), min(rounds(3, 1000), len(site.ways.out)))
        found = meets(solids, site.ways.out[chosen])
        for at, way in enumerate(chosen):
            every = range(len(solids))
            ours = np.isfinite(site.ways.room(way, every, every))
            for i, j in ((i, j) for i in every for j in every if i != j and shared(solids[i], solids[j]) < MET):
                ALL.compared += 1
                if ours[i, j] == (found[at, i, j] > MET):
                    continue
                if depends_on(solids[i], solids[j], site.ways.out[way], NEAR):
                    ALL.near += 1
                else:
                    one, other = site.ways.movers[i].name, site.ways.movers[j].name
                    wrong.append(
                        f"{seed} {site.name}: {one} meets {other} along {site.ways.out[way]}: {ours[i, j]}, {found[at, i, j]} mm³"
                    )
    print(
        f"{ALL.assemblies} assemblies, {ALL.compared} pairs and ways, {ALL.near} depend on {NEAR} mm, wrong: {ALL.wrong}"
    )
    assert wrong == []


@pytest.mark.search
@seeds(2, 330)
def test_what_a_random_order_makes_impossible_is_found(seed: int, tmp_path: Path) -> None:
    """What is said to go in goes in by that way, what is said to be blocked by none that is tried, and the order that is found in
    its place has nothing blocked."""
    dice = Random(seed)
    for site in sites(seed, tmp_path):
        names = dice.sample(list(site.movers), len(site.movers))
        solids = dict(zip(site.movers, solids_of(site), strict=True))
        building = built_by_steps(added(seed, tmp_path, [f"{site.name}.{name}" for name in names]))
        blocked = {lost.names[0] for lost in building.blocked}
        unheld = {lost.name for lost in building.unheld}
        for act in building.additions:
            there = list(act.before)
            for name in act.added:
                others = [solids[other] for other in there]
                if len(act.ways) == 1:
                    assert free(solids[name], others, -np.array(act.way)), (
                        f"{seed}: {name} does not go in among {there}"
                    )
                elif name in blocked:
                    assert not any(free(solids[name], others, way, near=False) for way in site.ways.out), (
                        f"{seed}: {name} goes in"
                    )
                there.append(name)
        order = order_of(site)
        assert order is not None and not blocked & unheld
        again = built_by_steps(added(seed, tmp_path, list(items_of(site, order))))
        assert again.blocked == () and again.unheld == ()
        print(f"{seed} {site.name}: {len(names)} parts, {len(blocked)} blocked, {len(unheld)} on nothing")


def sites(seed: int, folder: Path) -> list[Site]:
    """The assemblies of panels of a true design, of flat boards."""
    found = sites_of(added(seed, folder, []))
    return [
        site
        for site in found.values()
        if not site.stack and not site.made_of and len(site.movers) > 1 and not any(m.bent for m in site.movers.values())
    ]  # fmt: skip


def added(seed: int, folder: Path, items: list[str]):  # type: ignore[no-untyped-def]
    """A true design put together, with a step that adds these."""
    design = true_design(seed)
    step = f"\nsteps: [{{title: Glue, say: Glue it., stage: glue, adds: [{', '.join(items)}]}}]\n" if items else ""
    own = folder / str(len(list(folder.iterdir())))
    own.mkdir()
    plan = work_out(read_brief(written(own, design.spec + step, design.files)))
    parts, _ = make_parts(plan)
    return assemble(plan, as_glued(plan, parts))[0]


def solids_of(site: Site) -> list[Manifold]:
    return [
        united([solid(board.part, board.frame.matrix()) for board in mover.panels]) for mover in site.movers.values()
    ]


def free(moved: Manifold, others: list[Manifold], way: np.ndarray, *, near: bool = True) -> bool:
    """Tell whether a solid meets none of some on a way; ``near``: or none but by what a shift of half a millimetre spares it."""
    found = [other for other in others if meets([moved, other], way[None, :])[0, 0, 1] > MET]
    return not found or (near and all(depends_on(moved, other, way, NEAR) for other in found))
