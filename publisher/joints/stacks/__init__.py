"""Stacks: layers of board, each turned or shifted against the one below.

Comes in: stack plans and parts. Goes out: layers, their facts, treads, balance, courses, braces.
Never: know a panel.
"""

from publisher.joints.stacks.batches import GLUE_LINE
from publisher.joints.stacks.bonds import HALF_BOND, QUARTER_BOND, half_offset, nearest_bond, nearest_offset
from publisher.joints.stacks.bracing import Root, judged, propped, roots_of, strength_factor, weakest
from publisher.joints.stacks.courses import Stagger, tick_ends
from publisher.joints.stacks.facts import StackReport, grounds_of
from publisher.joints.stacks.knee_marks import KNEE_SEAT, knee_marks
from publisher.joints.stacks.knees import Knee
from publisher.joints.stacks.layer_seats import LAYER_SEAT, layer_seats
from publisher.joints.stacks.layer_turns import LAYER_TURN, layer_turns, turn_marks
from publisher.joints.stacks.layers import LaidStack, find, lay_all
from publisher.joints.stacks.necks import necks_of
from publisher.joints.stacks.plan_geometry import PlanGeometry
from publisher.joints.stacks.seats import seats_of
