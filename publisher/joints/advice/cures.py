"""Words that a finding proposes for the spec, tried with the whole design before they are given."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import Cure, Finding
from publisher.basics.wording import cut
from publisher.joints.advice.suggestions import NOT_TRIED, Tried, worse

TryCure = Callable[[Cure], Tried | None]
"""Works the whole design out with the words of a cure written into its spec; None where they cannot be written."""


def try_cures(now: Tried, attempt: TryCure, most: int | None = None) -> tuple[Finding, ...]:
    """Return the findings of a design as it stands (``now``), each hint that names a cure with what was found when it was tried.

    At most ``most`` cures are tried (None: all), findings that share one together. A cure that does
    not do says what is still wrong; of one that does, what else gets worse is said.
    """
    tried: dict[Cure, Tried | None] = {}
    said: list[Finding] = []
    for finding in now.findings:
        cure = finding.cure
        if cure is None:
            said.append(finding)
            continue
        if cure not in tried and most is not None and len(tried) >= most:
            said.append(replace(finding, hint=f"{finding.hint}{NOT_TRIED}"))
            continue
        if cure not in tried:
            tried[cure] = attempt(cure)
        there = tried[cure]
        said.append(finding if there is None else replace(finding, hint=finding.hint + _outcome(finding, now, there)))
    return tuple(said)


def _outcome(finding: Finding, now: Tried, there: Tried) -> str:
    """Return what is to be said of a cure that was tried; '' when it does and nothing gets worse."""
    still = [
        f for f in there.findings if (f.check, f.subject, f.place) == (finding.check, finding.subject, finding.place)
    ]
    if still:
        return f"; tried, and that alone does not do: {cut(still[0].message)}"
    return worse(now, there, "so")
