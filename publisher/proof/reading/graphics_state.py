"""Operators that set the graphics state: q Q cm w d gs and colours (ISO 32000-1, 8.4.4 and 8.6.8)."""

from collections.abc import Callable
from typing import Any

from publisher.proof.reading.canvas import Canvas, font_of
from publisher.proof.reading.colours import grey_in, grey_of, space_kind
from publisher.proof.reading.matrices import as_matrix, multiply
from publisher.proof.reading.objects import number, numbers, plain

Operands = list[Any]
RECIPES = ("Separation", "DeviceN", "Indexed", "ICCBased", "CalGray", "CalRGB", "Lab")
# Entries of a named state (ISO 32000-1, table 58) that are followed here, and those that change no line's place or look on paper: of
# all others (BG, BG2, UCR, UCR2, TR, TR2, HT, OP, op, and what later editions add) only a value that changes nothing passes
FOLLOWED = ("/LW", "/D", "/CA", "/ca", "/SMask", "/BM", "/Font")
HARMLESS = ("/Type", "/LC", "/LJ", "/ML", "/RI", "/SA", "/AIS", "/TK", "/OPM", "/SM")  # OPM says how, not whether
UNCHANGED = ("/Identity", "/Default", "False", "false")  # a function that changes nothing; no overprint
FLATTEST = 1.0  # dots: with more, curves become corners


class SettingOperators:
    """Changes the state of a canvas."""

    def __init__(self, canvas: Canvas) -> None:
        """Work on this canvas."""
        self.canvas = canvas

    def handlers(self) -> dict[bytes, Callable[[Operands], None]]:
        """Return operator → function."""
        return {
            b"q": lambda _: self.canvas.save(),
            b"Q": lambda _: self.canvas.restore(),
            b"cm": self.concatenate,
            b"w": self.width,
            b"d": self.dash,
            b"gs": self.named,
            b"i": self.flatness,
            b"g": self.fill,
            b"rg": self.fill,
            b"k": self.fill,
            b"G": self.stroke,
            b"RG": self.stroke,
            b"K": self.stroke,
            b"cs": self.fill_space,
            b"CS": self.stroke_space,
            b"sc": self.fill_in_space,
            b"scn": self.fill_in_space,
            b"SC": self.stroke_in_space,
            b"SCN": self.stroke_in_space,
        }

    def concatenate(self, operands: Operands) -> None:
        """cm"""
        state = self.canvas.state
        if self.canvas.in_path:
            self.canvas.unread["a change of scale in the middle of a line, which viewers treat in different ways"] = (
                None
            )
        state.ctm = multiply(as_matrix(operands[-6:]), state.ctm)

    def width(self, operands: Operands) -> None:
        """w"""
        self.canvas.state.width = abs(float(operands[-1]))

    def dash(self, operands: Operands) -> None:
        """d: a pattern of nothing but zeros is a solid line."""
        lengths = tuple(abs(v) for v in operands[-2] if isinstance(v, float))
        self.canvas.state.dash = lengths if sum(lengths) > 0 else ()

    def flatness(self, operands: Operands) -> None:
        """i"""
        if abs(float(operands[-1])) > FLATTEST:
            self.canvas.unread["curves made of corners (a flatness)"] = None

    def fill(self, operands: Operands) -> None:
        """g rg k"""
        self.canvas.state.fill_grey = grey_of(operands)
        self.canvas.state.fill_space = "Device"

    def stroke(self, operands: Operands) -> None:
        """G RG K"""
        self.canvas.state.stroke_grey = grey_of(operands)
        self.canvas.state.stroke_space = "Device"

    def fill_space(self, operands: Operands) -> None:
        """cs: the first colour of a space is black in all device spaces."""
        self.canvas.state.fill_space = self._kind(operands[-1])
        self.canvas.state.fill_grey = None if self.canvas.state.fill_space == "Pattern" else 0.0

    def stroke_space(self, operands: Operands) -> None:
        """CS"""
        self.canvas.state.stroke_space = self._kind(operands[-1])
        self.canvas.state.stroke_grey = None if self.canvas.state.stroke_space == "Pattern" else 0.0

    def fill_in_space(self, operands: Operands) -> None:
        """sc scn"""
        self.canvas.state.fill_grey = grey_in(self.canvas.state.fill_space, operands)

    def stroke_in_space(self, operands: Operands) -> None:
        """SC SCN"""
        self.canvas.state.stroke_grey = grey_in(self.canvas.state.stroke_space, operands)

    def _kind(self, name: Any) -> str:
        resources = self.canvas.resources
        kind = space_kind(name, plain(resources.get("/ColorSpace")) if isinstance(resources, dict) else None)
        if kind in RECIPES:
            self.canvas.unread[f"a colour of the kind {kind}, whose look the file itself makes up"] = None
        return kind

    def named(self, operands: Operands) -> None:
        """gs: a dictionary of settings from the resources (8.4.5)."""
        settings = plain(self.canvas.resource("/ExtGState", operands[-1]))
        if not isinstance(settings, dict):
            return
        state = self.canvas.state
        if "/LW" in settings:
            state.width = abs(number(settings["/LW"]))
        if "/D" in settings:
            pattern = plain(settings["/D"])
            self.dash([[float(v) for v in numbers(pattern[0])] if pattern else [], 0.0])
        if "/CA" in settings:
            state.stroke_alpha = min(max(number(settings["/CA"], 1.0), 0.0), 1.0)
        if "/ca" in settings:
            state.fill_alpha = min(max(number(settings["/ca"], 1.0), 0.0), 1.0)
        if plain(settings.get("/SMask")) not in (None, "/None"):
            self.canvas.unread["a soft mask, which may fade what is drawn"] = None
        if str(plain(settings.get("/BM")) or "/Normal") not in ("/Normal", "/Compatible", "/Multiply", "/Darken"):
            self.canvas.unread["a blend mode, which may fade what is drawn"] = None
        chosen = plain(settings.get("/Font"))
        if isinstance(chosen, list) and len(chosen) == 2:
            state.font, state.size = font_of(chosen[0], self.canvas.fonts, self.canvas.spent), number(chosen[1])
        for key in map(str, settings):
            if key == "/FL":
                self.flatness([number(settings[key])])
            elif key not in FOLLOWED + HARMLESS and str(plain(settings[key])) not in UNCHANGED:
                self.canvas.unread[f"a setting {key[1:]}, which may change how dark things print"] = None
