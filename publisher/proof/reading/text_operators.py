"""Text operators (ISO 32000-1, 9.3 and 9.4): where letters stand, how large, and what they say."""

from collections.abc import Callable
from math import hypot
from typing import Any

from publisher.proof.reading.canvas import Canvas
from publisher.proof.reading.matrices import IDENTITY, as_matrix, multiply
from publisher.proof.reading.model import TextRun

Operands = list[Any]
INVISIBLE = (3, 7)
CLIPPING = 4  # modes from here on clip all that follows to the letters (ISO 32000-1, table 106)
OUTLINED = (1, 5)


class TextOperators:
    """Shows text on a canvas."""

    def __init__(self, canvas: Canvas) -> None:
        """Work on this canvas."""
        self.canvas = canvas

    def handlers(self) -> dict[bytes, Callable[[Operands], None]]:
        """Return operator → function."""
        return {
            b"BT": self.begin,
            b"Tf": self.font,
            b"Tm": self.matrix,
            b"Td": self.move,
            b"TD": self.move_and_lead,
            b"T*": self.next_line,
            b"Tj": self.show,
            b"TJ": self.show_spaced,
            b"'": self.next_and_show,
            b'"': self.space_and_show,
            b"Tc": lambda o: setattr(self.canvas.state, "letter_space", float(o[-1])),
            b"Tw": lambda o: setattr(self.canvas.state, "word_space", float(o[-1])),
            b"Tz": lambda o: setattr(self.canvas.state, "stretch", float(o[-1]) / 100.0),
            b"TL": lambda o: setattr(self.canvas.state, "leading", float(o[-1])),
            b"Ts": lambda o: setattr(self.canvas.state, "rise", float(o[-1])),
            b"Tr": lambda o: setattr(self.canvas.state, "mode", int(o[-1])),
        }

    def begin(self, _: Operands) -> None:
        """BT"""
        self.canvas.text_matrix = self.canvas.line_matrix = IDENTITY

    def font(self, operands: Operands) -> None:
        """Tf"""
        state = self.canvas.state
        state.font, state.size = self.canvas.font(operands[-2]), float(operands[-1])

    def matrix(self, operands: Operands) -> None:
        """Tm"""
        self.canvas.text_matrix = self.canvas.line_matrix = as_matrix(operands[-6:])

    def move(self, operands: Operands) -> None:
        """Td"""
        x, y = float(operands[-2]), float(operands[-1])
        self.canvas.text_matrix = self.canvas.line_matrix = multiply((1, 0, 0, 1, x, y), self.canvas.line_matrix)

    def move_and_lead(self, operands: Operands) -> None:
        """TD"""
        self.canvas.state.leading = -float(operands[-1])
        self.move(operands)

    def next_line(self, _: Operands) -> None:
        """T*"""
        self.move([0.0, -self.canvas.state.leading])

    def next_and_show(self, operands: Operands) -> None:
        """' : next line, then show."""
        self.next_line(operands)
        self.show(operands)

    def space_and_show(self, operands: Operands) -> None:
        """The operator " : set spaces, next line, show."""
        self.canvas.state.word_space, self.canvas.state.letter_space = float(operands[-3]), float(operands[-2])
        self.next_and_show(operands)

    def show(self, operands: Operands) -> None:
        """Tj"""
        self._show([operands[-1]])

    def show_spaced(self, operands: Operands) -> None:
        """TJ"""
        self._show(operands[-1])

    def _show(self, things: list[Any]) -> None:
        canvas, state = self.canvas, self.canvas.state
        font = state.font
        if state.mode >= CLIPPING:
            canvas.unread["letters that cut off what is drawn after them"] = None
        if font is not None and font.kind == "Type3":
            canvas.unread["letters that draw themselves by operators (a Type 3 font)"] = None
        if font is None:
            if any(isinstance(t, bytes) and t for t in things):
                canvas.unread["words in a font that the page does not name"] = None
            return
        along, broken, said, inked = 0.0, 0, [], []
        for thing in things:
            if isinstance(thing, float):
                along -= thing / 1000.0 * state.size * state.stretch
                if thing < -180:
                    said.append(" ")  # a wide gap between pieces of a line reads as a blank
                continue
            if not isinstance(thing, bytes):
                continue
            for code, text, width, good, box in font.letters(thing):
                said.append(text)
                broken += not good
                if box is not None:
                    inked.append((along, box))
                space = state.letter_space + (state.word_space if code == 32 and not font.two_bytes else 0.0)
                along += (width * state.size + space) * state.stretch
        text = "".join(said)
        whole = multiply(canvas.text_matrix, state.ctm)
        start = _carry(whole, 0.0, state.rise)
        end = _carry(whole, along, state.rise)
        size = abs(state.size) * hypot(whole[2], whole[3])
        em, stretch = state.size, state.size * state.stretch
        frame = (whole[0] * stretch, whole[1] * stretch, whole[2] * em, whole[3] * em, *start)
        if text or broken:
            canvas.texts.append(
                TextRun(
                    canvas.next_order(), text, *start, *end, size, size * font.x_height, font.name,
                    state.stroke() if state.mode in OUTLINED else state.fill(),
                    state.mode in INVISIBLE, state.clip, canvas.visible(), broken,
                    canvas.mark(), frame, tuple((at / stretch, box) for at, box in inked) if stretch else (),
                )
            )  # fmt: skip
        canvas.text_matrix = multiply((1, 0, 0, 1, along, 0), canvas.text_matrix)


def _carry(m: tuple[float, ...], x: float, y: float) -> tuple[float, float]:
    return (m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5])
