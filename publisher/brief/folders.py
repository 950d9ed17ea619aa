"""Which design folders a given folder stands for, and what a design's folder may be called."""

import re
from pathlib import Path

from publisher.basics import Finding, Place, Refusal
from publisher.basics.wording import did_you_mean
from publisher.brief import limits, rules
from publisher.brief.wording import short

SPEC = "spec.yaml"


def spec_folders(folder: Path) -> tuple[Path, ...]:
    """Return the design folders that ``folder`` names: itself, or those in it, by name. Raises Refusal when there are none."""
    if (folder / SPEC).exists():
        return (folder,)
    found = tuple(sorted(p.parent for p in folder.glob(f"*/{SPEC}"))) if folder.is_dir() else ()
    if not found:
        what = f"holds no {SPEC}, and no folder in it does" if folder.is_dir() else "is not a folder"
        hint = "give a design's folder, or a folder of such folders"
        if not folder.is_dir() and folder.parent.is_dir():
            hint = did_you_mean(folder.name, (spec.parent.name for spec in folder.parent.glob(f"*/{SPEC}"))) or hint
        raise Refusal(rules.NO_SPEC.found(f"{folder} {what}", subject=str(folder), hint=hint))
    return found


def name_findings(slug: str, file: str) -> tuple[Finding, ...]:
    """Return what is wrong with the name of a design's folder."""
    if re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", slug) and len(slug) <= limits.SLUG_LETTERS:
        return ()
    return (
        rules.FOLDER_NAME.found(
            f"the design folder is named “{short(slug)}”",
            subject=short(slug),
            hint=f"rename it: small letters, digits and single hyphens, at most {limits.SLUG_LETTERS}, such as “lock-stair”",
            place=Place(file),
        ),
    )
