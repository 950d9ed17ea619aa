"""A folder is judged whole: a fault planted into any file of any class is found by the check that is for it, and a clean one by none."""

import io
import json
import re
import zipfile
from collections.abc import Callable
from dataclasses import replace
from random import Random
from typing import Any

import numpy as np
import pytest
from PIL import Image

from publisher.basics import FilePromises, errors
from publisher.proof import judge_files, judge_lists, promises_by_records
from publisher.proof.folder.zips import is_zip_name, read_zip
from tests.proof.made_folder import Made
from tests.searches.profile import seeds

Change = Callable[[bytes], bytes]
WALL, DISC, SHEET, TABLE = "part-a-wall.svg", "part-b-disc.svg", "762mm-1.svg", "cut-yield.csv"
PAGE, NEXT, RECORD = "page-02.png", "page-03.png", "-a4.json"


def swapped(old: str, new: str, count: int = 1) -> Change:
    def change(data: bytes) -> bytes:
        text = data.decode("utf-8")
        assert old in text, old
        return text.replace(old, new, count).encode("utf-8")

    return change


def matched(pattern: str, new: str | Callable[[re.Match[str]], str]) -> Change:
    def change(data: bytes) -> bytes:
        text, times = re.subn(pattern, new, data.decode("utf-8"), count=1)
        assert times == 1, pattern
        return text.encode("utf-8")

    return change


def scaled(by: float, group: str) -> Change:
    """Every number of the paths of one group, scaled."""

    def change(data: bytes) -> bytes:
        head, opened, rest = data.decode("utf-8").partition(f'id="{group}"')
        body, closed, tail = rest.partition("</g>")
        body = re.sub(
            r' d="([^"]*)"', lambda m: f' d="{re.sub(r"[0-9.]+", lambda n: str(float(n[0]) * by), m[1])}"', body
        )
        assert opened and closed
        return (head + opened + body + closed + tail).encode("utf-8")

    return change


def first_path(group: str, change: Callable[[str], str]) -> Change:
    """The data of the first path of a group, changed."""

    def changed(data: bytes) -> bytes:
        return re.sub(
            rf'(id="{group}"[^>]*><path d=")([^"]*)', lambda m: m[1] + change(m[2]), data.decode("utf-8"), count=1
        ).encode("utf-8")

    return changed


def moved(by: float) -> Callable[[str], str]:
    """Every x of moves and lines, moved."""
    return lambda d: re.sub(r"([ML]) ([0-9.]+)", lambda m: f"{m[1]} {float(m[2]) + by:.4f}", d)


def no_first_path(group: str) -> Change:
    return matched(rf'(id="{group}"[^>]*>)<path d="[^"]*" />', r"\1")


def first_path_twice(group: str) -> Change:
    return matched(rf'(id="{group}"[^>]*>)(<path d="[^"]*" />)', r"\1\2\2")


