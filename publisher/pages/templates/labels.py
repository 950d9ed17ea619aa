"""What a template says about itself: blocks of words and tick boxes, set in several ways so that one of them fits.

A block has its lower left corner at (0, 0). ``placed`` puts it on the page; ``label_room`` finds where. What a piece must not lose
when it is cut out (its letter, how many, which side up) can be set as a block of its own, down to two separate ones.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Literal

from publisher.basics import Layer, Path, Point, Pose, polyline, record
from publisher.pages.model import Drawn, Fill, LineStyle, Stroke, Words
from publisher.pages.templates.label_words import Says
from publisher.pages.templates.top_marks import TOP
from publisher.pages.type import BODY, LEAST, LETTER, NOTE, SMALL, Setter, TypeStyle

TAG = LineStyle("tag", 0.35)
TICK_BOX = LineStyle("tick_box", 0.18)
MEASURES = (110.0, 84.0, 70.0, 60.0, 52.0, 45.0, 39.0, 34.0, 29.0, 24.0)  # mm
BESIDE_MEASURES = (70.0, 52.0, 39.0, 110.0, 29.0)  # of words beside a part
NARROW_MEASURES = (60.0, 40.0, 28.0, 20.0, 14.0, 10.0)  # of the words that a piece must not lose, without a tag
STYLES = (SMALL, NOTE, LEAST)
_NAMES = {SMALL: BODY, NOTE: SMALL, LEAST: NOTE}  # a part's name is set one size larger
_LETTERS = {SMALL: 1.0, NOTE: 0.8, LEAST: 0.7}
_SMALL_TAG = 0.55
LOW_MEASURE = 150.0  # of a block in two columns
COLUMN_GAP = 5.0
CUT_CORNER = 2.2
DEEP = frozenset("JQÇŞ")  # capitals that reach below the line
DESCENT = 0.24  # of the size: how far
BLOCK_MARGIN = 0.2  # round a block, for the width of lines
BESIDE_TAG = 16.0  # least measure in which words stand beside the tag, not under it
MANY = 60  # more copies than this share tick boxes
FLAG = "Cut this flag off last."
TOP_ARROW = 5.0  # mm

LabelForm = Literal["whole", "low", "row", "column", "run", "tag", "letter", "rest", "named", "details", "face", "flag"]
WITH_NOTES: tuple[LabelForm, ...] = ("whole", "low", "details", "flag")  # that say all that a label may lose
UNTAGGED: tuple[LabelForm, ...] = ("letter", "rest", "run", "face")  # words alone


@record
class Label:
    """A block set at one size of type and one measure: its own width and height in mm.

    ``form``: ``whole`` and ``low`` (in two columns) say all; ``row`` and ``column`` what a piece must not lose, beside or under
    its tag, ``run`` the same in lines without a tag; ``tag``, ``letter`` (small, without a tag) and ``rest`` are its parts;
    ``named`` is the tag with the name; ``face`` which face is up, with the letter; ``details`` is what the piece may lose;
    ``flag`` says all, on a flag.
    """

    width: float
    height: float
    says: Says
    style: TypeStyle
    measure: float
    form: LabelForm = "whole"
    ease: float = 1.0  # how well it reads against another of its size: less when sentences are broken
    promised: tuple[str, ...] = ()  # what the page promises to show: the words that a piece may not lose, line by line


def blocks(setter: Setter, said: Says, sizes: tuple[TypeStyle, ...] = STYLES[:2]) -> Iterator[tuple[Label, ...]]:
    """Yield groups of settings of the whole label, best to read first: larger type before smaller, then low and wide ones in two
    columns, and last those that are taller than wide."""
    usual = []
    for style in sizes:
        usual.append(_settings(setter, said, style, MEASURES, "whole"))
        yield tuple(b for b in usual[-1] if b.width >= b.height)
    yield tuple(_set(setter, said, style, LOW_MEASURE, "low") for style in sizes)
    for group in usual:
        yield tuple(b for b in group if b.width < b.height)


def identities(setter: Setter, said: Says) -> Iterator[tuple[Label, ...]]:
    """Yield groups of settings of what a piece must not lose, best to read first."""
    for style in (NOTE, LEAST):
        yield tuple(_set(setter, said, style, MEASURES[0], form) for form in ("row", "column"))
    yield _settings(setter, said, LEAST, NARROW_MEASURES, "run")


def letters(setter: Setter, said: Says) -> Iterator[tuple[Label, ...]]:
    """Yield settings of the letter alone, the largest first."""
    ways: tuple[tuple[LabelForm, tuple[TypeStyle, ...]], ...] = (
        ("tag", (NOTE, LEAST)),
        ("letter", (SMALL, NOTE, LEAST)),
    )
    for form, styles in ways:
        for style in styles:
            yield (_set(setter, said, style, MEASURES[0], form),)


def alone(setter: Setter, said: Says) -> Iterator[tuple[Label, ...]]:
    """Yield, for each thing that a piece must not lose beside its letter, settings of it alone: the longest first."""
    each = [replace(said, sides=()), *(replace(said, cut="", sides=(side,)) for side in said.sides)]
    for one in sorted(each, key=lambda s: -len(s.cut + "".join(s.sides))):
        yield _settings(setter, one, LEAST, NARROW_MEASURES, "rest")


def rests(setter: Setter, said: Says) -> tuple[Label, ...]:
    """Return settings of what a piece must not lose without its letter."""
    return _settings(setter, said, LEAST, NARROW_MEASURES, "rest")


def details(setter: Setter, said: Says) -> Iterator[tuple[Label, ...]]:
    """Yield groups of settings of what a piece may lose, to stand anywhere near it."""
    for style in (NOTE, LEAST):
        yield _settings(setter, said, style, BESIDE_MEASURES, "details")


def faces(setter: Setter, said: Says) -> tuple[Label, ...]:
    """Return settings of which face of a piece is up, where there is room for nothing else."""
    return _settings(setter, said, LEAST, (*BESIDE_MEASURES, *NARROW_MEASURES[3:]), "face")


def flags(setter: Setter, said: Says) -> tuple[Label, ...]:
    """Return settings of the whole label for a flag."""
    return _settings(setter, said, NOTE, BESIDE_MEASURES, "flag")


def small_blocks(setter: Setter, said: Says) -> Iterator[tuple[Label, ...]]:
    """Yield settings of the letter and name alone, for the tiles beside the one that has the whole label."""
    for measure in (45.0, 30.0):
        yield (_set(setter, said, NOTE, measure, "named"),)


def reset(label: Label, setter: Setter, said: Says) -> Label:
    """Return other words set as a label is set, no wider or higher than it; what is the same for all copies stays as it is.

    A shorter number may fit on a line that the label's own words had to leave: then they are broken at its width, not its measure.
    """
    if label.form == "rest":  # a part of what a piece must not lose
        said = replace(label.says, cut=label.says.cut and said.cut)
    own = _set(setter, said, label.style, label.measure, label.form)
    return own if own.width <= label.width else _set(setter, said, label.style, label.width, label.form)


def _settings(
    setter: Setter, said: Says, style: TypeStyle, measures: tuple[float, ...], form: LabelForm
) -> tuple[Label, ...]:
    found: list[Label] = []
    for measure in measures:
        if found and measure < found[-1].measure and found[-1].width <= measure:
            continue  # nothing was broken at the wider measure either
        found.append(_set(setter, said, style, measure, form))
    return tuple(found)


def _set(setter: Setter, said: Says, style: TypeStyle, measure: float, form: LabelForm) -> Label:
    block = _Block(setter, said, style, measure, form)
    ease = 0.75**block.breaks
    return Label(block.width, block.height, said, style, measure, form, ease, tuple(block.promised))


def placed(label: Label, setter: Setter, pose: Pose, up: float = 0.0) -> tuple[Drawn, ...]:
    """Return what is drawn of a block, carried to the page. The pose may turn the block; it never mirrors. ``up``: the turn (degrees)
    in which the part lies, whose upper end an arrow may show."""
    block = _Block(setter, label.says, label.style, label.measure, label.form, draw=True, up=up - pose.turn)
    lift = Pose(BLOCK_MARGIN, block.height)
    return tuple(_carried(_carried(thing, lift), pose) for thing in block.drawn)


def _carried(thing: Drawn, pose: Pose) -> Drawn:
    if isinstance(thing, Words):
        x, y = pose.apply((thing.x, thing.y))
        return replace(thing, x=x, y=y, turn=thing.turn + pose.turn)
    if isinstance(thing, Stroke | Fill):
        return replace(thing, paths=tuple(path.placed(pose) for path in thing.paths))
    raise TypeError(f"a label holds no {type(thing).__name__}")


def tag_size(setter: Setter, label: Label) -> tuple[float, float]:
    """Return width and height of the tag in a label's upper left corner; nothing of words that have none."""
    if label.form in UNTAGGED:
        return 0.0, 0.0
    return _tag(setter, label.says.letter, _LETTERS[label.style])[1:]


