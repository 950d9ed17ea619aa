"""Joints of neighbouring courses that stand nearly over each other."""

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import figures_apart, say_length
from publisher.joints.assembled import Assembled
from publisher.joints.model import StackLayer
from publisher.joints.stacks import HALF_BOND, QUARTER_BOND, Stagger, half_offset, nearest_bond, nearest_offset

RUNNING_BOND = QUARTER_BOND
"""Share of the unit's length. Definition of running bond in TMS 402 (Building Code Requirements for Masonry Structures):
head joints in successive courses are offset by at least one quarter of the unit length."""


JOINT_ROUNDING = 0.001
"""Of a unit: arcs are flattened before lengths along them are taken."""


MOST_NAMED = 4
"""Groups of neighbouring layers that the message names."""


@checked(
    "joints/straight-joint",
    "Joints of neighbouring courses are staggered",
    f"a joint over a joint looks wrong and is weak; running bond offsets them by at least {RUNNING_BOND:g} of the unit (TMS 402)",
    Severity.WARNING,
    may_be_empty=True,
)
def straight_joint(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every pair of neighbouring courses; say once per stack which pairs are in line and what would break joint."""
    looked_at = 0
    for report in subject.wholes:
        looked_at += len(report.staggers)
        bad = [s for s in report.staggers if s.share < RUNNING_BOND - JOINT_ROUNDING]
        if not bad:
            continue
        worst = min(bad, key=lambda s: s.share)
        share, wanted = figures_apart(worst.share, RUNNING_BOND, 2)
        yield check.found(
            f"the joints of {_which(bad, report.stack.layers)} stand nearly over each other: {share} of a unit "
            f"apart at the closest (a unit is {say_length(worst.unit)}); at least {wanted} breaks joint",
            subject=report.stack.name,
            hint=_cure(worst),
            place=report.place,
            value=worst.share,
            limit=RUNNING_BOND,
        )
    return looked_at


def _which(bad: list[Stagger], layers: tuple[StackLayer, ...]) -> str:
    """Name the layers by groups in which each is in line with its neighbour: ``layers 1 to 6, and 9 and 10``."""
    groups: list[list[int]] = []
    for stagger in bad:
        if groups and groups[-1][1] == stagger.lower:
            groups[-1][1] = stagger.lower + 1
        else:
            groups.append([stagger.lower, stagger.lower + 1])
    words = []
    for first, last in groups[:MOST_NAMED]:
        a, b = layers[first].number, layers[last].number
        words.append(f"{a} and {b}" if b == a + 1 else f"{a} to {b} (each with its neighbours)")
    more = f", and of {len(groups) - MOST_NAMED} more groups" if len(groups) > MOST_NAMED else ""
    return f"layers {', and '.join(words)}{more}"


def _cure(worst: Stagger) -> str:
    """Say the nearest pitch that breaks joint by a quarter and by a half, and the offset of every other course that does."""
    ways = []
    bonds = [b for least in (QUARTER_BOND, HALF_BOND) if (b := nearest_bond(worst, least)) is not None]
    for bond in dict.fromkeys(bonds):
        many = f"{bond.joints} joints round the ring, " if bond.joints else ""
        ways.append(f"{many}a unit of {say_length(bond.unit)} ({bond.share:.2f} of a unit apart)")
    quarter, half = nearest_offset(worst, QUARTER_BOND), half_offset(worst)
    moves = [quarter, half] if quarter is not None and quarter[1] < half[1] - JOINT_ROUNDING else [half]
    far = " or ".join(f"{say_length(way)} ({share:.2f} apart)" for way, share in moves)
    ways.append(f"on a second template for every other layer, the joints moved along by {far}")
    return f"take {'; or '.join(ways)}"
