"""A pack built as its pages say: which parts lie in layers, which stand, and what no page says the place of."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from tests.rehearsal.crossing import crossed
from tests.rehearsal.lids import with_lids
from tests.rehearsal.meeting import strays, unlike_pictures, unmarked, unmet
from tests.rehearsal.on_faces import with_seated
from tests.rehearsal.order import too_early
from tests.rehearsal.pack import ReadPack
from tests.rehearsal.roofs import with_roofs
from tests.rehearsal.stacking import is_layer, stack_up
from tests.rehearsal.standing import Board, Stood, boards_of, stand

BENT = "bend it"  # what the words of a part that is bent say


@dataclass(frozen=True, slots=True, eq=False)
class Built:
    """Assemblies as they were put up, and what was not, in words."""

    assemblies: tuple[tuple[Stood, ...], ...]
    left: tuple[str, ...]


def built_of(pack: ReadPack) -> Built:
    """Return what a pack makes when it is cut and put up."""
    boards = boards_of(pack.parts, pack.allowance or 0.0)
    lids = {one.part for one in pack.said.reaches}  # what stands out over walls lies on them, and is in no pile
    lying = [part for part in pack.parts if part.letter not in lids]
    layers = {part.letter for part in lying if is_layer(part, pack.said.turned)}
    bent = {part.letter for part in pack.parts if any(BENT in words for words in part.words)}
    piles = stack_up(pack.acts, lying, boards, pack.said.turned)
    panels = [board for board in boards if board.letter not in layers | bent]
    crossing = crossed(panels, pack.parts)
    rest = less(panels, crossing)
    stood, left = stand(rest, pack.said.ends, pack.said.levels) if rest else ((), ())
    stood = (*crossing, *stood)
    stood = with_lids(with_roofs(stood), panels, pack.said.reaches)
    laid = Counter(one.board.letter for pile in piles for one in pile.stood)
    seated = [board for board in boards if board.letter not in bent and not laid[board.letter]]
    stood = with_seated(stood, seated, pack.parts)
    stood = tuple(
        tuple(replace(one, either=one.either or one.board.letter in pack.said.either) for one in own) for own in stood
    )
    left = tuple(_still(left, stood, panels))
    bearing = (*strays(panels), *unmarked(panels, pack.parts), *unlike_pictures(pack.every_act, boards))
    letters = tuple(dict.fromkeys((*unmet(stood[len(crossing) :], panels), *bearing)))
    unlaid = [f"part {board.letter}: no act says where it lies" for board in boards if _unlaid(board, layers, laid)]
    early = too_early(pack.every_act, (*(pile.stood for pile in piles), *stood))
    said = (*(text for pile in piles for text in pile.left), *unlaid, *left, *letters, *early)
    said += tuple(f"part {letter}: it is bent" for letter in sorted(bent))
    return Built((*(pile.stood for pile in piles), *stood), said)


def less(boards: Sequence[Board], stood: Sequence[tuple[Stood, ...]]) -> list[Board]:
    """Return the boards that are left when some stand."""
    placed = Counter(one.board.letter for own in stood for one in own)
    return [
        replace(b, count=b.count - placed[b.letter])
        for b in boards
        if not placed[b.letter] or b.count > placed[b.letter]
    ]


def _still(left: tuple[str, ...], stood: tuple[tuple[Stood, ...], ...], panels: list[Board]) -> Iterator[str]:
    """Yield what is not put up but for parts that found their place later."""
    placed = Counter(one.board.letter for own in stood for one in own)
    whole = {board.letter for board in panels if placed[board.letter] == board.count}
    yield from (text for text in left if not any(text.startswith(f"part {w}: ") and "no place" in text for w in whole))


def _unlaid(board: Board, layers: set[str], laid: Counter[str]) -> bool:
    return board.letter in layers and not laid[board.letter]
