"""Fold joins gathered into pieces: which panels are cut as one piece of board, and how often."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from math import ceil

from publisher.basics import Finding
from publisher.basics.wording import trimmed
from publisher.design.assembly.neighbours import neighbours, reached
from publisher.design.records import Board, EdgeRef, FoldedPanel, FoldPlan, Join, PanelPlan, PartPlan
from publisher.design.rules import plans as rules

_Signature = tuple[tuple[int, str, int, str, float], ...]
_AlikeFolds = list[tuple[PanelPlan, tuple[FoldedPanel, ...]]]


def plan_folds(
    panels: Sequence[PanelPlan], parts: Sequence[PartPlan], boards: Sequence[Board], found: list[Finding]
) -> tuple[FoldPlan, ...]:
    """Return the folded pieces in the order of their first parts; findings for joins that one piece cannot have.

    Pieces that are alike are one plan with a count. Panels are gathered from the part that comes first in the spec.
    """
    plans = {part.id: part for part in parts}
    order = {part.id: number for number, part in enumerate(parts)}
    skins = {board.id: board.faces for board in boards}
    alike: dict[_Signature, _AlikeFolds] = defaultdict(list)
    for plan in panels:
        part_at = {place.name: place.part for place in plan.places}
        folds = [join for join in plan.joins if join.joint == "fold"]
        if not _foldable(plan, folds, part_at, plans, skins, found):
            continue
        ranks = [place.name for place in sorted(plan.places, key=lambda place: order.get(place.part, 0))]
        for names in _pieces(folds, ranks):
            walks = [_walk(name, folds, part_at) for name in names]
            alike[min(_signature(walk, order) for walk in walks)].append((plan, walks[0]))
    groups = sorted(alike.values(), key=lambda group: order[group[0][1][0].part])
    before = len(found)
    found.extend(_otherwise(groups, plans))
    return () if len(found) > before else tuple(_planned(group, plans) for group in groups)


def _foldable(
    plan: PanelPlan,
    folds: Sequence[Join],
    part_at: dict[str, str],
    plans: dict[str, PartPlan],
    skins: dict[str, str],
    found: list[Finding],
) -> bool:
    """Tell whether pieces of board can have all folds of an assembly; findings where they cannot, or where they would break."""
    if not all(part_at[ref.panel] in plans for join in folds for ref in (join.a, join.b)):
        return False  # a part on a board that is not there has its own finding
    found.extend(_bare(plan, folds, part_at, plans, skins))
    impossible = list(_impossible(plan, folds, part_at, plans))
    found.extend(impossible)
    return not impossible


def _bare(
    plan: PanelPlan, folds: Sequence[Join], part_at: dict[str, str], plans: dict[str, PartPlan], skins: dict[str, str]
) -> Iterator[Finding]:
    for join in folds:
        board = plans[part_at[join.a.panel]].board
        if skins[board] == "bare":
            yield rules.FOLD_SKIN.found(
                f"{join.a} is folded, and the board {board} is bare",
                subject=f"assembly {plan.name}",
                hint="bare foam breaks along the groove: use board with faces: paper_one (outside) or paper_both",
                place=join.place,
            )


def _impossible(
    plan: PanelPlan, folds: Sequence[Join], part_at: dict[str, str], plans: dict[str, PartPlan]
) -> Iterator[Finding]:
    """Find folds that close a ring, that do not bend, or of parts that cannot be one piece."""
    piece_of = {name: name for name in part_at}

    def head(name: str) -> str:
        while piece_of[name] != name:
            name = piece_of[name]
        return name

    for join in folds:
        one, other = plans[part_at[join.a.panel]], plans[part_at[join.b.panel]]
        a, b = head(join.a.panel), head(join.b.panel)
        piece_of[b] = a
        what = hint = ""
        if a == b:
            what = f"the fold {join.a} – {join.b} closes a ring: flat board cannot lie in one"
            hint = "leave one edge of the ring for another joint, such as mitre"
        elif join.corner > 180.0 - 1e-6:
            what = f"the fold {join.a} – {join.b} has a corner of {trimmed(join.corner, 2)}° and bends nothing"
            hint = "write a corner below 180 deg, or make one part of the two"
        elif one.board != other.board:
            what = f"{join.a} is of {one.board} and {join.b} of {other.board}; folded parts are one piece of board"
            hint = "use one board for both, or another joint"
        elif one.trace_allowance != other.trace_allowance:
            what = f"{one.id} and {other.id} are folded from one piece and have two trace allowances"
            hint = "give both parts the same trace_allowance"
        for part in (one, other):
            if part.splits or part.mirrored:
                why = "split in pieces" if part.splits else "cut as mirror images too"
                what, hint = f"{part.id} is folded and {why}", "use another joint at this edge, or drop the other wish"
        if what:
            yield rules.FOLD.found(what, subject=f"assembly {plan.name}", hint=hint, place=join.place)


def _pieces(folds: Sequence[Join], ranks: Sequence[str]) -> Iterator[list[str]]:
    """Yield the names of the places of each piece, in the order given."""
    near = neighbours((join.a.panel, join.b.panel) for join in folds)
    seen: set[str] = set()
    for name in ranks:
        if name in seen or name not in near:
            continue
        own = reached(name, near)
        seen |= own
        yield [other for other in ranks if other in own]


def _walk(name: str, folds: Sequence[Join], part_at: dict[str, str]) -> tuple[FoldedPanel, ...]:
    """Return the panels of the piece that holds a place, from there on along the folds, by the names of edges."""
    first = min((j for j in folds if name in (j.a.panel, j.b.panel)), key=lambda j: (j.place.line, j.place.column))
    found = [FoldedPanel(part_at[name], "", -1, "", 180.0, first.place)]
    names = [name]
    for number, here in enumerate(names):  # grows as it goes
        for own, other, join in sorted(_at(here, folds), key=lambda item: item[0].edge):
            if other.panel not in names:
                names.append(other.panel)
                found.append(FoldedPanel(part_at[other.panel], other.edge, number, own.edge, join.corner, join.place))
    return tuple(found)


def _at(name: str, folds: Sequence[Join]) -> Iterator[tuple[EdgeRef, EdgeRef, Join]]:
    for join in folds:
        if join.a.panel == name:
            yield join.a, join.b, join
        elif join.b.panel == name:
            yield join.b, join.a, join


def _signature(walk: Sequence[FoldedPanel], order: dict[str, int]) -> _Signature:
    return tuple((order[p.part], p.edge, p.on, p.on_edge, round(p.corner, 6)) for p in walk)


def _otherwise(groups: Sequence[_AlikeFolds], plans: dict[str, PartPlan]) -> Iterator[Finding]:
    """Find parts that are folded in several ways, or of which not all copies are folded."""
    group_of: dict[str, int] = {}
    for number, group in enumerate(groups):
        plan, walk = group[0]
        for part, times in Counter(panel.part for panel in walk).items():
            place = next(panel.place for panel in walk if panel.part == part)
            needed, folded = plans[part].count, times * len(group)
            what = ""
            if group_of.setdefault(part, number) != number:
                what = f"the part {part} is folded in two different ways"
            elif needed != folded and not any(p.part == part for other in groups[number + 1 :] for p in other[0][1]):
                what = f"the part {part} is needed {needed} times, and folded to others {folded} times"
            if what:
                yield rules.FOLD.found(
                    what,
                    subject=f"assembly {plan.name}",
                    hint="one template has one outline: fold every copy alike, or make two parts of it",
                    place=place,
                    value=float(folded),
                    limit=float(needed),
                )


def _planned(group: _AlikeFolds, plans: dict[str, PartPlan]) -> FoldPlan:
    walk = group[0][1]
    times = Counter(panel.part for panel in walk)
    spare = max(ceil(plans[part].spare / many) for part, many in times.items())
    return FoldPlan(f"{walk[0].part}_folded", walk, tuple(times), len(group), spare)
