"""The design at one value of each size that is varied: its parts, and the row that says what it needs and gives there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace

from publisher.basics import Finding, errors
from publisher.brief import Brief, Inputs, brief_of
from publisher.design import Design, Kind, SizeSpan
from publisher.joints import NEED_NOT_MET, Joined, margin_of
from publisher.material import SheetCount
from publisher.pages import PageCount
from publisher.pipeline import Made, count_papers, join_made, make_at
from publisher.sweep.model import CLOSE, SweepRow, Trait, TraitValue, VariedNeed, VariedSheet

KEPT = 64  # values whose parts are kept: several counts are looked at there


@dataclass(slots=True)
class Trial:
    """What a process must know to try any value; the brief is made of its inputs when it is first needed."""

    inputs: Inputs
    variant: str
    spans: tuple[SizeSpan, ...]
    _brief: Brief | None = field(default=None, init=False)
    _made: dict[tuple[float, ...], Made] = field(default_factory=dict, init=False)

    def __reduce__(self) -> tuple[type[Trial], tuple[Inputs, str, tuple[SizeSpan, ...]]]:
        """Hand only the inputs to another process."""
        return (Trial, (self.inputs, self.variant, self.spans))

    def make(self, values: tuple[float, ...]) -> Made:
        """Return the parts at these values."""
        if values not in self._made:
            if self._brief is None:
                self._brief = brief_of(self.inputs)
            tried = tuple(
                replace(span.size, value=v, kind=_kind(span, v)) for span, v in zip(self.spans, values, strict=True)
            )
            if len(self._made) >= KEPT:
                self._made.pop(next(iter(self._made)))
            self._made[values] = make_at(self._brief, self.variant, tried)
        return self._made[values]

    def join(self, values: tuple[float, ...]) -> tuple[SweepRow, Joined | None]:
        """Return the row at these values as far as its needs, and what was put together; None where it cannot be made. What boards
        refuse is not looked at."""
        made = self.make(values)
        if made.design is None or errors(made.findings):
            return SweepRow(values, why_of(made.findings)), None
        joined = join_made(made.design, made)
        row = SweepRow(
            values,
            why_of((*made.findings, *joined.findings)),
            _needs(made.design, joined),
            print_scale=(joined.budget.least, joined.budget.most),
            boards=joined.boards,
        )
        return row, joined

    def papers(self, values: tuple[float, ...], joined: Joined) -> tuple[PageCount, ...]:
        """Return the pages on each paper at these values."""
        made = self.make(values)
        return count_papers(made.design, made, joined) if made.design is not None else ()


def _kind(span: SizeSpan, value: float) -> Kind:
    kind = span.size.kind
    return kind if kind != "count" or value == round(value) else "number"


def why_of(findings: Iterable[Finding]) -> str:
    """Return what stops a design, but for needs, which have columns of their own."""
    wrong = dict.fromkeys(f.message for f in errors(findings) if f.check != NEED_NOT_MET.id)
    return "; ".join(wrong)


def _needs(design: Design, joined: Joined) -> tuple[VariedNeed, ...]:
    found = []
    for need in design.needs:
        fact = joined.fact(need.fact)
        if fact is not None:
            exact = need.at_least is not None and need.at_most is not None and need.at_most - need.at_least < CLOSE
            kind = fact.kind if fact.kind in ("mass", "force") else need.kind
            found.append(VariedNeed(need.fact, kind, fact.value, margin_of(need, fact), exact))
    return tuple(found)


def sheets_given(counts: tuple[SheetCount, ...]) -> Iterator[VariedSheet]:
    """Yield each board and sheet size; a list of which a part fits no sheet takes none."""
    for board, label in dict.fromkeys((one.board, one.sheet.label) for one in counts):
        own = [one for one in counts if (one.board, one.sheet.label) == (board, label)]
        copies = tuple((one.letter, one.number) for one in own if one.part)
        listed = next((one.number for one in own if not one.part), 0)
        yield VariedSheet(board, label, listed if all(number for _, number in copies) else 0, copies)


def traits_of(row: SweepRow) -> Iterator[tuple[Trait, TraitValue]]:
    """Yield what may jump, but for counts of layouts."""
    yield ("built",), not row.why
    for at, need in enumerate(row.needs):
        yield ("need", str(at), need.fact), need.met
        yield ("roomy", str(at), need.fact), need.roomy
    for paper in row.papers:
        yield ("pages", paper.paper), paper.pages
        yield ("tiled", paper.paper), ", ".join(paper.tiled)
