"""Drawings are a stranger's input: limits hold, and nothing is fetched."""

from time import perf_counter

import pytest

from publisher.geometry.drawings.tree import DEEPEST, MOST_BYTES, MOST_ELEMENTS, Unreadable, read_tree

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
        (BOMB.encode(), "declares XML entities"),
        (BOMB.encode("utf-16"), "declares XML entities"),
        (b'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]><svg>&a;</svg>', "declares XML entities"),
        ((SVG + "<g>" * (DEEPEST + 5) + "</g>" * (DEEPEST + 5) + "</svg>").encode(), "too deeply nested"),
        ((SVG + "<g/>" * (MOST_ELEMENTS + 5) + "</svg>").encode(), "too many"),
        (b" " * (MOST_BYTES + 1), "million bytes"),
    ],
)
def test_hostile_files_are_refused_quickly(data: bytes, words: str) -> None:
    start = perf_counter()
    with pytest.raises(Unreadable, match=words):
        read_tree(data)
    assert perf_counter() - start < 2.0
