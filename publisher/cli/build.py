"""``publisher build``: make and prove packs, by all cores, put them in place, print a summary of each and a table of all."""

import os
import sys
from collections import deque
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path

import click

from publisher import api
from publisher.api import Brief, BuildOutcome, Built, PlacedSet
from publisher.basics import Finding, Refusal
from publisher.cli.build_words import (
    BuildState,
    TableRow,
    built_record,
    left_record,
    row_record,
    show_left,
    summary,
    table_lines,
)
from publisher.cli.ending import attempts
from publisher.cli.options import folders_argument, json_option, paper_option, set_option, variant_option
from publisher.cli.report import Report, name_of, write_json

FEW_DESIGNS = 2  # designs that one process builds sooner than others have started


@click.command(short_help="Make the packs of one or more designs, and prove them.")
@folders_argument
@paper_option
@variant_option
@set_option
@click.option(
    "--out", type=click.Path(path_type=Path), default=Path("build/packs"), show_default=True, help="Where the packs go."
)
@click.option("--discard-trials", is_flag=True, help="Remove what was built of these designs with --set before.")
@click.option(
    "--jobs", type=click.IntRange(1, 256), help="Processes that share the work; by default one for each core."
)
@click.option(
    "--offer",
    is_flag=True,
    help="Make what is given beside the packs too, as a release does: free test page, phone copy, shop pictures.",
)
@json_option
def build(
    folders: tuple[Path, ...],
    papers: tuple[str, ...],
    variants: tuple[str, ...],
    sets: tuple[tuple[str, str], ...],
    out: Path,
    discard_trials: bool,
    jobs: int | None,
    offer: bool,
    as_json: bool,
) -> None:
    """Make the packs of the designs in FOLDER (a design's folder, or a folder of them; “designs” when none is given).

    Every finished PDF is opened again and its print scale proved. A design's packs are one set: it is put in place whole, or not at
    all when there is an error in it, and the other designs go on. Packs of an earlier build that are not built now stay if they
    were made of the same files, else they are removed. What --set tries is marked as a trial on its pages,
    goes into a folder of its own and replaces nothing.

    \b
    Example:  publisher build designs/lock-stair --paper a4 --set board="3/16 in"
    """
    report = Report()
    attempts().places = True
    found = report.folders(folders or (Path("designs"),), apart=True)
    run = _Run(report, out, discard_trials, as_json, len(found))
    chosen = tuple(dict.fromkeys(p.lower() for p in papers))
    workers = jobs or (1 if len(found) <= FEW_DESIGNS else min(len(found), os.cpu_count() or 1))
    with closing(api.build_many(run.wanted(found, sets, chosen, variants), workers, offer)) as outcomes:
        for outcome in outcomes:
            run.take(outcome)
    run.end()
    report.leave()


@dataclass(slots=True)
class _Entry:
    """A design of the run, as far as it got; ``open`` counts the variants that are still being built."""

    slug: str
    open: int = 0
    outcomes: list[BuildOutcome] = field(default_factory=list)
    refused: tuple[Finding, ...] = ()
    fault: api.OwnFault | None = None

    @property
    def builds(self) -> list[Built]:
        """What was built of it."""
        return [one.built for one in self.outcomes if one.built is not None]


