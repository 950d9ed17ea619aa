"""``python -m tests.reference.print_paths [designs/quay …]``: every page of packs through a print path, and what a buyer then measures.

The path is ``pdftopdf`` of cups-filters, by which systems with CUPS fit pages to sheets, where it is installed (or named by the
environment variable PDFTOPDF); else what it does is simulated exactly: one matrix for the page, and the sheet's size. Its modes and
their names: ``print-scaling`` of PWG 5100.16, ``none``, ``fit`` and ``fill``; the printable area is that of the printer's PPD.
"""

import argparse
import os
import shutil
import subprocess
import tempfile
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

import numpy as np
import pikepdf

from publisher.basics import Promises
from publisher.brief import read_brief
from publisher.pipeline import compose_packs, work
from publisher.press import write_pdf
from publisher.proof.reading import PageRead, read_file

PT = 72.0 / 25.4
INSTALLED = Path("/usr/lib/cups/filter/pdftopdf")
SHEETS = {"A4": (595, 842), "Letter": (612, 792)}  # pt, as PPD files round them
SAME = 0.02  # mm: how far what is printed may lie off what one matrix makes of the page
QUARTERS = tuple(np.array(turn, dtype=float) for turn in (((1, 0), (0, 1)), ((0, 1), (-1, 0)), ((0, -1), (1, 0))))
LITTLE = 0.9795  # above it a fitted page is hardly told from one that a printer prints small
ARM = 9.0  # mm from a corner of the printable limit within which its mark lies


@dataclass(frozen=True)
class Setting:
    """How a page is printed: on which sheet, in which mode, what the printer cannot print along the edges (pt; less than 0: it prints
    beyond them, as borderless modes do)."""

    sheet: str
    mode: str
    margin: float = 18.0

    def __str__(self) -> str:
        """Say it as a print dialogue would."""
        edge = "borderless" if self.margin < 0 else f"margins {self.margin / PT:.1f} mm"
        return f"{self.sheet}, {self.mode}, {edge}"

    def cause(self, scale: float, own: str) -> tuple[str, ...]:
        """Return the words that a table of causes must say of a page for the sheet ``own`` that came out at a scale: why it is other than
        true. Within a fiftieth of true no word tells the modes apart: it was scaled."""
        if scale > 1.0:
            return ("fill", "borderless", *(("other paper",) if self.sheet != own else ()))
        if scale >= LITTLE:
            return ("scaled",)
        return (self.mode, *(("margins",) if self.margin > 0 else ()), *(("other paper",) if self.sheet != own else ()))


SETTINGS = tuple(
    Setting(sheet, mode, margin)
    for sheet in SHEETS
    for mode, margin in (("none", 18.0), ("fit", 18.0), ("fit", 12.0), ("fit", 36.0), ("fill", 18.0), ("fit", -9.0))
)


@dataclass(frozen=True)
class Printed:
    """A printed page: its kind, how much larger it came out across and down, how many of its corner marks came out whole, of how many,
    and how far (mm) anything lies off what that scale makes of the page."""

    number: int
    kind: str
    across: float
    down: float
    marks: int
    marks_of: int
    off: float


def filter_program() -> Path | None:
    """Return pdftopdf where it is installed."""
    named = os.environ.get("PDFTOPDF") or shutil.which("pdftopdf") or INSTALLED
    return Path(named) if Path(named).is_file() else None


def print_pages(pdf: bytes, setting: Setting, program: Path | None) -> bytes:
    """Return the sheets that a printer gets."""
    return _simulated(pdf, setting) if program is None else _filtered(pdf, setting, program)


def _filtered(pdf: bytes, setting: Setting, program: Path) -> bytes:
    with tempfile.TemporaryDirectory() as folder:
        ppd, source = Path(folder) / "sheets.ppd", Path(folder) / "pack.pdf"
        ppd.write_text(_ppd(setting), encoding="ascii")
        source.write_bytes(pdf)
        options = f"media={setting.sheet} PageSize={setting.sheet} print-scaling={setting.mode} outputorder=normal"
        run = subprocess.run(
            [program, "1", "buyer", "pack", "1", options, source], env={**os.environ, "PPD": str(ppd)}, capture_output=True, check=True
        )  # fmt: skip
        return run.stdout


