"""Which design folders a given folder stands for."""

from pathlib import Path

from publisher.basics import Refusal
from publisher.brief import rules

SPEC = "spec.yaml"


def spec_folders(folder: Path) -> tuple[Path, ...]:
    """Return the design folders that ``folder`` names: itself, or those in it, by name. Raises Refusal when there are none."""
    if (folder / SPEC).exists():
        return (folder,)
    found = tuple(sorted(p.parent for p in folder.glob(f"*/{SPEC}"))) if folder.is_dir() else ()
    if not found:
        what = f"holds no {SPEC}, and no folder in it does" if folder.is_dir() else "is not a folder"
        hint = "give a design's folder, or a folder of such folders"
        raise Refusal(rules.NO_SPEC.found(f"{folder} {what}", subject=str(folder), hint=hint))
    return found
