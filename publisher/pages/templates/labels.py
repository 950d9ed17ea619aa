"""What a template says about itself: a block of words and tick boxes, set at several widths so that one of them fits the part.

A block has its lower left corner at (0, 0). ``placed`` puts it on the page; ``label_room`` finds where.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from publisher.basics import Layer, Point, Pose
from publisher.pages.model import Drawn, Fill, LineStyle, Path, Stroke, Words
from publisher.pages.templates.label_words import UP, Says
from publisher.pages.type import BODY, LEAST, LETTER, NOTE, SMALL, Setter, TypeStyle

TAG = LineStyle("tag", 0.35)
TICK_BOX = LineStyle("tick_box", 0.18)
MEASURES = (110.0, 84.0, 70.0, 60.0, 52.0, 45.0, 39.0, 34.0, 29.0, 24.0)  # mm
STYLES = (SMALL, NOTE, LEAST)
_NAMES = {SMALL: BODY, NOTE: SMALL, LEAST: NOTE}  # a part's name is set one size larger
_LETTERS = {SMALL: 1.0, NOTE: 0.8, LEAST: 0.7}
LOW_MEASURE = 150.0  # of a block in two columns
COLUMN_GAP = 5.0
CUT_CORNER = 2.2
DEEP = frozenset("JQÇŞ")  # capitals that reach below the line
MARGIN = 0.2  # round a block, for the width of lines
BESIDE = 16.0  # least measure in which words stand beside the tag, not under it
MANY = 60  # more copies than this share tick boxes


@dataclass(frozen=True, slots=True)
class Label:
    """A block set at one size of type and one measure: its own width and height in mm."""

    width: float
    height: float
    says: Says
    style: TypeStyle
    measure: float
    low: bool = False
    ease: float = 1.0  # how well it reads against another of its size: less when sentences are broken
    name: tuple[str, ...] = ()  # the lines in which the part's name is set

    @property
    def promised(self) -> tuple[str, ...]:
        """What the page promises to show: the words that it may not lack, line by line as they are set."""
        return (*self.says.promised[:1], *self.name, *self.says.promised[1:])


def blocks(setter: Setter, said: Says, sizes: tuple[TypeStyle, ...] = STYLES[:2]) -> Iterator[tuple[Label, ...]]:
    """Yield groups of settings of the label, best to read first: larger type before smaller, then low and wide ones in two
    columns, and last those that are taller than wide."""
    usual = []
    for style in sizes:
        usual.append(_blocks(setter, said, style, MEASURES))
        yield tuple(b for b in usual[-1] if b.width >= b.height)
    yield tuple(_low(setter, said, style) for style in sizes)
    for group in usual:
        yield tuple(b for b in group if b.width < b.height)


def _low(setter: Setter, said: Says, style: TypeStyle) -> Label:
    block = _Block(setter, said, style, LOW_MEASURE, low=True)
    return Label(block.width, block.height, said, style, LOW_MEASURE, True, name=block.name)


def small_blocks(setter: Setter, said: Says) -> tuple[Label, ...]:
    """Return the letter and name alone, for the tiles beside the one that has the whole label."""
    short = replace(said, board="", boxes=(0, 0, 0), size=("", ""), notes=(), count="", promised=(said.letter,))
    return _blocks(setter, short, NOTE, (45.0, 30.0))


def reset(label: Label, setter: Setter, said: Says) -> Label:
    """Return other words set as a label is set."""
    block = _Block(setter, said, label.style, label.measure, low=label.low)
    return replace(label, says=said, width=block.width, height=block.height, name=block.name)


def _blocks(setter: Setter, said: Says, style: TypeStyle, measures: tuple[float, ...]) -> tuple[Label, ...]:
    found: list[Label] = []
    for measure in measures:
        if found and found[-1].width <= measure:
            continue  # nothing was broken at the wider measure either
        block = _Block(setter, said, style, measure)
        found.append(Label(block.width, block.height, said, style, measure, ease=0.75**block.breaks, name=block.name))
    return tuple(found)


def placed(label: Label, setter: Setter, pose: Pose) -> tuple[Drawn, ...]:
    """Return what is drawn of a block, carried to the page. The pose may turn the block; it never mirrors."""
    block = _Block(setter, label.says, label.style, label.measure, draw=True, low=label.low)
    up = Pose(MARGIN, block.height)
    return tuple(_carried(_carried(thing, up), pose) for thing in block.drawn)


def _carried(thing: Drawn, pose: Pose) -> Drawn:
    if isinstance(thing, Words):
        x, y = pose.apply((thing.x, thing.y))
        return replace(thing, x=x, y=y, turn=thing.turn + pose.turn)
    if isinstance(thing, Stroke | Fill):
        return replace(thing, paths=tuple(replace(p, points=pose.apply_all(p.points)) for p in thing.paths))
    raise TypeError(f"a label holds no {type(thing).__name__}")


def tag_size(setter: Setter, label: Label) -> tuple[float, float]:
    """Return width and height of the tag in a label's upper left corner."""
    return _tag(setter, label.says.letter, label.style)[1:]


