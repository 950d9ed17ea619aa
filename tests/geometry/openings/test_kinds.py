"""Kinds of openings as they are listed."""

from publisher.geometry import opening_infos


def test_kinds_and_their_sizes() -> None:
    infos = {info.name: info for info in opening_infos()}
    assert list(infos) == ["door", "window", "slit"]
    for info in infos.values():
        sizes = {p.name: p for p in info.parameters}
        assert list(sizes) == ["head", "width", "height", "centre", "sill"]
        assert all(p.meaning for p in sizes.values())
        assert sizes["head"].choices == ("square", "round") and sizes["head"].default == "square"
        assert sizes["centre"].default == "middle" and sizes["width"].default is None
    assert [{p.name: p for p in i.parameters}["sill"].default for i in infos.values()] == [0.0, None, None]
