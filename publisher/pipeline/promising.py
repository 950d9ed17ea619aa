"""What the files of a variant must show, promised from its parts and layouts, and how the files belong together."""

from publisher.basics import CutFilePromise, FilePromises, PackFiles, Pose
from publisher.geometry import promised_piece
from publisher.material import promised_sheet, promised_yields
from publisher.pages import Pack
from publisher.pipeline.model import Worked
from publisher.release import (
    pack_name,
    part_name,
    preview_name,
    record_name,
    sheet_name,
    yield_name,
)


def promised_files(worked: Worked, packs: tuple[PackFiles, ...]) -> FilePromises:
    """Return what the files of a variant must show, from its parts and layouts."""
    variant, design, needs = worked.variant, worked.design, worked.needs
    if design is None or needs is None:
        return FilePromises()
    pieces = {piece.id: promised_piece(piece) for piece in worked.pieces}
    boards = {board.id: board for board in design.boards}
    cut = [CutFilePromise(part_name(variant, p.letter, p.part), ((p, Pose()),)) for p in pieces.values()]
    for need in needs.yields:
        for number, layout in enumerate(need.sheets, 1):
            path = sheet_name(variant, need.board, need.sheet, number)
            cut.append(promised_sheet(layout, pieces, boards[need.board], path))
    tables = ((yield_name(variant), promised_yields(needs.yields, pieces)),) if needs.yields else ()
    return FilePromises(packs, tuple(cut), tables)


def file_names(pack: Pack, stem: str, there: frozenset[str]) -> PackFiles:
    """Return how the files of a pack belong together: with the pictures of its pages, unless none of them is ``there``."""
    names = tuple(preview_name(pack.variant, pack.paper.name, page.number) for page in pack.pages)
    shown = any(name in there for name in names)
    return PackFiles(pack_name(stem, pack.paper.name), record_name(stem, pack.paper.name), names if shown else ())
