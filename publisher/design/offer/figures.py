"""The figure that a piece is built for: two sizes of the design with a known name say how wide its base is and what it weighs."""

from collections.abc import Sequence

from publisher.basics import Finding
from publisher.basics.wording import say_mm
from publisher.design.records import Figure, Size
from publisher.design.rules import plans as rules

BASE, MASS = "figure_base", "figure_mass"

HEAVIEST = ((25.0, 30.0), (32.0, 45.0), (40.0, 80.0), (60.0, 150.0))
"""Width of a base up to (mm) and the mass (g) of a figure on it: bases of 50 and 60 mm carry alike, and a base between two
rows takes the heavier. An assumption; metal figures reach twice that on small bases."""

HEAVIEST_THING = 5000.0  # g: what is heavier is no figure


def read_figure(sizes: Sequence[Size], findings: list[Finding]) -> Figure:
    """Return the figure of a design: as ``figure_base`` and ``figure_mass`` say, else one of 30 g on a base of 25 mm."""
    known = {size.name: size for size in sizes}
    base = _measure(known.get(BASE), ("length",), "a length, such as 25 mm", 1000.0, findings)
    mass = _measure(
        known.get(MASS), ("count", "number"), "a plain number of grams, such as 80", HEAVIEST_THING, findings
    )
    if mass is not None:
        return Figure(base or Figure().base, mass, assumed=False)
    if base is None:
        return Figure()
    by_base = next((heavy for wide, heavy in HEAVIEST if base <= wide + 1e-9), None)
    if by_base is None:
        widest, by_base = HEAVIEST[-1]
        findings.append(
            rules.FIGURE_UNKNOWN.found(
                f"nobody knows what a figure on a base of {say_mm(base)} weighs; {by_base:g} g is taken, as on one of {say_mm(widest)}",
                subject=f"size {BASE}",
                hint=f"weigh it, and write the grams under sizes: {MASS}: {by_base * 2:g}",
                place=known[BASE].place,
                value=base,
                limit=widest,
            )
        )
    return Figure(base, by_base)


def _measure(
    size: Size | None, kinds: tuple[str, ...], wanted: str, most: float, findings: list[Finding]
) -> float | None:
    if size is None:
        return None
    if size.kind in kinds and 0.0 < size.value <= most:
        return size.value
    findings.append(
        rules.FIGURE.found(
            f"{size.name} says how {'wide the bases' if size.name == BASE else 'heavy the figures'} are that stand on the piece: "
            f"{wanted}, more than 0 and at most {most:g}; here it is {size.expression}",
            subject=f"size {size.name}",
            hint=f"write {wanted}, or give the size another name",
            place=size.place,
        )
    )
    return None
