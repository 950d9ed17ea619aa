"""Assemblies that say more than one field tells: each with words and a spec that a test works out, for docs/spec.md."""

LEAN_TO = """\
sizes: {board: 5 mm, run: 70 mm, low: 45 mm, rise: 50 mm, width: 110 mm, eaves: 8 mm}
parts:
  front: {name: Front, board: foam, shape: wall_panel, with: {width: width, height: low}}
  back: {name: Back, like: front, with: {height: low + rise}}
  near: {name: Right side, board: foam, shape: ramp_side, with: {run: run, rise: rise, toe: low}}
  far: {name: Left side, like: near, combine: [{mirror: left_right}]}
  roof: {name: Roof, board: foam, shape: rectangle, with: {width: width + 10 mm, height: sqrt(run^2 + rise^2) + eaves}}
assembly:
  shed:
    panels: {front: front, back: back, near: near, far: far, roof: roof}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, near.left], joint: butt, runs_through: front}
      - {edges: [near.right, back.left], joint: butt, runs_through: back}
      - {edges: [back.right, far.right], joint: butt, runs_through: back}
      - {edges: [far.left, front.left], joint: butt, runs_through: front}
      - {place: roof, rests_on: [near.slope, far.slope, front.top, back.top], cut_to_slope: [front.top, back.top]}
"""

RUIN = """\
sizes: {board: 5 mm, width: 120 mm, depth: 90 mm, height: 70 mm}
parts:
  back: {name: Back wall, board: foam, shape: wall_panel, with: {width: width, height: height}}
  side: {name: Side wall, like: back, with: {width: depth}}
  low: {name: Low wall, like: side, with: {height: 25 mm}}
  ruin: {name: Ruined wall, like: back, shape: ruin, with: {least_height: 25 mm, seed: 4}}
assembly:
  court:
    panels: {front: ruin, right: side, back: back, left: low}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, right.left], joint: butt, runs_through: front, flush: bottom}
      - {edges: [right.right, back.left], joint: butt, runs_through: back}
      - {edges: [back.right, left.left], joint: butt, runs_through: back, flush: bottom}
      - {edges: [left.right, front.left], joint: butt, runs_through: front, flush: bottom}
"""

TOWER = """\
sizes: {board: 5 mm}
parts:
  long: {name: Long wall, board: foam, shape: wall_panel, with: {width: 100 mm, height: 60 mm}}
  middle: {name: Middle wall, like: long, with: {width: 80 mm}}
  short: {name: Short wall, like: long, with: {width: 60 mm}}
assembly:
  watch:
    panels: {a: long, b: middle, c: short}
    stands_on: a.bottom
    joins:
      - {edges: [a.right, b.left], joint: mitre}
      - {edges: [b.right, c.left], joint: mitre}
      - {edges: [c.right, a.left], joint: mitre}
"""

STALL = """\
sizes: {board: 5 mm, width: 120 mm, depth: 90 mm, height: 60 mm, reach: 4 mm}
parts:
  plate: {name: Plate, board: foam, shape: rectangle, with: {width: width, height: depth + 30 mm}}
  back: {name: Back, board: foam, shape: wall_panel, with: {width: width, height: height}}
  left: {name: Left side, like: back, with: {width: depth}}
  right: {name: Right side, like: left}
  roof: {name: Roof, board: foam, shape: rectangle, with: {width: width, height: depth + reach}}
assembly:
  stall:
    panels: {plate: plate, back: back, left: left, right: right, roof: roof}
    lies_on_table: plate
    joins:
      - {place: back, stands_on: plate, edge: bottom, at: [width / 2, depth + 30 mm - board / 2], turn: 180 deg}
      - {edges: [back.right, left.left], joint: butt, runs_through: back}
      - {edges: [right.right, back.left], joint: butt, runs_through: back}
      - {place: roof, rests_on: [back.top, left.top, right.top], at: [0 mm, reach / 2]}
"""

ASSEMBLED = (
    (
        "A lean-to with a closed back",
        "The roof rests on the slopes of both sides and on the level tops of front and back, which are cut to its slope: each wall "
        "is as high as it says on its outside, and no height is worked out by hand. Without `cut_to_slope` the square top of the back "
        "stands in the roof, and a finding says so. On two level tops alone, without sloping sides, a roof rests too: on their rims.",
        LEAN_TO,
    ),
    (
        "A ruin and a low wall in a ring",
        "Edges of unequal length meet over the shorter one where they say at which end they begin together. A part that is `like` "
        "another says only what differs: of another shape the sizes that both have are taken over.",
        RUIN,
    ),
    (
        "Three walls whose corners follow",
        "Three lengths fix a triangle, so no corner is written; of a longer ring all but three are written, or `corners: equal`.",
        TOWER,
    ),
    (
        "A stall on a plate, open in front",
        "The plate lies on the table, and what is put on its face stands there. The roof covers the outsides of the three walls that it "
        "rests on; `at` moves it, here so that all that it is deeper than they are reaches out in front.",
        STALL,
    ),
)


def assembled() -> list[str]:
    """Return the sections of docs/spec.md."""
    made = ["## Assemblies as a whole\n"]
    made += [f"**{title}.** {words}\n\n```yaml\n{text}```\n" for title, words, text in ASSEMBLED]
    return made
