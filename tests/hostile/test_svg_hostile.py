# ruff: noqa: E501 - a drawing stands on one line
"""Hostile drawings: refused in under 300 MB, with a reason; nothing is fetched."""

import gzip
import random
import socket
import subprocess
import sys
from pathlib import Path

import pytest

from publisher.basics import Refusal
from publisher.geometry import look_at
from tests.searches.profile import dice, rounds

SVG = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
HEAD = f'<svg {SVG} width="100mm" height="100mm" viewBox="0 0 100 100">'
RECT = '<rect width="9" height="9"/>'
CHAIN = "".join(f'<g id="g{i}">{f"""<use href="#g{i - 1}"/>""" * 10}</g>' for i in range(1, 12))


def scribble(count: int) -> str:
    chance = random.Random(1)
    return " ".join(f"{chance.random() * 100:.2f},{chance.random() * 100:.2f}" for _ in range(count))


HOSTILE: dict[str, tuple[str, str]] = {
    "entity bomb": (f'<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>{HEAD}<text>&b;</text>', "document type of its own"),
    "external entity": (f'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]>{HEAD}<text>&a;</text>', "document type of its own"),
    "external dtd": (f'<!DOCTYPE svg SYSTEM "http://127.0.0.1/x.dtd">{HEAD}{RECT}', "document type of its own"),
    "external style sheet": (f'<?xml-stylesheet href="http://127.0.0.1/x.css"?>{HEAD}{RECT}', "a style sheet from outside"),
    "import": (f'{HEAD}<style>@import url("http://127.0.0.1/x.css");</style>{RECT}', "a style sheet from outside"),
    "external use": (f'{HEAD}<use xlink:href="../secret.svg#a"/>{RECT}', "a shape from outside"),
    "external picture": (f'{HEAD}<image xlink:href="file:///etc/hostname"/>{RECT}', "a picture from outside"),
    "external paint": (f'{HEAD}<rect fill="url(http://127.0.0.1/x#a)" width="9" height="9"/>', "from outside"),
    "external clip": (f'{HEAD}<rect clip-path="url(other.svg#a)" width="9" height="9"/>', "from outside"),
    "a million points": (f'{HEAD}<path d="M0 0{"L1 1" * 1_000_000}"/>', "too many points"),
    "a million corners": (f'{HEAD}<polygon points="{"1 1 " * 1_000_000}"/>', "too many points"),
    "many arcs": (HEAD + '<circle cx="50" cy="50" r="40"/>' * 9_000, "points"),
    "large curves": (f'{HEAD}<path d="M0 0{"C9e5 9e5 -9e5 9e5 1 1" * 20_000}z"/>', "points"),
    "scribble": (f'{HEAD}<polygon points="{scribble(50_000)}"/>', "cross each other too often"),
    "small scribble": (f'{HEAD}<polygon points="{scribble(900)}"/>', "cross each other too often"),
    "not a number": (f'{HEAD}<rect width="NaN" height="9"/>', "no length"),
    "infinite": (f'{HEAD}<rect width="1e999" height="9"/>', "too large"),
    "a thousand million": (f'{HEAD}<path d="M0 0L1e9 0 0 1e9z"/>', "too large"),
    "scaled up": (f'{HEAD}<g transform="scale(1e5)"><g transform="scale(1e5)">{RECT}</g></g>', "too large"),
    "use of itself": (f'{HEAD}<use id="a" href="#a"/>', "a copy of itself"),
    "use in a circle": (f'{HEAD}<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>', "a copy of itself"),
    "symbol of itself": (f'{HEAD}<symbol id="s"><use href="#s"/></symbol><use href="#s"/>', "a copy of itself"),
    "use of use of use": (f'{HEAD}<defs><g id="g0">{RECT}</g>{CHAIN}</defs><use href="#g11"/>', "copies of copies without end"),
    "clip of itself": (f'{HEAD}<clipPath id="a"><rect width="9" height="9" clip-path="url(#a)"/></clipPath><g clip-path="url(#a)">{RECT}</g>', "clipped by itself"),
    "clips in a circle": (
        f'{HEAD}<clipPath id="a" clip-path="url(#b)">{RECT}</clipPath><clipPath id="b" clip-path="url(#a)">{RECT}</clipPath><g clip-path="url(#a)">{RECT}</g>',
        "clipped by itself",
    ),
    "deep": (HEAD + "<g>" * 100_000, "deeply nested"),
    "wide": (HEAD + "<g/>" * 100_000, "too many"),
    "attributes": (f'{HEAD}<rect {" ".join(f"a{i}=" + repr("1") for i in range(200_000))}/>', "too many"),
    "style sheet": (f'{HEAD}<style>{"*{fill:red}" * 15_000}</style>{"<g/>" * 15_000}', "too many rules"),
    "transform": (f'{HEAD}<rect transform="{"a" * 2_000_000}" width="9" height="9"/>', "cannot be read"),
    "digits": (f'{HEAD}<path d="M{"1" * 5_000_000} 0"/>', "too large"),
    "no page": (f'<svg {SVG} width="0" height="9">{RECT}', "no size"),
    "no view": (f'<svg {SVG} viewBox="0 0 0 0">{RECT}', "no box"),
    "huge page": (f'<svg {SVG} width="1e9mm" height="9">{RECT}', "too large"),
}  # fmt: skip
HEAVY = ("a million corners", "many arcs", "scribble", "attributes")  # in a process of their own


