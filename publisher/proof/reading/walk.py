"""The walk through a page's content: every matrix, form, clip, layer and letter is followed, nothing is looked up by tags."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np

from publisher.proof.reading.canvas import Canvas
from publisher.proof.reading.colours import picture_coded
from publisher.proof.reading.graphics_state import SettingOperators
from publisher.proof.reading.matrices import as_matrix, lengths, multiply
from publisher.proof.reading.model import ARTIFACT, PlacedImage
from publisher.proof.reading.objects import number, numbers, plain, raw, stream_bytes
from publisher.proof.reading.paths import PathOperators, clipped
from publisher.proof.reading.text_operators import TextOperators
from publisher.proof.reading.tokens import Name, operations

DEEPEST_FORM = 12
# Operators of ISO 32000-1, annex A, that move no line and change no grey: ends and corners of lines, intents, marks, compatibility
NO_EFFECT = frozenset((b"J", b"j", b"M", b"ri", b"MP", b"DP", b"BX", b"EX", b"ET", b"d0", b"d1"))
# Entries of a picture or form by which some readers and printers show another one in its place (8.9.5, 8.10.4, 14.11.7)
REPLACED = ("/Alternates", "/OPI", "/Ref", "/PS")
PASSED_OVER = (IndexError, TypeError, ValueError, OverflowError, AttributeError, KeyError)
UNIT_SQUARE = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))

Operands = list[Any]


class Walker:
    """Runs the operators of a page on a canvas."""

    def __init__(self, canvas: Canvas) -> None:
        """Make ready to walk."""
        self.canvas = canvas
        self.depth = 0
        self.paths = PathOperators(canvas)
        self.path_operators = frozenset(self.paths.handlers())
        self.handlers: dict[bytes, Callable[[Operands], None]] = {
            **SettingOperators(canvas).handlers(),
            **TextOperators(canvas).handlers(),
            **self.paths.handlers(),
            b"Do": self.do,
            b"BI": self.inline_image,
            b"sh": self.shade,
            b"BDC": self.begin_marked,
            b"BMC": self.begin_plain,
            b"EMC": self.end_marked,
        }

    def run(self, data: bytes) -> None:
        """Run a decoded content stream. An operator with wrong operands is passed over, as viewers do.

        Raises TooMuch when the file asks for more work than the limits allow.
        """
        canvas, handlers, spent = self.canvas, self.handlers, self.canvas.spent
        path_operators = 0
        for operator, operands in operations(data):
            spent.operators += 1
            if not spent.operators & 1023:
                spent.check()
            handler = handlers.get(operator)
            if handler is None:
                if operator not in NO_EFFECT:
                    canvas.unread["an operator that PDF does not have"] = None
                continue
            if operator in self.path_operators:
                path_operators += 1
            try:
                handler(operands)
            except PASSED_OVER:
                canvas.unread["an operator with operands that make no sense"] = None
        canvas.path_operators += path_operators

    def do(self, operands: Operands) -> None:
        """Do: a picture or a form."""
        reference = self.canvas.resource("/XObject", operands[-1])
        thing = plain(reference)
        if not isinstance(thing, dict):
            return
        hidden = self.canvas.layer(raw(thing, "/OC"))
        self.canvas.open_marked(hidden)
        if str(plain(thing.get("/Subtype"))) not in ("/Image", "/Form") or any(key in thing for key in REPLACED):
            self.canvas.unread["a picture or form that some readers replace by another"] = None
        try:
            if str(plain(thing.get("/Subtype"))) == "/Image":
                mask = bool(plain(thing.get("/ImageMask")))
                if not mask and not picture_coded(thing):
                    self.canvas.unread["a picture whose colours or bits are not coded as pictures are"] = None
                self._place(int(number(thing.get("/Width"))), int(number(thing.get("/Height"))), mask)
            elif str(plain(thing.get("/Subtype"))) == "/Form":
                self._form(thing)
        finally:
            self.canvas.opened.pop()

    def _form(self, form: Any) -> None:
        """Run a form in its own space: Matrix, then BBox as clip (8.10.1)."""
        canvas = self.canvas
        if self.depth >= DEEPEST_FORM:
            canvas.unread["forms inside forms, more than twelve deep"] = None
            return
        canvas.spent.forms += 1
        canvas.spent.check()
        kept = (canvas.resources, canvas.state, canvas.stack, canvas.opened)
        canvas.state, canvas.stack = replace(canvas.state), []
        canvas.opened = list(canvas.opened)
        self.paths.forget()
        self.depth += 1
        try:
            canvas.state.ctm = multiply(as_matrix(numbers(form.get("/Matrix"))), canvas.state.ctm)
            box = numbers(form.get("/BBox"))
            if len(box) == 4:
                a, b, c, d, e, f = canvas.state.ctm
                corners = ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]))
                ring = np.array([(a * x + c * y + e, b * x + d * y + f) for x, y in corners])
                canvas.state.clip = clipped(canvas.state.clip, ring, (ring,), False)
            resources = plain(form.get("/Resources"))
            if isinstance(resources, dict):
                canvas.enter(resources)
            self.run(stream_bytes(form, canvas.spent))
        finally:
            self.depth -= 1
            canvas.resources, canvas.state, canvas.stack, canvas.opened = kept
            self.paths.forget()

    def inline_image(self, operands: Operands) -> None:
        """BI … EI"""
        image = operands[0]
        across = image.get("W", image.get("Width", 0.0))
        down = image.get("H", image.get("Height", 0.0))
        self._place(int(across), int(down), bool(image.get("IM", image.get("ImageMask", False))))

    def _place(self, across: int, down: int, is_mask: bool) -> None:
        canvas = self.canvas
        if is_mask and canvas.visible():
            canvas.unread["a picture used as a stencil, which may cover what lies under it"] = None
        a, b, c, d, e, f = canvas.state.ctm
        corners = tuple((a * x + c * y + e, b * x + d * y + f) for x, y in UNIT_SQUARE)
        width, height = lengths(canvas.state.ctm)
        canvas.images.append(
            PlacedImage(
                canvas.next_order(), across, down, width, height, corners, canvas.state.clip, canvas.visible(), is_mask
            )
        )

    def shade(self, _: Operands) -> None:
        """sh"""
        self.canvas.unread["an area filled with a shading"] = None

    def begin_marked(self, operands: Operands) -> None:
        """BDC: marked content with properties; /OC names a layer, MCID the mark by which the structure finds it."""
        hidden, mark = "", None
        if operands and operands[0] == "OC" and isinstance(operands[-1], Name):
            hidden = self.canvas.layer(self.canvas.resource("/Properties", operands[-1]))
        elif operands and operands[0] == "Artifact":
            mark = ARTIFACT
        elif operands and isinstance(operands[-1], dict) and isinstance(operands[-1].get("MCID"), float):
            mark = int(operands[-1]["MCID"])
        self.canvas.open_marked(hidden, mark)

    def begin_plain(self, operands: Operands) -> None:
        """BMC: marked content without properties."""
        self.canvas.open_marked("", ARTIFACT if operands and operands[0] == "Artifact" else None)

    def end_marked(self, _: Operands) -> None:
        """EMC"""
        if self.canvas.opened:
            self.canvas.opened.pop()
