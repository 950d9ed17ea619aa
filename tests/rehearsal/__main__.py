"""``python -m tests.rehearsal PACK.pdf … [--design FOLDER [--variant NAME]] [--random 0-29] [--plants FOLDER]``.

Prints what the pages of each pack say of its parts, and what could not be read. With the design, or of random ones: how far each part
that would be cut is off, the share that was reached, and the mean error.
"""

import argparse
from collections.abc import Iterable
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

from publisher import api
from publisher.press import write_pdf
from tests.rehearsal.compare import TRUE, Held, held
from tests.rehearsal.compare_standing import stood_well
from tests.rehearsal.pack import ReadPack, read_pack
from tests.rehearsal.planted import planted
from tests.rehearsal.standing import boards_of, stand
from tests.rehearsal.tried import random_packs
from tests.rehearsal.truth import true_panels, true_parts


def main() -> None:
    """Rehearse packs and print what came of it."""
    parser = argparse.ArgumentParser(prog="python -m tests.rehearsal", description=__doc__)
    parser.add_argument("packs", nargs="*", type=Path, help="finished PDFs")
    parser.add_argument("--design", type=Path, help="the folder that these packs were made from")
    parser.add_argument("--variant", default="", help="and the variant of it")
    parser.add_argument("--random", default="", help="first-last seed of random designs to build and rehearse")
    parser.add_argument("--plants", type=Path, help="a design whose pack is spoiled in one way after another")
    asked = parser.parse_args()
    every: list[Held] = []
    whole: list[bool] = []
    for pdf in asked.packs:
        start = perf_counter()
        pack = read_pack(pdf)
        print(f"{pdf.name}: {len(pack.parts)} templates, {perf_counter() - start:.0f} s")
        show(pack)
        if asked.design:
            every += compared(pack, asked.design, whole, asked.variant)
    if asked.random:
        first, _, last = asked.random.partition("-")
        with TemporaryDirectory() as top:
            for tried in random_packs(range(int(first), int(last or first) + 1), Path(top)):
                start = perf_counter()
                pack = read_pack(tried.pdf)
                print(f"{tried.name}: {len(pack.parts)} templates, {perf_counter() - start:.0f} s")
                unread(pack)
                every += compared(pack, tried.folder, whole)
                tried.pdf.unlink()
    if asked.plants:
        plants(asked.plants)
    if every:
        summed(every, whole)


def plants(folder: Path) -> None:
    """Spoil the first pack of a design in one way after another and print which rehearsals fail, as all must."""
    composed = api.compose(api.work(api.read(folder)))[0][0]
    truth, panels = true_parts(folder), true_panels(folder)
    most = -1  # panels that the pack stands as it is
    with TemporaryDirectory() as top:
        pdf = Path(top) / "pack.pdf"
        for name, spoiled in (("nothing", composed), *planted(composed)):
            pdf.write_bytes(write_pdf(spoiled))
            pack = read_pack(pdf)
            off = [one for one in held(pack, truth) if not one.reached]
            stood = stood_well(stand(boards_of(pack.parts, pack.allowance or 0.0))[0], panels)
            found = stood.found - stood.stray if stood else 0
            most = found if name == "nothing" else most
            if found < most:
                print(f"  stood: {found} panels, of {most}", end=" ")
            said = "; ".join(
                (*(f"{one.letter} {one.worst or 0.0:.2f} mm {', '.join(one.wrong)}" for one in off), *pack.unread)
            )
            print(f"{name}: {'FAILS' if off or found < most else 'is built as meant'} {said}", flush=True)


def show(pack: ReadPack) -> None:
    """Print what was read of each part."""
    for part in pack.parts:
        left, bottom, right, top = part.area.bounds if not part.area.is_empty else (0.0, 0.0, 0.0, 0.0)
        pages = ", ".join(map(str, sorted(set(part.pages))))
        holes = f", {len(part.area.interiors)} openings" if part.area.interiors else ""
        print(
            f"  {part.letter or '?'}: page {pages}, cut {part.count} + {part.spare}, {part.board} {part.thickness:g} mm, "
            f"template {right - left:.2f} × {top - bottom:.2f} mm{holes}"
        )
    print("  pencil:", "not read" if pack.allowance is None else f"{pack.allowance:g} mm")
    unread(pack)


def unread(pack: ReadPack) -> None:
    """Print what the reader states as not read."""
    for said in pack.unread:
        print(f"  not read: {said}")


def compared(pack: ReadPack, folder: Path, whole: list[bool], variant: str = "") -> tuple[Held, ...]:
    """Hold a pack against its design and print every part that is off; add to ``whole`` whether all of it was stood as meant."""
    found = held(pack, true_parts(folder, variant))
    stood, left = stand(boards_of(pack.parts, pack.allowance or 0.0))
    well = stood_well(stood, true_panels(folder, variant)) if len(stood) > 1 else None
    if well is not None:
        print(
            f"  stood by letters: {well.found} of {well.panels} panels of an assembly, {well.stray} boards where none belongs, "
            f"mean {well.mean:.4f}, worst {well.worst:.4f} mm"
        )
    whole.append(not left and well is not None and well.found == well.panels and not well.stray and well.worst <= TRUE)
    for said in left:
        print(f"  not stood: {said}")
    for one in found:
        far = "not found" if one.mean is None or one.worst is None else f"mean {one.mean:.4f}, worst {one.worst:.4f} mm"
        print(
            f"  {'as meant' if one.reached else 'NOT AS MEANT'} {one.letter}: {far}{'; ' * bool(one.wrong)}{'; '.join(one.wrong)}"
        )
    return found


def summed(every: Iterable[Held], whole: list[bool]) -> None:
    """Print the shares that were reached and the errors of the parts that were found."""
    every = tuple(every)
    means = [one.mean for one in every if one.mean is not None]
    worsts = [one.worst for one in every if one.worst is not None]
    reached = [one for one in every if one.reached]
    print(f"reached: {len(reached)} of {len(every)} parts; stood whole: {sum(whole)} of {len(whole)} packs")
    if reached:
        good = [(one.mean or 0.0, one.worst or 0.0) for one in reached]
        print(
            f"error of those reached: mean {sum(m for m, _ in good) / len(good):.4f} mm, worst {max(w for _, w in good):.4f} mm"
        )
    if len(means) > len(reached):
        print(f"worst of all found: {max(worsts):.3f} mm")


if __name__ == "__main__":
    main()
