"""The smaller commands, as a user runs them."""

import json
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.basics import Finding, Place, Rule, Severity
from publisher.brief import schema_text
from publisher.cli.report import MOST_ALIKE, MOST_LINES, show_findings
from publisher.design.language.functions import CONSTANTS, FUNCTIONS
from publisher.design.language.units import UNITS
from tests.whole.conftest import TOO_LARGE, Run, changed, everything, small_design

Publisher = Callable[..., Run]


def test_help_of_every_command_shows_an_example(publisher: Publisher) -> None:
    top = publisher("--help")
    assert top.code == 0
    for command in ("build", "check", "measure", "proof", "release", "schema", "shapes", "sizes", "yield"):
        assert command in top.out
        assert "Example" in publisher(command, "--help").out


def test_an_unknown_command_is_refused(publisher: Publisher) -> None:
    run = publisher("bild")
    assert run.code == 2
    assert "bild" in run.err


def test_sizes_show_values_in_both_units_and_where_they_come_from(publisher: Publisher, designs: Path) -> None:
    run = publisher("sizes", designs / "lock-stair", "--set", "board=3/16 in", "--variant", "standard")
    line = next(row for row in run.out.splitlines() if row.split()[:1] == ["boards_high"])
    assert line.split() == ["boards_high", "21", "round(height", "/", "board)"]
    assert "4.76 mm (0.19 in)" in run.out
    document = json.loads(publisher("sizes", designs / "lock-stair", "--json", "--variant", "standard").out)
    sizes = {s["name"]: s for s in document["designs"][0]["sizes"]}
    assert sizes["reach"] == {
        "name": "reach",
        "kind": "length",
        "value": 92.0,
        "inches": pytest.approx(3.622, abs=1e-3),
        "expression": "92 mm",
    }
    document = json.loads(publisher("sizes", designs / "lock-stair", "--json", "--variant", "wide_bases").out)
    facts = {f["name"]: f for f in document["designs"][0]["facts"]}
    assert facts["stair.headroom"] == {"name": "stair.headroom", "kind": "length", "value": None, "open": True}


@pytest.mark.keeps("cli/unknown-shape")
def test_shapes_are_listed_with_their_parameters(publisher: Publisher) -> None:
    assert "gable_wall" in publisher("shapes").out
    run = publisher("shapes", "spiral_stair_layer")
    assert "core_radius" in run.out
    assert "edges, anticlockwise: front, step_end, back, core" in run.out
    document = json.loads(publisher("shapes", "disc", "--json").out)
    assert document["shapes"][0]["parameters"][0]["unit"] == "mm"


def test_shapes_for_programs_tell_kinds_apart(publisher: Publisher) -> None:
    rows = json.loads(publisher("shapes", "--json").out)["shapes"]
    assert len(rows) == len({(row["kind"], row["name"]) for row in rows})
    kinds = {row["name"]: row["kind"] for row in rows}
    assert [kinds[name] for name in ("disc", "door", "brick", "mitre")] == ["shape", "opening", "surface", "joint"]
    assert set(kinds.values()) == {"shape", "opening", "surface", "joint"}
    said = publisher("shapes", "tab_and_slot").out
    assert "must say: edges, tabs_on, tabs, play" in said and "may say:  corner, inset" in said


@pytest.mark.keeps("cli/unknown-list")
def test_every_word_that_the_spec_takes_is_listed(publisher: Publisher) -> None:
    """The lists against what the reader of a spec knows: the schema's own, and the functions that expressions take."""
    lists = {one["list"]: one for one in json.loads(publisher("words", "--json").out)["lists"]}
    named = {name: [word["name"] for word in one["words"]] for name, one in lists.items()}
    schema = json.loads(schema_text())
    part, step = schema["$defs"]["part"]["properties"], schema["$defs"]["step"]["properties"]
    assert named["shapes"] == named["origins"] == part["shape"]["enum"]
    assert named["surfaces"] == schema["$defs"]["surface"]["properties"]["pattern"]["enum"]
    assert named["openings"] == schema["$defs"]["opening"]["properties"]["kind"]["enum"]
    assert named["joints"] == schema["$defs"]["join"]["properties"]["joint"]["enum"]
    assert named["tools"] == schema["properties"]["tools"]["items"]["enum"]
    assert named["materials"] == schema["$defs"]["material"]["properties"]["name"]["enum"]
    assert named["stages"] == step["stage"]["enum"]
    assert named["pictures"] == [kind for one in schema["$defs"]["picture"]["oneOf"] for kind in one["required"]]
    assert named["functions"] == list(FUNCTIONS) and named["constants"] == list(CONSTANTS)
    assert named["units"] == [unit.name for unit in UNITS]
    assert all(word["meaning"] for one in lists.values() for word in one["words"])
    text = publisher("words").out
    assert all(f"\n  {word} " in text for words in named.values() for word in words)
    one = publisher("words", "units").out
    assert " ".join(one.split()) in " ".join(text.split()) and "craft_knife" not in one


