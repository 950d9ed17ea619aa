"""From a path in a spec to the bytes of a file that lies inside the design folder, and nowhere else."""

import os
import re
from pathlib import Path
from stat import S_ISREG

from publisher.basics import Finding, Place
from publisher.basics.wording import nearest
from publisher.brief import limits, rules
from publisher.brief.wording import short

_DEVICES = re.compile(r"(con|prn|aux|nul|com[0-9]|lpt[0-9])([.].*)?", re.IGNORECASE)  # reserved names on some systems


def path_finding(name: str, place: Place) -> Finding | None:
    """Return what is wrong with a path as written, or None. Nothing on the disk is looked at."""
    inside = "write the file's name as it stands in the design folder, such as “pictures/door.jpg”"
    steps = name.split("/")
    if name.startswith(("/", "~", "\\\\")) or re.match(r"[A-Za-z]:", name) or ".." in re.split(r"[/\\]", name):
        message = f"the path “{short(name)}” leads out of the design folder"
        return rules.LEAVES.found(
            message, subject=short(name), hint=f"copy the file into the folder; {inside}", place=place
        )
    if "\\" in name:
        hint = "write “/” between folder and file"
        return rules.PATH_FORM.found(
            f"the path “{short(name)}” holds a backslash", subject=short(name), hint=hint, place=place
        )
    odd = len(name) > limits.PATH_LETTERS or any(
        not step
        or not step.isprintable()
        or step != step.strip(" ")
        or step.endswith(".")
        or _DEVICES.fullmatch(step)
        or re.search(r'[<>:"|?*]', step)
        for step in steps
    )
    if odd:
        message = f"the path “{short(name)}” is not one that every kind of computer can read"
        return rules.PATH_FORM.found(message, subject=short(name), hint=inside, place=place)
    return None


def read_inside(folder: Path, name: str, most: int, place: Place) -> bytes | Finding:
    """Return the bytes of the file ``name`` of a folder, or what keeps it from being read.

    Links are followed only when they end inside the folder; only regular files are opened; at most ``most`` bytes.
    """
    wrong = path_finding(name, place)
    if wrong is not None:
        return wrong
    try:
        root = folder.resolve(strict=True)
        target = (root / name).resolve()
    except (OSError, RuntimeError):  # RuntimeError: a loop of links
        return _unreadable(name, place)
    if not target.is_relative_to(root):
        message = f"the file “{name}” is a link that leads out of the design folder"
        return rules.LEAVES.found(message, subject=name, hint="replace the link by the file itself", place=place)
    wrong = _case(root, name, place)
    if wrong is not None:
        return wrong
    if not os.path.lexists(target):
        hint = f"put the file into the folder, or mend its name{_likely(root, name)}"
        return rules.MISSING_FILE.found(
            f"the file “{name}” is not in the design folder", subject=name, hint=hint, place=place
        )
    return _read(target, name, most, place)


def _read(target: Path, name: str, most: int, place: Place) -> bytes | Finding:
    try:
        # never wait for a pipe, never follow a link that was put there since
        flags = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_BINARY", 0)
        with open(os.open(target, flags), "rb") as stream:  # noqa: PTH123 - opened by descriptor
            if not S_ISREG(os.fstat(stream.fileno()).st_mode):
                return _unreadable(name, place)
            data = stream.read(most + 1)
    except OSError:
        return _unreadable(name, place)
    if len(data) > most:
        message = f"the file “{name}” is larger than {most / 1e6:g} MB"
        hint = "save it smaller"
        return rules.FILE_SIZE.found(message, subject=name, hint=hint, place=place, limit=float(most))
    return data


def _unreadable(name: str, place: Place) -> Finding:
    hint = "it must be an ordinary file that you may read: look at its type and permissions"
    return rules.UNREADABLE.found(f"“{name}” cannot be read", subject=name, hint=hint, place=place)


def _names(folder: Path) -> list[str]:
    try:
        return sorted(os.listdir(folder))  # noqa: PTH208 - names as the disk spells them
    except OSError:
        return []


def _case(folder: Path, name: str, place: Place) -> Finding | None:
    """The disk's own spelling of each step must be the spec's: some systems do not tell `Door.jpg` from `door.jpg`."""
    here = folder
    for step in name.split("/"):
        names = _names(here)
        if step not in names:
            other = next((n for n in names if n.casefold() == step.casefold()), None)
            if other is None:
                return None
            message = f"the spec writes “{step}”, the folder has “{short(other)}”"
            hint = f"write “{short(other)}”: not every computer tells small from capital letters"
            return rules.NAME_CASE.found(message, subject=name, hint=hint, place=place)
        here = here / step
    return None


def _likely(folder: Path, name: str) -> str:
    parent, _, last = name.rpartition("/")
    near = nearest(last, _names(folder / parent))
    return f"; the folder has “{short(near)}”" if near else ""
