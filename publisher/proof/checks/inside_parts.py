"""In and around a part nothing misleads the knife: no other heavy line, no dark area; and the piece keeps its words."""

import shapely

from publisher.basics import Check, Findings, OutlinePromise
from publisher.proof.checks.frame import copy_name, judged, page_name
from publisher.proof.measuring import AREA, OUTLINE_TOLERANCE, Case
from publisher.proof.reading import normal, says

WORDS_OVER = 0.2  # mm by which the band of a line of words may reach over an outline


@judged(
    "proof/line-unpromised",
    "No other lines to cut",
    "a slit, a second outline or a stray square is cut out as faithfully as the part itself: a heavy line lies on an outline within "
    f"{OUTLINE_TOLERANCE:g} mm, and is no wider than it",
)
def other_lines(case: Case, check: Check[Case]) -> Findings:
    """Hold every heavy stroke of the pages with outlines against the outlines."""
    looked = 0
    for number, parts in case.parts().items():
        ink = case.ink(number)
        if ink is None:
            continue
        looked += len(ink.width)
        for stray in parts.stray_lines(ink, number):
            x, y = stray.at
            what = f"a line {stray.width:.2f} mm wide"
            if stray.away <= OUTLINE_TOLERANCE:
                what += f" runs along the outline, which is to be {stray.near.width:.2f} mm wide"
            else:
                what += ", which reads as a line to cut, is no part of the outline"
            yield check.found(
                f"{page_name(number)}: {copy_name(stray.near)}: {what}; it passes {x:.1f}, {y:.1f} mm",
                subject=stray.near.part,
                hint="take the line out, or draw it thinner if it is not to be cut",
                value=stray.away,
                limit=OUTLINE_TOLERANCE,
            )
    return looked + case.strips


@judged(
    "proof/dark-area",
    "No dark areas in parts",
    "on black nobody sees the line to cut, and ink enough for it warps the paper; "
    f"one part may carry {AREA:g} mm² of them, such as arrow heads",
)
def dark_areas(case: Case, check: Check[Case]) -> Findings:
    """Add up what dark areas and pictures cover of each part."""
    looked = 0
    for number, parts in case.parts().items():
        page = case.page(number)
        if page is None:
            continue
        looked += len(parts.promises)
        for dark in parts.dark_areas(page):
            if dark.area > AREA:
                x, y = dark.at
                yield check.found(
                    f"{page_name(number)}: {copy_name(dark.promise)}: {dark.area:.0f} mm² of it lie under a dark area "
                    f"or a picture, about {x:.1f}, {y:.1f} mm",
                    subject=dark.promise.part,
                    hint="leave the inside of parts to lines and words",
                    value=dark.area,
                    limit=AREA,
                )
    return looked + case.strips


@judged(
    "proof/words-outside",
    "Letter, count and side lie inside their part",
    "what stands outside the line to cut is thrown away with the paper, and the piece has no name; "
    f"words may reach {WORDS_OVER:g} mm over it",
    may_be_empty=True,
)
def words_inside(case: Case, check: Check[Case]) -> Findings:
    """Look for each word that a piece must keep within the outline that was promised for its copy."""
    outlines: dict[tuple[int, str, int], list[OutlinePromise]] = {}
    for outline in case.promises.outlines:
        outlines.setdefault((outline.page, outline.part, outline.copy), []).append(outline)
    wanted = [(t, o) for t in case.promises.texts if t.part and (o := outlines.get((t.page, t.part, t.copy)))]
    for text, (outline, *more) in wanted:
        words, lines = normal(text.text), case.lines(text.page)
        having = [i for i, line in enumerate(lines) if says(line.text, words)]
        ground = _ground(outline, *more)
        if having and not shapely.covers(ground, case.areas(text.page)[having]).any():
            away = float(shapely.distance(ground, case.areas(text.page)[having]).min())
            yield check.found(
                f"{page_name(text.page)}: {copy_name(outline)}: “{text.text}” does not stand inside the line to cut",
                subject=outline.part,
                hint="set it inside, smaller or turned if need be",
                value=away,
                limit=0.0,
            )
    return len(wanted)


def _ground(*tiles: OutlinePromise) -> shapely.Geometry:
    """Return where words of a piece may stand: its promised outline on the page, less its openings; of a tiled one, what the windows
    of the page show of it."""
    shown = []
    for tile in tiles:
        rings = [tile.pose.apply_all(ring) for ring in tile.rings]
        whole = shapely.Polygon(rings[0], rings[1:])
        shown.append(whole.intersection(shapely.box(*tile.window.sides)) if tile.window else whole)
    ground = shapely.union_all(shown).buffer(WORDS_OVER)
    shapely.prepare(ground)
    return ground
