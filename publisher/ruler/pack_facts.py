"""What a pack says of itself: the facts document attached to its PDF, as far as a verdict needs it."""

import json
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from publisher.basics import Refusal, Rule, Severity

GENERAL_LIMIT = "the general limit"

NO_FACTS = Rule(
    "ruler/pack-without-facts",
    "The pack carries its facts",
    "Without them nobody can say what this design allows; the general limit would be a guess about it.",
    Severity.ERROR,
)


@dataclass(frozen=True, slots=True)
class Met:
    """A printed size that meets an unprinted one: fits while least ≤ scale·printed ≤ most (mm; most None = no limit)."""

    what: str
    printed: float
    least: float
    most: float | None


@dataclass(frozen=True, slots=True)
class Budget:
    """The range of print scale that is allowed, and what sets its ends, in words."""

    least: float
    most: float
    least_by: str
    most_by: str


@dataclass(frozen=True, slots=True)
class PackFacts:
    """Title, version and meetings of a pack, and the range of print scale that it says it allows (None in older packs)."""

    title: str
    version: str
    meetings: tuple[Met, ...]
    budget: Budget | None = None


def read_pack_facts(pdf: bytes, name: str) -> PackFacts:
    """Return the facts attached to a PDF of ours. Raises Refusal when there are none or they cannot be read."""
    import logging

    from pypdf import PdfReader

    logging.getLogger("pypdf").setLevel(logging.CRITICAL)  # its remarks about a strange file are not ours

    try:
        attached = PdfReader(BytesIO(pdf)).attachments
        data = attached.get("facts.json", [b""])[0]
        document = json.loads(data)
        meetings = tuple(
            Met(
                str(m["what"]),
                float(m["printed"]),
                float(m["unprinted_least"]),
                None if m["loosest"] is None else float(m["loosest"]),
            )
            for m in document["meetings"]
        )
        design = document["design"]
        return PackFacts(str(design["title"]), str(design["version"]), meetings, _budget(document))
    except Exception as error:
        raise Refusal(
            NO_FACTS.found(
                f"{name} carries no facts that can be read: it is not a finished pack of this tool",
                subject=name,
                hint="give the PDF as it was downloaded, or leave --pack out to judge by the general limit of ±0.5 %",
            )
        ) from error


def _budget(document: dict[str, Any]) -> Budget | None:
    said = document.get("budget")
    if said is None:
        return None
    what = {str(m["name"]): str(m["what"]) for m in document["meetings"]}
    ends = (what.get(str(said[key]), GENERAL_LIMIT) for key in ("least_by", "most_by"))
    return Budget(float(said["least"]), float(said["most"]), *ends)