def _tag(setter: Setter, letter: str, scale: float) -> tuple[TypeStyle, float, float]:
    """Return the type of a letter in its tag, and the tag's width and height."""
    big = replace(LETTER, size=LETTER.size * scale)
    tall = setter.cap(big) + 4.4 * min(1.0, 1.2 * scale)
    return big, max(tall, setter.width(letter, big) + 4.0 * min(1.0, 1.2 * scale)), tall


class _Block:
    """Sets a label from the top down; y is 0 at the top and negative below. Without ``draw`` it only measures."""

    def __init__(
        self,
        setter: Setter,
        said: Says,
        style: TypeStyle,
        measure: float,
        form: LabelForm,
        *,
        draw: bool = False,
        up: float = 0.0,
    ) -> None:
        self.type = setter
        self.style = style
        self.measure = measure - 2 * BLOCK_MARGIN
        self.draw = draw
        self.up = up
        self.drawn: list[Drawn] = []
        self.y = self.wide = self.left = 0.0
        self.breaks = 0
        self.promised: list[str] = []
        self.bottom = 0.0  # of what stands beside the last line
        if form in ("whole", "low", "details", "flag"):
            self._whole(said, form)
        else:
            self._identity(said, form)
        self.height = max(-self.y, -self.bottom)
        self.width = self.wide + 2 * BLOCK_MARGIN

    def _whole(self, said: Says, form: LabelForm) -> None:
        """Set the tag with name, count and board, and under them (``low``: beside them) the rest."""
        self._headed(said.letter, _LETTERS[self.style])
        self.promised += self._named(said.name)
        self._text(said.copies, self.style.bold())
        self._text(said.board, self.style)
        first_column = self.y = min(self.y, self.bottom - 0.8)
        self.left = self.wide + COLUMN_GAP if form == "low" else 0.0
        if form == "low":
            self.y = 0.0
        else:
            self.y -= 0.6 if sum(said.boxes) else 0.0
        self._body(said, form != "details")
        if form == "flag":
            self._text(FLAG, self.style)
        self.bottom = first_column

    def _body(self, said: Says, whole: bool) -> None:
        """Set tick boxes, size and notes; ``whole``: what a piece must not lose is among them, and promised."""
        if sum(said.boxes):
            self._ticks(said.boxes)
            self.y -= 0.4
        # a size is read as one word: the block is as wide as it, where the measure is narrower
        self.measure = max(self.measure, self.left + max(self.type.width(text, self.style) for text in said.size))
        joined = " ".join(said.size).strip()
        fits = self.left + self.type.width(joined, self.style) <= self.measure
        for text in (joined,) if fits else said.size:
            self._text(text, self.style)
        self.promised.append(said.size[0].removeprefix("finished ").replace("\u00a0", " "))
        up, *others = said.sides or ("",)
        if up and (whole or said.face):
            lines = self._text(f"{up}: {said.face}" if said.face else up, self.style.bold() if whole else self.style)
            self.promised += [up] if up in lines[0] else lines
        for text in others if whole else ():
            self.promised += self._text(text, self.style)
        if said.top:
            self._top_arrow()
        self.promised += [said.letter, said.cut.replace("\u00a0", " ")]
        for note in said.notes:
            self._text(note, self.style)
        for measure in said.measures:
            self.promised += self._text(measure, self.style)

    def _top_arrow(self) -> None:
        """Set the word for the upper end, and an arrow that points the way in which it lies."""
        centre = (self.left + self.type.width(TOP, self.style) + 1.5 + TOP_ARROW / 2, self.y - TOP_ARROW / 2 - 0.3)
        self.promised.append(TOP)
        self._line(TOP, self.style, self.left, centre[1] + self.style.leading / 2)
        self.wide = max(self.wide, centre[0] + TOP_ARROW / 2)
        self.y -= TOP_ARROW + 0.6
        if self.draw:
            pose, half, side = Pose(*centre, self.up), TOP_ARROW / 2, 0.3 * TOP_ARROW
            tip = (0.0, half)
            head = polyline(pose.apply_all(((-side, half - 2 * side), tip, (side, half - 2 * side))))
            shaft = polyline(pose.apply_all(((0.0, -half), tip)))
            self.drawn.append(Stroke(TAG, (shaft, head), Layer.NOTES, None, "figure"))

    def _identity(self, said: Says, form: LabelForm) -> None:
        """Set what a piece must not lose, or a part of it."""
        small = _SMALL_TAG if self.style == LEAST else _LETTERS[self.style]
        if form in ("row", "column", "tag", "named"):
            self._headed(said.letter, small if form != "named" else _LETTERS[self.style], form == "column")
        elif form == "letter":
            self._lone(said.letter, self.style.bold())
        if form not in ("run", "rest", "face"):
            self.promised.append(said.letter)
        if form == "named":
            self._named(said.name)
        lines = tuple(text for text in (said.cut, *said.sides) if text)
        if form in ("row", "column"):
            for text in lines:
                self.promised += self._text(text, self.style if text in said.sides[1:] else self.style.bold())
        elif form == "face":
            self.promised += self._text(f"{said.letter}: {said.sides[0]}: {said.face}", self.style)
        elif form in ("run", "rest"):
            self._run(lines if form == "rest" else (said.letter, *lines))
        self.y = min(self.y, self.bottom)

    def _lone(self, letter: str, style: TypeStyle) -> None:
        """Set a letter in a block no higher than itself."""
        low = DESCENT * style.size if set(letter) & DEEP else 0.0
        self.wide, self.y = self.type.width(letter, style), -(self.type.cap(style) + low)
        if self.draw:
            self.drawn += self.type.line(letter, style, 0.0, self.y + low, layer=Layer.NOTES)

    def _run(self, items: Iterable[str]) -> None:
        """Set short texts after each other, as many to a line as fit."""
        style, line = self.style.bold(), ""
        for item in items:
            longer = f"{line} · {item}" if line else item
            if line and self.type.width(longer, style) > self.measure:
                self.promised += self._text(line, style)
                longer = item
            line = longer
        self.promised += self._text(line, style)

    def _headed(self, letter: str, scale: float, under: bool = False) -> None:
        """Set the part's letter in a tag with one corner cut off; what follows stands beside it if there is room, else under it."""
        big, side, tall = _tag(self.type, letter, scale)
        cap = self.type.cap(big)
        self.bottom, self.wide = -tall, side
        if self.draw:
            corners: tuple[Point, ...] = (
                (0, 0),
                (0, -tall),
                (side, -tall),
                (side, -CUT_CORNER),
                (side - CUT_CORNER, 0),
            )
            self.drawn.append(Stroke(TAG, (polyline(corners, True),), Layer.NOTES, None, "figure"))
            base = -(tall + cap) / 2 + (0.09 * big.size if set(letter) & DEEP else 0.0)
            self.drawn += self.type.line(letter, big.tagged("h2"), side / 2, base, align="centre", layer=Layer.NOTES)
        if self.measure - side - 2.2 >= BESIDE_TAG and not under:
            self.left = side + 2.2
        else:
            self.y = self.bottom - 1.2

    def _named(self, name: str) -> tuple[str, ...]:
        """Set a part's name, in one heading with its letter; return its lines."""
        return self._text(name, _NAMES[self.style].bold().tagged("h2"), goes_on=True)

    def _text(self, text: str, style: TypeStyle, *, goes_on: bool = False) -> tuple[str, ...]:
        """Set a paragraph, left aligned; return its lines. ``goes_on``: in the same element as the words before."""
        if not text:
            return ()
        wide = self.type.width(text, style)
        fits = self.left + wide <= self.measure
        lines = (text,) if fits else self.type.lines(text, style, self.measure - self.left)
        self.breaks += len(lines) - 1
        for line in lines:
            self._line(line, style, self.left, self.y, goes_on=goes_on)
            self.y -= style.leading
            goes_on = True
        return tuple(line.replace("\u00a0", " ") for line in lines)

    def _line(self, text: str, style: TypeStyle, x: float, top: float, *, goes_on: bool = False) -> None:
        self.wide = max(self.wide, x + self.type.width(text, style))
        if self.draw:
            base = top - self.type.drop(style)
            self.drawn += self.type.line(text, style, x, base, layer=Layer.NOTES, goes_on=goes_on)

    def _ticks(self, boxes: tuple[int, int, int]) -> None:
        """Set boxes to tick while cutting, in fives; mirrored copies and spares stand before their word."""
        side = 0.9 * self.style.size
        step = side + 0.32 * self.style.size
        per = box_stands_for(sum(boxes))
        paths: list[Path] = []
        x, row = self.left, 0
        for count, name in zip(boxes, ("", "mirrored", "spare"), strict=True):
            number = -(-count // per)
            word = self.type.width(name, self.style) if name else 0.0
            if number and x > self.left:
                x += 0.4 * step
            for i in range(number):
                last = i == number - 1  # the word stays with the last box
                if x + side + (last and word + 0.6) > self.measure and x > self.left:
                    x, row = self.left, row + 1
                y = self.y - row * self.style.leading - (self.style.leading + side) / 2
                paths.append(polyline(((x, y), (x + side, y), (x + side, y + side), (x, y + side)), True))
                self.wide = max(self.wide, x + side)
                x += step + (0.4 * step if i % 5 == 4 and not last else 0.0)
            if number and name:
                self._line(name, self.style, x, self.y - row * self.style.leading)
                x += word + step
        self.y -= (row + 1) * self.style.leading
        if per > 1:
            self._text(f"one box for every {per}", self.style)
        if self.draw:
            self.drawn.append(Stroke(TICK_BOX, tuple(paths), Layer.NOTES, None, "figure"))


def box_stands_for(copies: int) -> int:
    """Return how many copies a tick box stands for: 1, then 2, 5, 10, 20, 50 … so that there are at most 60 boxes."""
    per = 1
    while copies / per > MANY:
        per = per * 5 // 2 if str(per)[0] == "2" else per * 2
    return per