def _ppd(setting: Setting) -> str:
    """Return the description of a printer that knows the sheets and no more (PPD 4.3)."""
    head = (
        '*PPD-Adobe: "4.3"', '*FormatVersion: "4.3"', '*FileVersion: "1.0"', "*LanguageVersion: English",
        "*LanguageEncoding: ISOLatin1", '*PCFileName: "SHEETS.PPD"', '*Manufacturer: "None"', '*Product: "(Sheets)"',
        '*ModelName: "Sheets"', '*ShortNickName: "Sheets"', '*NickName: "Sheets"', '*PSVersion: "(3010.000) 0"',
        '*LanguageLevel: "3"', "*ColorDevice: False", "*DefaultColorSpace: Gray", '*cupsFilter: "application/vnd.cups-pdf 0 -"',
    )  # fmt: skip
    lines = list(head)
    for key in ("PageSize", "PageRegion"):
        lines += [
            f"*OpenUI *{key}: PickOne",
            f"*OrderDependency: 10 AnySetup *{key}",
            f"*Default{key}: {setting.sheet}",
        ]
        lines += [f'*{key} {name}: "<</PageSize[{w} {h}]>>setpagedevice"' for name, (w, h) in SHEETS.items()]
        lines += [f"*CloseUI: *{key}"]
    lines += [f"*DefaultImageableArea: {setting.sheet}", f"*DefaultPaperDimension: {setting.sheet}"]
    m = setting.margin
    for name, (w, h) in SHEETS.items():
        lines += [f'*ImageableArea {name}: "{m:g} {m:g} {w - m:g} {h - m:g}"', f'*PaperDimension {name}: "{w} {h}"']
    return "\n".join([*lines, ""])


def _simulated(pdf: bytes, setting: Setting) -> bytes:
    """Lay each page on the sheet by one matrix: as it is from the lower left corner, or scaled into the printable area, or over it."""
    out = BytesIO()
    with pikepdf.open(BytesIO(pdf)) as source, pikepdf.new() as sheets:
        for page in source.pages:
            width, height = (float(side) for side in page.mediabox[2:])
            across = width > height
            scale, x, y = laid(setting, *((height, width) if across else (width, height)))
            turn = (
                f"0 {scale:.6f} {-scale:.6f} 0 {x + scale * height:.6f}"
                if across
                else f"{scale:.6f} 0 0 {scale:.6f} {x:.6f}"
            )
            sheets.add_blank_page(page_size=SHEETS[setting.sheet])
            sheet = sheets.pages[-1]
            form = sheets.copy_foreign(page.as_form_xobject())
            sheet.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary(Page=form))
            sheet.Contents = sheets.make_stream(f"q {turn} {y:.6f} cm /Page Do Q".encode())
        sheets.save(out)
    return out.getvalue()


def laid(setting: Setting, width: float, height: float) -> tuple[float, float, float]:
    """Return scale and shift (pt) with which a page of this size (pt) is laid on the sheet."""
    wide, high = SHEETS[setting.sheet]
    m = setting.margin
    if setting.mode == "none":
        return 1.0, 0.0, 0.0
    ratios = ((wide - 2 * m) / width, (high - 2 * m) / height)
    scale = min(ratios) if setting.mode == "fit" else max(ratios)
    return scale, (wide - scale * width) / 2, (high - scale * height) / 2


