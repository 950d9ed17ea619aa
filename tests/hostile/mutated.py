"""``python -m tests.hostile.mutated [--cases 1000] [--seed 0]``: finished files spoiled at random, each proved in a process of its own.

Every case must end by itself within 10 s and 500 MB, with a sentence, an exit code that a spoiled file may have (0: what was spoiled
matters to no reader; 1; 2), and no traceback. PDFs are spoiled as bytes and as objects; cut files, tables, pictures, records and lists
in their folder, and releases as zips.
"""

import argparse
import os
import shutil
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from random import Random
from typing import NoReturn

import pikepdf

SECONDS, MEGABYTES = 10.0, 500.0
CODES = (0, 1, 2)
SPEC = Path(__file__).parents[2] / "designs" / "quay"


@dataclass(frozen=True)
class Ended:
    """How one case ended: how it was spoiled, exit code (negative: a signal), seconds by the clock, the most memory (MB), what is wrong."""

    kind: str
    seed: int
    code: int
    seconds: float
    megabytes: float
    wrong: str


def _flipped(random: Random, data: bytes) -> bytes:
    spoiled = bytearray(data)
    for _ in range(random.choice((1, 4, 40))):
        spoiled[random.randrange(len(spoiled))] = random.randrange(256)
    return bytes(spoiled)


def _cut(random: Random, data: bytes) -> bytes:
    return data[: random.randrange(len(data))]


def _hole(random: Random, data: bytes) -> bytes:
    start = random.randrange(len(data))
    return data[:start] + data[start + random.choice((1, 10, 1000)) :]


def _doubled(random: Random, data: bytes) -> bytes:
    a, b = sorted(random.randrange(len(data)) for _ in range(2))
    return data[:b] + data[a:b] + data[b:]


def _filled(random: Random, data: bytes) -> bytes:
    start = random.randrange(len(data))
    return (
        data[:start]
        + random.choice((b"\0", b" ", b"\xff", b"(", b"<<", b"[", b"9", b"-")) * random.choice((1, 9, 400))
        + data[start:]
    )


def _other_number(random: Random, data: bytes) -> bytes:
    digits = [place for place in range(len(data)) if data[place : place + 1].isdigit()]
    if not digits:
        return data[1:]
    place = random.choice(digits)
    return data[:place] + random.choice((b"0", b"-1", b"9999999999", b"1e999", b"7", b".")) + data[place + 1 :]


Spoil = Callable[[Random, bytes], bytes]
SPOILS: dict[str, Spoil] = {
    "bytes changed": _flipped,
    "cut short": _cut,
    "a hole": _hole,
    "a stretch twice": _doubled,
    "filled up": _filled,
    "a number retyped": _other_number,
}


def _plain(pdf: bytes) -> bytes:
    """Return a PDF with its streams unpacked, so that what is spoiled is what is drawn."""
    out = BytesIO()
    with pikepdf.open(BytesIO(pdf)) as opened:
        opened.save(out, stream_decode_level=pikepdf.StreamDecodeLevel.specialized, compress_streams=False, qdf=True)
    return out.getvalue()


class Room:
    """The files that are spoiled: a set of packs of a design, its PDF unpacked, and a release's zip."""

    def __init__(self, room: Path) -> None:
        from publisher import api

        self.room = room
        brief = api.read(SPEC, papers=("a4",))
        built = api.build(brief)
        self.packs = api.place(built, room / "made").folder
        self.zip = next(api.release(brief, room / "releases").folder.glob("*.zip"))  # type: ignore[union-attr]
        self.pdf = next(self.packs.glob("*.pdf"))
        self.plain = _plain(self.pdf.read_bytes())

    def spoiled(self, seed: int) -> tuple[str, tuple[str, ...]]:
        """Spoil one file; return how, and the words of the command that judges it."""
        random = Random(f"spoiled {seed}")
        how = random.choice(sorted(SPOILS))
        what = random.choice(("pdf", "plain pdf", "plain pdf", "zip", "file", "file"))
        with_spec = random.choice(((), ("--spec", str(SPEC), "--truth")))
        if what == "file":
            folder = self.room / "spoiled"
            shutil.rmtree(folder, ignore_errors=True)
            shutil.copytree(self.packs, folder)
            file = random.choice(sorted(p for p in folder.rglob("*") if p.is_file()))
            file.write_bytes(SPOILS[how](random, file.read_bytes()))
            return f"{how}: {file.suffix} of a folder", ("proof", str(folder), *with_spec)
        source = {"pdf": self.pdf.read_bytes, "plain pdf": lambda: self.plain, "zip": self.zip.read_bytes}[what]()
        target = self.room / (self.zip.name if what == "zip" else self.pdf.name)
        target.write_bytes(SPOILS[how](random, source))
        return f"{how}: {what}", ("proof", str(target), *with_spec)


