"""SVG as text: what is written is read back as it was meant, whatever signs it has."""

from xml.etree.ElementTree import fromstring

from publisher.press.svg import add, svg_bytes, svg_drawing

NS = "{http://www.w3.org/2000/svg}"


def test_a_drawing_is_read_back_as_it_was_written() -> None:
    drawing = svg_drawing("A <rib> & more", ("20.0mm", "10.0mm"), (20.0, 10.0))
    group = add(drawing, "g", id="cut", stroke_width=0.5)
    add(group, "path", d="M 0 0 L 1 1")
    add(drawing, "text", "“5 < 6”", x=1.5)
    data = svg_bytes(drawing)
    assert data.startswith(b'<?xml version="1.0" encoding="utf-8"?>\n<svg ')
    root = fromstring(data)
    assert (root.tag, root.get("width"), root.get("viewBox")) == (f"{NS}svg", "20.0mm", "0,0,20.0,10.0")
    assert [child.tag for child in root] == [f"{NS}title", f"{NS}g", f"{NS}text"]
    assert (root[0].text, root[2].text, root[2].get("x")) == ("A <rib> & more", "“5 < 6”", "1.5")
    assert root[1].get("stroke-width") == "0.5"
    assert root[1][0].get("d") == "M 0 0 L 1 1"