def read_printed(pdf: bytes, sheets: bytes, promises: Promises, setting: Setting) -> Iterator[Printed]:
    """Read both files as a stranger and yield how each page came out; a page that lies across is turned to the sheet by a quarter."""
    clean, printed = read_file(pdf, "pack.pdf"), read_file(sheets, "sheets.pdf")
    assert not clean.trouble and not printed.trouble, (clean.trouble, printed.trouble)
    for promise in promises.pages:
        own, there = clean.pages[promise.page - 1], printed.pages[promise.page - 1]
        lies_across = (own.width > own.height) != (there.width > there.height)
        carried = [_carried(own, there, turn) for turn in (QUARTERS if lies_across else QUARTERS[:1])]
        scale, shift, turn, off = min(carried, key=lambda one: one[3])
        corners = promise.limit.corners() if promise.corners else ()
        marks = 0
        for corner in corners:
            mark = [line for piece in own.pieces for line in piece.lines() if (np.abs(line - corner) <= ARM).all()]
            assert mark, "a page promises a corner mark that it does not draw"
            marks += _whole(np.vstack(mark) @ turn * scale + shift, there, setting)
        yield Printed(promise.page, promise.kind, *scale.tolist(), marks, len(corners), off)


def _carried(own: PageRead, sheet: PageRead, turn: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray, float]:
    """Return by how much larger a page was printed across and down, how far it was shifted (mm), how turned, and how far (mm) any line
    lies off that. Where lines are lost, over the sheet's edge, the page was not scaled: then most lines say the same shift."""
    mine, theirs = ([piece.points for piece in page.pieces] for page in (own, sheet))
    mine = [points @ turn for points in mine]
    if len(mine) == len(theirs):
        a, b = (
            np.array([(*p.min(axis=0), *p.max(axis=0)) for p in pieces]).reshape(-1, 2) for pieces in (mine, theirs)
        )
        scale = np.ptp(b, axis=0) / np.ptp(a, axis=0)
        shift = b.min(axis=0) - a.min(axis=0) * scale
        return scale, shift, turn, float(np.abs(b - (a * scale + shift)).max())
    votes = Counter(
        tuple(np.round(b[0] - a[0], 2).tolist())
        for a in mine
        for b in theirs
        if a.shape == b.shape and np.ptp(a - b, axis=0).max() < SAME
    )
    ((shift_said, times),) = votes.most_common(1) or [((0.0, 0.0), 0)]
    off = 0.0 if times >= 0.5 * len(theirs) else float("inf")
    return np.ones(2), np.array(shift_said), turn, off


def _whole(points: np.ndarray, sheet: PageRead, setting: Setting) -> bool:
    """Say whether a mark lies wholly where the printer prints; its line lies on the limit, with half its width."""
    edge = max(setting.margin, 0.0) / PT - 0.2
    return bool((points >= edge).all() and (points <= np.array((sheet.width, sheet.height)) - edge).all())


def main() -> None:
    """Print for each pack and setting what its pages measure, and which marks are lost."""
    parser = argparse.ArgumentParser(prog="python -m tests.reference.print_paths", description=__doc__)
    parser.add_argument(
        "designs", nargs="*", type=Path, default=sorted(p.parent for p in Path("designs").glob("*/spec.yaml"))
    )
    program = filter_program()
    print(f"path: {'pdftopdf of cups-filters' if program else 'simulated, as pdftopdf does it'}")
    for design in parser.parse_args().designs:
        packs, _ = compose_packs(work(read_brief(design)))
        for pack in packs:
            pdf = write_pdf(pack)
            for setting in SETTINGS:
                pages = list(read_printed(pdf, print_pages(pdf, setting, program), pack.promises, setting))
                lost = sum(page.marks < page.marks_of for page in pages)
                scales = {f"{100 * scale:.2f}" for page in pages for scale in (page.across, page.down)}
                print(
                    f"{design.name} {pack.paper.name} on {setting}: 100 mm measure {', '.join(sorted(scales))} mm on {len(pages)} pages; "
                    f"{lost} lose corner marks; farthest off {max(page.off for page in pages):.4f} mm",
                    flush=True,
                )


if __name__ == "__main__":
    main()
