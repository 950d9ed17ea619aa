"""Drawings are a stranger's input: limits hold, and nothing is fetched."""

import pytest

from publisher.geometry.drawings.tree import DEEPEST_ELEMENT, MOST_ELEMENTS, MOST_SVG_BYTES, Unreadable, read_tree

SVG = '<svg xmlns="http://www.w3.org/2000/svg">'
BOMB = (
    '<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>'
    + SVG
    + "<title>&b;</title></svg>"
)


def test_a_tree_of_elements() -> None:
    root = read_tree(f'<?xml version="1.0"?>{SVG}<g id="a"><path d="M0 0"/></g></svg>'.encode())
    assert root.tag == "svg" and root.children[0].get("id") == "a"
    assert root.children[0].children[0].tag == "path" and root.get("width") == ""


def test_foreign_elements_keep_apart() -> None:
    root = read_tree(f'{SVG}<x:path xmlns:x="urn:other" d="M0 0"/></svg>'.encode())
    assert root.children[0].tag == "foreign:path"


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "not well-formed XML"),
        (b"\xff\xfe\x00", "not well-formed XML"),
        (b"<svg", "not well-formed XML at line 1"),
        (b"<html/>", "no SVG drawing"),
        (BOMB.encode(), "document type of its own"),
        (BOMB.encode("utf-16"), "document type of its own"),
        (b'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]><svg>&a;</svg>', "document type of its own"),
        (
            (SVG + "<g>" * (DEEPEST_ELEMENT + 5) + "</g>" * (DEEPEST_ELEMENT + 5) + "</svg>").encode(),
            "too deeply nested",
        ),
        ((SVG + "<g/>" * (MOST_ELEMENTS + 5) + "</svg>").encode(), "too many"),
        (b'<!DOCTYPE svg SYSTEM "file:///etc/hostname"><svg/>', "document type of its own"),
        (b'<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://x"><svg>&who;</svg>', "XML entities"),
        (b'<?xml-stylesheet href="http://x/y.css"?><svg/>', "a style sheet from outside"),
        (b"\x1f\x8b\x08", "compressed"),
        ((SVG + "<style>" + "a" * 300_000 + "</style></svg>").encode(), "style sheet is too long"),
        (b" " * (MOST_SVG_BYTES + 1), "million bytes"),
    ],
)
def test_hostile_files_are_refused(data: bytes, words: str) -> None:
    with pytest.raises(Unreadable, match=words):
        read_tree(data)


def test_the_usual_document_type_is_read_past() -> None:
    head = '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">'
    assert read_tree(f"{head}{SVG}<g/></svg>".encode()).children[0].tag == "g"


def test_names_and_lines() -> None:
    text = f'{SVG}\n<g xmlns:p="urn:p" p:label="Cuts" id="g1"><path class="a b"/>\n<g id="x"/></g></svg>'
    outer = read_tree(text.encode()).children[0]
    path, inner = outer.children
    assert (outer.layer, inner.layer, path.layer) == ("Cuts", "x", "")
    assert path.classes == ("a", "b") and path.named() == "<path> in line 2" and inner.named() == "“x”"
    assert inner.parent is outer and inner.line == 3
