"""Two files compared: bytes, what is drawn, what is seen, what stands beside the pages."""

from io import BytesIO
from typing import Any

import pikepdf
import pytest

from publisher.proof import identify


def saved_again(data: bytes, **how: Any) -> bytes:
    """The same objects in other bytes, as another version of a library may write them."""
    out = BytesIO()
    with pikepdf.open(BytesIO(data)) as pdf:
        pdf.save(out, **how)
    return out.getvalue()


@pytest.fixture(scope="module")
def built(kit: Any) -> bytes:
    data: bytes = kit.good().write()
    return data


@pytest.mark.keeps("proof/not-as-built")
def test_the_same_bytes_and_the_same_pages_in_other_bytes(built: bytes) -> None:
    assert identify(built, built, "a.pdf").verdict == "identical"
    other = saved_again(built, compress_streams=False, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    assert other != built
    found = identify(other, built, "a.pdf")
    assert (found.verdict, found.pages, found.beside, found.findings) == ("alike", (), (), ())


def moved_word(pack: Any, kit: Any) -> None:
    pack.sheets[1].items["count"] = kit.words("cut 14", 80.05, 215.0)


def other_number(pack: Any, kit: Any) -> None:
    pack.sheets[1].items["count"] = kit.words("cut 15", 80.0, 215.0)


def other_picture(pack: Any, kit: Any) -> None:
    """As many pixels in the same place: the walk sees no difference, the dots do."""

    def darken(pdf: pikepdf.Pdf) -> None:
        for image in pdf.pages[1].get_images().values():
            image.write(bytes(len(image.read_bytes())))

    pack.edits.append(darken)


def renamed_bookmark(pack: Any, kit: Any) -> None:
    def rename(pdf: pikepdf.Pdf) -> None:
        pdf.Root.Outlines.First.Title = pikepdf.String("Tiles")

    pack.edits.append(rename)


def link(pack: Any, kit: Any) -> None:
    def add(pdf: pikepdf.Pdf) -> None:
        note = pikepdf.Dictionary(
            Type=pikepdf.Name.Annot, Subtype=pikepdf.Name.Link, Rect=[9, 99, 99, 120], Border=[0, 0, 0],
            Dest=pikepdf.Array([pdf.pages[3].obj, pikepdf.Name.Fit]),
        )  # fmt: skip
        pdf.pages[2].Annots = pikepdf.Array([note])

    pack.edits.append(add)


@pytest.mark.breaks("proof/not-as-built")
@pytest.mark.parametrize(
    ("spoil", "pages", "beside"),
    [
        (moved_word, (2,), ()),
        (other_number, (2,), ()),
        (other_picture, (2,), ()),
        (renamed_bookmark, (), ("the bookmarks",)),
        (link, (), ("the links",)),
        (lambda pack, _: pack.sheets.pop(), (), ("the number of pages (3, not 4)",)),
    ],
    ids=["moved", "retyped", "picture", "bookmark", "link", "a page less"],
)
def test_what_differs_is_named(spoil: Any, pages: Any, beside: Any, built: bytes, kit: Any) -> None:
    pack = kit.good()
    spoil(pack, kit)
    found = identify(pack.write(), built, "a.pdf")
    assert (found.verdict, found.pages, found.beside) == ("different", pages, beside)
    (finding,) = found.findings
    assert all(f"page {page}" in finding.message for page in pages) and all(what in finding.message for what in beside)


def test_a_file_that_cannot_be_read_is_another(built: bytes) -> None:
    assert identify(b"%PDF-1.7", built, "a.pdf").verdict == "different"


@pytest.mark.parametrize("turned", [False, True])
def test_the_same_points_of_lines_and_of_a_bezier_are_compared(turned: bool, kit: Any) -> None:
    """A flat Bézier gives the points of a line; both draw the same."""
    lines, curve = b"q 0.5 w 100 300 m 115 300 l 130 300 l S Q\n", b"q 0.5 w 100 300 m 110 300 120 300 130 300 c S Q\n"
    files = []
    for drawn in (lines, curve):
        pack = kit.good()
        pack.edits.append(lambda pdf, drawn=drawn: pdf.pages[1].contents_add(drawn))
        files.append(pack.write())
    new, old = reversed(files) if turned else files
    assert identify(new, old, "a.pdf").verdict == "alike"