class _Run:
    """Takes what is built in the order of the designs, puts each in place when it is whole, and says so."""

    def __init__(self, report: Report, out: Path, discard: bool, as_json: bool, number: int) -> None:
        """Start with nothing built of ``number`` designs."""
        self.report, self.out, self.discard, self.as_json, self.number = report, out, discard, as_json, number
        self.waiting: deque[_Entry] = deque()
        self.rows: list[TableRow] = []
        self.records: list[dict[str, object]] = []
        self.discarded: list[PlacedSet] = []
        self.shown = 0  # letters of the count that stand on the terminal

    def wanted(
        self, folders: list[Path], sets: tuple[tuple[str, str], ...], papers: tuple[str, ...], variants: tuple[str, ...]
    ) -> Iterator[tuple[Brief, str]]:
        """Read one design after the other; yield its variants to be built. What cannot be read waits for its turn to be told."""
        for folder in folders:
            entry = _Entry(name_of(folder))
            chosen: tuple[str, ...] = ()
            try:
                brief = api.read(folder, sets, papers)
                chosen = api.variants(brief, variants)
            except Refusal as refusal:
                entry.refused = refusal.findings
            except OSError:
                raise
            except Exception as error:
                entry.fault = api.fault_of(error)
            entry.open = len(chosen)
            self.waiting.append(entry)
            for variant in chosen:
                yield brief, variant

    def take(self, outcome: BuildOutcome) -> None:
        """Take the next outcome, and finish all designs that are then whole."""
        entry = next(entry for entry in self.waiting if entry.open)
        entry.outcomes.append(outcome)
        entry.open -= 1
        self._finish_whole()

    def end(self) -> None:
        """Finish what waits, and say what became of all."""
        self._finish_whole()
        if self.as_json:
            gone = [{"folder": str(one.folder), **left_record(one)} for one in self.discarded]
            trials = {"discarded": gone} if self.discard else {}
            designs = [row_record(row) for row in self.rows]
            found = self.report.records()
            write_json({"format": 1, "designs": designs, "packs": self.records, **trials, "findings": found})
            return
        for one in self.discarded:
            click.echo(f"{one.folder}: trial discarded")
            show_left(one)
        if len(self.rows) > 1:
            click.echo("\n".join(table_lines(self.rows)))

    def _finish_whole(self) -> None:
        while self.waiting and not self.waiting[0].open:
            self._clear()
            entry = self.waiting.popleft()
            state = self._finish(entry)
            builds = entry.builds if state == "built" else []
            pages, sheets = sum(one.pages for one in builds), sum(one.sheets for one in builds)
            self.rows.append(TableRow(entry.slug, state, pages, sheets, sum(one.seconds for one in entry.outcomes)))
            self._count(entry.slug, state)

    def _finish(self, entry: _Entry) -> BuildState:
        """Tell what was found in a design, put it in place if all is good, and return what became of it."""
        if self.discard:
            with self.report.passing_over(entry.slug):
                self.discarded += api.discard_trials(entry.slug, self.out)
        if entry.refused:
            self.report.refuse(entry.refused, entry.slug)
            return "unreadable"
        faults = self._told_faults(entry)
        self._tell_found(entry)
        builds = entry.builds
        placed, former = None, self.report.faulty
        if len(builds) == len(entry.outcomes) and not faults:
            placed = self._place(entry.slug, tuple(builds))
        self.records += [built_record(built, placed) for built in builds]
        if not self.as_json:
            summary(builds, placed)
        return "fault" if faults or self.report.faulty != former else "built" if placed is not None else "refused"

    def _told_faults(self, entry: _Entry) -> bool:
        """Tell what of a design came to nothing by a fault of ours; return whether anything did."""
        faults = (
            [(entry.fault, "")] if entry.fault else [(one.fault, one.variant) for one in entry.outcomes if one.fault]
        )
        for fault, variant in faults:
            if attempts().stopped:  # some library has made an error of its own of the signal
                raise KeyboardInterrupt
            self.report.fault(fault, entry.slug, variant)
        return bool(faults)

    def _tell_found(self, entry: _Entry) -> None:
        """Tell what was found in each variant of a design, and what was refused."""
        for one in entry.outcomes:
            if one.refused:
                self.report.refuse(one.refused, entry.slug)
            elif one.built is not None:
                self.report.add(one.built.findings, entry.slug)

    def _place(self, slug: str, builds: tuple[Built, ...]) -> PlacedSet | None:
        """Put a design's builds in place when all are good; None when not, or when that is refused, which is shown."""
        with self.report.passing_over(slug):
            api.settle(self.out / slug)
            if all(built.good for built in builds):
                with attempts().at(slug, lambda: api.is_placed(builds, self.out)):
                    return api.place(builds, self.out)
        return None

    def _count(self, slug: str, state: BuildState) -> None:
        """Say how far the run is: a count that stays in its line on a terminal, a line for each design in a log."""
        if self.number < 2:
            return
        said = f"{len(self.rows)} of {self.number}"
        if sys.stderr.isatty():
            self.shown = len(said)
            click.echo(f"\r{said}", nl=False, err=True)
            if len(self.rows) == self.number:
                self._clear()
        else:
            click.echo(f"{said}: {slug} {state}", err=True)

    def _clear(self) -> None:
        """Take the count off the terminal, so that other lines may stand there."""
        if self.shown:
            click.echo(f"\r{' ' * self.shown}\r", nl=False, err=True)
            self.shown = 0
