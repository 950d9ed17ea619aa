"""The catalogue of checks, by subject. ``ALONE`` needs nothing but the file; ``PROMISED`` holds it against its promises.

Comes in: a file on trial. Goes out: checks, each with its test, in the order in which they are run.
Never: read the file; take a reading that another check takes too.
"""

from publisher.basics import Check
from publisher.proof.checks.catalogue import attached, bookmarks, language, title
from publisher.proof.checks.cut_list import cut_list
from publisher.proof.checks.drawings import step_pictures
from publisher.proof.checks.furniture import furniture_apart
from publisher.proof.checks.inside_parts import dark_areas, other_lines, words_inside
from publisher.proof.checks.labels import length_labels, measures_clear
from publisher.proof.checks.layouts import layout_pictures
from publisher.proof.checks.lengths import calibration, calibration_by_pixels, other_lengths, readers_agree, rulers
from publisher.proof.checks.margins import corner_marks, ink_by_lines, ink_by_pixels
from publisher.proof.checks.marks import marked_lines
from publisher.proof.checks.only_pages import actions, layers_off, links, notes
from publisher.proof.checks.opening import encrypted, followed, readable, two_minds
from publisher.proof.checks.outlines import outline_width, outlines_by_pixels, outlines_promised, outlines_twice
from publisher.proof.checks.page_code import code_drawn
from publisher.proof.checks.pages import (
    page_boxes,
    page_count,
    page_labels,
    page_numbers,
    page_rotated,
    page_size,
    user_unit,
)
from publisher.proof.checks.print_plan import print_plan
from publisher.proof.checks.print_wishes import duplex, other_wishes, paper_tray, print_scaling
from publisher.proof.checks.printers import line_pale, line_width, operators, picture_dots
from publisher.proof.checks.sentences import sentences
from publisher.proof.checks.sides import sides_up
from publisher.proof.checks.text import fonts_embedded, letters, text_hidden, text_size, words_promised
from publisher.proof.checks.tiles import match_marks, tiles_together
from publisher.proof.measuring import Case

OPENING: tuple[Check[Case], ...] = (readable, encrypted)

ALONE: tuple[Check[Case], ...] = (
    two_minds,
    page_boxes,
    page_rotated,
    user_unit,
    print_scaling,
    other_wishes,
    duplex,
    paper_tray,
    title,
    language,
    fonts_embedded,
    letters,
    text_hidden,
    text_size,
    line_width,
    line_pale,
    picture_dots,
    operators,
    layers_off,
    actions,
    links,
    notes,
    followed,
)

PROMISED: tuple[Check[Case], ...] = (
    page_count,
    page_size,
    ink_by_lines,
    ink_by_pixels,
    corner_marks,
    calibration,
    rulers,
    other_lengths,
    length_labels,
    measures_clear,
    calibration_by_pixels,
    readers_agree,
    outlines_promised,
    outlines_twice,
    outline_width,
    outlines_by_pixels,
    other_lines,
    dark_areas,
    marked_lines,
    match_marks,
    tiles_together,
    words_promised,
    cut_list,
    layout_pictures,
    sides_up,
    sentences,
    step_pictures,
    print_plan,
    words_inside,
    page_numbers,
    code_drawn,
    furniture_apart,
    page_labels,
    bookmarks,
    attached,
)

RULES: tuple[Check[Case], ...] = OPENING + ALONE + PROMISED

__all__ = ["ALONE", "OPENING", "PROMISED", "RULES"]
