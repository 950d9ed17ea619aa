"""A part's shape from a designer's own drawing, at true size or the scale that the spec says: nothing is guessed."""

from collections.abc import Sequence

from publisher.basics import (
    SAGITTA,
    Finding,
    LineKind,
    Pose,
    Severity,
)
from publisher.design import DrawingPlan, PartPlan
from publisher.geometry.drawings.edges import named_edges
from publisher.geometry.drawings.fewer import too_fine, with_fewer
from publisher.geometry.drawings.lines import marks_of
from publisher.geometry.drawings.outline import bounds_of, corner, findings, refused_as, size_unsaid
from publisher.geometry.drawings.picks import Missing, pick, pick_outline
from publisher.geometry.drawings.regions import region_of
from publisher.geometry.drawings.scene import Scene, read_scene
from publisher.geometry.drawings.svg_shapes import DrawnShape
from publisher.geometry.drawings.tree import Unreadable, read_tree
from publisher.geometry.model import Edge, Region
from publisher.geometry.registry import Shape, mm
from publisher.geometry.rules.drawings import ANOTHER_SIZE, UNREADABLE_DRAWING, Trouble

SIZE_OFF = 0.05  # mm between the stated size and the drawn one


def drawn_shape(plan: PartPlan, data: bytes | None) -> tuple[Shape | None, tuple[Finding, ...]]:
    """Return the shape (mm, lower left corner at the origin) that a plan's drawing gives, and what was found.

    None when an error was found; warnings (mended gaps, doubles) may come with a shape.
    """
    drawing = plan.drawing
    assert drawing is not None
    if data is None:
        trouble = Trouble(UNREADABLE_DRAWING, "the file was not found", "put it into the spec's folder")
        return None, findings((trouble,), drawing.file, f"part {plan.id}", drawing.place)
    try:
        shape, troubles = _shape(plan, drawing, read_scene(read_tree(data), scale=drawing.scale))
    except Unreadable as refused:
        shape, troubles = None, [refused_as(refused)]
    found = findings(troubles, drawing.file, f"part {plan.id}", drawing.place)
    return (None if any(f.severity is Severity.ERROR for f in found) else shape), found


def _shape(plan: PartPlan, drawing: DrawingPlan, scene: Scene) -> tuple[Shape | None, list[Trouble]]:
    wanted, outer, cuts, clones = _wanted(drawing, scene)
    region, troubles = region_of(scene, outer, cuts, wanted)
    troubles = [*_broken([*outer, *cuts]), *clones, *troubles]
    if region is None:
        return None, troubles
    left, bottom = corner(region)
    troubles += _sizes(drawing, scene, region)
    marks, more = marks_of(scene, drawing.lines, region, wanted)
    region, marks = with_fewer(region, marks)
    troubles += too_fine(region, marks, wanted)
    home = Pose(-left, -bottom)
    region = region.placed(home)
    outside = region.outer
    edges: tuple[Edge, ...] = ()
    if plan.treatments:  # joins name edges
        outside, edges = named_edges(outside)
    placed = tuple(mark.placed(home) for mark in marks)
    return Shape(outside, edges, region.holes, placed), [*troubles, *more]


def _wanted(
    drawing: DrawingPlan, scene: Scene
) -> tuple[str, tuple[DrawnShape, ...], tuple[DrawnShape, ...], list[Trouble]]:
    """Return the outline's name and shapes, those of the other lines to cut, and what is to be said of clones."""
    names = [name for kind, ids in drawing.lines if kind == LineKind.CUT for name in ids]
    if drawing.id:
        outer, clones = pick_outline(scene, drawing.id)
        return drawing.id, outer, tuple(d for d in _picked(scene, names) if d not in outer), clones
    if names:
        return ", ".join(names), _picked(scene, names), (), []
    only = _only_closed(scene)
    return only.name, (only,), (), []


def _picked(scene: Scene, names: Sequence[str]) -> tuple[DrawnShape, ...]:
    """Return the shapes of all these names, each once."""
    return tuple(dict.fromkeys(d for name in names for d in pick(scene, name)))


def _only_closed(scene: Scene) -> DrawnShape:
    """Return the one closed line, which needs no name to be the outline. Raises Missing when there are several, or none."""
    closed = [d for d in scene.drawn if any(path.closed for path in d.paths)]
    if len(closed) != 1:
        known = ", ".join(d.called for d in closed[:12]) or "none"
        raise Missing(
            f"the spec does not say which of {len(closed)} closed lines is the outline",
            f"say id: … in the spec; closed lines: {known}",
        )
    return closed[0]


def _broken(drawn: Sequence[DrawnShape]) -> list[Trouble]:
    return [
        Trouble(
            UNREADABLE_DRAWING,
            f"“{one.called}”: {one.problem}",
            "save the drawing again as plain SVG",
            one.element.line,
        )
        for one in drawn
        if one.problem
    ]


def _sizes(drawing: DrawingPlan, scene: Scene, region: Region) -> list[Trouble]:
    left, bottom, right, top = bounds_of(region)
    troubles = [
        Trouble(
            ANOTHER_SIZE,
            f"the outline is {mm(found)} {word} in the drawing, but the spec says {mm(stated)}",
            "change the drawing's size or the spec's"
            + ("; " if drawing.scale == 1.0 else f"; it is drawn at scale: {drawing.scale:.6g}, and ")
            + f"with scale: {drawing.scale * stated / found:.6g} under drawing it would fit (a quotient of sizes makes it follow them)",
            value=found,
            limit=stated,
        )
        for stated, found, word in (
            (drawing.width, right - left, "wide"),
            (drawing.height, top - bottom, "high"),
        )
        if stated is not None and abs(stated - found) > SIZE_OFF + SAGITTA
    ]
    if scene.page.known != "said" and drawing.width is None and drawing.height is None:
        troubles.append(size_unsaid(right - left, top - bottom))
    return troubles