def _tag(setter: Setter, letter: str, style: TypeStyle) -> tuple[TypeStyle, float, float]:
    """Return the type of a letter in its tag, and the tag's width and height."""
    big = replace(LETTER, size=LETTER.size * _LETTERS[style])
    tall = setter.cap(big) + 4.4
    return big, max(tall, setter.width(letter, big) + 4.0), tall


class _Block:
    """Sets a label from the top down; y is 0 at the top and negative below. Without ``draw`` it only measures."""

    def __init__(
        self, setter: Setter, said: Says, style: TypeStyle, measure: float, *, draw: bool = False, low: bool = False
    ) -> None:
        self.type = setter
        self.style = style
        self.measure = measure - 2 * MARGIN
        self.draw = draw
        self.drawn: list[Drawn] = []
        self.y = self.wide = 0.0
        self.breaks = 0
        self._letter(said.letter)
        x = self.wide + 2.2
        beside = self.measure - x >= BESIDE
        tag_bottom = self.y
        if beside:
            self.y = 0.0
        else:
            x, self.y = 0.0, self.y - 1.2
        self.name = self._text(said.name, _NAMES[style].bold(), x)
        self._text(said.count, style.bold(), x)
        self._text(said.board, style, x)
        first_column = self.y = min(self.y, tag_bottom - 0.8)
        self.left = self.wide + COLUMN_GAP if low else 0.0
        if low:
            self.y = 0.0
        if sum(said.boxes):
            self.y -= 0.0 if low else 0.6
            self._ticks(said.boxes)
            self.y -= 0.4
        # a size is read as one word: the block is as wide as it, where the measure is narrower
        self.measure = max(self.measure, self.left + max(setter.width(text, style) for text in said.size))
        joined = " ".join(said.size)
        for text in (joined,) if self.left + setter.width(joined, style) <= self.measure else said.size:
            self._text(text, style, self.left)
        for note in said.notes:
            self._text(note, style.bold() if note.startswith(UP) else style, self.left)
        self.height = max(-self.y, -first_column)
        self.width = self.wide + 2 * MARGIN

    def _letter(self, letter: str) -> None:
        """Set the part's letter in a tag with one corner cut off."""
        big, side, tall = _tag(self.type, letter, self.style)
        cap = self.type.cap(big)
        self.y, self.wide = -tall, side
        if self.draw:
            corners: tuple[Point, ...] = (
                (0, 0),
                (0, -tall),
                (side, -tall),
                (side, -CUT_CORNER),
                (side - CUT_CORNER, 0),
            )
            self.drawn.append(Stroke(TAG, (Path(corners, True),), Layer.NOTES, None, "figure"))
            base = -(tall + cap) / 2 + (0.09 * big.size if set(letter) & DEEP else 0.0)
            self.drawn += self.type.line(letter, big, side / 2, base, align="centre", layer=Layer.NOTES)

    def _text(self, text: str, style: TypeStyle, x: float = 0.0) -> tuple[str, ...]:
        """Set a paragraph, left aligned at x; return its lines."""
        if not text:
            return ()
        wide = self.type.width(text, style)
        lines = (text,) if x + wide <= self.measure else self.type.lines(text, style, self.measure - x)
        self.breaks += len(lines) - 1
        for line in lines:
            self._line(line, style, x, self.y)
            self.y -= style.leading
        return lines

    def _line(self, text: str, style: TypeStyle, x: float, top: float) -> None:
        self.wide = max(self.wide, x + self.type.width(text, style))
        if self.draw:
            self.drawn += self.type.line(text, style, x, top - self.type.drop(style), layer=Layer.NOTES)

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
                paths.append(Path(((x, y), (x + side, y), (x + side, y + side), (x, y + side)), True))
                self.wide = max(self.wide, x + side)
                x += step + (0.4 * step if i % 5 == 4 and not last else 0.0)
            if number and name:
                self._line(name, self.style, x, self.y - row * self.style.leading)
                x += word + step
        self.y -= (row + 1) * self.style.leading
        if per > 1:
            self._text(f"one box for every {per}", self.style, self.left)
        if self.draw:
            self.drawn.append(Stroke(TICK_BOX, tuple(paths), Layer.NOTES, None, "figure"))


def box_stands_for(copies: int) -> int:
    """Return how many copies a tick box stands for: 1, then 2, 5, 10, 20, 50 … so that there are at most 60 boxes."""
    per = 1
    while copies / per > MANY:
        per = per * 5 // 2 if str(per)[0] == "2" else per * 2
    return per
