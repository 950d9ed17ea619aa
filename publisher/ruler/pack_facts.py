"""What a pack says of itself: the record attached to its PDF, as far as a verdict needs it. Formats 1 and 2 say it alike."""

import json
from collections.abc import Iterable
from io import BytesIO
from math import isfinite
from typing import Any

from publisher.basics import Refusal, Rule, Severity, record
from publisher.ruler.readings import LEAST_LINE, MOST_LINE
from publisher.ruler.slips import LONG_RULERS

GENERAL = 0.005  # ±0.5 %: common practice, no source
GENERAL_LIMIT = "the general limit"

NO_FACTS = Rule(
    "ruler/pack-without-facts",
    "The pack carries its facts",
    "Without them nobody can say what this design allows; the general limit would be a guess about it.",
    Severity.ERROR,
)

FACTS_ASKEW = Rule(
    "ruler/facts-askew",
    "The facts of a pack hold together",
    "A print is judged by them: with a range that is too wide every print would pass.",
    Severity.ERROR,
)
LEAST_SCALE, MOST_SCALE = 0.9, 1.1  # no design allows a print scale outside
FORMATS = (1, 2)
PACK_KINDS = ("standard", "trial")  # what a record calls a whole pack
SCREEN_KIND = "phone"  # what it calls pages that are read on a screen
NEVER_PRINTED = Rule(
    "ruler/never-printed",
    "The file that is judged by is one that is printed",
    "The phone copy has no line to measure and is no sheet that anybody cuts by: who names it took the wrong file.",
    Severity.ERROR,
)
NEWER_RECORD = Rule(
    "ruler/newer-record",
    "The record of a pack is of a format that is known",
    "A record of a later format may mean something else by the same words.",
    Severity.ERROR,
)
ROUNDED = 2e-4  # sizes are recorded to 0.0001 mm, the range to 0.000001


@record
class Met:
    """A printed size that meets an unprinted one: fits while least ≤ cut size ≤ most (mm; most None = no limit).

    ``grown`` (mm) is what the template is drawn larger than the finished size and the pencil takes back, whatever the scale. Where
    board is in what it meets, ``boards`` thicknesses of ``board`` are; ``least`` and ``most`` are stated for ``thickness`` and the
    worse, and the better, end of its ``spread`` (mm).
    """

    what: str
    printed: float
    least: float
    most: float | None
    grown: float = 0.0
    board: str = ""
    boards: float = 0.0
    thickness: float = 0.0
    spread: float = 0.0

    def cut(self, scale: float) -> float:
        """Return the size in mm that is cut along a sheet printed at this scale (1 = true size)."""
        return scale * (self.printed + self.grown) - self.grown


@record
class AllowedScale:
    """The range of print scale that is allowed, and what sets its ends, in words."""

    least: float
    most: float
    least_by: str
    most_by: str


@record
class RecordedBoard:
    """A board that a pack is cut from: its name in the spec, what it is sold as, the thickness (mm) that the pack is drawn for."""

    board: str
    sold_as: str
    thickness: float


@record
class PackFacts:
    """Title, version and meetings of a pack, the range of print scale that it says it allows (None in older packs), and how long (mm)
    the long rulers of its print-check page are, across and down. ``outer_square``: the side (mm) of the square that stands round the
    one of 100 mm there; 0 where none does. ``whole``: it is a pack, and not a small file given beside one. ``lines``: the lengths (mm) of
    all lines with a number on its pages; older records do not hold them."""

    title: str
    version: str
    meetings: tuple[Met, ...]
    budget: AllowedScale | None = None
    slug: str = ""
    variant: str = ""
    boards: tuple[RecordedBoard, ...] = ()
    pencil_spread: float = 0.0
    rulers: tuple[float, float] = LONG_RULERS
    outer_square: float = 0.0
    whole: bool = True
    lines: tuple[float, ...] = ()

    @property
    def called(self) -> str:
        """What a buyer knows the pack by: its variant's title, or its title and version."""
        return self.variant or f"{self.title} {self.version}"


