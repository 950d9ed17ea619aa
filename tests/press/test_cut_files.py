"""Cut files: true millimetres, arcs as arcs, one group per kind of line."""

import re
import xml.etree.ElementTree as ET
from math import hypot, radians, sqrt

import pytest

from publisher.basics import Arc, LineKind, Path, Place, Pose, Purpose, circle, polar, polyline
from publisher.design import SheetSize
from publisher.geometry import Mark, Part, Region
from publisher.material import Item, Layout
from publisher.press import write_part_svg, write_sheet_svg
from publisher.press.cut_files import _path

SVG = "{http://www.w3.org/2000/svg}"


def disc(radius: float) -> Part:
    region = Region(circle((0.0, 0.0), radius, "rim"))
    tick = Mark(LineKind.DRAW, Purpose.JOINT_TICK, polyline(((radius - 3, 0.0), (radius, 0.0))))
    place = Place("spec.yaml", 1, 1)
    return Part(
        "plinth", "B", "Plinth", "foam", 5.0, "disc", region, region, (), (tick,), (), 1, 0, 0, "any", 0.0, place
    )  # fmt: skip


def numbers(d: str) -> list[float]:
    return [float(n) for n in re.findall(r"-?\d+\.?\d*", d)]


def test_a_part_is_drawn_in_true_millimetres_with_true_arcs() -> None:
    root = ET.fromstring(write_part_svg(disc(92.0)))
    assert root.get("width") == "186.0mm"
    assert [float(v) for v in root.get("viewBox", "").split(",")] == [0.0, 0.0, 186.0, 186.0]
    assert "transform" not in ET.tostring(root).decode()
    (cut,) = [g for g in root.iter(f"{SVG}g") if g.get("id") == "cut"]
    d = cut[0].get("d", "")
    assert d.count("A 92.0 92.0") == 4  # quarter turns: which half turn is meant would hang on rounding
    assert numbers(d)[:2] == [185.0, 93.0]
    (draw,) = [g for g in root.iter(f"{SVG}g") if g.get("id") == "draw"]
    assert draw[0].get("d") == "M 182.0 93.0 L 185.0 93.0"


@pytest.mark.parametrize("sweep", [100.0, 179.0, -179.9, 181.0, 300.0, 358.0])
def test_an_arc_is_read_where_it_is_however_long_it_is(sweep: float) -> None:
    """From ends and radius of an arc of 179° a rounding of 0.00005 mm moved its middle by 0.005 mm: a true stair was refused."""
    radius, centre = 93.51234567, (100.123456, 98.765432)
    end = radians(sweep)
    arc = Arc("rim", polar(radius, 0.0, centre), polar(radius, end, centre), centre, radius, sweep)
    d = _path(Path((arc,), False), 200.0)
    words = d.split()
    x, y = float(words[1]), float(words[2])
    at = words.index("A")
    while at < len(words):
        r, ex, ey = float(words[at + 1]), float(words[at + 6]), float(words[at + 7])
        half = hypot(ex - x, ey - y) / 2.0
        away = sqrt(r * r - half * half)  # SVG 1.1, F.6.5: of the two centres the one on the side that the flag says
        side = 1.0 if words[at + 5] == "1" else -1.0
        cx = (x + ex) / 2.0 - side * away * (ey - y) / (2.0 * half)
        cy = (y + ey) / 2.0 + side * away * (ex - x) / (2.0 * half)
        assert hypot(cx - centre[0], 200.0 - cy - centre[1]) < 0.0005
        x, y, at = ex, ey, at + 8


def test_a_sheet_shows_its_edge_and_every_piece_in_its_place() -> None:
    part = disc(50.0)
    items = (Item("plinth", 1, Pose(60.0, 60.0)), Item("plinth", 2, Pose(170.0, 60.0, 90.0)))
    layout = Layout("k", "foam", SheetSize("297 x 420 mm", 297.0, 420.0), items, "hand", 0)
    root = ET.fromstring(write_sheet_svg(layout, (part,)))
    assert (root.get("width"), root.get("height")) == ("297.0mm", "420.0mm")
    (cut,) = [g for g in root.iter(f"{SVG}g") if g.get("id") == "cut"]
    assert [numbers(p.get("d", ""))[:2] for p in cut] == [[110.0, 360.0], [170.0, 310.0]]
    (sheet,) = [g for g in root.iter(f"{SVG}g") if g.get("id") == "sheet"]
    assert sheet[0].get("height") == "420.0"
