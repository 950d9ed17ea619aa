"""A variant's finished files go into the design's folder, and what no longer belongs to them goes."""

import json
import shutil
from pathlib import Path, PurePath

from publisher.release.names import cut_folder, pack_name, pack_stem, paper_of, preview_folder, record_name
from publisher.release.offer import Offer
from publisher.release.placing import cannot_write, put_in_place


def place_packs(offer: Offer, packs: Path) -> tuple[Path, ...]:
    """Put all files of a variant into ``packs/<slug>`` and return their paths. Raises Refusal when one cannot be written.

    Cut files and pictures of an earlier build of the same variant go, and packs for other papers when their sizes differ: two
    sizes under one version would look like one pack.
    """
    design = offer.design
    home = packs / design.slug
    pictures = (preview_folder(design.variant, pack.paper.name) for pack, _ in offer.packs)
    outdated = _other_papers(home, offer)
    placed = put_in_place(home, ((o.path, o.data) for o in offer.outputs), (cut_folder(design.variant), *pictures))
    _remove(home, outdated)
    return placed


def _other_papers(home: Path, offer: Offer) -> tuple[str, ...]:
    """Return what an earlier build of the same version and variant left for papers that are not built now, and whose sizes
    differ from those built now: paths below ``home``."""
    files = {output.path: output.data for output in offer.outputs}
    listed = offer.outputs[-1]
    try:
        first = json.loads((home / listed.path).read_text(encoding="utf-8"))["packs"][0]
        before = json.loads((home / PurePath(first["record"]).name).read_text(encoding="utf-8"))
        now = json.loads(files[json.loads(listed.data)["packs"][0]["record"]])
        if before["design"]["version"] != now["design"]["version"] or before["sizes"] == now["sizes"]:
            return ()
    except (OSError, ValueError, LookupError, TypeError):
        return ()
    variant = offer.design.variant
    stem = pack_stem(offer.design.slug, offer.design.version, variant)
    papers = {paper for path in home.glob(f"{stem}-*.pdf") if (paper := paper_of(path.name, stem))}
    papers -= {pack.paper.name for pack, _ in offer.packs}
    return tuple(
        name
        for paper in sorted(papers)
        for name in (pack_name(stem, paper), record_name(stem, paper), preview_folder(variant, paper))
    )


def _remove(home: Path, names: tuple[str, ...]) -> None:
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
