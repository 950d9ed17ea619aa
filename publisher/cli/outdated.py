"""Packs for other papers that an earlier build left and that no longer belong to what is built now."""

import json
import shutil
from pathlib import Path

from publisher.pipeline import BASE, Built
from publisher.release import cannot_write


def other_papers(home: Path, built: Built) -> tuple[str, ...]:
    """Return what an earlier build of the same version and variant left for papers that are not built now, and whose sizes
    differ from those built now: paths below ``home``. Two sizes under one version would look like one pack.
    """
    facts = built.outputs[-1]
    try:
        before = json.loads((home / facts.path).read_text(encoding="utf-8"))
        now = json.loads(facts.data)
        if before["design"]["version"] != now["design"]["version"] or before["sizes"] == now["sizes"]:
            return ()
    except (OSError, ValueError, KeyError, TypeError):
        return ()
    stem = built.packs[0].pdf.path.rsplit("-", 1)[0]
    papers = {path.stem.removeprefix(f"{stem}-") for path in home.glob(f"{stem}-*.pdf")}
    papers = {paper for paper in papers if "-" not in paper}  # else it is a pack of a variant
    papers -= {one.pack.paper.name for one in built.packs}
    folder = built.variant or BASE
    return tuple(name for paper in sorted(papers) for name in (f"{stem}-{paper}.pdf", f"previews/{folder}-{paper}"))


def remove(home: Path, names: tuple[str, ...]) -> None:
    """Remove files and folders below ``home``. Raises Refusal when one cannot be removed."""
    for name in names:
        path = home / name
        try:
            if path.is_dir():
                shutil.rmtree(path)
            else:
                path.unlink(missing_ok=True)
        except OSError as error:
            raise cannot_write(home, error) from error
