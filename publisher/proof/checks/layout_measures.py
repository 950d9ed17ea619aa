"""The words by which a laid-out sheet is copied: which sheet, where each copy is laid, where the straight cuts run, what is left."""

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import partial

from publisher.basics import Carried, Check, CutPromise, Findings, LayoutPromise, PlacePromise, record
from publisher.proof.checks.frame import ROUND_DUST, carried_faults, judged, words_at
from publisher.proof.measuring import Case
from publisher.proof.reading import MM_PER_INCH, normal

FIGURE = r"(\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)"
PAIR = rf"→ ?{FIGURE} ([↓↑]) ?{FIGURE}"
PIECE = re.compile(rf"(\d+) (\S+) (?:{PAIR}|● ?{PAIR} ○ ?{PAIR})")
CUT = re.compile(rf"cut (\d+) (upright|across) at {FIGURE}(?:, (?:from|of) {FIGURE} to {FIGURE})?")
MEASURED = re.compile(r"Measured in (mm|inches) (?:from|of the|of) (?:the )?left and the (top|bottom) edge\.")
OFFCUT = re.compile(r"(\d+(?:\.\d)?) × (\d+(?:\.\d)?) (mm|in)")
TURNED = 270.0  # degrees: a sheet that is shown by a quarter to the right
FINEST_MM, FINEST_OF_INCH = 0.1, 100  # steps of the finest rules
DUST = 1e-6


@record
class Ruling:
    """How a sheet's measures are read: whether it is shown ``turned``, the length of one unit and the step of the rule in mm, and whether
    no rule has a finer one."""

    turned: bool
    unit: float
    step: float
    finest: bool

    @property
    def metric(self) -> bool:
        """Whether the rule is one in millimetres."""
        return self.unit == 1.0

    def length(self, text: str) -> float:
        """Return what a figure stands for, in mm."""
        whole, _, part = text.rpartition(" ")
        return (float(whole or 0) + float(Fraction(part))) * self.unit

    def reads(self, text: str | None, mm: float) -> bool:
        """Say whether a figure stands for a length in mm."""
        return bool(text) and abs(self.length(text or "") - mm) <= self.step / 2 + DUST

    def point(self, over: str, along: str) -> complex:
        """Return where two figures lead on the sheet: mm to the right of its lower left corner, and times i over it."""
        left, other = self.length(over), self.length(along)
        return complex(other, left) if self.turned else complex(left, other)

    def leads_to(self, at: tuple[float, float], words: Sequence[str]) -> bool:
        """Say whether the words of a point lead to it: a figure from the left, an arrow and a figure from the other edge."""
        over, arrow, along = words
        left, other = (at[1], at[0]) if self.turned else at
        return arrow == ("↓" if self.turned else "↑") and self.reads(over, left) and self.reads(along, other)


@judged(
    "proof/layout-measures",
    "Measures by which layouts are copied",
    "a buyer marks the board out by them: which sheet it is, each copy once with its number, letter and measures, each straight cut in "
    "its place and order, and what is left where the picture has room to say it; each figure is that of its rule",
    may_be_empty=True,
)
def layout_measures(case: Case, check: Check[Case]) -> Findings:
    """Read the words of each promised sheet where its page carries them."""
    hint = "say the measures of each picture from the layout of its own sheet"
    words = 0
    for promise in case.promises.layouts:
        who = f"{promise.board.replace('_', ' ')}, {promise.sheet}: sheet {promise.number}"
        rule = ruling_of(case, promise)
        if rule is None:
            judge = partial(_caption, case, promise)
            yield from carried_faults(case, check, promise.key_of("caption"), f"the caption of {who}", hint, judge)
            continue
        for key, what, fault in _all_words(case, promise, rule):
            words += 1
            yield from carried_faults(case, check, key, f"{what} of {who}", hint, fault, f": {who}")
    return words


