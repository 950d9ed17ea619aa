"""The order of building: what each step adds to what stands, the way by which it goes in, and what stands in that way.

Comes in: a design put together, with what its steps add. Goes out: what is added one after another, what is wrong with that, an
order that works.
Never: moves a part from its place, knows a page.
"""

from publisher.joints.building.additions import Unheld, built_by_steps
from publisher.joints.building.contacts import glued_along_seams, glued_pairs
from publisher.joints.building.movers import Mover, is_brace, movers_of
from publisher.joints.building.orders import Group, locked_in, order_of, woven_in
from publisher.joints.building.reach import BRUSH_REACH, closed_in
from publisher.joints.building.seams import (
    ends_in_steps,
    levels_in_steps,
    lines_in_steps,
    past_ends_in_steps,
    reaches_in_steps,
)
from publisher.joints.building.sites import Site, sites_of
from publisher.joints.building.turned import laid_in_steps, put_into_in_steps
from publisher.joints.building.words import called, called_from_below, items_from_below, items_of