@pytest.mark.breaks("cli/unknown-list")
def test_an_unknown_list_is_refused_with_the_nearest(publisher: Publisher) -> None:
    wrong = publisher("words", "tols")
    assert wrong.code == 2 and "“tools”" in wrong.err


@pytest.mark.breaks("cli/unknown-shape")
def test_an_unknown_shape_is_refused_with_the_nearest(publisher: Publisher) -> None:
    wrong = publisher("shapes", "spiral_star_layer")
    assert wrong.code == 2
    assert "spiral_stair_layer" in wrong.err


def test_the_schema_is_fresh_and_is_a_schema(publisher: Publisher) -> None:
    import jsonschema

    assert publisher("schema", "--check").code == 0
    jsonschema.Draft202012Validator.check_schema(json.loads(publisher("schema").out))


def test_measure_judges_two_readings(publisher: Publisher) -> None:
    run = publisher("measure", "--across", "97.3", "--down", "97.2")
    assert run.code == 1
    assert "97.3 %" in run.out
    assert "do not cut" in run.out
    assert publisher("measure", "--across", "100", "--down", "100").code == 0
    inches = publisher("measure", "--across", "3.94", "--down", "3 30/32", "--unit", "in", "--tool", "0.5mm", "--json")
    assert json.loads(inches.out)["verdict"] == "good"
    assert publisher("measure", "--across", "100", "--down", "ten").code == 2
    assert publisher("measure", "--across", "100", "--down", "100", "--of", "ten").code == 2
    assert "leave --across" in publisher("measure", "--rulers", "180", "240", "--of", "100").err
    slip = publisher("measure", "--across", "3.94", "--down", "3.94")
    assert slip.code == 2
    assert "--unit in" in slip.err


def test_measure_by_a_pack_names_what_will_not_fit(publisher: Publisher, packs: Path, tmp_path: Path) -> None:
    pack = packs / "toll-house/toll-house-1.0.0-foam-5mm-a4.pdf"
    run = publisher("measure", "--across", "97.3", "--down", "97.3", "--pack", pack)
    assert run.code == 1
    assert "5.14 mm when cut" in run.out  # 97.3 % of 5.3 + 2 × 0.4 mm on paper, less the pencil's 2 × 0.4 mm
    assert publisher("measure", "--across", "100", "--down", "100", "--pack", tmp_path / "none.pdf").code == 2
    assert "GOOD: this pack takes your board" in publisher("measure", "--board", "4.7mm", "--pack", pack).out
    thick = publisher("measure", "--board", "0.213in", "--pack", pack, "--json")
    assert (thick.code, json.loads(thick.out)["board"]["verdict"]) == (1, "bad")
    assert "name the PDF with --pack" in publisher("measure", "--board", "4.7mm").err
    assert publisher("measure", "--across", "100").code == 2
    doubt = json.loads(publisher("measure", "--across", "100", "--down", "100", "--pack", pack, "--json").out)
    assert doubt["verdict"] == "doubtful"
    command = doubt["advice"][0].partition(": publisher ")[2]  # what the tool tells people to do is what it takes
    words = command.replace("ACROSS", "180").replace("DOWN", "240").replace("PACK.pdf", str(pack)).split()
    assert "GOOD" in publisher(*words).out


@pytest.mark.breaks("cli/not-promised")
def test_a_file_that_the_spec_does_not_promise_is_refused(publisher: Publisher, designs: Path, tmp_path: Path) -> None:
    (tmp_path / "quay-a3.pdf").write_bytes(b"%PDF-1.7")
    run = publisher("proof", tmp_path / "quay-a3.pdf", "--spec", designs / "quay")
    assert run.code == 2
    assert "promises no file called quay-a3.pdf" in run.err


