"""What made the bytes: this program and the libraries that shape a file, with their versions."""

from functools import cache

from publisher import __version__

LIBRARIES = (
    "fonttools", "numpy", "pikepdf", "pillow", "pyclipper", "pypdfium2", "pyphen", "pyyaml", "reportlab", "segno", "shapely", "spyrrow",
    "svgwrite",
)  # fmt: skip
"""Not here: what only judges (jsonschema, pypdf) or only talks (click). With another version of those a file stays the same."""


@cache
def versions() -> tuple[tuple[str, str], ...]:
    """Return (name, version), this program first. Raises PackageNotFoundError when a library is not installed."""
    from importlib.metadata import version

    return (("publisher", __version__), *((name, version(name)) for name in LIBRARIES))
