"""One printer for findings, one JSON form, one rule for the exit code."""

import json
import math
import os
import sys
from collections import Counter
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from publisher import api
from publisher.basics import Finding, Refusal, Severity, errors
from publisher.cli.refused import ONE_NAME_TWICE


def exit_code(findings: Iterable[Finding]) -> int:
    """Return 1 when an error was found in the work, else 0."""
    return 1 if errors(findings) else 0


MOST_ALIKE = 3  # findings of one check that are shown; those that somebody can mend line by line:
MOST_LINES = 12


def show_findings(findings: Iterable[Finding]) -> None:
    """Print findings on standard error: place, severity, sentence, then what to do. Of many of one check in one file the first are
    printed and the rest are counted."""
    left: Counter[tuple[str, str]] = Counter()
    seen: Counter[tuple[str, str, str]] = Counter()
    for finding in findings:
        place = finding.place
        kind = finding.check, finding.severity.value, place.file if place else ""
        seen[kind] += 1
        if seen[kind] <= (MOST_LINES if place and place.line else MOST_ALIKE):
            _show_finding(finding)
        else:
            left[kind[:2]] += 1
    for (check, severity), count in left.items():
        click.echo(f"and {count:,} more {severity}{'s' if count > 1 else ''} of this kind [{check}]", err=True)


def _show_finding(finding: Finding) -> None:
    where = f"{finding.place}: " if finding.place is not None else ""
    colour = "red" if finding.severity is Severity.ERROR else "yellow"
    severity = finding.severity.value
    shown = severity if os.environ.get("NO_COLOR") else click.style(severity, fg=colour)
    click.echo(f"{where}{shown}: {finding.message}", err=True)
    if finding.hint:
        click.echo(f"    {finding.hint}", err=True)
    click.echo(f"    [{finding.check}]", err=True)


def finding_record(finding: Finding) -> dict[str, object]:
    """Return the JSON form of a finding."""
    place = finding.place
    return {
        "check": finding.check,
        "severity": finding.severity.value,
        "subject": finding.subject,
        "message": finding.message,
        "hint": finding.hint,
        "file": place.file if place else None,
        "line": place.line if place else None,
        "column": place.column if place else None,
        "pointer": place.pointer if place else None,
        "value": _number(finding.value),
        "limit": _number(finding.limit),
    }


def _number(value: float | None) -> float | None:
    return value if value is not None and math.isfinite(value) else None


def write_json(document: dict[str, object]) -> None:
    """Print one JSON document on standard output."""
    click.echo(json.dumps(document, indent=2, ensure_ascii=False, allow_nan=False))


def leave(findings: Iterable[Finding]) -> None:
    """End the command with the exit code that the findings call for."""
    sys.exit(exit_code(findings))


class Report:
    """What one command found in all the designs that it was given; it ends the command with the exit code for all of it."""

    def __init__(self) -> None:
        """Start with nothing found."""
        self.findings: list[Finding] = []
        self.refused = False
        self._seen: set[Finding] = set()

    def briefs(
        self,
        folders: Iterable[Path],
        sets: tuple[tuple[str, str], ...] = (),
        papers: tuple[str, ...] = (),
        apart: bool = False,
    ) -> "Iterator[api.Brief]":
        """Read the designs one after the other. One that cannot be read is shown and passed over: the others go on.

        ``apart``: they are to be put in place, each once, under names of their own; those that share one are refused, all of them.
        """
        found: list[Path] = []
        for given in folders:
            with self.passing_over():
                found += api.designs(given)
        for folder in self._apart(found) if apart else found:
            brief = None
            with self.passing_over():
                brief = api.read(folder, sets, papers)
            if brief is not None:
                yield brief

    def _apart(self, folders: list[Path]) -> list[Path]:
        """Return the folders, each once; show and leave out those whose designs would go to one place."""
        places = {os.path.abspath(folder): folder for folder in reversed(folders)}  # noqa: PTH100 - a link keeps its own name
        named: dict[str, list[Path]] = {}
        for where, folder in reversed(places.items()):
            named.setdefault(Path(where).name.casefold(), []).append(folder)
        for name, together in named.items():
            if len(together) > 1:
                with self.passing_over():
                    raise Refusal(
                        ONE_NAME_TWICE.found(
                            f"{' and '.join(map(str, together))} hold designs of one name, “{name}”: their packs would go to one place",
                            subject=name,
                            hint="rename one of the folders, or run a command for each with another --out",
                        )
                    )
        return [together[0] for together in named.values() if len(together) == 1]

    @contextmanager
    def passing_over(self) -> Iterator[None]:
        """Show what could not be used and go on with the next design; the command then ends with 2."""
        try:
            yield
        except Refusal as refusal:
            self.refused = True
            self.add(refusal.findings)

    def add(self, findings: Iterable[Finding]) -> None:
        """Show findings that were not shown before (variants share many) and keep them all."""
        new = [f for f in dict.fromkeys(findings) if f not in self._seen]
        show_findings(new)
        self.findings += new
        self._seen.update(new)

    def leave(self) -> None:
        """End the command: 2 when a design could not be used, else 1 when an error was found, else 0."""
        sys.exit(2 if self.refused else exit_code(self.findings))
