"""The order of building: what each step adds to what stands, the way by which it goes in, and what stands in that way.

Comes in: a design put together, with what its steps add. Goes out: what is added one after another.
Never: moves a part from its place, knows a page.
"""

from publisher.joints.building.additions import built_by_steps
