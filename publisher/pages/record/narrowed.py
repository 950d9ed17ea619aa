"""What the files that are given beside the pack promise of all that the pack must show."""

from dataclasses import replace

from publisher.basics import FileKind, Promises
from publisher.joints import JOINT, SHOP_PHOTO, WAYS_UP


def printed_alone(promises: Promises) -> Promises:
    """Return the promises of the pack itself: all but the photographs that only a shop shows."""
    return replace(promises, drawings=tuple(one for one in promises.drawings if not one.key.startswith(SHOP_PHOTO)))


def shown_alone(promises: Promises) -> Promises:
    """Return the promises of a file that shows some parts once each, for themselves: nothing is bought, laid out or built by it, and of
    each part a single copy is cut."""
    shown = {outline.part for outline in promises.outlines}
    return replace(
        promises,
        rows=tuple(replace(row, count=1, spare=0, mirrored=0) for row in promises.rows if row.part in shown),
        sheets=(),
        work=None,
        boards=(),
        layouts=(),
        sides=tuple(side for side in promises.sides if side.part in shown and not side.mirrored),
        sentences=(),
        drawings=(),
        done=(),
        said=(),
        needed=(),
        sizes=(),
        purpose="test_page",
        prints=tuple(piece for piece in promises.prints if piece.part in shown),
    )


def told_alone(promises: Promises) -> Promises:
    """Return the promises of a file that tells the steps, with what they take and their pictures, and shows no part at true size."""
    keys = {one.key for one in promises.sentences} | {one.key for one in promises.drawings}
    keys |= {one.key for one in promises.done} | {one.key for one in promises.said}
    told = {key for key in keys if key == "summary" or key.startswith(("step:", JOINT, WAYS_UP))}
    return _without_boards(promises, told, "phone")


def pictured_alone(promises: Promises) -> Promises:
    """Return the promises of pages of which pictures are made: all photographs of the piece, the drawings and sizes of it that they
    carry, and nothing else."""
    photos = {one.key for one in promises.drawings if one.key.startswith(SHOP_PHOTO)}
    return _without_boards(promises, photos | {where.key for where in promises.carried}, "shop")


def _without_boards(promises: Promises, kept: set[str], purpose: FileKind) -> Promises:
    """Return what is promised where nothing is bought, laid out or measured: the sentences and drawings of these keys."""
    return replace(
        promises,
        sheets=(),
        work=None,
        boards=(),
        layouts=(),
        sides=(),
        sizes=(),
        sentences=tuple(one for one in promises.sentences if one.key in kept),
        drawings=tuple(one for one in promises.drawings if one.key in kept),
        done=tuple(one for one in promises.done if one.key in kept),
        said=tuple(one for one in promises.said if one.key in kept),
        needed=(),
        purpose=purpose,
    )
