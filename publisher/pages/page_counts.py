"""How many template and tile pages a design takes, by the planners of both, without drawing one: for trying other sizes."""

from publisher.basics import record
from publisher.design import Design
from publisher.geometry import Part
from publisher.joints import Joined
from publisher.material import BoardNeeds
from publisher.pages.model import Paper
from publisher.pages.sheet import Context
from publisher.pages.templates import planner_of, refusal, with_top_marks
from publisher.pages.tiles import TruePages, plan_true_pages, tiles_refusal
from publisher.pages.type import Faces, Setter, face, faces_of


@record
class PageCount:
    """Pages of one paper: those with templates alone, those with tiles and maps of tiles, and the letters of the parts that are tiled.

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
    plan = plan_true_pages(context)
    fits = planner_of(context).fits
    small = tuple(p for p in context.templates if fits(p))
    large = [p for p in context.templates if not fits(p)]
    refused = {p.id for p in large if tiles_refusal(context, p)} if plan.refused else set()
    tiles = None if refused else _tile_pages(plan)
    templates = None if refusal(context, small) else len(plan.templates)
    tiled = {one.sample.part.id for one in plan.cut} | refused
    return PageCount(paper.name, templates, tiles, tuple(p.letter for p in context.parts if p.id in tiled))


def _tile_pages(plan: TruePages) -> int:
    """Return the pages of tiles, of maps of tiles, and those that tiles share with templates."""
    maps = sum(one.mapped for one in plan.cut)
    return sum(len(one.cutting.cells) for one in plan.tilings) + maps + len(plan.shared)
