"""What a row is, and what jumps between two neighbouring ones: counts are walked, all else is halved, each quantity by itself."""

from collections.abc import Iterator
from dataclasses import replace

from publisher.basics import Finding
from publisher.material import count_layouts
from publisher.sweep.counting import MOST_HALVINGS, CountWalk
from publisher.sweep.model import Jump, JumpKind, KnownCount, Looked, Refined, SweepRow, Trait, TraitValue
from publisher.sweep.trying import Trial, sheets_given, traits_of, why_of
from publisher.sweep.values import finest, midway

JUMPS: dict[str, JumpKind] = {"built": "built", "need": "need", "pages": "pages", "tiled": "tiled"}
WORDS = {"need": ("missed", "met"), "built": ("no", "yes")}


def look(
    trial: Trial,
    values: tuple[float, ...],
    sides: tuple[Looked, ...] = (),
    marks: tuple[KnownCount, ...] = (),
) -> Looked:
    """Work out everything at these values.

    ``sides``: what is known at a smaller and a greater value; where both take the same pages, so does what lies between them.
    ``marks``: what counts are known to be nearby, where that is more than at the sides.
    """
    row, joined = trial.join(values)
    if joined is None:
        return Looked(row, (), ((("built",), False),))
    counts = CountWalk(trial, values[1:], marks or (mark for side in sides for mark in side.marks))
    given, found = counts.at(values[0])
    papers = {side.row.papers for side in sides}
    row = replace(
        _refused(row, found),
        sheets=tuple(sheets_given(given)),
        papers=papers.pop() if len(sides) > 1 and len(papers) == 1 else trial.papers(values, joined),
    )
    return Looked(row, tuple(KnownCount(values[0], count) for count in given), tuple(traits_of(row)))


def between(trial: Trial, low: Looked, high: Looked) -> Refined:
    """Find the jumps between two neighbouring values of the first size, and the rows beside those that may make a value the best."""
    return _Between(trial, low, high).refined()


def _refused(row: SweepRow, found: tuple[Finding, ...]) -> SweepRow:
    """Return a row that also says what boards refuse."""
    return replace(row, why="; ".join(filter(None, (row.why, why_of(found)))))


class _Between:
    """Halves the way between two neighbouring values, for each quantity that differs there by itself."""

    def __init__(self, trial: Trial, low: Looked, high: Looked) -> None:
        """Start with what is known at both ends."""
        self.trial, self.low, self.high = trial, low, high
        self.beside = low.row.values[1:]
        self.unit = finest(trial.spans[0])
        self.looked: dict[tuple[bool, float], Looked] = {}

    def refined(self) -> Refined:
        """Return all jumps and rows."""
        before, after = dict(self.low.traits), dict(self.high.traits)
        ends = (self.low.row.values[0], self.high.row.values[0])
        counts = CountWalk(self.trial, self.beside, (*self.low.marks, *self.high.marks))
        jumps = list(counts.jumps(*ends))
        edges = {value for jump in jumps if jump.kind == "sheets" for value in (jump.last, jump.first)}
        for trait, was_first in before.items():
            if trait in after and was_first != after[trait]:
                for last, first, was, becomes in self.steps(trait):
                    edges |= {last, first}
                    if trait[0] != "roomy":
                        jumps.append(self.jump(trait, last, first, was, becomes))
        known = tuple(mark for own in counts.marks.values() for mark in own)
        sides = (self.low, self.high)
        rows = (look(self.trial, (value, *self.beside), sides, known).row for value in sorted(edges - {*ends}))
        return Refined(tuple(sorted(jumps, key=lambda jump: (jump.last, jump.kind))), tuple(rows))

    def steps(self, trait: Trait) -> Iterator[tuple[float, float, TraitValue, TraitValue]]:
        """Yield each jump of one quantity, from below: the last value before, the first after, what it is on both sides."""
        low, left = self.low, MOST_HALVINGS
        end = dict(self.high.traits)[trait]
        while (was := dict(low.traits).get(trait)) != end:
            before, after = low, self.high
            while left > 0 and (middle := midway(before.row.values[0], after.row.values[0], self.unit)) is not None:
                left -= 1
                here = self.at(middle, trait[0] in ("pages", "tiled"))
                before, after = (here, after) if dict(here.traits).get(trait) == was else (before, here)
            yield before.row.values[0], after.row.values[0], was, dict(after.traits).get(trait)
            low = after

    def at(self, value: float, papers: bool) -> Looked:
        """Work out what is no count at a value; ``papers``: the pages too."""
        if (papers, value) not in self.looked:
            values = (value, *self.beside)
            row, joined = self.trial.join(values)
            made = self.trial.make(values)
            if joined is None or made.design is None:
                self.looked[papers, value] = Looked(row, (), ((("built",), False),))
            else:
                row = _refused(row, count_layouts(made.design, made.pieces, only=())[1])
                row = replace(row, papers=self.trial.papers(values, joined)) if papers else row
                self.looked[papers, value] = Looked(row, (), tuple(traits_of(row)))
        return self.looked[papers, value]

    def jump(self, trait: Trait, last: float, first: float, was: TraitValue, becomes: TraitValue) -> Jump:
        """Return a jump in words that a table can hold."""
        kind, *about = trait
        beside = tuple(zip((span.size.name for span in self.trial.spans[1:]), self.beside, strict=True))
        name = self.trial.spans[0].size.name
        return Jump(
            JUMPS[kind], about[-1] if about else "", name, last, first, _said(kind, was), _said(kind, becomes), beside
        )


def _said(kind: str, seen: TraitValue) -> str:
    if kind in WORDS:
        return WORDS[kind][bool(seen)]
    return "" if seen is None else str(seen)
