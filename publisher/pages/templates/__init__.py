"""Templates: parts at true size with their labels, packed on pages.

Comes in: parts. Goes out: drafts of template pages, with the promises about outlines, marks and words.
Never: cut a part into tiles.
"""

from publisher.pages.templates.bevel_guides import BevelGuide
from publisher.pages.templates.compass import CompassStrip, strip_chunk, strip_of
from publisher.pages.templates.dimension_lines import DimensionLine, dimension_lines, said_off_part
from publisher.pages.templates.label_room import LabelRoom
from publisher.pages.templates.label_words import Says, says, shortened
from publisher.pages.templates.labels import blocks, details, identities, letters, small_blocks
from publisher.pages.templates.layout_points import LAYOUT_POINTS
from publisher.pages.templates.nests import Nest, nests_of, says_enough
from publisher.pages.templates.page_filling import Load
from publisher.pages.templates.page_words import Lying, Shown, free_paper, near, with_words
from publisher.pages.templates.part_notes import mark_notes, quiet_boxes
from publisher.pages.templates.part_strokes import (
    mark_promises,
    mark_strokes,
    outline_promise,
    outline_strokes,
    quiet_lines,
    template_marks,
    waste_strokes,
)
from publisher.pages.templates.spots import Spot, sides_carried, spot_drawn, spot_promises
from publisher.pages.templates.template_forms import PART_AWAY, PART_GAP, Chunk, cover, roomy, sides
from publisher.pages.templates.template_frames import frames, free_area, page_frame
from publisher.pages.templates.template_labels import Sample, first_spot, patterned, sample_count, samples
from publisher.pages.templates.template_pages import (
    TOO_MANY_COPIES,
    most_used_first,
    pages_title,
    refusal,
    strips_of,
    template_drafts,
    templates_body,
)
from publisher.pages.templates.template_plan import TILE_KEY, Planner, planner_of
from publisher.pages.templates.top_marks import TOP, with_top_marks
