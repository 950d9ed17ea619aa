"""Kinds of openings as they are listed."""

from publisher.geometry import opening_infos

HEADED = ["head", "width", "height", "centre", "sill", "rise", "radius"]


def test_kinds_and_their_sizes() -> None:
    infos = {info.name: info for info in opening_infos()}
    assert list(infos) == ["door", "window", "slit", "round_hole", "pocket", "pin_hole"]
    for info in infos.values():
        sizes = {p.name: p for p in info.parameters}
        assert info.meaning and all(p.meaning for p in sizes.values())
        assert sizes["centre"].default == "middle"
    for name in ("door", "window", "slit"):
        sizes = {p.name: p for p in infos[name].parameters}
        assert list(sizes) == HEADED
        assert sizes["head"].choices == ("square", "round", "segmental", "pointed")
        assert sizes["head"].default == "square" and sizes["width"].default is None
        assert sizes["sill"].default == (0.0 if name == "door" else None)
    for name in ("round_hole", "pocket", "pin_hole"):
        up = next(p for p in infos[name].parameters if p.name == "up")
        assert up.default is None and up.kind == "length"
