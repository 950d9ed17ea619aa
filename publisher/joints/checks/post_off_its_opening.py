"""Posts whose opening is not there, is of a form that holds no post, or is not where the post stands."""

from collections.abc import Iterator

from publisher.basics import Check, Findings, checked
from publisher.basics.wording import did_you_mean, listed, say_length
from publisher.joints.assembled import Assembled
from publisher.joints.checks.off_its_face import ASKEW, SeatFault
from publisher.joints.panels import PANEL_TOUCH, PanelAssembly, PostFound, opening_of


@checked(
    "joints/post-off-its-opening",
    "A post stands in an opening that is there, square in it and through the whole board",
    "a post is glued over the thickness of the board that it goes through: what is askew in its opening, or ends before the other "
    "face, leans or stands proud",
    may_be_empty=True,
)
def post_off_its_opening(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look up every opening that a post is put in, and how the post's end lies in it. How wide both are is a meeting."""
    looked_at = 0
    for mated in subject.panels:
        plan = mated.assembly.plan
        for seat in plan.seats:
            if not seat.opening:
                continue
            looked_at += 1
            post = next((one for one in mated.posts if one.seat == seat), None)
            faults = _unknown(mated.assembly, seat.host, seat.opening) if post is None else _faults(post)
            for what, hint, value, limit in list(faults)[:1]:
                yield check.found(
                    f"{seat.panel} stands in “{seat.opening}” of {seat.host}, {what}",
                    subject=plan.name,
                    hint=hint,
                    place=seat.place,
                    value=value,
                    limit=limit,
                )
    return looked_at


def _unknown(assembly: PanelAssembly, host: str, name: str) -> Iterator[tuple[str, str, float | None, float | None]]:
    panel = assembly.panel(host)
    if panel is None or opening_of(panel.part, name) is not None:
        return  # what is not there is found elsewhere
    holes = [edge.name for hole in panel.part.outline.holes for edge in hole.edges[:1] if "." not in edge.name]
    known = list(dict.fromkeys([*(opening.name for opening in panel.part.openings), *holes]))
    knows = f"it has: {listed(known)}" if known else "it has none"
    yield (
        "which has no opening of that name that goes through its board",
        f"{did_you_mean(name, known)} {knows}".lstrip(),
        None,
        None,
    )


def _faults(post: PostFound) -> Iterator[SeatFault]:
    if post.round is None:
        yield (
            "which is neither round nor square",
            "use kind: round_hole, or a window with head: square",
            0.0,
            0.0,
        )
    if post.askew > ASKEW:
        yield (
            f"turned by {post.askew:.2f}° against its sides",
            "turn the post as the opening lies: turn: 0 deg or 90 deg for one along the template",
            post.askew,
            ASKEW,
        )
    if post.off > PANEL_TOUCH:
        yield (
            f"and is held {say_length(post.off)} from the middle of it, or its end from the level of the other face",
            "remove one of the joins that hold it, or cut its end square",
            post.off,
            PANEL_TOUCH,
        )
