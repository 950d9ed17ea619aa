"""``publisher build`` from a folder to proved packs, and what follows when one number changes."""

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from hashlib import sha256
from pathlib import Path
from typing import Any

import pikepdf
import pypdf
import pytest
from jsonschema import Draft202012Validator

from publisher import api
from publisher.pages import record_schema
from tests.release.dying import Death, failing
from tests.whole.conftest import TOO_LARGE, Run, changed, everything, small_design

ROOT = Path(__file__).parents[2]

LISTS = ("packs.json", "proof.json")  # of all packs


def text_of(pdf: Path) -> str:
    return " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader(pdf).pages).split())


def test_every_demo_gives_a_pack_for_both_papers_with_its_files(packs: Path) -> None:
    for slug in ("lock-stair", "quay", "toll-house"):
        names = set(everything(packs / slug))
        for paper in ("a4", "letter"):
            assert f"{slug}-1.0.0-foam-5mm-{paper}.pdf" in names
            assert f"previews/standard-{paper}/page-01.png" in names
        assert {f"{slug}-1.0.0-foam-5mm-a4.json", f"{slug}-1.0.0-foam-5mm-letter.json", "packs.json"} <= names
        assert any(n.startswith("cut-files/standard/part-a-") for n in names)
        assert any(n.startswith("cut-files/standard/sheet-foam-508x762mm-") for n in names)
    assert "lock-stair-1.0.0-wide_bases-foam-5mm-a4.pdf" in everything(packs / "lock-stair")
    listed = json.loads((packs / "lock-stair/packs.json").read_text())
    assert {pack["variant"] for pack in listed["packs"]} == {"", "wide_bases"}
    assert {one["path"] for one in listed["files"]} == set(everything(packs / "lock-stair")) - {"packs.json"}


def test_a_preview_for_every_page_and_no_other(packs: Path) -> None:
    for pdf in packs.glob("*/*-1.0.0-foam-5mm-a4.pdf"):
        pages = len(pypdf.PdfReader(pdf).pages)
        assert len(list((pdf.parent / "previews/standard-a4").iterdir())) == pages


def test_qpdf_and_pdfium_find_nothing_wrong(packs: Path) -> None:
    import pypdfium2

    for pdf in packs.glob("*/*.pdf"):
        with pikepdf.open(pdf) as opened:
            assert opened.check_pdf_syntax() == []
        document = pypdfium2.PdfDocument(pdf)
        assert len(document) == len(pypdf.PdfReader(pdf).pages)
        document.close()


def test_every_pack_carries_its_own_record_of_the_documented_form(packs: Path) -> None:
    judge = Draft202012Validator(record_schema())
    for pdf in sorted(packs.glob("*/*.pdf")):
        with pikepdf.open(pdf) as opened:
            attached = opened.attachments["facts.json"].get_file().read_bytes()
        assert attached == pdf.with_suffix(".json").read_bytes()
        record = json.loads(attached)
        assert [error.message for error in judge.iter_errors(record)] == []
        assert pdf.stem.endswith(record["pack"]["paper"]["name"])
        assert len(record["pages"]) == len(pypdf.PdfReader(pdf).pages)


def test_the_packs_are_listed_beside_them(packs: Path) -> None:
    listed = json.loads((packs / "quay/packs.json").read_text())
    assert [(one["paper"], one["file"], one["record"]) for one in listed["packs"]] == [
        (paper, f"quay-1.0.0-foam-5mm-{paper}.pdf", f"quay-1.0.0-foam-5mm-{paper}.json") for paper in ("a4", "letter")
    ]
    for one in listed["packs"]:
        data = (packs / "quay" / one["file"]).read_bytes()
        assert (one["size"], one["sha256"]) == (len(data), sha256(data).hexdigest())
        assert one["id"] == json.loads((packs / "quay" / one["record"]).read_text())["pack"]["id"]


def test_vector_pages_stay_small(packs: Path) -> None:
    for pdf in packs.glob("*/*.pdf"):
        assert pdf.stat().st_size / len(pypdf.PdfReader(pdf).pages) < 60_000


