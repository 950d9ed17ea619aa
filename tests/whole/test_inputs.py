"""A build is a pure function of its inputs: the same files in any process, whatever else is built, and nothing else is read."""

import json
import os
import pickle
import subprocess
import sys
from hashlib import sha256
from pathlib import Path

import pytest
from PIL import Image

from publisher.brief import brief_of, read_brief
from publisher.pipeline import Built, build, promised_by, release
from publisher.release import list_of

ROOT = Path(__file__).parents[2]
SPEC = """\
format: 2
title: Mooring post
version: 1.2.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
use: trace
cover: {photo: photo.png, alt: A post}
sizes: {board: 5 mm, radius: 20 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  disc: {name: Disc, board: foam, shape: disc, with: {radius: radius}}
  sign: {name: Sign, board: foam, count: 1, drawing: {file: sign.svg, id: outline, width: 40 mm}}
assembly: {post: {stack: [{part: disc, count: 4}]}}
steps: [{title: Stack, say: "Glue {post.layers} discs.", parts: [disc], picture: {photo: photo.png, alt: A post}}]
variants: {thick: {title: Thick, sizes: {radius: 30 mm}}}
"""
SIGN = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20mm" viewBox="0 0 40 20">'
    '<path id="outline" d="M0 0 H40 V20 H0 Z"/></svg>'
)
ELSEWHERE = """\
import hashlib, json, pickle, sys
opened = []
sys.addaudithook(lambda event, given: opened.append(str(given[0])) if event == "open" else None)
from publisher.brief import brief_of
from publisher.pipeline import build
built = build(brief_of(pickle.load(sys.stdin.buffer)), sys.argv[1])
json.dump([{o.path: hashlib.sha256(o.data).hexdigest() for o in built.outputs}, opened], sys.stdout)
"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small design with a variant, a drawing and a photograph."""
    made = tmp_path_factory.mktemp("designs") / "mooring-post"
    made.mkdir()
    (made / "spec.yaml").write_text(SPEC)
    (made / "sign.svg").write_text(SIGN)
    Image.effect_noise((600, 400), 40).save(made / "photo.png")
    return made


@pytest.fixture(scope="module")
def built(folder: Path) -> Built:
    """The sizes as written, for the papers of the spec."""
    done = build(read_brief(folder))
    assert done.good, done.findings
    return done


def files_of(built: Built) -> dict[str, bytes]:
    return {output.path: output.data for output in built.outputs}


ANOTHER = {"PYTHONHASHSEED": "4242", "TZ": "Asia/Tokyo", "LC_ALL": "C", "HOME": "/", "RL_pageCompression": "0"}


def test_another_process_makes_the_same_files_without_the_folder(folder: Path, tmp_path: Path) -> None:
    """With another hash seed, clock, locale and home, and settings of a library in its environment."""
    inputs = read_brief(folder, (("radius", "25 mm"),), ("a4",)).inputs
    made = files_of(build(brief_of(inputs), "thick"))
    run = subprocess.run(
        [sys.executable, "-c", ELSEWHERE, "thick"],
        input=pickle.dumps(inputs), cwd=tmp_path, env={**os.environ, "PYTHONPATH": str(ROOT), **ANOTHER}, capture_output=True, check=False,
    )  # fmt: skip
    assert run.returncode == 0, run.stderr.decode()
    sums, opened = json.loads(run.stdout)
    assert sums == {name: sha256(data).hexdigest() for name, data in made.items()}
    assert not [name for name in opened if name.startswith(str(folder))]


def test_a_pack_has_the_same_bytes_alone_beside_others_and_in_a_release(
    folder: Path, built: Built, tmp_path: Path
) -> None:
    alone = files_of(build(read_brief(folder, papers=("a4",))))
    beside = files_of(built)
    name = "mooring-post-1.2.0-foam-5mm-a4.pdf"
    assert "mooring-post-1.2.0-foam-5mm-letter.pdf" in beside
    assert alone[name] == beside[name]
    released = release(read_brief(folder), tmp_path)
    assert released.folder is not None
    assert (released.folder / name).read_bytes() == alone[name]
    for paper in ("a4", "letter"):
        pack = promised_by(read_brief(folder), f"mooring-post-1.2.0-foam-5mm-{paper}.pdf")
        (own,) = (one.pack for one in built.packs if one.pack.paper.name == paper)
        assert pack == own


def test_a_pack_carries_the_record_of_itself_and_the_list_of_all_stands_beside(built: Built) -> None:
    for one in built.packs:
        (own,) = [json.loads(a.data) for a in one.pack.attachments]
        assert own["pack"]["paper"]["name"] == one.pack.paper.name
        assert own["pack"]["id"] == one.pack.id
    listed = list_of((built.offer,))
    assert [(pack["paper"], pack["id"]) for pack in listed["packs"]] == [
        (one.pack.paper.name, one.pack.id) for one in built.packs
    ]


READER = """\
import sys
from hashlib import sha256
from pathlib import Path
opened = []
sys.addaudithook(lambda event, given: opened.append((str(given[0]), given[1])) if event == "open" else None)
from publisher.brief import read_brief
from publisher.pipeline import build
folder, watched = Path(sys.argv[1]), len(opened)
brief = read_brief(folder, papers=("a4",))
read, inside = opened[watched:], str(folder.resolve())
build(brief)
later = opened[watched + len(read):]
print("read", *sorted({Path(name).name for name, _ in read if name.startswith(inside)}))
places = (sys.prefix, sys.base_prefix, sys.pycache_prefix or "/usr", sys.argv[2], "/proc", "/sys", "/dev", "/usr", "/etc")
ours = [str(Path(p).resolve()) for p in places]
for name, mode in opened[watched:]:
    if name.isdigit() or (mode and "w" in mode):
        continue
    if not any(str(Path(name).resolve()).startswith(p) for p in (*ours, inside)):
        print("outside", name)
for name, _ in later:
    if name.startswith(inside):
        print("late", name)
"""


def test_only_the_folder_is_read_and_only_once(folder: Path) -> None:
    """Every file that the process opens is heard of; those of Python, of this package and of the system are not the designer's."""
    run = subprocess.run(
        [sys.executable, "-c", READER, str(folder), str(ROOT / "publisher")],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert run.returncode == 0, run.stderr
    assert run.stdout.splitlines() == ["read photo.png sign.svg spec.yaml"]


def test_the_inputs_name_the_program_that_made_the_bytes(built: Built) -> None:
    inputs = built.worked.brief.inputs
    assert {"publisher", "reportlab", "shapely"} <= dict(inputs.versions).keys()
