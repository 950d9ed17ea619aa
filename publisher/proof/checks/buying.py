"""What to buy and what there is to cut, as printed, held against what was laid out."""

import re
from functools import partial

from publisher.basics import Carried, Check, Findings, SheetsPromise, TipPromise, WorkPromise
from publisher.proof.checks.frame import ROUND_DUST, carried_faults, judged, words_at
from publisher.proof.measuring import Case
from publisher.proof.reading import MM_PER_INCH, normal, unbroken

MM_PER_METRE, MM_PER_FOOT = 1000.0, 12 * MM_PER_INCH
NONE = "none"
SMALL_ONLY = "small pieces only"
HALF_TENTH = 0.05 + 1e-6  # of a metre or a foot: lengths are printed to a tenth
WAY = re.compile(
    r"(?:or )?(\d+) sheets? (.+) \((\d[\d.]*) × (\d[\d.]*) (mm|in)\) (.+?) ("
    + SMALL_ONLY
    + r"|\d[^A-Za-z]*(?:mm|in) \(.*\))"
)
SPARE = re.compile(r"(\d+)( or more)? ([^\s,]+)")
SIZE = re.compile(r"(\d[\d.]*) × (\d[\d.]*) (mm|in)")
LONG = r"(none|\d[\d.]* (?:m|ft) \(\d[\d.]* (?:m|ft)\))"
TIPS = re.compile(r"(\d+) to (\d+) (m|ft) \((\d+) to (\d+) (m|ft)\) (?:of )?(bare board|board with paper)")
HALF_WHOLE = 0.5 + 1e-6  # of a metre or a foot: how far a tip lasts is said in whole ones
WORK = re.compile(rf"{LONG} {LONG} (none|\d+) (?:none|{LONG} in (\d+) strokes) (\d+)(?: to (\d+))?")


@judged(
    "proof/what-to-buy",
    "What to buy as laid out",
    "a buyer pays for it: each way to buy board once, with its sheets, their size, the spares that go on and what is left; and what there "
    "is to cut, to score and to draw, by which blades are bought, and how far a tip lasts in these boards",
    may_be_empty=True,
)
def what_to_buy(case: Case, check: Check[Case]) -> Findings:
    """Read the row of each promised way to buy, and that of the work, where a page carries them."""
    hint = "print what to buy from the layouts that the pack shows"
    for way in case.promises.sheets:
        yield from carried_faults(case, check, way.key, f"buying {way.label}", hint, partial(_way, case, way))
    work = case.promises.work
    if work is not None:
        yield from carried_faults(case, check, work.key, "what there is to cut", hint, partial(_work, case, work))
        yield from carried_faults(case, check, work.key, "how far a blade lasts", hint, partial(_tips, case, work))
    return len(case.promises.sheets) + (work is not None)


def _way(case: Case, way: SheetsPromise, where: Carried) -> str:
    """Return what a row says otherwise than promised; empty when nothing."""
    said = words_at(case, where)
    board = way.board.replace("_", " ") + " "
    found = WAY.fullmatch(said.removeprefix(board))
    if found is None:
        return f"says “{said}”, which is no way to buy"
    count, label, *size, unit, spares, left = found.groups()
    worth, half = (1.0, 0.5) if unit == "mm" else (MM_PER_INCH, 0.05 * MM_PER_INCH)
    others = {(letter, int(copies), bool(more)) for copies, more, letter in SPARE.findall(spares.replace(", or", ","))}
    for right, wanted in (
        (int(count) == way.sheets, f"{way.sheets} sheets"),
        (label == normal(way.label), way.label),
        (
            all(abs(float(a) * worth - b) <= half + 1e-6 for a, b in zip(size, (way.width, way.height), strict=True)),
            f"{way.width:g} × {way.height:g} mm",
        ),
        (others == {(normal(letter), n, more) for letter, n, more in way.spares}, f"spares {way.spares}"),
        (_left(left, way.offcut), f"a piece left of {way.offcut}"),
    ):
        if not right:
            return f"says “{said}”; promised is {wanted}"
    return ""


def _left(said: str, offcut: tuple[float, float] | None) -> bool:
    """Say whether the largest piece left is said in both units, and never as larger than it is."""
    found = SIZE.findall(said)
    if offcut is None or len(found) != 2:
        return offcut is None and said == SMALL_ONLY
    for *sides, unit in found:
        worth, step = (1.0, 1.0) if unit == "mm" else (MM_PER_INCH, 0.1 * MM_PER_INCH)
        if not all(
            b - step - 1e-6 <= float(a) * worth <= b + ROUND_DUST * step for a, b in zip(sides, offcut, strict=True)
        ):
            return False
    return {unit for *_, unit in found} == {"mm", "in"}


def _work(case: Case, work: WorkPromise, where: Carried) -> str:
    said = words_at(case, where)
    found = WORK.fullmatch(said)
    if found:
        cut, score, holes, texture, strokes, least, most = found.groups()
        figures = (int(holes) if holes != NONE else 0, int(strokes or 0), (int(least), int(most or least)))
        lengths = zip((cut, score, texture or NONE), (work.cut, work.score, work.texture), strict=True)
        if figures == (work.holes, work.strokes, work.blades) and all(_long(words, mm) for words, mm in lengths):
            return ""
    return (
        f"says “{said}” of {work.cut:.0f} mm to cut, {work.score:.0f} to score, {work.holes} holes, {work.texture:.0f} mm of texture in "
        f"{work.strokes} strokes, {work.blades[0]} to {work.blades[1]} blade tips"
    )


def _tips(case: Case, work: WorkPromise, where: Carried) -> str:
    """Return what the page says otherwise of how far a tip lasts in the boards of the list; empty when nothing."""
    told = normal(unbroken(" ".join(line.text for line in case.lines(where.page)))).lower()
    found = [(kind != "bare board", sizes) for *sizes, kind in TIPS.findall(told)]
    right = [papered for papered, _ in found] == [tip.papered for tip in work.tips] and all(
        _is_tip(tip, sizes) for tip, (_, sizes) in zip(work.tips, found, strict=True)
    )
    wanted = " and ".join(
        f"{tip.least:g} to {tip.most:g} mm in {'papered' if tip.papered else 'bare'} board" for tip in work.tips
    )
    return "" if right else f": it does not say that a blade’s tip lasts {wanted}, and nothing else of other boards"


def _is_tip(tip: TipPromise, sizes: list[str]) -> bool:
    """Say whether ``2 to 4 m (7 to 13 ft)``, taken apart, is how far a tip lasts."""
    units = {"m": MM_PER_METRE, "ft": MM_PER_FOOT}
    ends = (tip.least, tip.most, tip.least, tip.most)
    figures = (*((figure, sizes[2]) for figure in sizes[:2]), *((figure, sizes[5]) for figure in sizes[3:5]))
    return {sizes[2], sizes[5]} == set(units) and all(
        abs(float(figure) - mm / units[unit]) <= HALF_WHOLE for (figure, unit), mm in zip(figures, ends, strict=True)
    )


def _long(words: str, mm: float) -> bool:
    """Say whether a length is said in metres and feet."""
    if words == NONE:
        return mm == 0.0
    units = {"m": MM_PER_METRE, "ft": MM_PER_FOOT}
    found = {unit: float(figure) for figure, unit in re.findall(r"(\d[\d.]*) (m|ft)", words)}
    return set(found) == set(units) and all(abs(found[unit] - mm / units[unit]) <= HALF_TENTH for unit in units)
