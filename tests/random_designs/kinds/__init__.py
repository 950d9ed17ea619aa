"""The kinds of designs. Each module draws plans, makes designs of them, breaks them in one place and makes them smaller.

``draw(dice)`` returns a plan (a frozen dataclass of sizes), ``design(plan)`` its spec and its solids, ``faults(plan, dice)`` plans with
one change that makes them untrue, by the name of the change, and ``smaller(plan)`` simpler plans of the same kind.
"""

from tests.random_designs.kinds import (
    boxes,
    braces,
    crates,
    drawings,
    houses,
    lean_tos,
    piers,
    posts,
    rings,
    screens,
    slopes,
    spires,
    stacks,
    stalls,
    tiles,
)

KINDS = {
    "ring": rings,
    "box": boxes,
    "house": houses,
    "spire": spires,
    "stack": stacks,
    "drawing": drawings,
    "tile": tiles,
    "crate": crates,
    "slopes": slopes,
    "piers": piers,
    "lean-to": lean_tos,
    "braces": braces,
    "posts": posts,
    "stall": stalls,
    "screen": screens,
}
