"""A sweep from a brief and ranges of sizes: what is tried, and what is made of it."""

from publisher.basics import Refusal, errors
from publisher.brief import Brief
from publisher.design import size_span, two_ranges, work_out
from publisher.sweep.best import best_of, missed_of
from publisher.sweep.halving import look
from publisher.sweep.model import Sweep, SweepRow, Told
from publisher.sweep.savings import savings_of
from publisher.sweep.sharing import SweepDesk
from publisher.sweep.trying import Trial
from publisher.sweep.values import VALUES_OF_ONE, VALUES_OF_TWO, grid_of


def vary(
    brief: Brief,
    variant: str,
    ranges: tuple[str, ...],
    values: int | None = None,
    workers: int = 1,
    told: Told | None = None,
) -> Sweep:
    """Try one size or two over their ranges ("reach = 80 mm to 120 mm").

    ``values``: how many of each range; 41 of one, 9 each of two when not given. Jumps are looked for along the first range, at each
    value of the second. ``workers``: processes that share the work. ``told`` hears how much of the work is done, of how much. A
    KeyboardInterrupt ends it: what is finished is returned. Raises Refusal for ranges that cannot be used, and when the design
    cannot be read or has a size without a value.
    """
    design = work_out(brief, variant)
    if wrong := errors((*brief.findings, *design.findings)):
        raise Refusal(*wrong)
    spans = two_ranges(tuple(size_span(text, design.sizes) for text in ranges))
    number = values or (VALUES_OF_ONE if len(spans) == 1 else VALUES_OF_TWO)
    trial = Trial(brief.inputs, variant, spans)
    desk = SweepDesk(trial, tuple(grid_of(span, number) for span in spans), told)
    whole = desk.run(workers)
    rows = tuple(desk.done[at].row for at in sorted(desk.done, key=lambda at: at[::-1]))
    found = [desk.refined[at] for at in sorted(desk.refined, key=lambda at: at[::-1])]
    every = (*rows, *(row for one in found for row in one.rows))
    jumps = tuple(jump for one in found for jump in one.jumps)
    now = _as_it_stands(trial, rows) if whole else None
    best, missed = best_of(every, spans), missed_of(rows)
    return Sweep(brief.slug, variant, spans, rows, jumps, best, missed, savings_of(now, every), now, whole)


def _as_it_stands(trial: Trial, rows: tuple[SweepRow, ...]) -> SweepRow | None:
    """Return the row at the sizes as they stand; None where they are out of the ranges."""
    values = tuple(span.size.value for span in trial.spans)
    if not all(span.least <= value <= span.most for span, value in zip(trial.spans, values, strict=True)):
        return None
    return next((row for row in rows if row.values == values), None) or look(trial, values).row
