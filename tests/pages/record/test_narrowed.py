"""What a file with one part on it promises."""

from collections.abc import Callable
from dataclasses import replace

from publisher.pages.record import pictured_alone, shown_alone, told_alone
from publisher.pages.sheet.draft import Context
from tests.pages.test_compose import packed


def test_only_what_is_shown_is_promised_and_of_that_one_copy(demo: Callable[..., Context]) -> None:
    whole = packed(demo("toll-house")).promises
    assert whole.rows and whole.sheets and whole.layouts and whole.sentences and whole.drawings
    alone = shown_alone(whole)
    shown = {outline.part for outline in whole.outlines}
    assert {row.part for row in alone.rows} == shown == {piece.part for piece in alone.prints}
    assert all((row.count, row.spare, row.mirrored) == (1, 0, 0) for row in alone.rows)
    assert not any(side.mirrored for side in alone.sides)
    assert (alone.sheets, alone.layouts, alone.work, alone.sentences, alone.drawings) == ((), (), None, (), ())
    assert alone.outlines == whole.outlines and alone.texts == whole.texts


def test_a_phone_copy_promises_the_steps_and_nothing_of_the_board(demo: Callable[..., Context]) -> None:
    whole = packed(demo("toll-house")).promises
    told = told_alone(whole)
    kinds = {one.key.split(":")[0] for one in (*told.sentences, *told.drawings)}
    assert kinds == {"step", "summary", "joint", "ways"}
    assert (told.sheets, told.layouts, told.work, told.sides, told.purpose) == ((), (), None, (), "phone")


def test_pictures_promise_what_they_carry(demo: Callable[..., Context]) -> None:
    whole = packed(demo("toll-house")).promises
    kept = tuple(one for one in whole.carried if one.key.startswith("cover:whole:"))
    alone = pictured_alone(replace(whole, carried=kept))
    assert {one.key for one in alone.drawings} == {one.key for one in kept} != set()
    assert (alone.sentences, alone.sheets, alone.sides, alone.purpose) == ((), (), (), "shop")
