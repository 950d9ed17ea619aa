"""What a pack says of itself: the facts document attached to its PDF, as far as a verdict needs it."""

import json
from dataclasses import dataclass
from io import BytesIO

from publisher.basics import Refusal, Rule, Severity

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
class PackFacts:
    """Title, version and meetings of a pack."""

    title: str
    version: str
    meetings: tuple[Met, ...]


def read_pack_facts(pdf: bytes, name: str) -> PackFacts:
    """Return the facts attached to a PDF of ours. Raises Refusal when there are none or they cannot be read."""
    from pypdf import PdfReader

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
        return PackFacts(str(design["title"]), str(design["version"]), meetings)
    except Exception as error:
        raise Refusal(
            NO_FACTS.found(
                f"{name} carries no facts that can be read: it is not a finished pack of this tool",
                subject=name,
                hint="give the PDF as it was downloaded, or leave --pack out to judge by the general limit of ±0.5 %",
            )
        ) from error
