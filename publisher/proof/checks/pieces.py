"""Each printed copy is that piece: its template, its letter, how many of it are cut and how large they are, the words at its edges."""

import re
from collections.abc import Iterator
from itertools import compress

import numpy as np
import shapely

from publisher.basics import Check, Findings, OutlinePromise, PrintPromise, RowPromise, WordPromise
from publisher.proof.checks.frame import about, copy_name, judged, page_name, without_name, words_at
from publisher.proof.measuring import Case, shown_ground
from publisher.proof.reading import MM_PER_INCH, TextLine, normal, says

COUNT = re.compile(r"\bcut (\d+)(?: \+ (\d+) spare)?(?:: this is (\d+) of (\d+))?")
MIRRORED = re.compile(r"(?:(\d+) as drawn, )?(\d+) mirrored: turn")
SIZE = re.compile(r"(\d+\.\d+) × (\d+\.\d+) (mm|in)")
HALF = {"mm": 0.05, "in": 0.0051}  # of the last digit; inches are those of the millimetres shown
WORD_FAR = 26.0  # mm from its place to words that find no room nearer, however long they are
ANGLE = re.compile(r"(?:bevel )?(\d+(?:\.\d+)?)°.*")
LETTER = re.compile(r"[a-z]{1,2}")
WORD_ROOM = 8.0  # mm: the radius of a round place near a word's own, in which it surely has room
ROOM_WITHIN = 20.0  # mm

OneCopy = tuple[str, int]


@judged(
    "proof/piece",
    "Each print is that piece, and says so",
    "what is cut out has its template's shape, its own letter, count and size: a label of another piece, or a wrong number in it, sends "
    "every copy to the wrong place",
    may_be_empty=True,
)
def pieces_shown(case: Case, check: Check[Case]) -> Findings:
    """Hold what each copy draws and says against the piece as it was made and counted."""
    pieces = {piece.part: piece for piece in case.promises.prints}
    rows = {row.part: row for row in case.promises.rows}
    copies = _copies(case) if pieces else {}
    hint = "draw and label each copy from the part itself"
    for (part, copy), outlines in copies.items():
        piece, row = pieces.get(part), rows.get(part)
        who = f"{page_name(outlines[0].page)}: {copy_name(outlines[0])}"
        if piece is None or row is None:
            yield about(check, who, ": nobody made or counted such a piece", hint)
            continue
        if fault := _other_shape(piece, outlines) or _said_wrongly(case, piece, row, copy):
            yield about(check, who, fault, hint)
    for part, row in rows.items() if pieces else ():
        if fault := _copies_missing(row, [outlines[0] for (name, _), outlines in copies.items() if name == part]):
            yield about(check, f"part {row.letter} ({part})", fault, "print one template, or every copy")
    return len(copies)


@judged(
    "proof/edge-words",
    "Letters and angles at their edges",
    "pieces are joined letter to letter and cut at the angle beside the edge: each stands at its edge, and no other does",
    may_be_empty=True,
)
def edge_words(case: Case, check: Check[Case]) -> Findings:
    """Look for the word at each place of each copy, and for words of that kind that belong to no place."""
    pieces = {piece.part: piece for piece in case.promises.prints}
    looked = 0
    hint = "print the letter of the join, or the angle of the bevel, beside its edge"
    for outlines in _copies(case).values():
        piece = pieces.get(outlines[0].part)
        if piece is None:
            continue
        looked += len(piece.words)
        drawn = [WordsOn(case, piece, outline) for outline in outlines]
        for one in drawn:
            for words in one.strays():
                what = f": “{words}” stands at no edge that it belongs to"
                yield about(check, f"{page_name(one.outline.page)}: {copy_name(one.outline)}", what, hint)
        for place, word in enumerate(piece.words):
            if any(one.has_room(place) for one in drawn) and not any(one.says(place) for one in drawn):
                who = f"{page_name(outlines[0].page)}: {copy_name(outlines[0])}"
                yield about(check, who, f": “{word.text}” does not stand at its edge", hint)
    return looked


def _copies(case: Case) -> dict[OneCopy, list[OutlinePromise]]:
    found: dict[OneCopy, list[OutlinePromise]] = {}
    for outline in case.promises.outlines:
        found.setdefault((outline.part, outline.copy), []).append(outline)
    return found


def _other_shape(piece: PrintPromise, outlines: list[OutlinePromise]) -> str:
    """Return in words that a copy is drawn as another shape, or under another letter; empty when it is not."""
    for outline in outlines:
        if outline.rings != piece.rings:
            return " is not drawn as the template that was made of it"
        if outline.letter != piece.letter:
            return f" bears the letter {outline.letter}; its own is {piece.letter}"
    return ""


