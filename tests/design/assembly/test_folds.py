"""Fold joins gathered into pieces, and joins that one piece of board cannot have."""

from collections.abc import Callable
from typing import Any

import pytest

FACES = "boards: {foam: {thickness: board, faces: paper_one, paper: 0.3 mm, sheets: [20 x 30 in]}}\n"
PARTS = """\
parts:
  wall: {name: Wall, board: foam, shape: wall_panel, with: {width: length, height: 80 mm}MORE}
  side: {name: Side, board: foam, shape: wall_panel, with: {width: 50 mm, height: 80 mm}}
  slab: {name: Slab, board: foam, shape: disc, with: {radius: length / 2}}
"""
RING = (
    ("front.right", "right.left"),
    ("right.right", "back.left"),
    ("back.right", "left.left"),
    ("left.right", "front.left"),
)
PLACES = "front: wall, right: side, back: wall, left: side"


def join(pair: tuple[str, str], joint: str = "fold") -> str:
    return f"{{edges: [{pair[0]}, {pair[1]}], joint: {joint}}}"


def box(*joins: str, places: str = PLACES, boards: str = FACES, more: str = "") -> str:
    rows = "".join(f"      - {join}\n" for join in joins)
    return (
        f"{boards}{PARTS.replace('MORE', more)}"
        "assembly:\n  pile: {stack: [{part: slab}]}\n"
        f"  hut:\n    panels: {{{places}}}\n    stands_on: front.bottom\n    joins:\n{rows}"
    )


WRAPPER = (*(join(pair) for pair in RING[:3]), join(RING[3], "mitre"))


def test_a_chain_of_folds_is_one_piece(tried: Callable[..., Any]) -> None:
    got = tried(box(*WRAPPER))
    assert got.found == []
    (fold,) = got.design.folds
    assert [(p.part, p.edge, p.on, p.on_edge) for p in fold.panels] == [
        ("wall", "", -1, ""),
        ("side", "left", 0, "right"),
        ("wall", "left", 1, "right"),
        ("side", "left", 2, "right"),
    ]
    assert (fold.id, fold.count, fold.spare, fold.parts) == ("wall_folded", 1, 0, ("wall", "side"))
    assert {p.corner for p in fold.panels[1:]} == {90.0}


def test_a_fold_has_the_bevels_of_a_mitre(tried: Callable[..., Any]) -> None:
    corner = "{edges: [front.right, right.left], joint: fold, corner: 120 deg}"
    parts = {p.id: p for p in tried(box(corner, places="front: wall, right: side")).design.parts}
    assert [(t.edge, t.bevel, t.take_off) for t in parts["wall"].treatments] == [("right", 30.0, 0.0)]
    assert [(t.edge, t.bevel, t.take_off) for t in parts["side"].treatments] == [("left", 30.0, 0.0)]


@pytest.mark.parametrize("places", [PLACES, "left: side, back: wall, right: side, front: wall"])
def test_alike_pieces_are_counted_whatever_the_order_of_places(places: str, tried: Callable[..., Any]) -> None:
    got = tried(box(join(RING[0]), join(RING[1], "mitre"), join(RING[2]), join(RING[3], "mitre"), places=places))
    assert got.found == []
    (fold,) = got.design.folds
    assert (fold.count, [p.part for p in fold.panels]) == (2, ["wall", "side"])


def test_spares_of_a_part_are_spares_of_its_piece(tried: Callable[..., Any]) -> None:
    # the strip has each wall twice: three spare walls need two spare strips
    assert tried(box(*WRAPPER, more=", spare: 3")).design.folds[0].spare == 2


def test_no_joint_folds_without_folds(tried: Callable[..., Any]) -> None:
    assert tried(box(*(join(pair, "mitre") for pair in RING))).design.folds == ()


def test_a_ring_keeps_one_edge_for_another_joint(tried: Callable[..., Any]) -> None:
    got = tried(box(*WRAPPER[:3], "⟦" + join(RING[3])))
    (finding,) = got.design.findings
    assert finding.check == "design/fold"
    assert "closes a ring" in finding.message and "leave one edge of the ring" in finding.hint
    assert (finding.place.line, finding.place.column) == (got.line, got.column)
    assert got.design.folds == ()


@pytest.mark.parametrize(
    ("joins", "more", "says"),
    [
        (
            (*WRAPPER[:2], join(RING[2], "mitre"), WRAPPER[3]),
            "",
            "the part side is needed 2 times, and folded to others 1 times",
        ),
        (
            (join(RING[0]), join(RING[1], "mitre"), join(("back.top", "left.left")), WRAPPER[3]),
            "",
            "folded in two different ways",
        ),
        (WRAPPER, ", mirrored: 1", "wall is folded and cut as mirror images too"),
        (WRAPPER, ", split: {at: 40 mm}", "wall is folded and split in pieces"),
        (WRAPPER, ", trace_allowance: 0.4 mm", "two trace allowances"),
    ],
)
def test_what_one_piece_cannot_be_is_told(
    joins: tuple[str, ...], more: str, says: str, tried: Callable[..., Any]
) -> None:
    got = tried(box(*joins, more=more))
    assert any(f.check == "design/fold" and says in f.message for f in got.design.findings), got.design.findings
    assert all(f.place is not None and f.hint for f in got.design.findings)
    assert got.design.folds == ()


def test_both_panels_are_of_one_board(tried: Callable[..., Any]) -> None:
    boards = FACES.replace("}}\n", "}, card: {thickness: board, faces: paper_both, sheets: [20 x 30 in]}}\n")
    text = box(*WRAPPER, boards=boards).replace("side: {name: Side, board: foam", "side: {name: Side, board: card")
    found = tried(text).design.findings
    assert {f.check for f in found} == {"design/fold"}
    assert "one piece of board" in found[0].message


def test_a_flat_fold_bends_nothing(tried: Callable[..., Any]) -> None:
    flat = "{edges: [front.right, right.left], joint: fold, corner: 180 deg}"
    (finding,) = tried(box(flat, places="front: wall, right: side")).design.findings
    assert (finding.check, "bends nothing" in finding.message) == ("design/fold", True)


@pytest.mark.parametrize(
    ("faces", "found"), [("bare", ["design/fold-without-skin"]), ("paper_one", []), ("paper_both", [])]
)
def test_bare_foam_is_warned_of(faces: str, found: list[str], tried: Callable[..., Any]) -> None:
    boards = FACES.replace("paper_one, paper: 0.3 mm", faces)
    got = tried(box(join(RING[0]), places="front: wall, right: side", boards=boards))
    assert got.found == found
    assert len(got.design.folds) == 1
    assert all("bare foam breaks" in f.hint for f in got.design.findings)


def test_a_fold_says_its_corner_and_nothing_else(tried: Callable[..., Any]) -> None:
    got = tried(box("{edges: [front.right, right.left], joint: fold, inset: 3 mm}", places="front: wall, right: side"))
    assert "inset means nothing in a fold join" in got.design.findings[0].message
