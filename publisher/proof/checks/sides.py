"""Which side of a template is up, whether it may be flipped, which end is its top: as the placed parts have it."""

from collections.abc import Iterator, Sequence

import shapely

from publisher.basics import Check, Findings, OutlinePromise, SidePromise
from publisher.proof.checks.frame import about, copy_name, judged, page_name, words_at
from publisher.proof.measuring import Case, lines_in, shown_ground
from publisher.proof.reading import normal, says

UP = "THIS SIDE UP"
KEEP = "Do not flip"
TOP = "top"
FACES = {"outside": "the outside face", "inside": "the inside face", "climbs": "the arrow climbs"}


@judged(
    "proof/side-up",
    "Sides as the parts lie and stand",
    "a piece cut from the wrong side is a mirror image: an outside that shows foam, a stair that climbs the wrong way",
    may_be_empty=True,
)
def sides_up(case: Case, check: Check[Case]) -> Findings:
    """Read what each printed copy says of its sides, in its own words on the page, and look for such words elsewhere."""
    promised = {(side.part, side.mirrored): side for side in case.promises.sides}
    copies: dict[tuple[str, int, bool], list[OutlinePromise]] = {}
    for outline in case.promises.outlines:
        copies.setdefault((outline.part, outline.copy, outline.pose.mirrored), []).append(outline)
    hint = "print what the part's place in the assembly asks for"
    for (part, copy, mirrored), outlines in copies.items() if promised else ():
        side = promised.get((part, mirrored))
        if side is None:
            yield about(check, copy_name(outlines[0]), ": nobody worked out which side is up", hint)
            continue
        fault = _fault(case, side, copy, outlines)
        if fault:
            yield about(check, f"{page_name(outlines[0].page)}: {copy_name(outlines[0])}", fault, hint)
    for number, words in _strays(case) if promised else ():
        yield about(check, page_name(number), f": “{words}” belongs to no part", hint)
    return len(copies) if promised else 0


def _fault(case: Case, side: SidePromise, copy: int, outlines: list[OutlinePromise]) -> str:
    """Return in words what a copy says otherwise than promised; empty when nothing."""
    places = [where for where in case.carried(side.key) if where.copy == copy]
    said = normal(" ".join(words_at(case, where) for where in places))
    faces = [name for name, words in FACES.items() if says(said, f"{UP}: {words}")]
    either = side.face == "either"
    wanted: list[str] = [side.face] if side.face and not either else []
    for right, what in (
        (says(said, UP) != either, f"says “{UP}” of a piece that has none" if either else f"does not say “{UP}”"),
        (faces == wanted, f"says {_faces(faces)} is up; promised is {_faces(wanted)}"),
        (says(said, KEEP) != side.flip, f"{'must not' if side.flip else 'does not'} say “{KEEP}”"),
        (
            _topped(case, outlines, said) == side.top,
            "does not name its top" if side.top else "names a top and stands nowhere",
        ),
    ):
        if not right:
            return what
    return ""


def _faces(names: Sequence[str]) -> str:
    return " and ".join(f"“{FACES[name]}”" for name in names) or "no named face"


def _topped(case: Case, outlines: list[OutlinePromise], said: str) -> bool:
    """Say whether the word that names the upper end stands in the words of a copy, or on it."""
    if says(said, TOP):
        return True
    for outline in outlines:
        words = [line for line in case.lines(outline.page) if normal(line.text) == TOP]
        if words:
            ground = shown_ground(outline)
            if any(ground.contains(shapely.Point(line.middle())) for line in words):
                return True
    return False


def _strays(case: Case) -> Iterator[tuple[int, str]]:
    """Yield words about sides that stand where no copy says them: page and words."""
    keys = {side.key for side in case.promises.sides}
    places = [where for where in case.promises.carried if where.key in keys]
    for number in dict.fromkeys(outline.page for outline in case.promises.outlines):
        here = [line for where in places if where.page == number for line in lines_in(case.lines(number), where.box)]
        for line in case.lines(number):
            words = next((w for w in (UP, KEEP) if says(normal(line.text), w)), "")
            if words and line not in here:
                yield number, words
