"""The catalogue of checks, by subject. ``ALONE`` needs nothing but the file; ``PROMISED`` holds it against its promises.

Comes in: a file on trial. Goes out: checks, each with its test, in the order in which they are run.
Never: read the file; take a reading that another check takes too.
"""

from publisher.basics import Check
from publisher.proof.checks import (
    arrows,
    boards,
    buying,
    catalogue,
    compass,
    copies_said,
    cut_list,
    done,
    dots,
    drawings,
    drawn,
    fiducials,
    furniture,
    glue_grounds,
    halves,
    inside_parts,
    labels,
    layout_cuts,
    layout_measures,
    layouts,
    legends,
    lengths,
    letters,
    links,
    margins,
    mark_names,
    marks,
    needed,
    only_pages,
    opening,
    outlines,
    own_numbers,
    own_words,
    page_code,
    pages,
    papers,
    part_notes,
    picture_numbers,
    pieces,
    print_plan,
    print_wishes,
    printers,
    references,
    sayings,
    sayings_of_others,
    scales,
    seam_words,
    sentences,
    sides,
    sizes,
    sketch_places,
    sketch_words,
    stray_ink,
    tags,
    text,
    tick_boxes,
    tiles,
    tools,
    waste,
    words_clear,
)
from publisher.proof.measuring import Case

OPENING: tuple[Check[Case], ...] = (opening.readable, opening.encrypted)

ALONE: tuple[Check[Case], ...] = (
    opening.two_minds, pages.page_boxes, pages.page_rotated, pages.user_unit, print_wishes.print_scaling,
    print_wishes.other_wishes, print_wishes.duplex, print_wishes.paper_tray, catalogue.title, catalogue.language,
    text.fonts_embedded, text.letters, text.text_hidden, text.text_size, printers.line_width, printers.line_pale,
    printers.picture_dots, printers.operators, only_pages.layers_off, only_pages.actions, only_pages.links,
    only_pages.notes, opening.followed,
)  # fmt: skip

PROMISED: tuple[Check[Case], ...] = (
    pages.page_count, pages.page_size, papers.paper_asked_for, margins.ink_by_lines, margins.ink_by_pixels, margins.corner_marks,
    lengths.calibration, scales.scales, lengths.rulers, lengths.other_lengths, labels.length_labels, labels.measures_clear,
    lengths.calibration_by_pixels, lengths.readers_agree, dots.ink_unseen, dots.ink_stray,
    outlines.outlines_promised, outlines.outlines_twice, outlines.outline_width,
    outlines.outlines_by_pixels, inside_parts.other_lines, inside_parts.dark_areas, stray_ink.stray_ink,
    marks.marked_lines, marks.lines_left_out, legends.legend_lines, waste.waste_marked, arrows.arrows_point,
    tiles.match_marks, tiles.tiles_together, seam_words.seam_words, glue_grounds.glue_grounds, mark_names.mark_names,
    compass.compass_strips, compass.strip_ink, letters.letter_shape,
    text.words_promised, words_clear.words_clear, cut_list.cut_list, buying.what_to_buy, boards.boards_said, layouts.layout_pictures,
    layout_measures.layout_measures, layout_cuts.layout_cuts,
    sides.sides_up, sizes.sizes_said, sentences.sentences, drawings.step_pictures, done.done_shown, tools.tools_at_work,
    picture_numbers.picture_numbers, sketch_words.sketch_words, sketch_words.sketch_letters, sketch_places.sketch_places,
    needed.parts_needed, needed.cautions_named, print_plan.print_plan,
    print_plan.print_list, print_plan.key_plan,
    inside_parts.words_inside, pages.page_numbers, page_code.code_drawn, furniture.furniture_apart,
    furniture.space_clear, fiducials.fiducial_marks,
    links.links_lead, tags.structure, tags.untagged,
    pages.page_labels, drawn.all_drawn, own_numbers.own_numbers, own_words.own_words,
    copies_said.copies_said,
    references.page_references,
    references.step_numbers, sayings.sayings_stand, sayings_of_others.sayings_of_others,
    halves.half_templates, pieces.pieces_shown, pieces.edge_words,
    part_notes.notes_of_parts, tick_boxes.tick_boxes,
    catalogue.bookmarks, catalogue.attached,
)  # fmt: skip

TO_PRINT: tuple[Check[Case], ...] = (
    margins.corner_marks, lengths.calibration, lengths.calibration_by_pixels, outlines.outlines_promised,
    outlines.outlines_twice, outlines.outline_width, outlines.outlines_by_pixels, inside_parts.other_lines,
    inside_parts.dark_areas,
)  # fmt: skip
"""Of ``PROMISED`` those of what is printed at true size: a file for a screen has nothing that they could look at."""

NUMBERED: tuple[Check[Case], ...] = (pages.page_numbers,)
"""Those of pages that are turned: not of pages that become pictures."""

RULES: tuple[Check[Case], ...] = OPENING + ALONE + PROMISED
