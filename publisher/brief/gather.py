"""Where the bytes of a design's files come from: from its folder, once; or from inputs that were gathered before."""

from dataclasses import replace
from pathlib import Path
from typing import Protocol

from publisher.basics import Finding, Place
from publisher.brief.files_inside import read_inside
from publisher.brief.inputs import InputFile, Inputs


class Source(Protocol):
    """Gives the bytes of a design's files by name."""

    def holds(self, name: str) -> bool:
        """Tell whether there is such a file."""

    def read(self, name: str, most: int, place: Place) -> bytes | Finding:
        """Return a file's bytes, at most ``most``; or what keeps it from being read, found at ``place``."""


class Folder:
    """A design's folder on the disk; keeps what was read from it, and what could not be."""

    def __init__(self, folder: Path) -> None:
        """Read nothing yet."""
        self._folder = folder
        self._files: dict[str, InputFile] = {}
        self._unread: dict[str, Finding] = {}

    @property
    def files(self) -> tuple[InputFile, ...]:
        """What was read so far, sorted by name."""
        return tuple(self._files[name] for name in sorted(self._files))

    @property
    def unread(self) -> tuple[tuple[str, Finding], ...]:
        """What could not be read so far, sorted by name."""
        return tuple((name, self._unread[name]) for name in sorted(self._unread))

    def holds(self, name: str) -> bool:
        """Tell whether there is such a file."""
        return (self._folder / name).exists()

    def read(self, name: str, most: int, place: Place) -> bytes | Finding:
        """Return a file's bytes, or what keeps it from being read."""
        if name in self._files:
            return self._files[name].data
        data = read_inside(self._folder, name, most, place)
        if isinstance(data, bytes):
            self._files[name] = InputFile.of(name, data)
        else:
            self._unread[name] = data
        return data


class Gathered:
    """Inputs that were gathered before: the disk is not looked at."""

    def __init__(self, inputs: Inputs) -> None:
        """Keep the inputs."""
        self._files = {file.name: file.data for file in inputs.files}
        self._unread = dict(inputs.unread)

    def holds(self, name: str) -> bool:
        """Tell whether there was such a file."""
        return name in self._files or name in self._unread

    def read(self, name: str, most: int, place: Place) -> bytes | Finding:  # noqa: ARG002 - the size was judged when it was read
        """Return a file's bytes, or what kept it from being read. Raises KeyError for a name that was not asked for then."""
        return self._files[name] if name in self._files else replace(self._unread[name], place=place)