@pytest.mark.parametrize("name", [name for name in HOSTILE if name not in HEAVY])
def test_refused_with_a_reason(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    body, words = HOSTILE[name]

    def no_net(*_: object) -> None:
        raise AssertionError("a drawing reached for the network")

    monkeypatch.setattr(socket, "socket", no_net)
    data = f"{body}{'' if name == 'deep' else '</svg>'}".encode()
    with pytest.raises(Refusal) as refused:
        look_at(data, "hostile.svg")
    (finding,) = refused.value.findings
    assert words in finding.message and finding.hint
    assert finding.place is not None and finding.place.file == "hostile.svg"


def test_a_compressed_bomb_is_not_unpacked() -> None:
    with pytest.raises(Refusal, match="compressed"):
        look_at(gzip.compress(b"<svg>" + b" " * 20_000_000), "bomb.svgz")


def test_unknown_bytes_are_refused() -> None:
    for data in (b"", b"\x00" * 1000, bytes(range(256)) * 100, b'<?xml version="1.0" encoding="utf-7"?><svg/>'):
        with pytest.raises(Refusal):
            look_at(data, "noise.svg")


def test_a_picture_beside_the_drawing_is_left_out_not_opened() -> None:
    look = look_at(f'{HEAD}<image href="photo.jpg" width="9" height="9"/>{RECT}</svg>'.encode(), "a.svg")
    assert len(look.outlines) == 1 and look.left_out == ("image (line 1): a picture, no outline",)


@pytest.mark.parametrize("name", HEAVY)
def test_refused_with_a_reason_in_under_300_megabytes(name: str, tmp_path: Path) -> None:
    file = tmp_path / "hostile.svg"
    body, words = HOSTILE[name]
    file.write_text(body + "</svg>")
    code = (
        "import sys\nfrom pathlib import Path\nfrom publisher.cli import main\n"
        f"sys.argv = ['publisher', 'outline', {str(file)!r}]\n"
        "try:\n    main()\nexcept SystemExit as leave:\n"
        # getrusage would count the test's own memory, as Linux hands the peak of the process before exec on (exec_mmap)
        "    (peak,) = [row for row in Path('/proc/self/status').read_text().splitlines() if row.startswith('VmHWM')]\n"
        "    print(leave.code, int(peak.split()[1]) // 1024)\n"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    status, megabytes = map(int, run.stdout.split())
    assert status == 2 and megabytes < 300
    assert "error: " in run.stderr and words in run.stderr and "Traceback" not in run.stderr


@pytest.mark.search
def test_random_damage_is_read_or_refused() -> None:
    """Damaged copies of a drawing that uses most of what is read: an answer or a refusal, never another exception."""
    whole = (
        f'{HEAD}<style>.a {{ fill: none }}</style><defs><g id="p"><path d="M0 0C1 2 3 4 5 6A5 5 0 0 1 9 9z"/></g></defs>'
        '<clipPath id="c"><circle r="20"/></clipPath><g transform="rotate(30) scale(2)" clip-path="url(#c)"><use href="#p" x="5"/></g>'
        '<rect class="a" x="1" y="1" width="20" height="1e1" rx="2"/><polygon points="1,1 5,5 9,1"/></svg>'
    ).encode()
    chance, many = dice(7), rounds(80, 8000)
    read = 0
    for _ in range(many):
        data = bytearray(whole)
        for _ in range(chance.randint(1, 4)):
            at = chance.randrange(len(data))
            data[at : at + chance.randint(0, 3)] = bytes(
                chance.choice(b'0159-.eMZ"<>#() ') for _ in range(chance.randint(0, 3))
            )
        try:
            look_at(bytes(data), "damaged.svg")
            read += 1
        except Refusal:
            pass
    assert 0 < read < many
