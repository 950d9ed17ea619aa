"""Pictures: size as shown, formats from the list only, damage found when read, bombs refused."""

import struct
import zlib
from io import BytesIO

import pytest
from PIL import Image

from publisher.basics import Finding, Place
from publisher.brief import limits
from publisher.brief.pictures import picture_size

PLACE = Place("spec.yaml", 3, 7)


def _image(kind: str, size: tuple[int, int] = (60, 40), orientation: int = 0, mode: str = "RGB") -> bytes:
    stream = BytesIO()
    exif = Image.Exif()
    if orientation:
        exif[0x0112] = orientation
    Image.effect_noise(size, 40).convert(mode).save(stream, kind, **({"exif": exif.tobytes()} if orientation else {}))
    return stream.getvalue()


def _check(data: bytes) -> str:
    result = picture_size(data, "photo", PLACE)
    assert isinstance(result, Finding)
    assert result.hint
    return result.check.removeprefix("brief/")


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF"])
@pytest.mark.parametrize("orientation", range(9))
def test_the_size_is_that_of_the_picture_held_upright(kind: str, orientation: int) -> None:
    """Exif 2.32, tag Orientation: 5 to 8 are turned by a quarter."""
    expected = (40, 60) if orientation >= 5 else (60, 40)
    assert picture_size(_image(kind, orientation=orientation), "photo", PLACE) == expected


@pytest.mark.parametrize(
    ("kind", "mode"), [("JPEG", "CMYK"), ("JPEG", "L"), ("PNG", "P"), ("PNG", "RGBA"), ("TIFF", "I;16")]
)
def test_kinds_of_colour_are_accepted(kind: str, mode: str) -> None:
    assert picture_size(_image(kind, mode=mode), "photo", PLACE) == (60, 40)


@pytest.mark.parametrize("kind", ["GIF", "BMP", "PPM", "ICO", "EPS", "PDF"])
def test_other_formats_are_not_opened(kind: str) -> None:
    assert _check(_image(kind, size=(32, 32))) == "not-a-picture"


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF"])
@pytest.mark.parametrize("share", [0.1, 0.5, 0.9])
def test_a_picture_that_is_cut_short_is_found_now(kind: str, share: float) -> None:
    data = _image(kind, size=(300, 200))
    assert _check(data[: int(len(data) * share)]) == "not-a-picture"


@pytest.mark.parametrize("data", [b"", b"\xff\xd8\xff", b"%!PS-Adobe-3.0\n", b"<svg/>", bytes(1000), b"RIFF....WEBP"])
def test_what_is_no_picture_is_a_finding(data: bytes) -> None:
    assert _check(data) == "not-a-picture"


def _png_head(width: int, height: int) -> bytes:
    def chunk(name: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"")) + chunk(b"IEND", b"")


@pytest.mark.parametrize("side", [8_945, 10_000, 15_000, 30_000, 2**31 - 1])
def test_too_many_pixels_are_refused_by_the_head_alone(side: int) -> None:
    assert side * side > limits.PICTURE_PIXELS
    assert _check(_png_head(side, side)) == "too-many-pixels"


def _spoilt(data: bytes, share: float, count: int = 12) -> bytes:
    """Return a file of which ``count`` bytes are others, at this share of its length."""
    at = int(len(data) * share)
    return data[:at] + bytes(byte ^ 0x55 for byte in data[at : at + count]) + data[at + count :]


@pytest.mark.parametrize("share", [0.3, 0.5, 0.8])
@pytest.mark.parametrize("more", [{}, {"progressive": True}, {"mode": "L"}, {"mode": "CMYK"}], ids=str)
def test_a_jpeg_that_would_be_shown_shifted_is_found(share: float, more: dict[str, object]) -> None:
    stream = BytesIO()
    kept = {key: value for key, value in more.items() if key != "mode"}
    Image.effect_noise((300, 200), 40).convert(str(more.get("mode", "RGB"))).save(stream, "JPEG", **kept)
    assert picture_size(stream.getvalue(), "photo", PLACE) == (300, 200)
    assert _check(_spoilt(stream.getvalue(), share, 200)) == "not-a-picture"


def test_what_a_camera_puts_behind_the_end_mark_is_no_matter() -> None:
    assert picture_size(_image("JPEG") + b"ftypmp42" + bytes(5000), "photo", PLACE) == (60, 40)


@pytest.mark.parametrize("share", [0.5, 0.9])
def test_a_png_with_other_bytes_is_found(share: float) -> None:
    assert _check(_spoilt(_image("PNG", size=(300, 200)), share)) == "not-a-picture"


@pytest.mark.parametrize("mode", ["I", "F", "LAB"])
def test_colours_without_a_meaning_are_found(mode: str) -> None:
    stream = BytesIO()
    Image.new(mode, (20, 20)).save(stream, "TIFF")
    assert _check(stream.getvalue()) == "picture-colours"