@pytest.mark.keeps("cli/not-promised")
def test_proof_alone_with_and_without_the_spec(publisher: Publisher, shelf: Path, tmp_path: Path) -> None:
    folder, pack = shelf / "bollard", tmp_path / "bollard/bollard-1.0.0-foam-5mm-a4.pdf"
    assert publisher("build", folder, "--paper", "a4", "--out", tmp_path).code == 0
    with_spec = publisher("proof", pack, "--spec", folder)
    assert with_spec.code == 0, with_spec.err
    assert "proved" in with_spec.out and "identity: byte by byte what this spec builds" in with_spec.out
    truth = publisher("proof", pack, "--spec", folder, "--truth")
    assert truth.code == 0 and "identity" not in truth.out
    assert publisher("proof", pack, "--truth").code == 2
    alone = publisher("proof", pack)
    assert alone.code == 0, alone.err
    assert "not judged" in alone.out
    assert "proved" not in alone.out and "Without the design" in alone.out
    folder_alone, whole = publisher("proof", pack.parent), publisher("proof", pack.parent, "--spec", folder, "--json")
    assert (folder_alone.code, whole.code) == (0, 0), folder_alone.err + whole.err
    assert "held against the records" in folder_alone.out
    (said,) = json.loads(whole.out)["files"]
    assert (said["good"], said["held_against"], said["as_built"]) == (True, "design", 3)  # a part, a sheet, the table
    assert said["files"][0]["identity"]["verdict"] == "identical" and said["files"][0]["pages"][0]["looked_at"]
    assert "print scale was not judged" in alone.out
    records = [json.loads(publisher("proof", pack, *more, "--json").out) for more in ((), ("--spec", folder))]
    assert [r["files"][0]["scale_judged"] for r in records] == [False, True]
    assert [r["files"][0]["identity"] for r in records] == [None, {"verdict": "identical", "pages": [], "beside": []}]
    changed(folder, "radius: 20 mm", "radius: 20.2 mm")
    other = publisher("proof", pack, "--spec", folder, "--json")
    assert other.code == 1
    found = json.loads(other.out)["files"][0]["findings"]
    assert any(f["check"].startswith("proof/outline") for f in found)
    assert json.loads(other.out)["files"][0]["identity"]["verdict"] == "different"


@pytest.mark.breaks("proof/cut-file-lines", "proof/file-not-as-listed", "proof/file-unlisted", "proof/not-as-built")
def test_a_folder_is_judged_whole_with_and_without_the_spec(publisher: Publisher, shelf: Path, tmp_path: Path) -> None:
    folder, packs = shelf / "bollard", tmp_path / "bollard"
    assert publisher("build", folder, "--paper", "a4", "--out", tmp_path).code == 0
    cut = packs / "cut-files/standard/part-a-disc.svg"
    cut.write_text(cut.read_text().replace("A 20.0 20.0", "A 20.4 20.4"))
    (packs / "notes.txt").write_text("mine")
    alone = publisher("proof", packs)
    assert alone.code == 1
    for words in ("part A is off by", "has other bytes", "notes.txt is on no list"):
        assert words in alone.err, words
    assert "is not what this spec builds" in publisher("proof", packs, "--spec", folder).err
    other = tmp_path / "capstan"
    shutil.copytree(folder, other)
    of_other = publisher("proof", packs, "--spec", other)
    assert of_other.code != 0 and "proved" not in of_other.out
    assert "makes none of the packs of this folder" in of_other.err
    (pdf,) = packs.glob("*.pdf")
    (packs / "capstan-1.0.0-a4.pdf").write_bytes(pdf.read_bytes())
    beside = publisher("proof", packs, "--spec", folder)
    assert "capstan-1.0.0-a4.pdf: print scale not judged" in beside.out
    assert "says what it should show" in beside.err and "[proof/pdf-unknown]" in beside.err
    (packs / "\udcff.pdf").write_bytes(b"a name that is no letters")
    packed = packs / "packs.json"
    packed.write_text(packed.read_text().replace('"path": "', '"path": "\\ud800', 1))
    assert "\\udcff.pdf: could not be opened" in publisher("proof", packs).out
    odd = json.loads(publisher("proof", packs, "--json").out)["files"][0]["findings"]
    assert any("it names \ud800" in one["message"] for one in odd)
    (packs / "\udcff.pdf").unlink()
    pdf.write_bytes(b"not a PDF")
    spoiled = publisher("proof", packs)
    assert spoiled.code == 2 and "could not be opened" in spoiled.out
    assert publisher("proof", shelf).code == 2


