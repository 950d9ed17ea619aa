"""A picture's pixels as they are to be seen: upright, in the colours of sRGB, on white paper, 8 bits of each.

Pillow opens every form that is read here, but for some its own conversion shows another picture: it cuts grey of 16 bits off at
255, leaves the see-through colour of a PNG where it is, and takes colours of any space for sRGB. What cannot be shown rightly is
refused.
"""

from io import BytesIO
from typing import TYPE_CHECKING, Any

import numpy as np

if TYPE_CHECKING:
    from PIL.Image import Image

# Nothing else is tried: some of Pillow's other formats hand their content to helper programs.
FORMATS = ("JPEG", "PNG", "WEBP", "TIFF")
_ORIENTATION = 0x0112  # Exif 2.32 (CIPA DC-008), tag Orientation
_TURNED = (5, 6, 7, 8)  # its values that swap width and height
_PHOTOMETRIC, _BITS = 262, 258  # TIFF 6.0, tags PhotometricInterpretation (0: white is zero) and BitsPerSample
_DEEP = ("I;16", "I;16L", "I;16B", "I;16N")
_PLAIN = ("1", "L", "LA", "La", "P", "PA", "RGB", "RGBA", "RGBa", "RGBX", "CMYK", "YCbCr")
_BY_WAY_OF = {"La": "LA", "RGBa": "RGBA", "P": "RGBA", "PA": "RGBA"}  # what becomes RGB in two steps
_SPACES = {"L": "GRAY", "RGB": "RGB", "CMYK": "CMYK"}  # what a colour profile is for (ICC.1, data colour space)
_NOT_SHOWN = {
    "I": "holds whole numbers of 32 bits, and does not say which of them is white",
    "F": "holds numbers with fractions, and does not say which of them is white",
    "LAB": "is in CIELAB colours, which printers' drivers read differently",
}


class NotShown(ValueError):
    """A picture that cannot be shown rightly; the text is the end of a sentence that begins with its name."""


def shown_pixels(data: bytes) -> Any:
    """Return a picture (JPEG, PNG, WebP or TIFF bytes) as a Pillow image in RGB, as it is to be seen.

    Raises NotShown for colours that have no certain meaning, and what Pillow raises for a damaged file.
    """
    from PIL import Image

    with Image.open(BytesIO(data), formats=FORMATS) as opened:
        turned = orientation(
            opened, data
        )  # looked for first: a TIFF is turned while it is loaded, and forgets how it lay
        opened.load()
        rgb = in_rgb(opened, data)
    ways = Image.Transpose
    turns = (
        None, None, ways.FLIP_LEFT_RIGHT, ways.ROTATE_180, ways.FLIP_TOP_BOTTOM, ways.TRANSPOSE, ways.ROTATE_270,
        ways.TRANSVERSE, ways.ROTATE_90,
    )  # fmt: skip
    turn = turns[turned]
    return rgb if turn is None else rgb.transpose(turn)


def orientation(image: "Image", data: bytes) -> int:
    """Return how an opened picture is to be turned, 1 to 8; 1 for one that Pillow turns itself."""
    if image.format == "TIFF":
        return 1
    if image.format == "PNG" and b"eXIf" not in data and b"adobe.xmp" not in data and b"Raw profile" not in data:
        return 1  # Pillow would decode the whole picture to look for it
    said = image.getexif().get(_ORIENTATION)
    return said if isinstance(said, int) and said in range(1, 9) else 1


def is_turned(image: "Image", data: bytes) -> bool:
    """Say whether width and height swap when the picture is shown upright."""
    return orientation(image, data) in _TURNED


def in_rgb(image: "Image", data: bytes, sample: "Image | None" = None) -> "Image":
    """Return the loaded picture, or a ``sample`` of its pixels, in RGB on white. Raises NotShown."""
    from PIL import Image

    pixels = image if sample is None else sample
    if pixels.mode not in (*_DEEP, *_PLAIN):
        raise NotShown(_NOT_SHOWN.get(pixels.mode, f"is in colours of an unknown kind ({pixels.mode})"))
    most, inverted = _range(image, data)
    mask = _mask(pixels, most, data)
    if pixels.mode in _DEEP:
        grey = np.asarray(pixels).astype(np.uint32) * 255 // most
        plain = Image.fromarray((255 - grey if inverted else grey).clip(0, 255).astype(np.uint8))
    elif pixels.mode in _BY_WAY_OF:
        plain = pixels.convert(_BY_WAY_OF[pixels.mode]).convert("RGB")
    else:
        plain = pixels if pixels.mode in ("L", "CMYK") else pixels.convert("L" if pixels.mode in ("1", "LA") else "RGB")
    rgb = _by_profile(plain, image.info.get("icc_profile")) or plain.convert("RGB")
    if mask is None:
        return rgb
    white = Image.new("RGB", rgb.size, "white")
    white.paste(rgb, mask=mask)
    return white


def _range(image: "Image", data: bytes) -> tuple[int, bool]:
    """Return the value of white, or of full colour, in the file, and whether grey of many bits is written with white as 0."""
    if image.format == "PNG":
        return (1 << data[24]) - 1, False  # PNG 3, IHDR: bit depth
    if image.format == "TIFF":
        tags = image.tag_v2  # type: ignore[attr-defined]
        bits = tags.get(_BITS, (8,))
        return (1 << max(bits if isinstance(bits, tuple) else (bits,))) - 1, tags.get(_PHOTOMETRIC) == 0
    return 255, False


def _mask(pixels: "Image", most: int, data: bytes) -> "Image | None":
    """Return where a picture is to be seen, and how much of it (0 to 255); None when all of it is."""
    from PIL import Image

    clear = pixels.info.get("transparency")
    if pixels.mode in ("LA", "La", "RGBA", "RGBa", "PA"):
        return pixels.getchannel(pixels.mode[-1])
    if clear is None:
        return None
    if pixels.mode == "P":
        return pixels.convert("RGBA").getchannel("A")
    if data[:4] != b"\x89PNG":
        return None
    # PNG 3, tRNS: one grey or one colour, in the bits of the file, is not there
    values = np.asarray(pixels.convert("L") if pixels.mode == "1" else pixels).astype(np.int64)
    deep = pixels.mode in _DEEP
    wanted = np.asarray(clear) if deep else np.asarray(clear) * 255 // most
    same = values == wanted
    return Image.fromarray(np.where(same if same.ndim == 2 else same.all(axis=2), 0, 255).astype(np.uint8))


def _by_profile(plain: "Image", profile: bytes | None) -> "Image | None":
    """Return the picture in sRGB by its own colour profile; None when it has none that can be used."""
    if not profile:
        return None
    from PIL import ImageCms

    try:
        own = ImageCms.ImageCmsProfile(BytesIO(profile))
        if own.profile.xcolor_space.strip() != _SPACES[plain.mode]:
            return None
        return ImageCms.profileToProfile(plain, own, ImageCms.createProfile("sRGB"), outputMode="RGB")
    except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
        return None
