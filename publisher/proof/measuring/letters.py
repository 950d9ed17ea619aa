"""The letters of a page that leave ink and can be seen: the box of each on the page, as it stands, askew or not."""

import numpy as np
import shapely

from publisher.basics import record
from publisher.proof.reading import Array, PageRead, TextRun

CORNERS = ((0, 1), (2, 1), (2, 3), (0, 3))


@record
class LettersSeen:
    """The ``runs`` of a page that can be seen; the box of each letter of them as an area (mm), the number of its run, and a tree of these
    areas."""

    runs: tuple[TextRun, ...]
    areas: Array
    owner: Array
    tree: shapely.STRtree


def letters_of(page: PageRead, hidden: tuple[str, ...]) -> LettersSeen:
    """Return the letters of a page; ``hidden``: why each of its runs cannot be seen, or ""."""
    runs = tuple(run for run, why in zip(page.texts, hidden, strict=True) if not why and run.visible and run.letters)
    boxes = np.array(
        [[box[i] + at * (i % 2 == 0) for i in range(4)] for run in runs for at, box in run.letters]
    ).reshape(-1, 4)
    owner = np.repeat(np.arange(len(runs)), [len(run.letters) for run in runs]).astype(int)
    frames = np.array([run.frame for run in runs]).reshape(-1, 6)[owner]
    corners = boxes[:, CORNERS].reshape(-1, 4, 2)
    placed = np.einsum("nki,nij->nkj", corners, frames[:, :4].reshape(-1, 2, 2)) + frames[:, None, 4:]
    areas = shapely.polygons(placed) if len(placed) else np.zeros(0, dtype=object)
    return LettersSeen(runs, areas, owner, shapely.STRtree(areas))
