"""``publisher sizes --vary``: one size or two over their ranges, with progress on a terminal; Ctrl-C keeps what is done."""

import os
import sys
from pathlib import Path
from typing import NoReturn

import click

from publisher import api
from publisher.api import Sweep
from publisher.basics import record
from publisher.cli.options import write_picture
from publisher.cli.report import Report, write_json
from publisher.cli.vary_words import csv_of, lines_of, record_of

FEW = 12  # values that one process tries sooner than others have started


@record
class Varied:
    """What was asked for beside the design."""

    ranges: tuple[str, ...]
    values: int | None
    jobs: int | None
    plot: Path | None
    as_csv: bool
    as_json: bool


def vary_sizes(
    report: Report, folder: Path, variants: tuple[str, ...], sets: tuple[tuple[str, str], ...], asked: Varied
) -> NoReturn:
    """Vary sizes of each variant that is asked for, print what was found, and end the command."""
    _check_plot(asked, variants)
    done: list[Sweep] = []
    for brief in report.briefs((folder,), sets):
        with report.passing_over(brief.slug):
            for variant in api.variants(brief, variants):
                if done and not done[-1].whole:
                    break
                sweep = api.vary(brief, variant, asked.ranges, asked.values, _workers(asked), _progress())
                done.append(sweep)
                _show(sweep, asked)
    if asked.plot is not None and done and len(done[0].rows) > 1:
        write_picture(asked.plot, api.plot_sweep(done[0], asked.plot.suffix.lower() == ".png"))
        if not (asked.as_csv or asked.as_json):
            click.echo(f"plot: {asked.plot}")
    if asked.as_json:
        write_json({"format": 1, "sweeps": [record_of(sweep) for sweep in done]})
    if not all(sweep.whole for sweep in done):
        click.echo("stopped: the values that were finished are above", err=True)
        sys.exit(130)
    report.leave()


def _show(sweep: Sweep, asked: Varied) -> None:
    """Print one sweep as CSV or in words; JSON holds all of them and is printed at the end."""
    if asked.as_csv:
        click.echo(csv_of(sweep), nl=False)
    elif not asked.as_json:
        click.echo("\n".join(lines_of(sweep)))


def _check_plot(asked: Varied, variants: tuple[str, ...]) -> None:
    """Refuse a plot that could not be written, before anything is worked out."""
    if asked.plot is None:
        return
    if asked.plot.suffix.lower() not in (".svg", ".png"):
        raise click.UsageError(f"--plot {asked.plot}: give a name that ends in .svg or .png")
    if len(asked.ranges) != 1 or len(variants) != 1:
        raise click.UsageError("--plot shows one size of one variant: give --vary once, and --variant")


def _workers(asked: Varied) -> int:
    if asked.jobs:
        return asked.jobs
    few = asked.values is not None and asked.values ** len(asked.ranges) <= FEW
    return 1 if few else os.cpu_count() or 1


def _progress() -> api.Told | None:
    """Return who tells a person at a terminal how far it is."""
    if not sys.stderr.isatty():
        return None

    def told(done: int, of: int) -> None:
        end = "\n" if done == of else ""
        click.echo(f"\r{100 * done // of} % of the values tried{end}", nl=False, err=True)

    return told
