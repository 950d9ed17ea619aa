"""One printer for findings, one JSON form, one rule for the exit code."""

import json
import math
import os
import sys
from collections import Counter
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NoReturn

import click

from publisher import api
from publisher.basics import Finding, Refusal, Severity, errors
from publisher.basics.wording import numbered
from publisher.cli.ending import attempts
from publisher.cli.refused import ONE_NAME_TWICE, OWN_FAULT


def exit_code(findings: Iterable[Finding]) -> int:
    """Return 1 when an error was found in the work, else 0."""
    return 1 if errors(findings) else 0


MOST_ALIKE = 3  # findings of one check that are shown; those that somebody can mend line by line:
MOST_LINES = 12


def as_read(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return findings without those that read word for word as one before: parts that are like another say the same of one line."""
    read: dict[tuple[str, ...], Finding] = {}
    for one in findings:
        read.setdefault((str(one.place), one.check, one.message, one.hint), one)
    return tuple(read.values())


def show_findings(findings: Iterable[Finding], design: str = "") -> None:
    """Print findings on standard error: place, severity, sentence, then what to do; before it the ``design`` where no place names it.

    Of many of one check in one file the first are printed and the rest are counted.
    """
    left: Counter[tuple[str, str]] = Counter()
    seen: Counter[tuple[str, str, str]] = Counter()
    for finding in as_read(findings):
        place = finding.place
        kind = finding.check, finding.severity.value, place.file if place else ""
        seen[kind] += 1
        if seen[kind] <= (MOST_LINES if place and place.line else MOST_ALIKE):
            _show_finding(finding, design)
        else:
            left[kind[:2]] += 1
    for (check, severity), count in left.items():
        of = f"{design}: " if design else ""
        click.echo(f"{of}and {count:,} more {numbered(count, severity)} of this kind [{check}]", err=True)


def _show_finding(finding: Finding, design: str) -> None:
    where = f"{finding.place}: " if finding.place is not None else ""
    if design and design not in where:
        where = f"{design}: {where}"
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
    """Print one JSON document on standard output; a letter that the output has no bytes for, as in a damaged name, as its code."""
    text = json.dumps(document, indent=2, ensure_ascii=False, allow_nan=False)
    try:
        text.encode(sys.stdout.encoding or "utf-8")
    except UnicodeEncodeError:
        text = json.dumps(document, indent=2, allow_nan=False)
    click.echo(text)


def leave(findings: Iterable[Finding]) -> NoReturn:
    """End the command with the exit code that the findings call for."""
    sys.exit(exit_code(findings))


class Report:
    """What one command found in all the designs that it was given; it ends the command with the exit code for all of it."""

    def __init__(self) -> None:
        """Start with nothing found."""
        self.refused = self.faulty = False
        self._found: dict[tuple[str, Finding], None] = {}

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All that was found; what two designs share is there twice."""
        return tuple(finding for _, finding in self._found)

    def records(self) -> list[dict[str, object]]:
        """Return the JSON form of all that was found, each with its design (null: of none)."""
        return [{"design": design or None, **finding_record(finding)} for design, finding in self._found]

    def folders(self, given: Iterable[Path], apart: bool = False) -> list[Path]:
        """Return the folders of the designs in those given; those that cannot be used are shown and passed over.

        ``apart``: they are to be put in place, each once, under names of their own; those that share one are refused, all of them.
        """
        found: list[Path] = []
        for folder in given:
            with self.passing_over():
                found += api.designs(folder)
        return self._apart(found) if apart else found

    def briefs(
        self,
        folders: Iterable[Path],
        sets: tuple[tuple[str, str], ...] = (),
        papers: tuple[str, ...] = (),
        apart: bool = False,
    ) -> "Iterator[api.Brief]":
        """Read the designs one after the other, those of ``folders``. One that cannot be read is shown and passed over."""
        for folder in self.folders(folders, apart):
            brief = None
            with self.passing_over(name_of(folder)):
                brief = api.read(folder, sets, papers)
            if brief is not None:
                yield brief

    def _apart(self, folders: list[Path]) -> list[Path]:
        """Return the folders, each once; show and leave out those whose designs would go to one place."""
        places = {os.path.abspath(folder): folder for folder in reversed(folders)}  # noqa: PTH100 - as in name_of
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
    def passing_over(self, design: str = "") -> Iterator[None]:
        """Show what could not be used and go on with the next design; the command then ends with 2, after a fault of ours with 3."""
        try:
            yield
        except Refusal as refusal:
            self.refuse(refusal.findings, design)
        except (OSError, click.ClickException, click.exceptions.Exit, click.Abort):
            raise  # of the streams, or of the command's words
        except Exception as error:
            if not design or attempts().stopped:
                raise
            self.fault(api.fault_of(error), design)

    def refuse(self, findings: Iterable[Finding], design: str) -> None:
        """Show what could not be used."""
        self.refused = True
        self.add(findings, design)

    def fault(self, fault: "api.OwnFault", design: str, variant: str = "") -> None:
        """Show a fault of ours, and where it is to whoever asks for that."""
        self.faulty = True
        if os.environ.get("PUBLISHER_TRACE"):
            click.echo(fault.trace, err=True, nl=False)
        name = f"{design}, {variant}" if variant else design
        found = OWN_FAULT.found(
            f"{name} met a fault of ours, not of your design ({fault.words})",
            subject=name,
            hint="run it again with PUBLISHER_TRACE=1 in the environment to see where, and report it; other designs go on",
        )
        self.add((found,), design)

    def add(self, findings: Iterable[Finding], design: str = "") -> None:
        """Show findings of a design that were not shown of it before (variants share many) and keep them all."""
        new = [f for f in dict.fromkeys(findings) if (design, f) not in self._found]
        show_findings(new, design)
        self._found.update(((design, finding), None) for finding in new)

    def leave(self) -> NoReturn:
        """End the command: 3 after a fault of ours, 2 when a design could not be used, else 1 when an error was found, else 0."""
        sys.exit(3 if self.faulty else 2 if self.refused else exit_code(self.findings))


def name_of(folder: Path) -> str:
    """Return the name of the design in a folder; a link keeps its own."""
    return Path(os.path.abspath(folder)).name  # noqa: PTH100
