"""Blocks of known height shared out over pages: as few pages as can be, and then as even as can be."""

from collections.abc import Sequence


def share_out(
    heights: Sequence[float], first: float, room: float, counts: Sequence[int] = (), most: int = 0
) -> tuple[tuple[int, int], ...]:
    """Return the pages as (first block, one past the last block).

    ``first`` is the room (mm) on the first page, ``room`` that on every other. The number of pages is the least possible with
    the blocks in order; of those sharings the one is chosen whose page ends leave gaps most alike (least sum of squares). A block
    taller than a page stands alone on one. ``counts``: of something in each block of which a page shows at most so many.
    """
    count = len(heights)
    best: list[list[tuple[int, float, int]]] = [[(0, 0.0, count)] * 2 for _ in range(count + 1)]
    for start in range(count - 1, -1, -1):
        for is_first in (0, 1):
            space = first if is_first else room
            options = []
            used = 0.0
            for end in range(start + 1, count + 1):
                used += heights[end - 1]
                if counts and sum(counts[start:end]) > most and end > start + 1:
                    break
                if used > space + 1e-9 and end > start + 1:
                    break
                if used > space + 1e-9 and is_first:
                    break  # a block that is too tall for what the first page has left goes to the next
                pages, cost, _ = best[end][0]
                options.append((pages + 1, cost + (max(0.0, space - used) / room) ** 2, end))
            if is_first:
                pages, cost, _ = best[start][0]
                options.append((pages + 1, cost + (space / room) ** 2, start))
            best[start][is_first] = min(options)
    shared: list[tuple[int, int]] = []
    start, is_first = 0, 1
    while start < count:
        end = best[start][is_first][2]
        shared.append((start, end))
        start, is_first = end, 0
    return tuple(shared)
