"""A zip read with bounds: whoever sends one may have made it to exhaust a reader."""

import lzma
import struct
import zipfile
import zlib
from io import BytesIO
from pathlib import PurePosixPath

from publisher.basics import record

MOST_MEMBERS = 5_000
MOST_UNPACKED = 400_000_000  # bytes of all members together
SPOILT = (
    zipfile.BadZipFile,
    zlib.error,
    lzma.LZMAError,
    struct.error,
    ValueError,
    EOFError,
    LookupError,
    RuntimeError,
    NotImplementedError,
    OSError,
)
"""What the packers of the standard library raise over damaged bytes: each its own."""


def is_zip_name(name: str) -> bool:
    """Say whether a file is called as zips are: some programs write that in capitals."""
    return name.casefold().endswith(".zip")


@record
class ZipRead:
    """The members of a zip by name, folders left out; ``trouble``: why it cannot be read. ``top``: the one folder in which all lie, which
    their names do not repeat; '' for none."""

    files: tuple[tuple[str, bytes], ...] = ()
    top: str = ""
    trouble: str = ""


def read_zip(data: bytes) -> ZipRead:
    """Return what a zip holds. Any bytes may come in."""
    try:
        with zipfile.ZipFile(BytesIO(data)) as box:
            members = [one for one in box.infolist() if not one.is_dir()]
            if len(members) > MOST_MEMBERS or sum(one.file_size for one in members) > MOST_UNPACKED:
                return ZipRead(trouble="it unpacks to more than is reasonable")
            if len({one.filename for one in members}) < len(members):
                return ZipRead(trouble="two of its members have one name")
            files, left = [], MOST_UNPACKED
            for one in members:
                with box.open(one) as member:
                    content = member.read(left + 1)
                left -= len(content)
                if left < 0:
                    return ZipRead(trouble="it unpacks to more than is reasonable")
                files.append((one.filename, content))
    except SPOILT:
        return ZipRead(trouble="the zip is damaged or cut short")
    tops = {PurePosixPath(name).parts[0] for name, _ in files if PurePosixPath(name).parts}
    if len(tops) == 1 and all("/" in name for name, _ in files):
        (top,) = tops
        return ZipRead(tuple((name.split("/", 1)[1], content) for name, content in files), top)
    return ZipRead(tuple(files))
