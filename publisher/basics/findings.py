"""The one noun for every complaint, and the rules and checks that make them."""

from collections.abc import Callable, Generator, Iterable
from dataclasses import field, replace
from enum import StrEnum
from typing import Generic, TypeVar

from publisher.basics.records import record

Subject = TypeVar("Subject")
LINES_LISTED = 8  # of findings that follow from another


@record
class Place:
    """Where a designer wrote something: file name as given, line and column from 1, JSON pointer."""

    file: str
    line: int = 0
    column: int = 0
    pointer: str = ""

    def __str__(self) -> str:
        """Print as editors understand it: file:line:column."""
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file


class Severity(StrEnum):
    """An error stops the pack; a warning is printed and the pack goes on."""

    ERROR = "error"
    WARNING = "warning"


@record
class Cure:
    """Words that would cure a finding: in the mappings of the spec that stand at ``places``, ``key`` with this text, or with these texts
    under keys of its own."""

    places: tuple[Place, ...]
    key: str
    words: str | tuple[tuple[str, str], ...]


@record
class Finding:
    """One complaint: what was found and expected (``message``) and what to do (``hint``).

    ``check`` is the id of the rule or check; ``subject`` names the part, page, file or size;
    ``value`` and ``limit`` are the two numbers where there are such (mm, degrees, or as the message says). ``cause`` is alike for
    findings that one mend cures, such as all that name a part which is not there; '' for those that stand alone. ``cure``: the words
    that the hint proposes, where they can be tried.
    """

    check: str
    severity: Severity
    subject: str
    message: str
    hint: str = ""
    place: Place | None = None
    value: float | None = None
    limit: float | None = None
    cause: str = ""
    cure: Cure | None = None


@record
class Rule:
    """Something that must hold, stated once: its id reads ``room/what-is-wrong`` and is never reused."""

    id: str
    title: str
    rationale: str
    severity: Severity

    def found(
        self,
        message: str,
        *,
        subject: str = "",
        hint: str = "",
        place: Place | None = None,
        value: float | None = None,
        limit: float | None = None,
        cause: str = "",
        cure: Cure | None = None,
    ) -> Finding:
        """Make a finding of this rule."""
        return Finding(self.id, self.severity, subject, message, hint, place, value, limit, cause, cure)


@record
class Outcome:
    """What a check looked at (how many things) and what it found."""

    looked_at: int
    findings: tuple[Finding, ...] = ()


@record
class Check(Rule, Generic[Subject]):
    """A rule with the function that tests it. ``run`` takes the subject and this check.

    A check that looks at nothing fails, unless ``may_be_empty`` says that there may be nothing to look at.
    """

    run: Callable[[Subject, "Check[Subject]"], Outcome] = field(kw_only=True)
    may_be_empty: bool = field(default=False, kw_only=True)


Findings = Generator[Finding, None, int]
"""What the test of a check yields, one by one; it returns how many things it looked at."""


def checked(
    name: str, title: str, rationale: str, severity: Severity = Severity.ERROR, *, may_be_empty: bool = False
) -> Callable[[Callable[[Subject, Check[Subject]], Findings]], Check[Subject]]:
    """Make a check of the test that stands below: a generator of findings. ``name`` is the check's id."""

    def made(test: Callable[[Subject, Check[Subject]], Findings]) -> Check[Subject]:
        def run(subject: Subject, check: Check[Subject]) -> Outcome:
            findings, found = test(subject, check), []
            while True:
                try:
                    found.append(next(findings))
                except StopIteration as end:
                    return Outcome(end.value, tuple(found))

        return Check(name, title, rationale, severity, run=run, may_be_empty=may_be_empty)

    return made


def run_checks(checks: Iterable[Check[Subject]], subject: Subject) -> tuple[Finding, ...]:
    """Run every check on the subject; return all findings, in the order of the checks."""
    found: list[Finding] = []
    for check in checks:
        outcome = check.run(subject, check)
        found.extend(outcome.findings)
        if outcome.looked_at == 0 and not check.may_be_empty:
            found.append(
                Finding(
                    check.id,
                    Severity.ERROR,
                    "",
                    f"the check “{check.title}” found nothing to look at",
                    "a check that measures nothing proves nothing: the file lacks what the check needs",
                )
            )
    return tuple(found)


def gathered(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return the findings with one for each cause: the first in the file, which says how many follow from it and where."""
    all_of_them = tuple(findings)
    alike: dict[str, list[Finding]] = {}
    for finding in all_of_them:
        if finding.cause:
            alike.setdefault(finding.cause, []).append(finding)
    first: dict[str, Finding] = {}
    for cause, found in alike.items():
        one, *rest = sorted(found, key=lambda f: (f.place.line, f.place.column) if f.place else (0, 0))
        lines = [str(line) for line in dict.fromkeys(f.place.line for f in rest if f.place)]
        where = f" (line{'s' if len(lines) > 1 else ''} {', '.join(lines[:LINES_LISTED])}" if lines else ""
        if where:
            where += f" and {len(lines) - LINES_LISTED} more)" if len(lines) > LINES_LISTED else ")"
        follow = f"{one.message}, and {len(rest)} that follow{'s' if len(rest) == 1 else ''}{where}"
        first[cause] = replace(one, message=follow) if rest else one
    return tuple(dict.fromkeys(first.get(finding.cause, finding) for finding in all_of_them))


def errors(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return the findings that stop a pack."""
    return tuple(f for f in findings if f.severity is Severity.ERROR)


class Refusal(Exception):
    """The command or its input could not be used (exit 2): nothing was done. Carries findings, never a trace."""

    def __init__(self, *findings: Finding) -> None:
        """Keep the findings that say what could not be used."""
        super().__init__("; ".join(f.message for f in findings))
        self.findings = findings