def budget_of(meetings: tuple[Met, ...]) -> AllowedScale:
    """Return the allowed range: ±0.5 %, narrowed by every meeting of a printed and an unprinted thing."""
    least, most, least_by, most_by = 1 - GENERAL, 1 + GENERAL, GENERAL_LIMIT, GENERAL_LIMIT
    for met in meetings:
        drawn = met.printed + met.grown
        if drawn <= 0:
            continue
        low = min(
            (met.least + met.grown) / drawn, 1.0
        )  # what fits at no scale up to true size is not the printer's fault
        if least < low:
            least, least_by = low, met.what
        if met.most is not None and (high := max((met.most + met.grown) / drawn, 1.0)) < most:
            most, most_by = high, met.what
    return AllowedScale(least, most, least_by, most_by)


def read_pack_facts(pdf: bytes, name: str, beside: Iterable[tuple[str, bytes]] = ()) -> PackFacts:
    """Return the facts attached to a PDF of ours. Raises Refusal when there are none, when they cannot be read, and for a phone copy,
    which nobody prints: then it names the pack that goes with it where that is among the files ``beside`` it (name, bytes)."""
    try:
        document = _document(pdf)
        form = document.get("format", 1)
        if form not in FORMATS:
            raise _newer(name, form)
        if document.get("pack", {}).get("kind") == SCREEN_KIND:
            raise _never_printed(name, document, beside)
        meetings = tuple(
            Met(
                str(m["what"]),
                float(m["printed"]),
                float(m["unprinted_least"]),
                None if m["loosest"] is None else float(m["loosest"]),
                float(m.get("grown", 0.0)),  # packs of the first record say none: sizes were held as if pasted
                str(m.get("board", "")),
                *(float(m.get(key, 0.0)) for key in ("boards", "thickness", "spread")),
            )
            for m in document["meetings"]
        )
        design = document["design"]
        facts = PackFacts(
            str(design["title"]),
            str(design["version"]),
            meetings,
            _budget(document),
            str(design.get("slug", "")),
            str(design.get("variant_title", "") or design.get("variant", "")),
            tuple(
                RecordedBoard(str(one["board"]), str(one["sold_as"]), float(one["thickness"]))
                for one in document.get("board_ranges", ())
            ),
            float(document.get("budget", {}).get("pencil_spread", 0.0)) if document.get("budget") else 0.0,
            _rulers(document),
            _outer_square(document),
            document.get("pack", {}).get("kind", PACK_KINDS[0]) in PACK_KINDS,
            tuple(float(line["length"]) for page in document.get("pages", ()) for line in page.get("rulers", ())),
        )
    except Refusal:
        raise
    except Exception as error:
        raise Refusal(
            NO_FACTS.found(
                f"{name} carries no facts that can be read: it is not a finished pack of this tool",
                subject=name,
                hint="give the PDF as it was downloaded, or leave --pack out to judge by the general limit of ±0.5 %",
            )
        ) from error
    fault = _fault(facts)
    if fault:
        raise Refusal(
            FACTS_ASKEW.found(
                f"the facts in {name} cannot be right: {fault}",
                subject=name,
                hint="give the PDF as it was downloaded, or leave --pack out to judge by the general limit of ±0.5 %",
            )
        )
    return facts


def _document(pdf: bytes) -> Any:
    """Return the record attached to a PDF. Raises whatever its reader does where there is none."""
    import logging

    from pypdf import PdfReader

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)  # its remarks about a strange file are not ours
    return json.loads(PdfReader(BytesIO(pdf)).attachments.get("facts.json", [b""])[0])


