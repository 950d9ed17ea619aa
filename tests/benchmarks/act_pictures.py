"""Pictures of acts: milliseconds of the processor for each, and the least share of what is added that one shows.

``python -m tests.benchmarks.act_pictures [--random 50] [designs/bridge …]``: of the demos' acts as their steps say them, and of
random assemblies built in an order that the search finds. Returns 1 when the median is over its limit or a picture shows too little.
"""

import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import process_time

from publisher.brief import read_brief
from publisher.design import AddPlan, StepPlan, TextPlan, work_out
from publisher.geometry import make_parts
from publisher.joints import as_glued
from publisher.joints.act_pictures import draw_acts
from publisher.joints.act_pictures.planned import best_sight
from publisher.joints.act_pictures.scenes import scenes_of
from publisher.joints.act_pictures.sight import LEAST_SEEN
from publisher.joints.assembled import Assembled
from publisher.joints.building import built_by_steps, order_of, sites_of
from publisher.joints.put_together import assemble
from tests.random_designs.make import true_design
from tests.random_designs.tool import written

ROOT = Path(__file__).parents[2]
MOST_MS = 40.0


def put(folder: Path) -> Assembled:
    """Return a design put together."""
    design = work_out(read_brief(folder))
    parts, _ = make_parts(design)
    return assemble(design, as_glued(design, parts))[0]


def by_search(subject: Assembled) -> Assembled:
    """Return it with a step for each assembly that adds its parts in an order that works; without those that have none."""
    steps = []
    for name, site in sites_of(subject).items():
        groups = order_of(site) or ()
        place = next(iter(site.movers.values())).panels[0].place
        adds = tuple(AddPlan(name, group.names, group.together, name, place) for group in groups)
        text = TextPlan((name,), place)
        steps.append(StepPlan(text, "glue", text, (), (), None, place, adds))
    return replace(subject, design=replace(subject.design, steps=tuple(steps)))


def random_ones(count: int) -> Iterator[tuple[str, Assembled]]:
    """Yield so many random true designs that have something to put together."""
    seed = 0
    while count:
        design = true_design(seed)
        with TemporaryDirectory() as top:
            subject = by_search(put(written(Path(top), design.spec, design.files)))
        if any(step.adds for step in subject.design.steps):
            yield f"seed {seed}", subject
            count -= 1
        seed += 1


def main(words: list[str]) -> int:
    """Print a row for each design; return 1 when a limit is broken."""
    count = int(words.pop(words.index("--random") + 1)) if "--random" in words else 50
    folders = [Path(word) for word in words if not word.startswith("--")]
    folders = folders or sorted(spec.parent for spec in (ROOT / "designs").glob("*/spec.yaml"))
    times: list[float] = []
    shares: list[float] = []
    for name, subject in (*((folder.name, put(folder)) for folder in folders), *random_ones(count)):
        additions = built_by_steps(subject).additions
        draw_acts(subject, additions[:1])
        start = process_time()
        drawings = draw_acts(subject, additions)
        spent = 1000.0 * (process_time() - start)
        seen = [best_sight(scene, None).seen for scene in scenes_of(subject, additions)]
        times += [spent / max(1, len(drawings))] * len(drawings)
        shares += seen
        least = f"{min(seen):.0%}" if seen else "-"
        print(
            f"{name:16} {len(drawings):3} pictures {spent / max(1, len(drawings)):6.1f} ms each, at least {least} seen"
        )
    print(f"{'all':16} {len(times):3} pictures {median(times):6.1f} ms at the median, at least {min(shares):.0%} seen")
    return int(median(times) > MOST_MS or min(shares) < LEAST_SEEN)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
