"""Pixels as they are to be seen: every form of file and colour is shown rightly, or refused."""

import struct
import zlib
from io import BytesIO

import numpy as np
import pytest
from PIL import Image, ImageCms, ImageOps

from publisher.brief.photographs import NotShown, shown_pixels

RAMP = (0, 64, 128, 255)  # what four pixels side by side show, of 255
WHITE = (255, 255, 255)


def _saved(image: Image.Image, kind: str, **more: object) -> bytes:
    out = BytesIO()
    image.save(out, kind, **more)
    return out.getvalue()


def _row(data: bytes) -> list[tuple[int, int, int]]:
    image = shown_pixels(data)
    assert image.mode == "RGB"
    return [image.getpixel((x, 0)) for x in range(image.width)]


def png(depth: int, colour: int, row: bytes, width: int, clear: bytes = b"") -> bytes:
    """Write a PNG of one row by hand (PNG 3): ``colour`` 0 grey, 2 RGB; ``clear``: its tRNS."""

    def chunk(name: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    head = struct.pack(">IIBBBBB", width, 1, depth, colour, 0, 0, 0)
    see_through = chunk(b"tRNS", clear) if clear else b""
    body = chunk(b"IHDR", head) + see_through + chunk(b"IDAT", zlib.compress(b"\0" + row)) + chunk(b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + body


def tiff(data: bytes, bits: int, white_is_zero: bool = False, kind: int = 1, order: str = "<") -> bytes:
    """Write a TIFF of one row of four greys by hand (TIFF 6.0); ``kind``: SampleFormat (1 unsigned, 2 signed, 3 float)."""
    entries = [(256, 4), (257, 1), (258, bits), (259, 1), (262, 0 if white_is_zero else 1), (273, 8), (277, 1), (278, 1),
               (279, len(data)), (339, kind)]  # fmt: skip
    table = b"".join(struct.pack(f"{order}HHIHH", tag, 3, 1, value, 0) for tag, value in entries)
    head = (b"II*\0" if order == "<" else b"MM\0*") + struct.pack(f"{order}I", 8 + len(data))
    return head + data + struct.pack(f"{order}H", len(entries)) + table + bytes(4)


def _deep(order: str, most: int = 65_535, inverted: bool = False) -> bytes:
    values = [round(value / 255 * most) for value in RAMP]
    return struct.pack(f"{order}4H", *(most - value if inverted else value for value in values))


@pytest.mark.parametrize(
    "data",
    [
        png(16, 0, _deep(">"), 4),
        tiff(_deep("<"), 16),
        tiff(_deep(">"), 16, order=">"),
        tiff(_deep("<", inverted=True), 16, white_is_zero=True),
        tiff(bytes(255 - value for value in RAMP), 8, white_is_zero=True),
        tiff(bytes.fromhex("000404808fff"), 12),
        png(16, 2, b"".join(struct.pack(">3H", *[value * 257] * 3) for value in RAMP), 4),
    ],
    ids=["png", "tiff", "big-endian", "white-is-zero", "white-is-zero-8", "12-bits", "rgb"],
)
def test_many_bits_are_scaled_to_eight(data: bytes) -> None:
    for shown, meant in zip(_row(data), RAMP, strict=True):
        assert shown == pytest.approx((meant,) * 3, abs=1)


@pytest.mark.parametrize(
    ("data", "hidden", "left"),
    [
        (png(8, 2, bytes((9, 8, 7, 40, 50, 60)), 2, struct.pack(">3H", 9, 8, 7)), 0, (40, 50, 60)),
        (png(8, 0, bytes((90, 200)), 2, struct.pack(">H", 200)), 1, (90, 90, 90)),
        (png(2, 0, b"\x60", 2, struct.pack(">H", 1)), 0, (170, 170, 170)),
        (png(4, 0, b"\x3a", 2, struct.pack(">H", 3)), 0, (170, 170, 170)),
        (png(1, 0, b"\x40", 2, struct.pack(">H", 0)), 0, WHITE),
        (png(1, 0, b"\x40", 2, struct.pack(">H", 1)), 1, (0, 0, 0)),
        (png(16, 0, struct.pack(">2H", 300, 25_700), 2, struct.pack(">H", 300)), 0, (100, 100, 100)),
        (png(16, 2, struct.pack(">6H", *(1000,) * 3, *(25_700,) * 3), 2, struct.pack(">3H", *(1000,) * 3)), 0, (100, 100, 100)),
    ],
    ids=["rgb", "grey", "2-bits", "4-bits", "black", "white", "grey-16", "rgb-16"],
)  # fmt: skip
def test_the_see_through_colour_of_a_png_lies_on_white(data: bytes, hidden: int, left: tuple[int, int, int]) -> None:
    row = _row(data)
    assert row[hidden] == WHITE
    assert row[1 - hidden] == left


@pytest.mark.parametrize(
    ("kind", "mode"), [("PNG", "LA"), ("PNG", "RGBA"), ("PNG", "P"), ("TIFF", "LA"), ("TIFF", "RGBA"), ("TIFF", "PA")]
)
def test_a_see_through_picture_lies_on_white(kind: str, mode: str) -> None:
    clear = Image.new("RGBA", (4, 1), (0, 0, 0, 0))
    clear.putpixel((1, 0), (0, 0, 0, 255))
    image = clear.quantize() if mode == "P" else Image.new("PA", (4, 1)) if mode == "PA" else clear.convert(mode)
    if mode == "PA":
        image.putpixel((1, 0), (0, 255))
    row = _row(_saved(image, kind))
    assert row[0] == WHITE
    assert row[1] == (0, 0, 0)


@pytest.mark.parametrize(
    ("kind", "mode"), [("PNG", "1"), ("TIFF", "1"), ("JPEG", "L"), ("TIFF", "CMYK"), ("TIFF", "YCbCr"), ("PNG", "P"), ("WEBP", "RGB")]
)  # fmt: skip
def test_plain_kinds_of_colour_show_black_and_white(kind: str, mode: str) -> None:
    black_and_white = Image.new("RGB", (32, 8), "white")
    black_and_white.paste((0, 0, 0), (16, 0, 32, 8))
    row = _row(_saved(black_and_white.convert(mode), kind))
    assert row[2] == pytest.approx(WHITE, abs=3)
    assert row[30] == pytest.approx((0, 0, 0), abs=3)


def test_printing_inks_in_a_jpeg_are_no_negative() -> None:
    """Drawing programs write them inverted, and say so in the file."""
    red = Image.new("CMYK", (16, 8), (0, 255, 255, 0))
    assert _row(_saved(red, "JPEG", quality=95))[4] == pytest.approx((255, 0, 0), abs=4)


def test_a_profile_of_other_colours_counts() -> None:
    """A profile of which the primaries red and blue change places: what it calls red is blue in sRGB."""
    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    at = {profile[i : i + 4].decode(): i for i in range(132, 132 + 12 * int.from_bytes(profile[128:132], "big"), 12)}
    red, blue = (profile[at[tag] + 4 : at[tag] + 12] for tag in ("rXYZ", "bXYZ"))
    profile[at["rXYZ"] + 4 : at["rXYZ"] + 12], profile[at["bXYZ"] + 4 : at["bXYZ"] + 12] = blue, red
    image = Image.new("RGB", (2, 1), (255, 0, 0))
    assert _row(_saved(image, "PNG"))[0] == (255, 0, 0)
    assert _row(_saved(image, "PNG", icc_profile=bytes(profile)))[0] == pytest.approx((0, 0, 255), abs=2)


@pytest.mark.parametrize(
    "profile", [b"no profile at all", ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB")).tobytes()]
)
def test_a_profile_that_does_not_fit_is_no_matter(profile: bytes) -> None:
    assert _row(_saved(Image.new("RGB", (2, 1), (200, 10, 30)), "PNG", icc_profile=profile))[0] == (200, 10, 30)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP", "TIFF"])
@pytest.mark.parametrize("orientation", range(10))
def test_the_picture_stands_as_exif_says(kind: str, orientation: int) -> None:
    quarters = Image.new("L", (48, 32))
    for number, box in enumerate(((0, 0), (24, 0), (0, 16), (24, 16))):
        quarters.paste(60 * number + 30, (*box, box[0] + 24, box[1] + 16))
    exif = Image.Exif()
    exif[0x0112] = orientation
    data = _saved(quarters.convert("RGB"), kind, exif=exif.tobytes())
    with Image.open(BytesIO(data)) as opened:
        meant = np.asarray(ImageOps.exif_transpose(opened).convert("RGB"), dtype=int)
    mine = np.asarray(shown_pixels(data), dtype=int)
    assert mine.shape == meant.shape
    assert np.abs(mine - meant).max() <= 1


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (_saved(Image.new("F", (4, 4), 0.5), "TIFF"), "fractions"),
        (_saved(Image.new("I", (4, 4), 70_000), "TIFF"), "32 bits"),
        (tiff(struct.pack("<4h", -5, 0, 5, 300), 16, kind=2), "32 bits"),
        (_saved(Image.new("LAB", (4, 4)), "TIFF"), "CIELAB"),
    ],
)
def test_numbers_without_a_white_are_refused(data: bytes, words: str) -> None:
    with pytest.raises(NotShown, match=words):
        shown_pixels(data)
