"""``python -m tests.rehearsal PACK.pdf … [--design FOLDER [--variant NAME]] [--random 0-29] [--plants FOLDER]``.

Prints what the pages of each pack say of its parts, and what could not be read. With the design, or of random ones: how far each part
that would be cut is off, how each assembly stands, the share that was reached, and the mean error.
"""

import argparse
from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from publisher import api
from publisher.press import write_pdf
from tests.rehearsal.compare_built import Rehearsed, is_whole, rehearsed, truth_of
from tests.rehearsal.pack import ReadPack, read_pack
from tests.rehearsal.planted import planted, worse
from tests.rehearsal.tried import random_packs


def main() -> None:
    """Rehearse packs and print what came of it."""
    parser = argparse.ArgumentParser(prog="python -m tests.rehearsal", description=__doc__)
    parser.add_argument("packs", nargs="*", type=Path, help="finished PDFs")
    parser.add_argument("--design", type=Path, help="the folder that these packs were made from")
    parser.add_argument("--variant", default="", help="and the variant of it")
    parser.add_argument("--random", default="", help="first-last seed of random designs to build and rehearse")
    parser.add_argument("--plants", type=Path, help="a design whose pack is spoiled in one way after another")
    asked = parser.parse_args()
    every: list[Rehearsed] = []
    for pdf in asked.packs:
        pack = timed(pdf.name, pdf)
        show(pack)
        if asked.design:
            every.append(compared(pack, asked.design, asked.variant))
    if asked.random:
        first, _, last = asked.random.partition("-")
        with TemporaryDirectory() as top:
            for tried in random_packs(range(int(first), int(last or first) + 1), Path(top)):
                pack = timed(tried.name, tried.pdf)
                unread(pack)
                every.append(compared(pack, tried.folder))
                tried.pdf.unlink()
    if asked.plants:
        plants(asked.plants)
    if every:
        summed(every)


def timed(name: str, pdf: Path) -> ReadPack:
    """Read a pack and print how long it took."""
    start = perf_counter()
    pack = read_pack(pdf)
    print(f"{name}: {len(pack.parts)} templates, {perf_counter() - start:.0f} s")
    return pack


def plants(folder: Path) -> None:
    """Spoil the first pack of a design in one way after another and print which rehearsals fail, as all must, and why."""
    composed = api.compose(api.work(api.read(folder)))[0][0]
    truth = truth_of(folder)
    with TemporaryDirectory() as top:
        pdf = Path(top) / "pack.pdf"
        pdf.write_bytes(write_pdf(composed))
        read = read_pack(pdf)
        good = rehearsed(read, truth)
        print(f"as it is: {good.whole} of {len(good.assemblies)} assemblies stand whole", flush=True)
        for name, spoiled in planted(composed):
            pdf.write_bytes(write_pdf(spoiled))
            same = {
                page.number: page
                for page, old, new in zip(read.pages, composed.pages, spoiled.pages, strict=True)
                if old is new
            }
            pack = read_pack(pdf, same)
            unlike = tuple(f"not read: {said}" for said in pack.unread if said not in read.unread)
            reasons = (*unlike, *worse(good, rehearsed(pack, truth)))
            print(f"{name}: {'FAILS: ' + '; '.join(reasons) if reasons else 'is built as meant'}", flush=True)


def show(pack: ReadPack) -> None:
    """Print what was read of each part, and the acts."""
    for part in pack.parts:
        left, bottom, right, top = part.area.bounds if not part.area.is_empty else (0.0, 0.0, 0.0, 0.0)
        pages = ", ".join(map(str, sorted(set(part.pages))))
        holes = f", {len(part.area.interiors)} openings" if part.area.interiors else ""
        print(
            f"  {part.letter or '?'}: page {pages}, cut {part.count} + {part.spare}, {part.board} {part.thickness:g} mm, "
            f"template {right - left:.2f} × {top - bottom:.2f} mm{holes}"
        )
    for act in pack.acts:
        added = ", ".join(f"{one.count} × {one.letter}" for one in act.added)
        turn = "" if act.turn is None else f", each turned by {act.turn:g}°"
        print(f"  page {act.page}, “{act.step}” {act.number}: {added}{turn}{f', {act.times} times' * (act.times > 1)}")
    print("  pencil:", "not read" if pack.allowance is None else f"{pack.allowance:g} mm")
    unread(pack)


def unread(pack: ReadPack) -> None:
    """Print what the reader states as not read."""
    for said in pack.unread:
        print(f"  not read: {said}")


def compared(pack: ReadPack, folder: Path, variant: str = "") -> Rehearsed:
    """Hold a pack against its design and print every part and every assembly."""
    found = rehearsed(pack, truth_of(folder, variant))
    for one in found.parts:
        far = "not found" if one.mean is None or one.worst is None else f"mean {one.mean:.4f}, worst {one.worst:.4f} mm"
        print(
            f"  {'as meant' if one.reached else 'NOT AS MEANT'} {one.letter}: {far}{'; ' * bool(one.wrong)}{'; '.join(one.wrong)}"
        )
    for well in found.assemblies:
        if well is None:
            print("  NOT PUT UP: an assembly of which nothing stands")
            continue
        print(
            f"  {'stands whole' if is_whole(well) else 'NOT WHOLE'}: {well.found} of {well.panels} boards, {well.stray} where none "
            f"belongs, mean {well.mean:.4f}, worst {well.worst:.4f} mm"
        )
    for said in found.left:
        print(f"  not put up: {said}")
    return found


def summed(every: Sequence[Rehearsed]) -> None:
    """Print the shares that were reached and the errors of the parts and assemblies that were found."""
    parts = [part for one in every for part in one.parts]
    reached = [(part.mean or 0.0, part.worst or 0.0) for part in parts if part.reached]
    wells = [well for one in every for well in one.assemblies]
    whole = [well for well in wells if well is not None and is_whole(well)]
    boards = (
        sum(well.panels for well in wells if well is not None),
        sum(well.found for well in wells if well is not None),
    )
    print(
        f"reached: {len(reached)} of {len(parts)} parts; stand whole: {len(whole)} of {len(wells)} assemblies; of these of"
    )
    print(
        f"which something stands, {boards[1]} of {boards[0]} boards; packs built whole: {sum(map(as_meant, every))} of {len(every)}"
    )
    if reached:
        mean = sum(mean for mean, _ in reached) / len(reached)
        print(f"error of parts: mean {mean:.4f} mm, worst {max(worst for _, worst in reached):.4f} mm")
    if whole:
        mean = sum(well.mean for well in whole) / len(whole)
        print(f"error of solids that stand: mean {mean:.4f} mm, worst {max(well.worst for well in whole):.4f} mm")


def as_meant(one: Rehearsed) -> bool:
    """Say whether all parts and all assemblies of a pack are as meant."""
    return all(part.reached for part in one.parts) and one.whole == len(one.assemblies)


if __name__ == "__main__":
    main()
