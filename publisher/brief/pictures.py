"""Pictures: identified by Pillow from an explicit list of formats, never larger than memory allows."""

import warnings
from io import BytesIO
from typing import TYPE_CHECKING

from publisher.basics import Finding, Place
from publisher.brief import limits, rules

if TYPE_CHECKING:
    from PIL.Image import Image

# Nothing else is tried: some of Pillow's other formats hand their content to helper programs.
FORMATS = ("JPEG", "PNG", "WEBP", "TIFF")
_ORIENTATION = 0x0112  # Exif 2.32 (CIPA DC-008), tag Orientation
_TURNED = (5, 6, 7, 8)  # its values that swap width and height


def picture_size(data: bytes, name: str, place: Place) -> tuple[int, int] | Finding:
    """Return a picture's width and height in pixels as it is to be shown (EXIF orientation applied), or what is wrong."""
    from PIL import Image

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # a warning about size is a finding here; others do not matter to the designer
        try:
            with Image.open(BytesIO(data), formats=FORMATS) as image:
                width, height = image.size
                if width * height > limits.PICTURE_PIXELS:
                    return _too_many(name, place, width * height)
                _decode(image)
            turned = _is_turned(data)
        except Image.DecompressionBombError:
            return _too_many(name, place, None)
        except Exception:  # Pillow raises a dozen kinds on damaged files, and all mean the same to the designer
            return _damaged(name, place)
    return (height, width) if turned else (width, height)


def _decode(image: "Image") -> None:
    """Fail now, not on a page, when the picture's data is damaged; as cheaply as the format allows."""
    if image.format == "PNG":
        image.verify()
    else:
        image.draft("L", (max(1, image.width // 8), max(1, image.height // 8)))
        image.load()


def _is_turned(data: bytes) -> bool:
    """Whether width and height swap when the picture is shown upright."""
    from PIL import Image

    with Image.open(BytesIO(data), formats=FORMATS) as image:
        if image.format == "TIFF":  # Pillow gives its size already turned
            return False
        if image.format == "PNG" and b"eXIf" not in data and b"adobe.xmp" not in data:
            return False  # Pillow would decode the whole picture to look for it
        return image.getexif().get(_ORIENTATION) in _TURNED


def _damaged(name: str, place: Place) -> Finding:
    return rules.NOT_PICTURE.found(
        f"the file “{name}” is not a picture that can be read",
        subject=name,
        hint="save it again as JPEG, PNG, WebP or TIFF with a picture editor",
        place=place,
    )


def _too_many(name: str, place: Place, pixels: int | None) -> Finding:
    return rules.PIXELS.found(
        f"the picture “{name}” has more than {limits.PICTURE_PIXELS // 1_000_000} million pixels",
        subject=name,
        hint="save it smaller: 3000 pixels across fill a page at print quality",
        place=place,
        value=None if pixels is None else float(pixels),
        limit=float(limits.PICTURE_PIXELS),
    )
