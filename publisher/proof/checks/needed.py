"""What a step takes in hand: its list names each part by its letter, with how many copies."""

import re
from collections import Counter
from functools import partial

import numpy as np

from publisher.basics import Box, Carried, Check, Findings, NeededPromise
from publisher.proof.checks.frame import about, carried_faults, judged, page_name, without_name, words_at
from publisher.proof.checks.sayings import close, joined, said_under, titles_for
from publisher.proof.measuring import Case, holds, lines_in, strokes_in

KNIFE = "craft_knife"
CARDS_TITLE, BOARD_TITLE, MARK_TITLE = "act:card:title", "act:board:title", "act:mark:title"
LISTED = "step list"  # the saying over what a step takes in hand
WORD = re.compile(r"[^\W\d]{2,}")
LISTED_WIDE, LISTED_LOW, LISTED_HIGH = (
    15.0,
    9.5,
    4.5,
)  # mm that a part's picture takes: left of its letter, under its line, over it
LISTED_LEAST, LISTED_SHARE = 4.0, 0.5  # mm that it is wide or high, or this share of a part that is smaller
COUPON = "act:mark:does:mark:scene:coupon_"  # begins the key of the coupon that is cut before the board is marked out


@judged(
    "proof/needed",
    "What a step takes in hand",
    "a buyer lays ready what the list of a step names, and cuts once more what seems to be missing: each part of the step stands there "
    "with its letter and its picture, with as many copies as the step takes, and as many tools and materials as it uses",
    may_be_empty=True,
)
def parts_needed(case: Case, check: Check[Case]) -> Findings:
    """Look for each part of each step where a page says that it lists them."""
    hint = "list the parts of the step as they were counted"
    for promise in case.promises.needed:
        what = f"the list of what step {promise.key.split(':')[1]} takes in hand"
        yield from carried_faults(case, check, promise.key, what, hint, partial(_fault, case, promise), f": {what}")
    return len(case.promises.needed)


def _fault(case: Case, promise: NeededPromise, where: Carried) -> str:
    """Return in words what a list lacks; empty when nothing."""
    said = words_at(case, where)
    for letter, count in promise.parts:
        wanted = f"{letter} {count} ×" if count else letter
        if not re.search(rf"(?<![\w.]){re.escape(wanted)}(?![\w.])", said):
            return f"does not say “{wanted}”"
    named = sum(bool(WORD.search(thing)) for thing in _beside_parts(case, promise, said).split(","))
    if named < len(promise.uses):
        return f"names {named} tools and materials of {len(promise.uses)}"
    return next((f"does not show {letter}" for letter, _ in promise.parts if not _shown(case, where, letter)), "")


def _beside_parts(case: Case, promise: NeededPromise, said: str) -> str:
    """Return what a list says beside its heading and its parts: tools and materials, between commas."""
    for heading in said_under(LISTED, case.promises.language, case.take_down):
        said = said.replace(heading, "")
    letters = {letter for letter, _ in promise.parts}
    for row in case.promises.rows:
        said = without_name(said, row.name) if row.letter in letters else said
    return said


def _shown(case: Case, where: Carried, letter: str) -> bool:
    """Say whether lines as large as a small picture of a part stand beside its letter; True where nobody knows."""
    ink, sizes = (
        case.ink(where.page),
        [max(row.width, row.height) for row in case.promises.rows if row.letter == letter],
    )
    named = [line for line in lines_in(case.lines(where.page), where.box) if line.text == letter]
    if ink is None or not sizes or not named or case.promises.purpose != "pack":
        return True
    for line in named:
        shown = strokes_in(ink, Box(line.x - LISTED_WIDE, line.y - LISTED_LOW, line.x, line.y + LISTED_HIGH))
        ends = np.concatenate((shown.starts, shown.ends))
        if len(ends) and float(np.ptp(ends, axis=0).max()) >= min(LISTED_LEAST, LISTED_SHARE * sizes[0]):
            return True
    return False


@judged(
    "proof/caution-named",
    "Steps send to what is read before a tool is used",
    "who goes by the steps alone reads nothing of knives or fumes unless a step says where that stands: on the page of each step that "
    "names such a tool or material, and of the acts that cut templates and strips of board, stands the title of the caution",
    may_be_empty=True,
)
def cautions_named(case: Case, check: Check[Case]) -> Findings:
    """Look for the titles of cautions on the pages of the steps that need them."""
    uses = {f"{promise.key.rpartition(':')[0]}:title": promise.uses for promise in case.promises.needed}
    if case.promises.purpose == "pack" and KNIFE in case.promises.used:
        coupon = any(one.key.startswith(COUPON) for one in case.promises.carried)
        uses |= {BOARD_TITLE: (KNIFE,), **({MARK_TITLE: (KNIFE,)} if coupon else {})}
        uses |= {CARDS_TITLE: (KNIFE,)} if holds(case.promises, "traced") else {}
    looked = 0
    before: Counter[tuple[int, str]] = Counter()  # of those that began on a page: how many send to a title
    for key, things in uses.items():
        titles = dict.fromkeys(title for thing in things for title in titles_for(thing, case.promises.language))
        for begins, where in enumerate(case.carried(key) if titles else ()):
            looked += 1
            told = close(case.lines(where.page))
            for title in titles:
                before[where.page, title] += not begins
                plain = case.take_down(f"„{title}“") if case.take_down is not None else f"“{title}”"
                if told.count(joined(plain)) < max(1, before[where.page, title]):
                    what = f": {key.rpartition(':')[0].replace(':', ' ')} does not send to “{title}”"
                    yield about(
                        check, page_name(where.page), what, "name the cautions of all that a step takes in hand"
                    )
    return looked
