"""Pages that must print true: ``python -m tests.benchmarks.true_pages [designs/bridge …] [--paper a3]``, all demos when none is named.

One row for each variant and paper: pages of the whole pack; those that must print true (print check, templates, tiles), and of
these each kind; how many seams its tiles have; the free paper of the fullest and of the emptiest template page, as shares of the
room there; and processor seconds for composing. ``--paper`` may be given several times; A4 and Letter where it is not.
"""

import argparse
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from time import process_time

import shapely

from publisher import api
from publisher.basics import Promises
from publisher.pages import Pack
from publisher.pipeline import compose_packs
from tests.benchmarks.whole_path import ROOT

TRUE_KINDS = ("print_check", "templates", "tiles")
HEADS = ("design", "variant", "paper", "pack", "true", *TRUE_KINDS, "seams", "filled", "s")
WIDTHS = (-12, -12, -8, 6, 6, 13, 11, 7, 7, 14, 7)


def true_pages(pack: Pack) -> Counter[str]:
    """Return how many pages of each kind must print true."""
    return Counter(page.kind for page in pack.pages if page.kind in TRUE_KINDS)


def seams(promises: Promises) -> int:
    """Return how many seams a buyer closes: pairs of tiles of one copy that share match marks."""
    return len({(seam.part, seam.copy, *sorted(seam.pages), seam.label.split()[0][:1]) for seam in promises.seams})


def filled(pack: Pack) -> list[float]:
    """Return for each page of templates or tiles which share of the area inside its printable limit parts cover."""
    shares = []
    for page in pack.promises.pages:
        if page.kind not in TRUE_KINDS[1:]:
            continue
        here = [one for one in pack.promises.outlines if one.page == page.page]
        shapes = [shapely.Polygon(one.pose.apply_all(one.rings[0])) for one in here]
        windows = [shapely.box(*(one.window or page.limit).sides) for one in here]
        covered = shapely.union_all(shapely.intersection(shapes, windows))
        shares.append(covered.area / (page.limit.width * page.limit.height))
    return shares


def rows(folder: Path, papers: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """Yield the cells of each row of one design. Raises SystemExit when it has errors."""
    brief = api.read(folder)
    for variant in api.variants(brief):
        worked = api.work(brief, variant)
        for paper in papers:
            start = process_time()
            packs, _ = compose_packs(worked, (paper,))
            spent = process_time() - start
            if not packs:
                raise SystemExit(f"{folder} has errors")
            (pack,) = packs
            counts, shares = true_pages(pack), filled(pack)
            yield (
                folder.name, variant or "-", paper, str(len(pack.pages)), str(counts.total()),
                *(str(counts[kind]) for kind in TRUE_KINDS), str(seams(pack.promises)),
                f"{min(shares, default=0.0):.0%} … {max(shares, default=0.0):.0%}", f"{spent:.2f}",
            )  # fmt: skip


def line(cells: tuple[str, ...]) -> str:
    """Return a row of the table; a negative width puts words at the left."""
    return "".join(
        cell.ljust(-width) if width < 0 else cell.rjust(width) for cell, width in zip(cells, WIDTHS, strict=True)
    )


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description="Pages that must print true")
    parser.add_argument("folders", nargs="*", type=Path)
    parser.add_argument("--paper", action="append")
    asked = parser.parse_args()
    folders = asked.folders or sorted(spec.parent for spec in ROOT.glob("designs/*/spec.yaml"))
    print(line(HEADS))
    for folder in folders:
        for cells in rows(folder, tuple(asked.paper or ("a4", "letter"))):
            print(line(cells), flush=True)


if __name__ == "__main__":
    main()
