"""The only module that asks the tool: what it says of a spec, and whether its packs are proved."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from publisher import api
from publisher.basics import Finding, Refusal, Severity

UNTOLD = ("design/no-steps", "design/unsigned")
"""What these designs lack and no solid can judge: instructions, and somebody who signs."""


@dataclass(frozen=True, slots=True)
class Said:
    """What the tool says: findings as (rule id, message), and the facts that have a value."""

    errors: tuple[tuple[str, str], ...]
    warnings: tuple[tuple[str, str], ...]
    facts: dict[str, float]

    @property
    def rules(self) -> tuple[str, ...]:
        """Return the ids of all findings, each once."""
        return tuple(dict.fromkeys(rule for rule, _ in (*self.errors, *self.warnings)))


def check(spec: str, files: Sequence[tuple[str, str]]) -> Said:
    """Return what ``check`` says of a design: all rooms, no pages."""
    with TemporaryDirectory() as top:
        brief = api.read(written(Path(top), spec, files))
        try:
            worked = api.work(brief)
        except Exception as fault:  # a fault of the tool's own is its finding on this design
            return Said((("fault", repr(fault)),), (), {})
    facts = {f.name: f.value for f in worked.joined.facts if f.value is not None} if worked.joined else {}
    return _said(worked.findings, facts)


def build(spec: str, files: Sequence[tuple[str, str]], papers: tuple[str, ...]) -> Said:
    """Return what building and proving says; the files are thrown away."""
    with TemporaryDirectory() as top:
        brief = api.read(written(Path(top), spec, files), (), papers)
        try:
            built = api.build(brief, previews=False, offered=True)
        except Refusal as refusal:
            return _said((*refusal.findings,), {})
        except Exception as fault:
            return Said((("fault", repr(fault)),), (), {})
    return _said(built.findings, {})


def written(top: Path, spec: str, files: Sequence[tuple[str, str]]) -> Path:
    """Write a design into a folder below ``top``; return the folder."""
    folder = top / "design"
    folder.mkdir()
    for name, text in (("spec.yaml", spec), *files):
        (folder / name).write_text(text, encoding="utf-8")
    return folder


def _said(findings: Sequence[Finding], facts: dict[str, float]) -> Said:
    def of(severity: Severity) -> tuple[tuple[str, str], ...]:
        return tuple((f.check, f.message) for f in findings if f.severity == severity and f.check not in UNTOLD)

    return Said(of(Severity.ERROR), of(Severity.WARNING), facts)