PLANTS: dict[str, tuple[str, Change, str]] = {
    "wall scaled": (WALL, scaled(1.002, "cut"), "proof/cut-file-lines"),
    "width retyped": (WALL, matched(r' width="[0-9.]+mm"', ' width="125.0mm"'), "proof/cut-file-read"),
    "units dropped": (WALL, matched(r' width="([0-9.]+)mm"', r' width="\1"'), "proof/cut-file-read"),
    "viewBox retyped": (WALL, matched(r'viewBox="0,0,', 'viewBox="0,0,1'), "proof/cut-file-read"),
    "an element nobody asked for": (WALL, swapped("<defs />", "<defs /><image />"), "proof/cut-file-read"),
    "a transform": (WALL, swapped('id="cut"', 'id="cut" transform="scale(1.01)"'), "proof/cut-file-read"),
    "a style": (WALL, swapped('id="cut"', 'id="cut" style="display:none"'), "proof/cut-file-read"),
    "cut lines white": (WALL, swapped('stroke="black"', 'stroke="white"'), "proof/cut-file-read"),
    "cut lines dashed": (WALL, swapped('id="cut"', 'id="cut" stroke-dasharray="3 1"'), "proof/cut-file-read"),
    "cut group renamed": (WALL, swapped('id="cut"', 'id="draw"'), "proof/cut-file-lines"),
    "cut short": (WALL, lambda data: data[: len(data) // 2], "proof/cut-file-read"),
    "a document type": (WALL, swapped("<svg", "<!DOCTYPE svg><svg"), "proof/cut-file-read"),
    "an arc flipped": (DISC, matched(r"A 20.0 20.0 0 0 0", "A 20.0 20.0 0 0 1"), "proof/cut-file-lines"),
    "an arc of another radius": (DISC, matched(r"A 20.0 20.0", "A 20.5 20.5"), "proof/cut-file-lines"),
    "a corner moved 0.02 mm": (WALL, first_path("cut", lambda d: d.replace("L 121.0 ", "L 121.02 ", 1)), "proof/cut-file-lines"),
    "an opening gone": (WALL, first_path("cut", lambda d: d[: d.index("Z") + 1]), "proof/cut-file-lines"),
    "an outline left open": (WALL, first_path("cut", lambda d: d[:-2]), "proof/cut-file-lines"),
    "an outline twice": (DISC, first_path_twice("cut"), "proof/cut-file-lines"),
    "a surface line moved": (WALL, first_path("draw", moved(0.05)), "proof/cut-file-lines"),
    "a surface line gone": (WALL, no_first_path("draw"), "proof/cut-file-lines"),
    "a surface line twice": (WALL, first_path_twice("draw"), "proof/cut-file-lines"),
    "a line of no length": (WALL, swapped('id="cut"', 'id="x"><path d="M 5 5"/></g><g id="cut"'), "proof/cut-file-lines"),
    "room round a piece": (WALL, scaled(1.0, "cut"), ""),
    "a line to a point 10,000 km away": (WALL, first_path("draw", lambda d: d + " L 1e10 5"), "proof/cut-file-read"),
    "a number that is none": (WALL, first_path("draw", lambda d: d + " L 1e999 5"), "proof/cut-file-read"),
    "a width of 1 km": (WALL, matched(r' width="[0-9.]+mm"', ' width="1e6mm"'), "proof/cut-file-read"),
    "18 km of lines": (WALL, first_path("draw", lambda d: d + " L 0 5 L 90000 5" * 100), "proof/cut-file-read"),
    "letter gone": (WALL, matched(r"<text[^>]*>A</text>", ""), "proof/cut-file-words"),
    "letter retyped": (WALL, swapped(">A</text>", ">B</text>"), "proof/cut-file-words"),
    "letter moved": (WALL, matched(r'(<text[^>]* x=")[0-9.]+', r"\g<1>3.0"), "proof/cut-file-words"),
    "letter tiny": (WALL, matched(r'font-size="[0-9.]+"', 'font-size="0.2"'), "proof/cut-file-words"),
    "title of another part": (WALL, swapped("A Wall", "B Disc"), "proof/cut-file-words"),
    "a piece moved on the sheet": (SHEET, first_path("cut", moved(4.0)), "proof/cut-file-lines"),
    "a piece gone from the sheet": (SHEET, no_first_path("cut"), "proof/cut-file-lines"),
    "a piece twice on the sheet": (SHEET, first_path_twice("cut"), "proof/sheet-file"),
    "sheet's edge retyped": (SHEET, matched(r'(<rect height=")[0-9.]+', r"\g<1>700"), "proof/cut-file-lines"),
    "sheet letters exchanged": (SHEET, swapped(">B</text>", ">A</text>"), "proof/cut-file-words"),
    "a number of the table": (TABLE, matched(r"(whole list,,,,,,\d+,\d+,\d+,,,)\d+", r"\g<1>7"), "proof/yield-table"),
    "a share of the table": (TABLE, matched(r"(\d\d)\.(\d),", lambda m: f"{m[1]}.{9 - int(m[2])},"), "proof/yield-table"),
    "a name of the table": (TABLE, swapped("Disc", "Disk"), "proof/yield-table"),
    "a column of the table renamed": (TABLE, swapped("grid_sheets", "grid_sheet"), "proof/yield-table"),
    "a row of the table gone": (TABLE, lambda d: b"\r\n".join(d.split(b"\r\n")[:-2]) + b"\r\n", "proof/yield-table"),
    "the table in other bytes": (TABLE, lambda d: b"\xff\xfe" + d, "proof/yield-table"),
    "record retyped": (RECORD, swapped('"count":2', '"count":3'), "proof/record-attached"),
}  # fmt: skip
del PLANTS["room round a piece"]


@pytest.mark.keeps(
    "proof/cut-file-read", "proof/cut-file-lines", "proof/cut-file-words", "proof/sheet-file", "proof/yield-table",
    "proof/record-attached", "proof/preview", "proof/file-not-as-listed", "proof/file-unlisted", "proof/zip-content",
)  # fmt: skip
def test_a_release_as_it_was_made_has_no_fault(made_folder: Made) -> None:
    assert made_folder.found(made_folder.files) == ()
    assert made_folder.listed(made_folder.files) == ()


@pytest.mark.breaks(
    "proof/cut-file-read",
    "proof/cut-file-lines",
    "proof/cut-file-words",
    "proof/sheet-file",
    "proof/yield-table",
    "proof/record-attached",
)
def test_a_fault_of_any_class_is_found_by_its_check(made_folder: Made) -> None:
    missed = {}
    for name, (file, change, check) in PLANTS.items():
        found = {finding.check for finding in made_folder.found(made_folder.spoiled(file, change))}
        if check not in found:
            missed[name] = (check, sorted(found))
    assert missed == {}


def test_two_files_in_each_others_place_are_found(made_folder: Made) -> None:
    for one, other, check in ((WALL, DISC, "proof/cut-file-lines"), (PAGE, NEXT, "proof/preview")):
        a, b = made_folder.name(one), made_folder.name(other)
        found = made_folder.found({**made_folder.files, a: made_folder.files[b], b: made_folder.files[a]})
        assert {f.subject for f in found if f.check == check} == {a, b}


def picture(change: Callable[[np.ndarray], np.ndarray]) -> Change:
    def changed(data: bytes) -> bytes:
        out = io.BytesIO()
        Image.fromarray(change(np.asarray(Image.open(io.BytesIO(data))).copy())).save(out, "PNG")
        return out.getvalue()

    return changed


def _erased(dots: np.ndarray) -> np.ndarray:
    rows, columns = np.nonzero(dots < 60)
    dots[rows[0] - 6 : rows[0] + 6, max(0, columns[0] - 12) : columns[0] + 12] = 255
    return dots


@pytest.mark.breaks("proof/preview")
@pytest.mark.parametrize(
    "change",
    [
        picture(lambda dots: np.full_like(dots, 255)),
        picture(lambda dots: np.roll(dots, 3, axis=1)),
        picture(lambda dots: dots[::-1]),
        picture(lambda dots: dots[:, :300]),
        picture(_erased),
        lambda data: data[:200],
        lambda _: b"GIF89a",
    ],
    ids=["blank", "moved", "upside down", "cropped", "a word erased", "cut short", "no picture"],
)
def test_a_picture_that_does_not_show_its_page_is_found(made_folder: Made, change: Change) -> None:
    found = made_folder.found(made_folder.spoiled(PAGE, change))
    assert [(f.check, f.subject) for f in found] == [("proof/preview", made_folder.name(PAGE))]


def test_another_rim_of_letters_is_no_fault(made_folder: Made) -> None:
    softer = picture(lambda dots: np.where(dots < 255, np.minimum(dots.astype(int) + 20, 255), dots).astype(np.uint8))
    assert made_folder.found(made_folder.spoiled(PAGE, softer)) == ()


@pytest.mark.breaks("proof/file-not-as-listed", "proof/file-unlisted", "proof/zip-content")
def test_what_is_changed_missing_renamed_or_added_is_found_by_the_lists(made_folder: Made) -> None:
    wall = made_folder.name(WALL)
    without = {name: data for name, data in made_folder.files.items() if name != wall}
    listing = made_folder.name("LISTING.md")
    for files, checks in (
        (without, {"proof/file-not-as-listed", "proof/zip-content"}),
        (
            {**without, f"{wall}.bak": made_folder.files[wall]},
            {"proof/file-not-as-listed", "proof/file-unlisted", "proof/zip-content"},
        ),
        ({**made_folder.files, "notes.txt": b"mine"}, {"proof/file-unlisted", "proof/zip-content"}),
        (
            {**made_folder.files, listing: made_folder.files[listing] + b" "},
            {"proof/file-not-as-listed", "proof/zip-content"},
        ),
        (
            {**made_folder.files, "manifest.json": b"{"},
            {"proof/file-not-as-listed", "proof/file-unlisted", "proof/zip-content"},
        ),
    ):
        assert {finding.check for finding in made_folder.listed(files)} == checks


def test_a_list_that_forgets_a_file_is_found(made_folder: Made) -> None:
    """Both lists retyped by somebody who knows them: the design says which files there are."""
    wall = made_folder.name(WALL)
    files = dict(made_folder.files)
    for name in ("packs.json", "manifest.json"):
        document = json.loads(files[name])
        document["files"] = [one for one in document["files"] if one["path"] != wall]
        files[name] = json.dumps(document).encode()
    del files[wall]
    assert any(f"makes {wall}" in finding.message for finding in made_folder.listed(files))


@pytest.mark.parametrize("spoil", ["cut", "other", "bomb", "twice"])
def test_a_zip_that_is_not_the_release_is_found(made_folder: Made, spoil: str) -> None:
    name = made_folder.name(".zip")
    out = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(made_folder.files[name])) as box,
        zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new,
    ):
        for one in box.namelist():
            new.writestr(one, b"x" if spoil == "other" and one.endswith(WALL) else box.read(one))
        if spoil == "bomb":
            new.writestr("big", bytes(410_000_000))
        if spoil == "twice":
            with pytest.warns(UserWarning):
                new.writestr(one, b"again")
    data = out.getvalue()[:500] if spoil == "cut" else out.getvalue()
    assert {finding.check for finding in made_folder.listed({**made_folder.files, name: data})} == {"proof/zip-content"}