def facts(packs: Path, slug: str, tried: str = "") -> dict[str, Any]:
    document = json.loads(
        next((packs / f"{slug}{tried}").glob(f"{slug}-1.0.0{'-board-*' if tried else ''}-foam-*-a4.json")).read_text()
    )
    assert document["format"] == 2
    return {f["name"]: f["value"] for f in document["facts"]}


def test_the_demo_table_on_5_mm_board(packs: Path) -> None:
    # sizes checked by calculation: closed forms of the trade (common practice) for spirals, mitred roofs, slots
    stair, house, quay = (facts(packs, s) for s in ("lock-stair", "toll-house", "quay"))
    assert (stair["stair.steps"], stair["stair.climb"]) == (18, pytest.approx(90.0))
    assert stair["stair.base_that_stands"] == pytest.approx(27.2, abs=0.05)
    assert stair["stair.joint_stagger"] == pytest.approx(0.5, abs=0.005)
    assert stair["stair.least_plinth_radius"] == pytest.approx(71.1, abs=0.5)
    assert (house["house.inside_width"], house["house.inside_depth"]) == (pytest.approx(100.0), pytest.approx(130.0))
    assert house["house.ridge"] == pytest.approx(142.1, abs=0.05)
    assert house["gable.slot_width"] == pytest.approx(5.3)
    assert quay["box.height"] == pytest.approx(100.0)


def test_the_demo_table_on_three_sixteenths_board(tmp_path: Path) -> None:
    out = tmp_path / "packs"
    for spec in sorted((ROOT / "designs").glob("*/spec.yaml")):
        built = api.build(api.read(spec.parent, (("board", "3/16 in"),), ("a4",)), previews=False)
        assert built.good, [f.message for f in built.findings]
        home = api.place(built, out).folder
        assert home.parent == out / spec.parent.name / "trials"
        home.rename(out / f"{spec.parent.name}-tried")
    stair, house, quay = (facts(out, s, "-tried") for s in ("lock-stair", "toll-house", "quay"))
    assert (stair["stair.steps"], stair["stair.climb"]) == (19, pytest.approx(90.5, abs=0.05))
    assert house["house.inside_width"] == pytest.approx(100.475)
    assert house["house.inside_depth"] == pytest.approx(130.475)
    assert house["house.ridge"] == pytest.approx(141.7, abs=0.05)
    assert house["gable.slot_width"] == pytest.approx(5.0625)
    assert quay["box.height"] == pytest.approx(100.01, abs=0.005)
    assert "19 steps climb to 100 mm (3 15/16 in)" in text_of(next((out / "lock-stair-tried").glob("*-a4.pdf")))
    assert "21 boards of 4.76 mm (3/16 in)" in text_of(next((out / "quay-tried").glob("*-a4.pdf")))


def test_joints_that_line_up_are_found(publisher: Callable[..., Run], designs: Path) -> None:
    run = publisher("check", designs / "lock-stair", "--set", "core_joints=36", "--variant", "standard")
    assert "joints/straight-joint" in run.err
    good = publisher("check", designs / "lock-stair", "--set", "core_joints=45", "--variant", "standard")
    assert good.err == ""


def test_long_parts_come_as_two_tiles_on_both_papers(packs: Path) -> None:
    for paper in ("a4", "letter"):
        reader = pypdf.PdfReader(packs / f"quay/quay-1.0.0-foam-5mm-{paper}.pdf")
        said = "\n".join(page.extract_text() for page in reader.pages)
        assert all(f"Tile {letter} {number} of 2" in said for letter in "AB" for number in (1, 2))


