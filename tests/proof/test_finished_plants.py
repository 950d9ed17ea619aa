"""A fault planted anywhere into a finished file is found by truth alone, unless it changes no page.

What survives is of two kinds. It changes nothing that anybody can see or read (a key that no reader asks for, two things exchanged
that are the same), or only what stands beside the pages, such as tags, which identity compares.
"""

from dataclasses import replace
from functools import cache
from pathlib import Path
from random import Random

import pytest
import shapely

from publisher.basics import Layer, OutlinePromise, Point, Pose, polyline, run_checks
from publisher.brief import read_brief
from publisher.pages import Drawn, Fill, LineStyle, Pack, Stroke, Words
from publisher.pipeline import compose_packs, work
from publisher.press import write_pdf
from publisher.proof.checks.stray_ink import stray_ink
from publisher.proof.measuring import Case
from publisher.proof.measuring.outlines import shown_ground
from publisher.proof.reading import read_file
from tests.proof.plants.finished import plant_finished
from tests.searches.profile import seeds

DESIGN = Path(__file__).parents[2] / "designs" / "quay"


FAR = 3.0  # mm from the outline, and from where a label stands, that what is planted keeps


@cache
def pack() -> Pack:
    return compose_packs(work(read_brief(DESIGN)), ("a4",))[0][0]


@pytest.mark.search
@seeds(4, 1000)
def test_what_changes_a_page_is_found(seed: int) -> None:
    for planted in plant_finished(pack(), range(seed, seed + 1)):
        assert planted.check or planted.differs != "page", planted


def planted(random: Random, at: Point) -> Drawn:
    """Something small about a point: a line of any width and dash, an area of any grey, or words."""
    x, y = at
    ends = Pose(x, y, random.uniform(0.0, 360.0)).apply_all(
        ((-random.uniform(0.5, 2.0), 0.0), (random.uniform(0.5, 2.0), 0.3))
    )
    what = random.choice(("line", "dashes", "area", "words"))
    if what == "words":
        return Words(random.choice(("cut", "7", "fold here", "x", "50 mm")), "Regular", 2.3, x, y, Layer.NOTES)
    if what == "area":
        return Fill(random.choice((0.0, 0.5, 1.0)), (polyline((*ends, at), True),), Layer.NOTES)
    dash = (random.uniform(0.1, 1.0), random.uniform(0.1, 1.0)) if what == "dashes" else ()
    return Stroke(LineStyle("planted", random.uniform(0.02, 0.6), dash), (polyline(ends),), Layer.NOTES)


def free_point(random: Random, outline: OutlinePromise) -> Point | None:
    """Return a point of a print where nothing of it stands: there a tenth of a millimetre is no help."""
    promises = pack().promises
    ground = shapely.buffer(shown_ground(outline), -FAR)
    lines = [outline.pose.apply_all(line.points) for p in promises.prints if p.part == outline.part for line in p.lines]
    lines += [(one.start, one.end) for one in promises.lengths if one.page == outline.page]
    labels = [shapely.box(*one.box.grown(FAR).sides) for one in promises.carried if one.page == outline.page]
    holes = [shapely.Polygon(outline.pose.apply_all(ring)) for ring in outline.rings[1:]]
    marks = [at for seam in promises.seams for on, at in zip(seam.pages, seam.at, strict=True) if on == outline.page]
    taken = [
        *labels,
        *holes,
        *(shapely.Point(at).buffer(15.0) for at in marks),
        *(shapely.LineString(line).buffer(1.0) for line in lines),
    ]
    room = ground.difference(shapely.union_all(taken))
    for _ in range(200 if room.area > 1.0 else 0):
        left, bottom, right, top = room.bounds
        at = random.uniform(left, right), random.uniform(bottom, top)
        if shapely.contains_xy(room, *at):
            return at
    return None


@pytest.mark.search
@seeds(6, 1000)
def test_whatever_is_drawn_inside_an_outline_and_promised_by_nobody_is_found_by_its_own_check(seed: int) -> None:
    random = Random(f"inside {seed}")
    outline = random.choice(pack().promises.outlines)
    at = free_point(random, outline)
    if at is None:
        return
    page = pack().pages[outline.page - 1]
    thing = planted(random, at)
    if isinstance(thing, Words):
        thing = replace(thing, font=next(one.font for one in page.drawn if isinstance(one, Words)))
    before, after = pack().pages[: outline.page - 1], pack().pages[outline.page :]
    spoilt = replace(pack(), pages=(*before, replace(page, drawn=(*page.drawn, thing)), *after))
    data = write_pdf(spoilt)
    case = Case(data, read_file(data, "planted.pdf"), pack().promises)
    assert run_checks((stray_ink,), case), (outline.page, thing)