PACKINGS = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED, zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA)


@pytest.mark.search
@seeds(80, 5000)
def test_a_spoilt_zip_of_any_packing_is_read_or_said_to_be_damaged(seed: int) -> None:
    random, out = Random(f"zip {seed}"), io.BytesIO()
    with zipfile.ZipFile(out, "w", PACKINGS[seed % len(PACKINGS)]) as box:
        for name in ("packs/one.txt", "packs/two.txt"):
            box.writestr(name, name.encode() * 40)
    data = bytearray(out.getvalue())
    for _ in range(random.choice((1, 2, 4))):
        data[random.randrange(len(data))] = random.randrange(256)
    read = read_zip(bytes(data[: random.choice((len(data), random.randrange(len(data))))]))
    assert not (read.trouble and read.files)


@pytest.mark.parametrize(("name", "zipped"), [("a.zip", True), ("A.ZIP", True), ("a.Zip", True), ("azip", False)])
def test_zips_are_known_by_their_names_in_capitals_too(name: str, zipped: bool) -> None:
    assert is_zip_name(name) is zipped


def in_record(change: Callable[[dict[str, Any]], None]) -> Change:
    """The first part of the record, changed."""

    def changed(data: bytes) -> bytes:
        record = json.loads(data)
        change(record["parts"][0])
        return json.dumps(record).encode()

    return changed