def test_a_build_is_byte_identical_whatever_the_machine_says(packs: Path, designs: Path, tmp_path: Path) -> None:
    """A process of its own, with another hash seed, clock and locale, from a folder elsewhere, gives the demo's pack and files."""
    machine = {"PYTHONHASHSEED": "4242", "TZ": "Asia/Tokyo", "LC_ALL": "C.UTF-8"}
    run = subprocess.run(
        [sys.executable, "-m", "publisher", "build", str(designs / "quay"), "--paper", "a4", "--out", str(tmp_path / "out")],
        cwd=ROOT, env={**os.environ, **machine}, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert run.returncode == 0, run.stderr
    assert run.stderr == ""
    made = {name: data for name, data in everything(tmp_path / "out" / "quay").items() if name not in LISTS}
    assert made == {
        name: data for name, data in everything(packs / "quay").items() if "letter" not in name and name not in LISTS
    }


def test_the_report_as_one_json_document(publisher: Callable[..., Run], shelf: Path, tmp_path: Path) -> None:
    run = publisher("build", shelf / "bollard", "--paper", "a4", "--out", tmp_path, "--json")
    document = json.loads(run.out)
    (pack,) = document["packs"]
    assert pack["good"] is True
    assert pack["packs"][0]["worst_mm"] < 0.1
    assert all(Path(f).exists() for f in pack["files"])


def test_other_papers_on_request(publisher: Callable[..., Run], shelf: Path, tmp_path: Path) -> None:
    run = publisher("build", shelf / "bollard", "--paper", "A3", "--paper", "legal", "--out", tmp_path)
    assert run.code == 0, run.err
    page = pypdf.PdfReader(tmp_path / "bollard/bollard-1.0.0-foam-5mm-a3.pdf").pages[0]
    assert float(page.mediabox.width) * 25.4 / 72 == pytest.approx(297.0, abs=0.01)
    assert (tmp_path / "bollard/bollard-1.0.0-foam-5mm-legal.pdf").exists()


def test_a_bad_design_stops_alone_and_leaves_what_was_there(
    publisher: Callable[..., Run], shelf: Path, tmp_path: Path
) -> None:
    out = tmp_path / "packs"
    assert publisher("build", shelf / "bollard", "--paper", "a4", "--out", out).code == 0
    before = everything(out)
    changed(shelf / "bollard", "radius: 20 mm", TOO_LARGE)
    small_design(shelf, "capstan")
    run = publisher("build", shelf, "--paper", "a4", "--variant", "standard", "--out", out)
    assert run.code == 1
    assert "spec.yaml:" in run.err
    assert "bollard: not built" in run.out
    after = everything(out)
    assert {n: after[n] for n in before} == before
    assert "capstan/capstan-1.0.0-foam-5mm-a4.pdf" in after


VARIANTS = "variants: {wide: {title: Wide, sizes: {radius: 30 mm}}}\n"


def test_packs_of_another_spec_do_not_stay_beside_new_ones(publisher: Callable[..., Run], tmp_path: Path) -> None:
    folder, home = small_design(tmp_path / "shelf", "bollard", VARIANTS), tmp_path / "out/bollard"
    assert publisher("build", folder, "--out", tmp_path / "out").code == 0
    before = everything(home)
    again = publisher("build", folder, "--paper", "a4", "--variant", "wide", "--out", tmp_path / "out")
    assert "removed" not in again.out
    assert everything(home) == before  # of the same files: all of it is one set
    changed(folder, "count: 3", "count: 9")
    (home / "mine.txt").write_text("mine")
    other = publisher("build", folder, "--paper", "a4", "--variant", "standard", "--out", tmp_path / "out")
    assert (
        "removed: bollard-1.0.0-foam-5mm-letter.pdf, bollard-1.0.0-wide-foam-5mm-a4.pdf, bollard-1.0.0-wide-foam-5mm-letter.pdf"
        in other.out
    )
    assert "spec.yaml changed since it was made" in other.out
    assert {n for n in everything(home) if "letter" in n or "wide" in n} == set()
    assert (home / "mine.txt").exists() and not (home / "cut-files/wide").exists()
    changed(folder, "version: 1.0.0", "version: 1.1.0")
    run = publisher("build", folder, "--paper", "a4", "--variant", "standard", "--out", tmp_path / "out", "--json")
    (pack,) = json.loads(run.out)["packs"]
    assert {"file": str(home / "bollard-1.0.0-foam-5mm-a4.pdf"), "why": "it is of version 1.0.0"} in pack["removed"]
    assert not list(home.glob("bollard-1.0.0*"))


def test_what_set_tries_stands_beside_the_packs(publisher: Callable[..., Run], shelf: Path, tmp_path: Path) -> None:
    words = ("build", shelf / "bollard", "--paper", "a4", "--out", tmp_path / "out")
    assert publisher(*words).code == 0
    before = everything(tmp_path / "out")
    tried = publisher(*words, "--paper", "A4", "--set", "radius=30 mm", "--json")
    (pack,) = json.loads(tried.out)["packs"]
    assert pack["removed"] == [] and all("/bollard/trials/radius-30-" in file for file in pack["files"])
    after = everything(tmp_path / "out")
    assert {n: after[n] for n in before} == before and len(after) > len(before)
    (pdf,) = (tmp_path / "out/bollard/trials").glob("*/*.pdf")
    assert pdf.name == f"bollard-1.0.0-{pdf.parent.name}-foam-5mm-a4.pdf"
    texts = [page.extract_text() for page in pypdf.PdfReader(pdf).pages]
    assert all("trial: radius 30 mm" in text for text in texts) and texts[0].count("trial: radius 30 mm") == 2
    (tmp_path / "out/bollard/trials/mine.txt").write_text("mine")
    changed(shelf / "bollard", "title: Bollard", "title: [Bollard")
    run = publisher(*words, "--discard-trials")  # whatever becomes of the build: here nobody can read the spec
    assert run.code == 2 and "trial discarded" in run.out and pdf.name in run.out
    assert everything(tmp_path / "out") == {**before, "bollard/trials/mine.txt": b"mine"}


@pytest.mark.breaks("release/trial")
def test_a_trial_is_not_released(publisher: Callable[..., Run], shelf: Path, tmp_path: Path) -> None:
    run = publisher("release", shelf / "bollard", "--set", "radius=31 mm", "--out", tmp_path / "out")
    assert run.code == 2
    assert "bollard with radius = 31 mm is a trial, which is not released" in run.err
    assert not (tmp_path / "out").exists()


def test_a_design_with_an_error_in_one_variant_is_not_put_in_place(
    publisher: Callable[..., Run], tmp_path: Path
) -> None:
    folder = small_design(tmp_path / "shelf", "bollard", VARIANTS)
    changed(folder, "radius: 30 mm", "radius: 900 mm")
    run = publisher("build", folder, "--paper", "a4", "--out", tmp_path / "out", "--json")
    assert run.code == 1
    assert [(one["variant"], one["good"], one["placed"]) for one in json.loads(run.out)["packs"]] == [
        ("standard", True, False), ("wide", False, False)
    ]  # fmt: skip
    assert not (tmp_path / "out").exists()
    assert publisher("build", folder, "--paper", "a4", "--variant", "standard", "--out", tmp_path / "out").code == 0


def test_proof_and_measure_first_put_right_what_a_killed_build_left(
    publisher: Callable[..., Run], shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A build dies in the middle of its moves: whoever reads a pack afterwards reads one of the whole set."""
    folder, home = shelf / "bollard", tmp_path / "out/bollard"
    words = ("build", folder, "--paper", "a4", "--out", tmp_path / "out")
    assert publisher(*words).code == 0
    old = everything(home)
    changed(folder, "count: 3", "count: 9")
    built = api.build(api.read(folder, papers=("a4",)))
    with monkeypatch.context() as patch:
        count = failing(patch)
        shutil.copytree(home, tmp_path / "counted/bollard")
        api.place(built, tmp_path / "counted")
    new = everything(tmp_path / "counted/bollard")
    for reads in (("proof",), ("measure", "--across", "100", "--down", "100", "--pack")):
        shutil.rmtree(home)
        for name, data in old.items():
            (home / name).parent.mkdir(parents=True, exist_ok=True)
            (home / name).write_bytes(data)
        with monkeypatch.context() as patch, pytest.raises(Death):
            failing(patch, count.count * 2 // 3)
            api.place(built, tmp_path / "out")
        assert everything(home) not in (old, new)
        assert publisher(*reads, home / "bollard-1.0.0-foam-5mm-a4.pdf").code == 0
        assert everything(home) == new