def _never_printed(name: str, document: dict[str, Any], beside: Iterable[tuple[str, bytes]]) -> Refusal:
    packs = [other for other, pdf in beside if _goes_with(document, pdf)]
    return Refusal(
        NEVER_PRINTED.found(
            f"{name} is the copy of the instructions for a phone, which is never printed: a printed pack was expected",
            subject=name,
            hint=f"give the pack that was printed: --pack {' or '.join(packs) or 'PACK.pdf'}",
        )
    )


def _goes_with(copy: dict[str, Any], pdf: bytes) -> bool:
    """Say whether a PDF is the pack that a phone copy goes with: of the same design, version and variant, for the same paper."""
    try:
        other = _document(pdf)
        kind, paper = other["pack"]["kind"], other["pack"]["paper"]["name"]
        return bool(
            kind == PACK_KINDS[0] and other["design"] == copy["design"] and paper == copy["pack"]["paper"]["name"]
        )
    except Exception:  # pypdf has many ways to give up on a damaged file, and it may be anything
        return False


def _newer(name: str, form: object) -> Refusal:
    known = " and ".join(str(one) for one in FORMATS)
    return Refusal(
        NEWER_RECORD.found(
            f"the record in {name} is of format {str(form)[:20]}; this version reads formats {known}",
            subject=name,
            hint="use the version of publisher that made the pack, or a later one",
        )
    )


def _fault(facts: PackFacts) -> str:
    """Return in words why nobody should judge a print by these facts; empty when they hold together."""
    for met in facts.meetings:
        rest = (met.grown, met.boards, met.thickness, met.spread)
        if not all(isfinite(v) and v >= 0 for v in (met.printed, met.least, met.most or 0.0)) or not all(
            map(isfinite, rest)
        ):
            return f"the size “{met.what}” has lengths below nothing"
    if not all(isfinite(length) and LEAST_LINE <= length <= MOST_LINE for length in facts.rulers):
        return f"their long rulers are {facts.rulers[0]:g} and {facts.rulers[1]:g} mm long"
    said = facts.budget
    if said is None:
        return ""
    if not (LEAST_SCALE <= said.least <= 1.0 <= said.most <= MOST_SCALE):
        return f"they allow a print scale from {said.least:g} to {said.most:g}"
    own = budget_of(facts.meetings)
    if abs(own.least - said.least) > ROUNDED or abs(own.most - said.most) > ROUNDED:
        return (
            f"they allow a print scale from {said.least:g} to {said.most:g}, "
            f"but from the sizes that they name follows {own.least:.4f} to {own.most:.4f}"
        )
    return ""


def _rulers(document: dict[str, Any]) -> tuple[float, float]:
    """Return the lengths of the long rulers across and down; older records do not hold them."""
    lines = [line for page in document.get("pages", ()) for line in page.get("rulers", ()) if line["kind"] == "ruler"]
    ways = [abs(line["end"][0] - line["start"][0]) > abs(line["end"][1] - line["start"][1]) for line in lines]
    across = [float(line["length"]) for line, level in zip(lines, ways, strict=True) if level]
    down = [float(line["length"]) for line, level in zip(lines, ways, strict=True) if not level]
    return max(across, default=LONG_RULERS[0]), max(down, default=LONG_RULERS[1])


def _outer_square(document: dict[str, Any]) -> float:
    """Return the side of the square round that of the print check; packs for papers where rulers show mm have none."""
    return max(
        (
            float(line["length"])
            for page in document.get("pages", ())
            if page.get("kind") == "print_check"
            for line in page.get("rulers", ())
            if line["kind"] == "dimension"
        ),
        default=0.0,
    )


def _budget(document: dict[str, Any]) -> AllowedScale | None:
    said = document.get("budget")
    if said is None:
        return None
    what = {str(m["name"]): str(m["what"]) for m in document["meetings"]}
    ends = (what.get(str(said[key]), GENERAL_LIMIT) for key in ("least_by", "most_by"))
    return AllowedScale(float(said["least"]), float(said["most"]), *ends)
