"""Panels: placed in space by their joins, and checked against them.

Comes in: panel plans and parts. Goes out: placed panels, their solids, matings, facts.
Never: know a stack.
"""

from publisher.joints.panels.bent import FACET, bent_end, is_facet
from publisher.joints.panels.carriers import Beam, Carrier, carriers_of
from publisher.joints.panels.decks import (
    UNDER,
    Deck,
    deck_on,
    decks_of,
    facts_of_decks,
    region_of,
    section_over,
    section_under,
    supports_of,
)
from publisher.joints.panels.edges import backed_area, slots_of_join
from publisher.joints.panels.exchanged import exchanged_edges
from publisher.joints.panels.facts import inside_walls, standing_facts
from publisher.joints.panels.interference import Clash, clashes_among, clashes_of, section_of
from publisher.joints.panels.linings import LiningFound
from publisher.joints.panels.matings import ANGLE, RING_GAP, Mating, matings_of, meets
from publisher.joints.panels.necks import UPRIGHT, CarriedOver, PostNeck, necks_under
from publisher.joints.panels.place import Panel, PanelAssembly, boards_of, flat_boards, place_panels, plates_on
from publisher.joints.panels.posts import PostFound
from publisher.joints.panels.restings import Resting, restings_of
from publisher.joints.panels.seatings import linings_of, outside_lines, posts_of, seat_marks, seatings_of
from publisher.joints.panels.seats import Seating, opening_of
from publisher.joints.panels.solids import ON_TABLE, board_mass, corners_of, face_pair, foot_of, weight_of
from publisher.joints.panels.space import PanelFrame, crossed, planes_of, stands
from publisher.joints.panels.standing import PanelBalance, balance_of, bears_figures
from publisher.joints.panels.thicker import of_thicker_board, thicker_board
from publisher.joints.panels.touching import BARE, PANEL_TOUCH, BoardFace, corners_of_edge, face_behind, touch_of
