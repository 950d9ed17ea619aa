"""What was read held against what was promised: ink, lengths, outlines, marks, tiles, pixels.

Comes in: a file as read, and its promises. Goes out: measurements that the checks judge.
Never: decide what is an error.
"""

from publisher.proof.measuring.carried import (
    CARRIED_TOLERANCE,
    CLOSED_UP,
    carried_lines,
    carried_points,
    lines_in,
    met_by,
    only,
    strokes_in,
)
from publisher.proof.measuring.case import ELSEWHERE, MOST_PIXELS, Case
from publisher.proof.measuring.circumstances import SCALE, USES, holds
from publisher.proof.measuring.drawn_marks import MARK_TOLERANCE
from publisher.proof.measuring.drawn_things import DRAWN_TOLERANCE, first_other
from publisher.proof.measuring.figures_said import IN_MM, figures_in
from publisher.proof.measuring.ink import PALEST_LINE, Ink
from publisher.proof.measuring.inside_ground import OWN_LINE
from publisher.proof.measuring.known_figures import CARDS, known_figures, pieces_on, written_numbers
from publisher.proof.measuring.known_words import HYPHEN, KnownWords, known_by, whole_words, written_by_others
from publisher.proof.measuring.lengths import LENGTH_TOLERANCE, LengthReading
from publisher.proof.measuring.letters import LettersSeen
from publisher.proof.measuring.looked import looked_at
from publisher.proof.measuring.marks import circles, crossed
from publisher.proof.measuring.outlines import (
    OUTLINE_TOLERANCE,
    STROKE_REACH,
    OutlineReading,
    StrokeSegments,
    shown_ground,
)
from publisher.proof.measuring.page_dots import page_dots
from publisher.proof.measuring.page_sight import BESIDE_INK, SEEN_STRETCH, STRAY_DOT, PageSight, Unseen
from publisher.proof.measuring.piece_lines import LEAST_TRIED
from publisher.proof.measuring.pixels import PAGE_DPI, pages_seen, squares_of
from publisher.proof.measuring.stray_ink import ARROW, GROUND_FROM, HEAD_AT, INSIDE_FROM, TOP, TOP_NEAR
from publisher.proof.measuring.strip_ink import StripInk, quartered
from publisher.proof.measuring.tiles import SHIFTED, TAPED_TOLERANCE
from publisher.proof.measuring.unpromised_ink import AREA, SAME_WIDTH
from publisher.proof.measuring.witness import SOLID, WITNESS_GAP, RingSight
