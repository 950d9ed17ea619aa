"""SVG as text: a drawing of a size with a title, elements in it, the bytes of the file. It knows nothing of what is drawn."""

from xml.etree.ElementTree import Element, SubElement, tostring


def svg_drawing(title: str, size: tuple[str, str], box: tuple[float, float]) -> Element:
    """Return an empty drawing: ``size`` with units, or in px without; ``box``: width and height of what is drawn, in its own units."""
    drawing = Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "version": "1.1",
            "width": size[0],
            "height": size[1],
            "viewBox": f"0,0,{box[0]},{box[1]}",
        },
    )
    SubElement(drawing, "title").text = title
    return drawing


def add(parent: Element, tag: str, text: str = "", /, **attributes: object) -> Element:
    """Add an element to another and return it; ``stroke_width=0.5`` is written ``stroke-width="0.5"``."""
    made = SubElement(parent, tag, {name.replace("_", "-"): str(value) for name, value in attributes.items()})
    made.text = text or None
    return made


def svg_bytes(drawing: Element) -> bytes:
    """Return the file of a drawing."""
    return ('<?xml version="1.0" encoding="utf-8"?>\n' + tostring(drawing, encoding="unicode") + "\n").encode("utf-8")
