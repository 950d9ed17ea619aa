"""What the pages must show of sides, sentences and pictures: promised here, where they are known, before any page is made."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Literal

import numpy as np
import shapely

from publisher.basics import DrawingPromise, NumberPromise, Point, Purpose, SentencePromise, SidePromise, remembered_few
from publisher.basics.wording import LengthUnit
from publisher.design import Design, Fact, PicturePlan, TextPlan, fill, said_numbers
from publisher.geometry import PLATE, Part, polygon, sizes_of
from publisher.joints.act_scenes import act_scenes
from publisher.joints.act_standing import act_standing
from publisher.joints.act_words import act_words
from publisher.joints.cover import LEAST_PICTURE, cover_drawings, cover_sentences
from publisher.joints.drawings import draw_sizes
from publisher.joints.effort import effort_of
from publisher.joints.glue_signs import glue_signs
from publisher.joints.handling import handling_sentences
from publisher.joints.how_pictures import how_pictures
from publisher.joints.joint_words import joint_words
from publisher.joints.mirrors import alike_parts, is_own_mirror
from publisher.joints.model import Drawing, Joined, Placed
from publisher.joints.outward import look_outwards
from publisher.joints.panels import stands
from publisher.joints.picture_promise import picture_promise
from publisher.joints.promised_acts import InPieces, done_by, needed_by
from publisher.joints.promised_numbers import boards_of, figures_of, prints_of
from publisher.joints.stack_trials import pile_sentences
from publisher.joints.trades import trade_pictures
from publisher.joints.ways_up import ways_up

COVER_PICTURE = "cover:picture"
"""The key under which the cover's picture is promised, where the spec asks for one."""

SHOP_PHOTO = "shop:photo:"
"""Begins the keys of the photographs that stand in the pictures for a shop alone."""


def with_promises(design: Design, pieces: Sequence[Part], joined: Joined) -> Joined:
    """Return what was put together with its promises about the ``pieces`` that are cut, the texts, the pictures asked for and what the
    cover says."""
    joined = replace(joined, effort=effort_of(design, pieces, joined), sides=sides_of(design, pieces, joined.placed))
    measured = [(piece, sizes_of(piece)) for piece in pieces if piece.printed == "sizes"]
    drawn = tuple(draw_sizes(piece, sizes) for piece, sizes in measured)
    return replace(
        joined,
        sentences=sentences_on(design, pieces, joined),
        prints=prints_of(pieces, design.use == "trace"),
        done=done_by(design, pieces, joined),
        needed=needed_by(design, pieces, joined),
        said=act_words(design, pieces, joined),
        figures=figures_of(design, pieces, joined),
        bought=boards_of(design, joined),
        pictures=(
            *pictures_of(design, joined.drawings, pieces),
            *cover_drawings(design, joined.drawings),
            *trade_pictures(design, pieces, joined),
            *act_scenes(design, pieces, joined),
            *act_standing(design, pieces, joined),
            *glue_signs(design, joined.drawings),
            *how_pictures(design, pieces),
            *(picture_promise(drawing.name, drawing) for drawing in drawn),
        ),
        drawings=(*joined.drawings, *drawn),
        sizes=tuple(sizes for _, sizes in measured),
    )


def sentences_on(
    design: Design, pieces: Sequence[Part], joined: Joined, first: LengthUnit = "mm"
) -> tuple[SentencePromise, ...]:
    """Return the texts of the spec, those of the cover, and what steps say of joints and of ways up, lengths in the ``first`` unit
    first."""
    return (
        *sentences_of(design, joined.facts, first),
        *joint_words(joined, {piece.id: piece.letter for piece in pieces}, first),
        *ways_up(InPieces(design, tuple(pieces), joined), joined.sides),
        *cover_sentences(design, joined, first),
        *pile_sentences(design, joined, first),
        *handling_sentences(joined),
    )


def sides_of(
    design: Design, pieces: Iterable[Part], placed: Iterable[tuple[str, tuple[Placed, ...]]]
) -> tuple[SidePromise, ...]:
    """Return for each piece what its print says of its sides, as drawn and as the mirror image."""
    placed, pieces = tuple(placed), tuple(pieces)
    up, alike, outer = _upwards(placed), alike_parts(design, pieces), look_outwards(pieces, placed)
    panels_used = {place.part for plan in design.panels for place in plan.places}
    braces = {plan.brace.part for plan in design.stacks if plan.brace is not None}
    found: list[SidePromise] = []
    for piece in pieces:
        both = design.use == "trace" and piece.mirrored > 0  # one template serves both ways
        knee = piece.id in braces  # it stands on edge between step and core: turned over it is its own mirror image
        plain = both or knee or not is_handed(piece)
        top = piece.shape != PLATE and stands(min(up.get(piece.whole or piece.id, [0.0])))
        for mirrored in (False, True):
            either, out = piece.id in alike, piece.id in outer
            named = not either and (
                piece.id in panels_used or bool(piece.folded)
            )  # steps say that either face may be outside
            face = "either" if knee else _face(piece, mirrored, named)
            flip = plain or mirrored
            key = side_key(piece.id, mirrored)
            found.append(SidePromise(key, piece.id, piece.letter, mirrored, face, flip, top, either, out))
    return tuple(found)