@pytest.mark.parametrize("content", [b"", b"hello", b"%PDF-1.7\n", b"\x00" * 1000])
def test_proof_of_any_other_file_is_a_sentence(publisher: Publisher, tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "other.pdf"
    file.write_bytes(content)
    run = publisher("proof", file)
    assert run.code == 2
    assert len(run.err) > 20
    assert "nothing in it was judged" in run.out and "The file opens" not in run.out
    (record,) = json.loads(publisher("proof", file, "--json").out)["files"]
    assert (record["judged"], record["good"]) == ([], False)
    assert publisher("proof", tmp_path / "missing.pdf").code == 2


@pytest.mark.keeps("release/trial")
def test_a_release_is_placed_once_and_never_changes(publisher: Publisher, shelf: Path, tmp_path: Path) -> None:
    changed(shelf / "bollard", "CC-BY-NC-4.0", "personal use")
    run = publisher("release", shelf / "bollard", "--out", tmp_path / "releases")
    assert run.code == 0, run.err
    folder = tmp_path / "releases/bollard/1.0.0"
    names = set(everything(folder))
    assert {
        "manifest.json",
        "LISTING.md",
        "bollard-1.0.0.zip",
        "bollard-1.0.0-foam-5mm-a4.pdf",
        "bollard-1.0.0-foam-5mm-letter.pdf",
    } <= names
    assert "thick: at least 1 sheet of 20 × 30 in\n" in (folder / "LISTING.md").read_text()
    licence = (folder / "LICENCE.txt").read_text(encoding="utf-8")
    assert licence.startswith("Bollard, version 1.0.0\n\nWhat you may do: personal use\n") and "{" not in licence
    before = everything(folder)
    again = publisher("release", shelf / "bollard", "--out", tmp_path / "releases")
    assert again.code == 0
    assert "same content" in again.out
    changed(shelf / "bollard", "radius: 20 mm", "radius: 21 mm")
    other = publisher("release", shelf / "bollard", "--out", tmp_path / "releases")
    assert other.code == 2
    assert "higher version" in other.err
    assert everything(folder) == before


def test_a_design_with_an_error_is_not_released(publisher: Publisher, shelf: Path, tmp_path: Path) -> None:
    changed(shelf / "bollard", "radius: 20 mm", TOO_LARGE)
    run = publisher("release", shelf / "bollard", "--out", tmp_path / "releases")
    assert run.code == 1
    assert "not released" in run.out
    assert not (tmp_path / "releases").exists()


@pytest.mark.keeps("cli/keep-what")
def test_yield_keeps_layouts_beside_the_spec(publisher: Publisher, designs: Path) -> None:
    store = designs / "toll-house/layouts.json"
    before = store.read_bytes()
    run = publisher("yield", designs / "toll-house", "--keep")
    assert run.code == 0
    assert "on a grid" in run.out
    assert store.read_bytes() == before
    document = json.loads(publisher("yield", designs / "toll-house", "--json").out)
    assert document["designs"][0]["yields"][0]["sheets"] == 1


def test_yield_on_a_sheet_that_one_has(publisher: Publisher, designs: Path) -> None:
    run = publisher("yield", designs / "quay", "--sheet", "500x700 mm", "--sheet", "300 x 300 mm", "--json")
    document = json.loads(run.out)
    assert [y["sheet"] for y in document["designs"][0]["yields"]] == ["500x700 mm", "300 x 300 mm"]
    assert document["designs"][0]["yields"][0]["parts"][0]["gain_percent"] >= 0
    wrong = publisher("yield", designs / "quay", "--sheet", "500 mm")
    assert wrong.code == 2
    assert "is no sheet size" in wrong.err


def test_yield_as_csv(publisher: Publisher, designs: Path) -> None:
    run = publisher("yield", designs / "quay", "--csv")
    lines = run.out.splitlines()
    assert lines[0].startswith("board,sheet,sheet_width_mm")
    assert sum(",whole list," in line for line in lines) == 1


@pytest.mark.breaks("cli/keep-what")
def test_layouts_for_other_sheets_or_sizes_are_not_kept(publisher: Publisher, designs: Path) -> None:
    before = (designs / "quay/layouts.json").read_bytes()
    for more in (("--sheet", "500x700 mm"), ("--set", "board=4 mm")):
        run = publisher("yield", designs / "quay", "--keep", *more)
        assert run.code == 2
        assert "leave --keep away" in run.err
    assert (designs / "quay/layouts.json").read_bytes() == before


def test_stale_layouts_go_when_all_variants_are_kept(publisher: Publisher, designs: Path) -> None:
    store = designs / "quay/layouts.json"
    document = json.loads(store.read_text())
    one = next(iter(document["layouts"].values()))
    document["layouts"]["0" * 64] = one
    store.write_text(json.dumps(document))
    assert publisher("yield", designs / "quay", "--variant", "standard", "--keep").code == 0
    assert "0" * 64 in store.read_text()
    assert publisher("yield", designs / "quay", "--keep").code == 0
    assert "0" * 64 not in store.read_text()


def test_a_stopped_run_keeps_what_was_verified(
    publisher: Publisher, designs: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from publisher import api

    store = designs / "quay/layouts.json"
    whole = len(json.loads(store.read_text())["layouts"])
    store.unlink()
    real = api.work

    def stopped(*given: object) -> object:
        *others, told = given
        seen: list[str] = []

        def tell(key: str, stored: object) -> None:
            told(key, stored)  # type: ignore[operator]
            seen.append(key)
            if len(seen) == 2:
                raise KeyboardInterrupt

        return real(*others, tell)  # type: ignore[arg-type]

    monkeypatch.setattr(api, "work", stopped)
    assert publisher("yield", designs / "quay", "--keep").code == 130
    assert 0 < len(json.loads(store.read_text())["layouts"]) == 2 < whole


def test_several_designs_are_laid_out_together_too(publisher: Publisher, designs: Path) -> None:
    """Quay and bridge by themselves take a sheet each; together they take one, and every copy of both lies on it.

    Their words stand in docs/cut-yield.md, whose output is held against the command."""
    folders = (designs / "quay", designs / "bridge")
    document = json.loads(publisher("yield", *folders, "--variant", "standard", "--json").out)
    (together,) = document["together"]
    pieces = [one["yields"][0]["pieces"] for one in document["designs"]]
    assert (together["saved"], len(together["laid_out"][0])) == (1, sum(pieces))


def test_what_two_parts_say_of_one_line_is_read_once(publisher: Publisher, tmp_path: Path) -> None:
    folder = small_design(tmp_path, "twins")
    changed(folder, "with: {radius: radius}}", "with: {radius: radius}}\n  other: {name: Other, like: disc, count: 1}")
    run = publisher("check", folder, "--set", "radius=20")
    assert run.err.count("“radius”: a plain number stands where a length belongs") == 1
    assert ", 2 findings" in run.out and run.code == 1  # the other: no step mentions the part
    found = json.loads(publisher("check", folder, "--set", "radius=20", "--json").out)
    assert json.dumps(found).count("a plain number stands") == 2, "programs read of both parts"


def test_of_many_findings_alike_the_first_are_shown_and_the_rest_are_counted(
    capsys: pytest.CaptureFixture[str],
) -> None:
    rule = Rule("room/wrong", "Nothing is wrong", "It would be wrong.", Severity.ERROR)
    other = Finding("room/other", Severity.WARNING, "", "one of another kind")
    placeless = [rule.found(f"tick {number}") for number in range(1234)]
    placed = [rule.found(f"line {n}", place=Place("spec.yaml", n, 1)) for n in range(1, MOST_LINES + 2)]
    show_findings([*placeless, other, *placed])
    said = capsys.readouterr().err
    assert said.count("tick") == MOST_ALIKE and said.count("spec.yaml:") == MOST_LINES
    assert f"and {1234 - MOST_ALIKE + 1:,} more errors of this kind [room/wrong]" in said
    assert "another kind" in said and "more warning" not in said
