"""Things on things: stacks and panels set down on the table and on each other.

Comes in: plans of wholes, laid stacks, placed panels. Goes out: every thing in its place, what it touches, facts of the whole.
Never: change a thing.
"""

from publisher.joints.wholes.bearings import Bearing, bearings_of
from publisher.joints.wholes.decks import decks_between, decks_of_layers
from publisher.joints.wholes.facts import facts_of
from publisher.joints.wholes.lips import LIFT_PLAY, Lip, LipRoom, lips_of
from publisher.joints.wholes.loaded import loaded_decks
from publisher.joints.wholes.locked import locked_by
from publisher.joints.wholes.piles import PiledThings, facts_of_roots, piles_of
from publisher.joints.wholes.put import PlacedThing, PlacedWhole, put_things
from publisher.joints.wholes.thicker import whole_of_thicker_board
from publisher.joints.wholes.things import panels_of_stack