def _all_words(case: Case, promise: LayoutPromise, rule: Ruling) -> Iterator[tuple[str, str, "partial[str]"]]:
    """Yield the key of all words of a sheet, what they are about, and the function that returns what is wrong with them."""
    yield promise.key_of("caption"), "the caption", partial(_caption, case, promise)
    for place in promise.places:
        yield promise.key_of("piece", place.order), f"piece {place.order}", partial(_piece, case, rule, place)
    for number, cut in enumerate(promise.cuts, 1):
        yield promise.key_of("cut", number), f"cut {number}", partial(_cut, case, rule, promise, number, cut)
    if promise.offcut is not None and case.carried(promise.key_of("offcut")):
        yield promise.key_of("offcut"), "the offcut", partial(_offcut, case, rule, promise)


def ruling_of(case: Case, promise: LayoutPromise) -> Ruling | None:
    """Return how a sheet's measures are read, by the words of its caption; None where it does not say so."""
    shown = case.carried(promise.key)
    for where in case.carried(promise.key_of("caption")):
        found = MEASURED.search(words_at(case, where))
        if found and shown and shown[0].pose.turn in (0.0, TURNED):
            turned = shown[0].pose.turn == TURNED
            if found[2] == ("top" if turned else "bottom"):
                step = promise.step_mm if found[1] == "mm" else MM_PER_INCH / promise.parts_of_inch
                finest = promise.step_mm == FINEST_MM if found[1] == "mm" else promise.parts_of_inch == FINEST_OF_INCH
                return Ruling(turned, 1.0 if found[1] == "mm" else MM_PER_INCH, step, finest)
    return None


def _caption(case: Case, promise: LayoutPromise, where: Carried) -> str:
    """Return what a caption says wrongly; empty when nothing."""
    said = words_at(case, where)
    which = f"sheet {promise.number} of {promise.total}"
    if promise.alike > 1:
        which = f"{promise.alike} sheets of {promise.total} are laid out like this"
    for wanted in (f"{promise.board.replace('_', ' ')}, {promise.sheet}", which):
        if normal(wanted) not in said:
            return f": “{said[:80]}” does not say “{wanted}”"
    return (
        ""
        if ruling_of(case, promise)
        else f": “{said[:80]}” does not say from which edges it is measured as it is shown"
    )


def _piece(case: Case, rule: Ruling, place: PlacePromise, where: Carried) -> str:
    said = words_at(case, where)
    found = PIECE.fullmatch(said)
    points = [m.at for m in place.measures]
    if found and (found[1], found[2]) == (str(place.order), normal(place.letter)):
        pairs = [found.groups()[i : i + 3] for i in (2, 5, 8) if found.groups()[i] is not None]
        if len(pairs) == len(points) and all(rule.leads_to(at, pair) for pair, at in zip(pairs, points, strict=True)):
            return ""
    wanted = " and ".join(f"{x:g}, {y:g}" for x, y in points)
    return f"says “{said}” of piece {place.order}, which is {place.letter} at {wanted} mm from the sheet’s left and lower edge"


def _cut(case: Case, rule: Ruling, promise: LayoutPromise, number: int, cut: CutPromise, where: Carried) -> str:
    said = words_at(case, where)
    found = CUT.fullmatch(said)
    whole = cut.start <= 0.0 and cut.end >= (promise.width if cut.level else promise.height)
    way = "upright" if cut.level == rule.turned else "across"
    read = (cut.mm if rule.metric else cut.inches) or cut
    if found and (found[1], found[2]) == (str(number), way) and rule.reads(found[3], read.at):
        ends = rule.reads(found[4], read.start) and rule.reads(found[5], read.end)
        if ends or (whole and found[4] is None):
            return ""
    return f"says “{said}” of cut {number}, which runs {way} at {read.at:.1f} mm"


def _offcut(case: Case, rule: Ruling, promise: LayoutPromise, where: Carried) -> str:
    box, said = promise.offcut, words_at(case, where)
    assert box is not None
    sides = (box.height, box.width) if rule.turned else (box.width, box.height)
    for *figures, unit in OFFCUT.findall(said):
        worth, step = (1.0, 1.0) if unit == "mm" else (MM_PER_INCH, MM_PER_INCH / 10)
        for figure, side in zip(figures, sides, strict=True):
            if not side - step - DUST <= float(figure) * worth <= side + ROUND_DUST * step:
                return f"says “{said}” of what is left, which is {sides[0]:.1f} × {sides[1]:.1f} mm"
    return ""
