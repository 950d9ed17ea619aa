"""One printer for findings, one JSON form, one rule for the exit code."""

import json
import math
import sys
from collections.abc import Iterable

import click

from publisher.basics import Finding, Severity, errors


def exit_code(findings: Iterable[Finding]) -> int:
    """Return 1 when an error was found in the work, else 0."""
    return 1 if errors(findings) else 0


def show_findings(findings: Iterable[Finding]) -> None:
    """Print findings on standard error: place, severity, sentence, then what to do."""
    for finding in findings:
        where = f"{finding.place}: " if finding.place is not None else ""
        colour = "red" if finding.severity is Severity.ERROR else "yellow"
        click.echo(f"{where}{click.style(finding.severity.value, fg=colour)}: {finding.message}", err=True)
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