def _copies_missing(row: RowPromise, copies: list[OutlinePromise]) -> str:
    """Return in words that a part is printed neither once nor as often as it is cut; empty when it is."""
    whole = row.count + row.spare
    if len(copies) <= 1:
        return ""
    if len(copies) != whole:
        return f" is printed {len(copies)} times; {whole} are cut"
    mirrored = sum(outline.pose.mirrored for outline in copies)
    return f" is mirrored in {mirrored} prints; {row.mirrored} are needed so" if mirrored != row.mirrored else ""


def _said_wrongly(case: Case, piece: PrintPromise, row: RowPromise, copy: int) -> str:
    """Return in words what a copy's label says otherwise than promised, with or without what the name says; empty when nothing."""
    keys = {side.key for side in case.promises.sides if side.part == piece.part}
    places = [where for key in sorted(keys) for where in case.carried(key) if where.copy == copy]
    said = [words_at(case, where) for where in places]
    fault = _label_wrong(case, piece, row, copy, said)
    return fault and _label_wrong(case, piece, row, copy, [without_name(words, row.name) for words in said])


def _label_wrong(case: Case, piece: PrintPromise, row: RowPromise, copy: int, said: list[str]) -> str:
    if not any(says(words, piece.letter) for words in said):
        return f" does not say that it is {piece.letter}"
    counts = [found for words in said for found in COUNT.findall(words)]
    whole = str(row.count + row.spare)
    printed = {outline.copy for outline in case.promises.outlines if outline.part == piece.part}
    numbered = len(printed) == row.count + row.spare and any(says(words, f"{copy} of {whole}") for words in said)
    if not counts and not numbered:
        return f" does not say how many are cut: {row.count}"
    for count, spare, this, of in counts:
        right = int(count) == row.count and (not spare or int(spare) == row.spare)
        if not right or (this and (int(this), of) != (copy, whole)):
            return f" says that {count}{' and ' + spare if spare else ''} are cut; it is {row.count} and {row.spare} to spare"
    for words in said:
        for as_drawn, mirrored in MIRRORED.findall(words):
            if (int(as_drawn or 0), int(mirrored)) != (row.count - row.mirrored, row.mirrored):
                return f" says that {mirrored} are mirrored; it is {row.mirrored} of {row.count}"
        for across, up, unit in SIZE.findall(words):
            if not _is_size(float(across), float(up), unit, row):
                return f" says it measures {across} × {up} {unit}; the piece is {row.width:.2f} × {row.height:.2f} mm"
    return ""


def _is_size(across: float, up: float, unit: str, row: RowPromise) -> bool:
    worth, half = (1.0, HALF[unit]) if unit == "mm" else (MM_PER_INCH, HALF[unit])
    rounded = 0.05 / worth if unit == "in" else 0.0
    return all(
        abs(value - size / worth) <= half + rounded + 1e-6
        for value, size in zip((across, up), (row.width, row.height), strict=True)
    )


class WordsOn:
    """What one outline on a page shows of the words at the places of its piece."""

    def __init__(self, case: Case, piece: PrintPromise, outline: OutlinePromise) -> None:
        """Collect the lines of words inside the outline."""
        self.outline = outline
        self.ground = shown_ground(outline)
        lines = case.lines(outline.page)
        middles = np.array([line.middle() for line in lines]).reshape(-1, 2)
        self.inside = list(compress(lines, shapely.contains_xy(self.ground, middles)))
        self.names = case.titles.union(map(normal, piece.names))
        self.places = [(word, outline.pose.apply(word.at)) for word in piece.words]

    def strays(self) -> Iterator[str]:
        """Yield words of this kind that belong to no place near them."""
        for line in filter(_kind, self.inside):
            if normal(line.text) in self.names:
                continue  # a part may be called so
            if not any(_says_it(line, word) and _away(line, at) <= WORD_FAR for word, at in self.places):
                yield normal(line.text)

    def has_room(self, place: int) -> bool:
        """Say whether a place lies on what is shown here, and has room for its word close by."""
        here = shapely.Point(self.places[place][1])
        roomy = self.ground.buffer(-WORD_ROOM)
        return bool(self.ground.distance(here) <= 0.5 and roomy.distance(here) <= ROOM_WITHIN)

    def says(self, place: int) -> bool:
        """Say whether the word of a place stands near it."""
        word, at = self.places[place]
        return any(_says_it(line, word) and _away(line, at) <= WORD_FAR for line in self.inside)


def _kind(line: TextLine) -> str:
    """Return of which kind of words at edges a line is: a letter, an angle, or neither."""
    words = normal(line.text)
    if LETTER.fullmatch(words):
        return "letter"
    return "bevel" if ANGLE.fullmatch(words) else ""


def _says_it(line: TextLine, word: WordPromise) -> bool:
    said, wanted = normal(line.text), normal(word.text)
    return said in (wanted, f"bevel {wanted}")


def _away(line: TextLine, at: tuple[float, float]) -> float:
    return float(line.area().distance(shapely.Point(at)))
