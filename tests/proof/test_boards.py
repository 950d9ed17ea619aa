"""What a cover says of sheets and boards, and a list of card: what was worked out, in whatever unit comes first."""

from dataclasses import replace
from math import inf

import pytest

from publisher.basics import BoardPromise, OutlinePromise, Pose, PrintPromise, Promises, RowPromise, SheetsPromise
from publisher.pages.front import gauge
from publisher.proof.checks.boards import _are, _board_wrong, _card_wrong, _close, _cover_wrong, _takes_wrong
from tests.proof.refused import refused_by

RING = ((0.0, 0.0), (9.0, 0.0), (9.0, 9.0))
WAY = SheetsPromise("buy:foam:A3", "foam", "A3", 297.0, 420.0, 2, (), None)
BOARD = BoardPromise("foam", "foam", "bare", "", 5.0, 4.7, 5.3)
PROMISES = replace(
    Promises(
        "", "", (), (), tuple(OutlinePromise(n, "wall", "A", 1, Pose(0.0, 0.0), (RING,)) for n in (4, 5)), (), (), ()
    ),
    sheets=(WAY,),
    boards=(BOARD,),
    prints=(PrintPromise("wall", "A", "foam", 5.0, (RING,), traced=True),),
    rows=(RowPromise("wall", "A", "Wall", "foam", 24, 0, 0, 9.0, 9.0, 24),),
)
COVER = "Board 2 sheets of A3; takes board from 0.186 to 0.208 in (4.7 to 5.3 mm)"
CARD = "Thin card for the templates, 0.3 to 0.5 mm thick: 2 sheets of A4 size"
CARD += ", and 6 more for two layers and a spare of what is traced often: A (24 times)."


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("2 sheets", "3 sheets"),
        ("2 sheets", "12 sheets"),
        ("of A3", "of A2"),
        ("4.7 to 5.3 mm", "4.7 to 5.5 mm"),
        ("takes", "likes"),
    ],
)
def test_a_cover_that_asks_for_other_boards_is_found(old: str, new: str) -> None:
    assert list(_cover_wrong(PROMISES, _close(COVER))) == []
    assert list(_cover_wrong(PROMISES, _close(COVER.replace(old, new))))


@pytest.mark.parametrize(
    ("old", "new"),
    [("2 sheets", "3 sheets"), ("6 more", "4 more"), ("A (24", "B (24"), ("24 times", "12 times"), (CARD[75:-1], "")],
)
def test_a_list_that_asks_for_other_card_is_found(old: str, new: str) -> None:
    assert _card_wrong(PROMISES, _close(CARD)) == ""
    assert _card_wrong(PROMISES, _close(CARD.replace(old, new)))


def test_what_is_traced_seldom_takes_a_sheet_for_each_page_and_no_more() -> None:
    seldom = replace(PROMISES, rows=(replace(PROMISES.rows[0], traced_often=0),))
    assert _card_wrong(seldom, _close(CARD[: CARD.index(", and 6")] + ".")) == ""
    assert _card_wrong(seldom, _close(CARD))
    assert _card_wrong(replace(PROMISES, prints=()), "") == ""  # what is pasted on board takes no card


def test_parts_on_one_page_take_its_prints_once() -> None:
    beside = OutlinePromise(4, "lid", "B", 1, Pose(0.0, 0.0), (RING,))
    rows = (*PROMISES.rows, replace(PROMISES.rows[0], part="lid", letter="B"))
    both = replace(PROMISES, outlines=(*PROMISES.outlines, beside), rows=rows)
    said = CARD.replace("A (24 times)", "A (24 times), B (24 times)")
    assert _card_wrong(both, _close(said)) == ""
    assert _card_wrong(both, _close(said.replace("6 more", "9 more")))


@pytest.mark.parametrize(
    ("least", "most", "said"),
    [
        (4.7, 5.3, "takes board from 4.7 to 5.3 mm (0.186 to 0.208 in)"),
        (0.0, 5.3, "takes board up to 0.208 in (5.3 mm)"),
        (4.75, inf, "takes board of 4.75 mm (0.188 in) or more"),
        (0.0, inf, "any"),
    ],
)
def test_ends_that_are_open_are_said_so(least: float, most: float, said: str) -> None:
    board = replace(BOARD, least=least, most=most)
    assert _takes_wrong(board, _close(said), "") == ""
    for other in (replace(board, least=4.5), replace(board, most=5.9 if most == inf else inf)):
        assert _takes_wrong(other, _close(said), "")


def test_millimetres_are_read_to_their_last_digit() -> None:
    assert _are("4.7to5.3mm(0.186to0.208in)", (4.7, 5.3))
    assert not _are("4.7to5.3mm(0.186to0.208in)", (4.8, 5.3))
    assert not _are("5.3mm(0.208in)", (4.7, 5.3))


PLY = BoardPromise("ply", "white", "paper_both", "3 mm", 3.0, 0.0, inf)
SEVERAL = replace(PROMISES, boards=(BOARD, PLY))
LIST = (
    "Bare foam board, no paper on its faces (extruded foam), measured 5.00 mm (0.197 in) thick. Takes board from 4.7 to 5.3 mm "
    "(0.186 to 0.208 in). White board with paper on both faces, sold as 3 mm, measured 3.00 mm (0.118 in) thick."
)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("measured 5.00 mm (0.197 in)", "measured 3.00 mm (0.118 in)"),  # of the other board
        ("sold as 3 mm, ", ""),
        ("White board with paper on both faces", "White board with paper on one face"),
        (" Takes board from 4.7 to 5.3 mm (0.186 to 0.208 in).", ""),
    ],
)
def test_each_of_several_boards_is_said_by_itself(old: str, new: str) -> None:
    def faults(said: str) -> list[str]:
        pairs = ((BOARD, PLY), (PLY, BOARD))
        return [fault for board, other in pairs if (fault := _board_wrong(board, _close(said), [other]))]

    assert faults(LIST) == []
    assert len(faults(LIST.replace(old, new))) == 1


def test_a_cover_says_which_sheets_are_which_board() -> None:
    said = "Board foam: 2 sheets of A3; board white: 1 sheet of A3"
    ways = (WAY, replace(WAY, key="buy:ply:A3", board="ply", sheets=1))
    promises = replace(SEVERAL, language="en", sheets=ways)
    assert list(_cover_wrong(promises, _close(said))) == []
    for old, new in (("board white", "board foam"), ("1 sheet", "3 sheets")):
        assert list(_cover_wrong(promises, _close(said.replace(old, new))))


def test_a_gauge_without_a_place_for_the_board_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(gauge, "RANGE", -2.0)
    assert "proof/board-said" in refused_by("quay")