def _upwards(placed: Iterable[tuple[str, tuple[Placed, ...]]]) -> dict[str, list[float]]:
    """Return how much each part's own up points up, in each place in which it stands: 1 upright, 0 lying, -1 upside down."""
    up: dict[str, list[float]] = {}
    for _, panels in placed:
        for panel in panels:
            # the assembly's z of a step upwards on the part: row 3, column 2 of the matrix
            up.setdefault(panel.part, []).append(panel.matrix[9])
    return up


def side_key(part: str, mirrored: bool) -> str:
    """Return the name under which the sides of a print are promised."""
    return f"side:{part}" + (":mirrored" if mirrored else "")


def _face(piece: Part, mirrored: bool, panel: bool) -> Literal["", "outside", "inside", "climbs"]:
    """Return which face of the piece the upper side is, where it has a name.

    A drawing that is its own mirror image shows either face: then the one that is slit, since that is the one worked on.
    """
    if any(mark.purpose is Purpose.CLIMB for mark in piece.marks):
        return "climbs"
    if panel:
        behind = piece.bending is not None and piece.bending.keeps == "outside" and piece.bending.slits > 0
        return "inside" if mirrored != (behind and is_own_mirror(piece)) else "outside"
    return ""


def is_handed(part: Part) -> bool:
    """Say whether the finished piece differs from its mirror image, however that is turned."""
    shape = polygon(part.outline)
    middle = np.array(shape.centroid.coords[0])
    points = shapely.get_coordinates(shape.exterior)[:-1] - middle
    reach = np.hypot(points[:, 0], points[:, 1])
    far = int(np.argmax(reach))
    goals = np.flatnonzero(np.abs(reach - reach[far]) < 0.02)
    goals = goals[:: max(1, len(goals) // 12)]
    flipped = shapely.transform(shape, lambda c: (c - middle) * (-1.0, 1.0))
    ground = shapely.transform(shape, lambda c: c - middle)
    start = np.arctan2(points[far, 1], -points[far, 0])
    for goal in goals:
        turn = np.arctan2(points[goal, 1], points[goal, 0]) - start
        c, s = np.cos(turn), np.sin(turn)
        turned = shapely.transform(flipped, lambda p, c=c, s=s: p @ np.array(((c, s), (-s, c))))
        if turned.symmetric_difference(ground).area < 1e-3 * shape.area:
            return False
    return True


@remembered_few
def sentences_of(design: Design, facts: tuple[Fact, ...], first: LengthUnit = "mm") -> tuple[SentencePromise, ...]:
    """Return the summary and the words of each step, their blanks filled with lengths in the ``first`` unit first."""
    texts = [("summary", design.summary)]
    for number, step in enumerate(design.steps, 1):
        texts += [(f"step:{number}:title", step.title), (f"step:{number}:say", step.say)]
    return tuple(_sentence(key, text, design, facts, first) for key, text in texts)


def _sentence(key: str, text: TextPlan, design: Design, facts: tuple[Fact, ...], first: LengthUnit) -> SentencePromise:
    numbers = tuple(
        NumberPromise(expression, found.value, found.kind, said)
        for expression, found, said in said_numbers(text, design, facts, first)
    )
    return SentencePromise(key, fill(text, design, facts, first)[0], numbers)


def pictures_of(design: Design, drawings: Iterable[Drawing], pieces: Iterable[Part] = ()) -> tuple[DrawingPromise, ...]:
    """Return the picture that the cover is asked to show, without letters, the photographs for a shop, and the picture of each step
    that has one: that of a part by itself with its letter on it."""
    letters = {f"part:{piece.id}": piece for piece in pieces}
    known = {drawing.name: drawing for drawing in drawings}
    asked = [(COVER_PICTURE, design.cover)]
    asked += ((shop_photo(number), plan) for number, plan in enumerate(design.photos, 1))
    asked += ((f"step:{number}:picture", step.picture) for number, step in enumerate(design.steps, 1))
    found: list[DrawingPromise] = []
    for key, plan in asked:
        if plan is None:
            continue
        name = drawing_name(plan)
        if plan.kind == "photo":
            photo = design.file(plan.target)
            if photo is not None and photo.width_px and photo.height_px:
                found.append(DrawingPromise(key, name, float(photo.width_px), float(photo.height_px), room=_room(key)))
        elif name in known:
            made = picture_promise(key, known[name], labels=key != COVER_PICTURE)
            if name in letters and key.startswith("step:"):
                made = replace(made, labels=(*made.labels, _letter_on(letters[name])))
            found.append(replace(made, room=_room(key)))
    found += (
        picture_promise(f"step:{name.partition(':')[2].replace(':', ':act:')}", drawing)
        for name, drawing in known.items()
        if name.startswith("act:")
    )
    return tuple(found)


def _letter_on(piece: Part) -> tuple[str, Point]:
    """Return the letter of a part that is shown by itself, at the place in its picture where it has most room."""
    shape = polygon(piece.outline)
    x, y = shapely.maximum_inscribed_circle(shape, 1.0).coords[0]
    return piece.letter, (x - shape.bounds[0], y - shape.bounds[1])


def _room(key: str) -> float:
    """Return how much height (mm) a page must have left, so that the picture may not be missing."""
    return LEAST_PICTURE if key == COVER_PICTURE else 0.0


def shop_photo(number: int) -> str:
    """Return the key under which a photograph of the finished piece, from 1, is promised."""
    return f"{SHOP_PHOTO}{number}"


def drawing_name(plan: PicturePlan) -> str:
    """Return the name of the drawing that a picture of the spec shows."""
    return f"{plan.kind}:{plan.target}" + (f":{plan.layer}" if plan.kind == "plan" else "")
