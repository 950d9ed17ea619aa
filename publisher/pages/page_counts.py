"""How many template and tile pages a design takes, by the planners of both, without drawing one: for trying other sizes."""

from publisher.basics import record
from publisher.design import Design
from publisher.geometry import Part
from publisher.joints import Joined
from publisher.material import BoardNeeds
from publisher.pages.model import Paper
from publisher.pages.sheet import Context
from publisher.pages.templates import MOST_PRINTED, planner_of, sample_count, samples, with_top_marks
from publisher.pages.tiles import MAP_FROM, MOST_TILES_OF_PART, least_tiles, tiling
from publisher.pages.type import Faces, Setter, face, faces_of


@record
class PageCount:
    """Pages of one paper: those with templates, those with tiles and maps of tiles, and the letters of the parts that are tiled.

    None for a number that no pack holds (more copies, or more tiles of a part, than a pack takes).
    """

    paper: str
    templates: int | None
    tiles: int | None
    tiled: tuple[str, ...]

    @property
    def pages(self) -> int | None:
        """Both together."""
        return None if self.templates is None or self.tiles is None else self.templates + self.tiles


def count_pages(design: Design, parts: tuple[Part, ...], joined: Joined, paper: Paper) -> PageCount:
    """Count the template and tile pages that ``compose`` would make of these parts; ``joined`` with its promises.

    A font of the spec that cannot be read is passed over: a build says so. Raises Refusal when the paper cannot hold a page.
    """
    try:
        faces = faces_of(design)
    except ValueError:
        faces = Faces(face("regular"), face("bold"))
    nothing_laid = BoardNeeds((), (), ())
    context = Context(design, with_top_marks(parts, joined), joined, nothing_laid, paper, Setter(faces))
    planner = planner_of(context)
    small = [p for p in context.parts if planner.fits(p)]
    large = [p for p in context.parts if not planner.fits(p)]
    printed = sum(sample_count(context, p) for p in small)
    small.sort(key=lambda p: (-context.copies(p), p.letter))
    wanted = tuple(s for part in small for s in samples(context, part))
    templates = len(planner.filled(wanted)[0]) if wanted and printed <= MOST_PRINTED else 0
    if any(least_tiles(context, p) * sample_count(context, p) > MOST_TILES_OF_PART for p in large):
        tiles = None
    else:
        cells = [len(tiling(context, s).cutting.cells) for part in large for s in samples(context, part)]
        tiles = sum(count + (count >= MAP_FROM) for count in cells)
    letters = tuple(p.letter for p in large)
    return PageCount(paper.name, templates if printed <= MOST_PRINTED else None, tiles, letters)