def with_arc(radius: float, sweep: float) -> Change:
    arc = {"to": [1.0, 1.0], "centre": [0.0, 0.0], "radius": radius, "sweep": sweep}
    return in_record(lambda part: part["outline"][0]["edges"].insert(0, arc))


DAMAGED: dict[str, tuple[str, Change]] = {
    "no outline": (RECORD, in_record(lambda part: part.update(outline=[]))),
    "an outline of one point": (RECORD, in_record(lambda part: part["outline"][0]["edges"].clear())),
    "a start that is no number": (RECORD, in_record(lambda part: part["outline"][0].update(start=[float("nan"), 0.0]))),
    "a corner 1,000 km away": (RECORD, in_record(lambda part: part["outline"][0]["edges"][0].update(to=[1e9, 0.0]))),
    "an arc of many turns": (RECORD, with_arc(20.0, 1e7)),
    "an arc without a radius": (RECORD, with_arc(0.0, 90.0)),
    "thirty million pages": ("packs.json", matched(r'"pages": ?\d+', '"pages": 30000000')),
    "pages without end": ("packs.json", matched(r'"pages": ?\d+', '"pages": 1e999')),
}


@pytest.mark.keeps("proof/pdf-unknown")
def test_the_records_of_a_release_speak_of_its_packs(made_folder: Made) -> None:
    promises = promises_by_records(made_folder.files)
    assert {one.path for one in promises.cut_files} == {one.path for one in made_folder.promises.cut_files}
    assert not errors(judge_lists(made_folder.files, "box", promises).findings)


@pytest.mark.breaks("proof/pdf-unknown")
@pytest.mark.parametrize("damage", DAMAGED)
def test_a_damaged_record_is_a_finding(made_folder: Made, damage: str) -> None:
    ending, change = DAMAGED[damage]
    files = made_folder.spoiled(ending, change)
    promises = promises_by_records(files)
    judge_files(files, promises, made_folder.proofs)
    found = {one.check for one in judge_lists(files, "box", promises).findings}
    assert found >= {"proof/pdf-unknown", "proof/file-not-as-listed"}


def test_a_size_that_is_no_number_is_a_finding(made_folder: Made) -> None:
    files = made_folder.spoiled("manifest.json", matched(r'"size": ?\d+', '"size": 1e999'))
    assert "it is no list of files" in " ".join(one.message for one in made_folder.listed(files))


def test_a_check_that_gives_up_is_a_finding(made_folder: Made) -> None:
    (disc,) = [one for one in made_folder.promises.cut_files if one.path.endswith(DISC)]
    nothing = tuple((replace(piece, rings=(((0.0, 0.0), (40.0, 40.0)),)), pose) for piece, pose in disc.copies)
    nowhere = replace(disc, copies=nothing)
    found = judge_files(made_folder.files, FilePromises(cut_files=(nowhere,)), {}, "box").findings
    assert any("could not be judged" in one.message for one in found)


def test_many_faults_of_one_file_are_counted(made_folder: Made) -> None:
    found = made_folder.found(made_folder.spoiled(WALL, lambda data: data.replace(b"</text>", b"x</text>")))
    words = [f for f in found if f.check == "proof/cut-file-words" and f.subject.endswith(WALL)]
    assert 1 < len(words) <= 4