def run(room: Room, seed: int) -> Ended:
    """Spoil one file and let the command judge it, in a fork of this process whose rooms are loaded already."""
    kind, words = room.spoiled(seed)
    said = room.room / "said.txt"
    start = time.monotonic()
    child = os.fork()
    if child == 0:
        _judge(words, said)
    wrong = ""
    while True:
        done, status, used = os.wait4(child, os.WNOHANG)
        if done:
            break
        if time.monotonic() - start > 60.0:
            os.kill(child, 9)
            wrong = "does not end"
        time.sleep(0.005)
    code = os.waitstatus_to_exitcode(status)
    seconds, megabytes = used.ru_utime + used.ru_stime, used.ru_maxrss / 1024.0
    text = said.read_text(encoding="utf-8", errors="replace")
    if not wrong:
        wrong = _wrong(code, seconds, megabytes, text)
    return Ended(kind, seed, code, seconds, megabytes, wrong)


def _wrong(code: int, seconds: float, megabytes: float, text: str) -> str:
    if code not in CODES:
        return f"ends with {code}: {text[-200:]}"
    if "Traceback" in text or not text.strip():
        return "says nothing, or a traceback"
    if seconds > SECONDS:
        return f"takes {seconds:.1f} s"
    return f"takes {megabytes:.0f} MB" if megabytes > MEGABYTES else ""


def _judge(words: tuple[str, ...], said: Path) -> NoReturn:
    """Be the command: what it prints goes to a file, its exit code is that of this process."""
    code = 70
    try:
        out = os.open(said, os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
        os.dup2(out, 1)
        os.dup2(out, 2)
        sys.stdout = open(1, "w", encoding="utf-8", closefd=False)  # noqa: SIM115
        sys.stderr = open(2, "w", encoding="utf-8", closefd=False)  # noqa: SIM115
        sys.argv = ["publisher", *words]
        from publisher.cli import main

        try:
            main()
            code = 0
        except SystemExit as leave:
            code = int(leave.code or 0)
        sys.stdout.flush()
        sys.stderr.flush()
    finally:
        os._exit(code)


def main() -> int:
    """Run the cases, print what is wrong with any, and how they ended by class."""
    parser = argparse.ArgumentParser(prog="python -m tests.hostile.mutated", description=__doc__)
    parser.add_argument("--cases", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=0)
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        room = Room(Path(folder))
        done = []
        for seed in range(given.seed, given.seed + given.cases):
            done.append(run(room, seed))
            if len(done) % 100 == 0:
                print(f"{len(done)} cases, {sum(bool(one.wrong) for one in done)} wrong", flush=True)
            if done[-1].wrong:
                print(f"seed {seed}, {done[-1].kind}: {done[-1].wrong}", flush=True)
    for (kind, code), times in sorted(Counter((one.kind, one.code) for one in done).items()):
        print(f"{times:5} end with {code}: {kind}")
    bad = sum(bool(one.wrong) for one in done)
    print(
        f"{len(done)} cases, {bad} wrong; at most {max(one.seconds for one in done):.1f} s of the processor "
        f"and {max(one.megabytes for one in done):.0f} MB"
    )
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
