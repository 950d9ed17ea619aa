"""What pikepdf adds: print settings, layers, labels, metadata, attachments; and qpdf finds nothing wrong."""

import zlib
from collections.abc import Callable
from io import BytesIO

import pikepdf
import pytest
from PIL import Image

from publisher.basics import Box, Layer
from publisher.pages import Drawn, Pack, PackImage, Picture
from publisher.press import write_pdf


def opened(pack: Pack) -> pikepdf.Pdf:
    return pikepdf.open(BytesIO(write_pdf(pack)))


def test_printing_is_at_actual_size_and_single_sided(make_pack: Callable[..., Pack], sample: tuple[Drawn, ...]) -> None:
    with opened(make_pack(*sample)) as pdf:
        wishes = pdf.Root.ViewerPreferences
        assert wishes.PrintScaling == "/None"
        assert list(wishes.Enforce) == ["/PrintScaling"]
        assert wishes.Duplex == "/Simplex"
        assert wishes.PickTrayByPDFSize is True
        assert pdf.Root.Lang == "en"


def test_pages_have_one_box_and_nothing_that_scales(make_pack: Callable[..., Pack], sample: tuple[Drawn, ...]) -> None:
    with opened(make_pack(*sample)) as pdf:
        for page in pdf.pages:
            assert not {"/CropBox", "/Rotate", "/UserUnit"} & set(page.obj.keys())


def test_layers_are_listed_and_used(make_pack: Callable[..., Pack], sample: tuple[Drawn, ...]) -> None:
    with opened(make_pack(*sample)) as pdf:
        titles = [str(group.Name) for group in pdf.Root.OCProperties.D.Order]
        assert titles == ["Outlines", "Surface", "Notes", "Dimensions", "Page furniture"]
        assert pdf.pages[0].obj.Resources.Properties.Loutlines.Name == "Outlines"


def test_no_date_and_the_facts_are_attached(make_pack: Callable[..., Pack], sample: tuple[Drawn, ...]) -> None:
    with opened(make_pack(*sample)) as pdf:
        assert "/CreationDate" not in pdf.docinfo
        assert pdf.attachments["facts.json"].get_file().read_bytes() == b"{}"
        assert b"CC-BY-NC-4.0" in pdf.Root.Metadata.read_bytes()


def test_qpdf_finds_nothing_wrong(make_pack: Callable[..., Pack], sample: tuple[Drawn, ...]) -> None:
    with opened(make_pack(*sample, pages=2)) as pdf:
        assert pdf.check_pdf_syntax() == []


def test_the_bytes_are_the_same_whatever_zlib_python_has(
    make_pack: Callable[..., Pack], sample: tuple[Drawn, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Only pikepdf packs what is in the file, with the zlib that is part of it: a release is no other one on another system."""
    photo = BytesIO()
    Image.effect_noise((90, 60), 40).save(photo, "PNG")
    shown = Picture("post.png", Box(20.0, 20.0, 60.0, 46.0), "A post", Layer.PAGE)
    pack = make_pack(*sample, shown, images=(PackImage("post.png", photo.getvalue()),))
    usual, compress, packed = write_pdf(pack), zlib.compress, []

    def otherwise(data: bytes, *_: int) -> bytes:
        packed.append(compress(data, 1))
        return packed[-1]

    monkeypatch.setattr(zlib, "compress", otherwise)
    assert write_pdf(pack) == usual
    assert any(compress(zlib.decompress(data)) != data for data in packed)
