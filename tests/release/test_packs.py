"""Packs of a design are one set: what was made of other files goes by name, and nothing else ever does."""

import errno
import json
import shutil
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest

from publisher.basics import Refusal
from publisher.release import Offer, discard_trials, disk, is_placed, place_packs, settle, trial_name
from tests.release.dying import Death, everything, failing, offer
from tests.searches.profile import rounds

NEW, OLD = b"new", b"old"


def tried(value: float) -> Offer:
    """A trial of ``quay`` at another reach."""
    one = offer(NEW, "a4")
    sizes = (SimpleNamespace(name="Reach", value=value), SimpleNamespace(name="board", value=5.0))
    design = SimpleNamespace(**{**vars(one.design), "sizes": sizes})
    inputs = replace(one.inputs, sets=(("Reach", f"{value} mm"),))
    pdf = f"quay-1.0.0-{trial_name((design,), inputs.sets)}-a4.pdf"  # type: ignore[arg-type]
    outputs = tuple(replace(o, path=pdf) if o.path.endswith(".pdf") else o for o in one.outputs)
    return replace(one, design=design, inputs=inputs, outputs=outputs)  # type: ignore[arg-type]


def names(folder: Path) -> set[str]:
    return set(everything(folder))


def test_all_variants_and_papers_stand_in_one_list(tmp_path: Path) -> None:
    place_packs((offer(OLD, "letter", "a4"), offer(OLD, "a4", variant="long")), tmp_path)
    listed = json.loads((tmp_path / "quay/packs.json").read_text())
    assert [(pack["variant"], pack["paper"]) for pack in listed["packs"]] == [
        ("", "a4"),
        ("", "letter"),
        ("long", "a4"),
    ]
    assert {file["path"] for file in listed["files"]} == names(tmp_path / "quay") - {"packs.json"}


def test_other_papers_and_variants_of_the_same_files_stay(tmp_path: Path) -> None:
    whole = place_packs((offer(OLD, "a4", "letter"), offer(OLD, "a4", variant="long")), tmp_path)
    before = everything(tmp_path)
    again = place_packs((offer(OLD, "a4"),), tmp_path)
    assert (again.removed, again.stays) == ((), ())
    assert everything(tmp_path) == before  # the list too: it does not tell what was built last
    assert again.folder == whole.folder == tmp_path / "quay"


@pytest.mark.parametrize(
    ("built", "why"),
    [
        (offer(NEW, "a4"), "spec.yaml changed since it was made"),
        (offer(OLD, "a4", program="2"), "it was made with another version of publisher"),
        (offer(NEW, "a4", version="1.1.0"), "it is of version 1.0.0"),
    ],
)
def test_what_was_made_of_other_files_goes_and_it_is_said_why(built: Offer, why: str, tmp_path: Path) -> None:
    place_packs((offer(OLD, "a4", "letter", parts="ab"), offer(OLD, "a4", variant="long")), tmp_path)
    placed = place_packs((built,), tmp_path)
    assert names(tmp_path / "quay") == {o.path for o in built.outputs} | {"packs.json", "proof.json"}
    gone = {left.name for left in placed.removed}
    assert {"quay-1.0.0-letter.pdf", "quay-1.0.0-long-a4.json", "cut-files/standard/part-b.svg"} <= gone
    assert {left.why for left in placed.removed} == {why}
    assert not (tmp_path / "quay/previews/standard-letter").exists()


def test_a_designers_own_file_stays_wherever_it_lies(tmp_path: Path) -> None:
    place_packs((offer(OLD, "a4", "letter"),), tmp_path)
    own = ["notes.txt", "cut-files/standard/part-a-mine.svg", "previews/standard-letter/.DS_Store", "quay-1.0.0-a3.pdf"]
    for name in own:
        (tmp_path / "quay" / name).write_bytes(b"mine")
    (tmp_path / "quay/quay-1.0.0-letter.json").write_bytes(b"changed by hand")
    placed = place_packs((offer(NEW, "a4"),), tmp_path)
    assert {*own, "quay-1.0.0-letter.json"} <= names(tmp_path / "quay")
    assert not (tmp_path / "quay/quay-1.0.0-letter.pdf").exists()
    assert [(left.name, left.why) for left in placed.stays] == [("quay-1.0.0-letter.json", "it is not as it was made")]


def test_nothing_goes_or_is_written_through_a_link(tmp_path: Path) -> None:
    place_packs((offer(OLD, "a4", "letter"),), tmp_path)
    home, elsewhere = tmp_path / "quay", tmp_path / "elsewhere"
    (home / "previews/standard-letter").rename(elsewhere)
    (home / "previews/standard-letter").symlink_to(elsewhere)
    placed = place_packs((offer(NEW, "a4"),), tmp_path)
    assert names(elsewhere) == {"page-01.png"}
    assert [left.name for left in placed.stays] == ["previews/standard-letter/page-01.png"]
    with pytest.raises(Refusal, match="is a link that leads elsewhere"):
        place_packs((offer(NEW, "letter"),), tmp_path)
    assert everything(elsewhere) == {"page-01.png": OLD}


@pytest.mark.parametrize(
    "text",
    [
        "",
        "not json",
        "[]",
        '{"format": 1}',
        '{"format": 2, "files": [{}]}',
        "[" * 100_000,
        '{"format": 2, "inputs": 3, "files": 7}',
    ],
)
def test_a_list_that_cannot_be_read_removes_nothing(text: str, tmp_path: Path) -> None:
    place_packs((offer(OLD, "letter"),), tmp_path)
    (tmp_path / "quay/packs.json").write_text(text)
    placed = place_packs((offer(NEW, "a4"),), tmp_path)
    assert placed.removed == ()
    assert [(left.name, left.why) for left in placed.stays] == [
        (".", "the list of an earlier build, packs.json, cannot be read")
    ]
    assert {"quay-1.0.0-a4.pdf", "quay-1.0.0-letter.pdf"} <= names(tmp_path / "quay")


def test_a_list_that_names_files_elsewhere_removes_none(tmp_path: Path) -> None:
    place_packs((offer(OLD, "letter"),), tmp_path)
    (tmp_path / "mine").write_bytes(OLD)
    path = tmp_path / "quay/packs.json"
    listed = json.loads(path.read_text())
    listed["files"] += [{**listed["files"][0], "path": name} for name in ("../mine", str(tmp_path / "mine"))]
    path.write_text(json.dumps(listed))
    place_packs((offer(NEW, "a4"),), tmp_path)
    assert (tmp_path / "mine").exists()
    assert not (tmp_path / "quay/quay-1.0.0-letter.pdf").exists()


def test_a_trial_stands_beside_the_set_and_replaces_nothing(tmp_path: Path) -> None:
    place_packs((offer(OLD, "a4", "letter"),), tmp_path)
    before = everything(tmp_path)
    folders = set()
    for value in (95.0, 95.00001, 96.0):
        placed = place_packs((tried(value),), tmp_path)
        assert placed.removed == ()
        folders.add(placed.folder.relative_to(tmp_path).as_posix())
    assert {n: data for n, data in everything(tmp_path).items() if "/trials/" not in n} == before
    stems = sorted(folder.rpartition("-")[0] for folder in folders)
    assert stems == ["quay/trials/reach-95", "quay/trials/reach-95", "quay/trials/reach-96"]


def test_trials_are_discarded_by_their_own_lists_alone(tmp_path: Path) -> None:
    place_packs((offer(OLD, "a4"),), tmp_path)
    before = everything(tmp_path)
    folders = [place_packs((tried(value),), tmp_path).folder for value in (95.0, 96.0)]
    (folders[0] / "cut-files/standard/part-a.svg").write_bytes(b"mine")
    (folders[0].parent / "mine").mkdir()
    shutil.copytree(tmp_path / "quay", folders[0].parent / "no-trial", ignore=shutil.ignore_patterns("trials"))
    done = discard_trials("quay", tmp_path)
    assert [one.folder for one in done] == folders
    assert [left.name for left in done[0].stays] == ["cut-files/standard/part-a.svg"] and done[1].stays == ()
    after = {name: data for name, data in everything(tmp_path).items() if "/no-trial/" not in name}
    assert after == {**before, f"quay/trials/{folders[0].name}/cut-files/standard/part-a.svg": b"mine"}
    assert everything(folders[0].parent / "no-trial") == {n.removeprefix("quay/"): d for n, d in before.items()}
    assert not folders[1].exists() and discard_trials("quay", tmp_path) == ()


def test_no_trial_is_discarded_through_a_link(tmp_path: Path) -> None:
    placed = place_packs((tried(95.0),), tmp_path / "other")
    (tmp_path / "packs/quay").mkdir(parents=True)
    (tmp_path / "packs/quay/trials").symlink_to(placed.folder.parent)
    before = everything(tmp_path / "other")
    assert discard_trials("quay", tmp_path / "packs") == ()
    assert everything(tmp_path / "other") == before


def test_a_disk_that_fails_while_it_is_looked_at_is_a_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    place_packs((tried(95.0),), tmp_path)

    def fails(path: Path) -> None:
        raise OSError(errno.EIO, "Input/output error", str(path))

    monkeypatch.setattr(disk, "digest", fails)
    with pytest.raises(Refusal, match="input/output error"):
        is_placed((tried(95.0),), tmp_path)
    monkeypatch.setattr(Path, "iterdir", fails)
    with pytest.raises(Refusal, match="input/output error"):
        discard_trials("quay", tmp_path)


def test_a_trial_is_named_by_all_values_that_its_variants_work_out() -> None:
    def name(**reach: float) -> str:
        designs = (
            SimpleNamespace(variant=key, sizes=(SimpleNamespace(name="Reach", value=value),))
            for key, value in reach.items()
        )
        return trial_name(designs, (("Reach", "step * 3"),))  # type: ignore[arg-type]

    assert name(a=96.0) == name(b=96.0) == name(a=96.0, b=96.0) != name(a=96.0, b=99.0)
    assert name(a=96.0, b=99.0) != name(a=96.0, b=98.0)
    assert name(a=96.0).startswith("reach-96-") and trial_name((), ()) == ""
    sizes = tuple(SimpleNamespace(name=f"size{k:02}", value=k) for k in range(30))
    long = trial_name((SimpleNamespace(variant="", sizes=sizes),), tuple((s.name, "1") for s in sizes))  # type: ignore[arg-type]
    assert len(long) <= 60


def test_a_folder_that_cannot_be_written_is_refused(tmp_path: Path) -> None:
    (tmp_path / "packs").write_text("mine")
    with pytest.raises(Refusal, match="cannot write"):
        place_packs((offer(OLD, "a4"),), tmp_path / "packs")


BEFORE = (offer(OLD, "a4", "letter"),)
AFTER = (offer(NEW, "a4", parts="ab"),)


@pytest.fixture(scope="module")
def placed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the sets before, after, and another, each placed alone."""
    folder = tmp_path_factory.mktemp("placed")
    with pytest.MonkeyPatch.context() as patch:
        failing(patch)
        for name, offers in (("before", BEFORE), ("after", AFTER), ("other", (offer(b"other", "a4"),))):
            place_packs(offers, folder / name)
    return folder


@pytest.fixture
def changes(placed: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> int:
    """How many changes it takes to place the one set after the other."""
    shutil.copytree(placed / "before", tmp_path / "counted")
    found = failing(monkeypatch)
    place_packs(AFTER, tmp_path / "counted")
    assert found.count > 60
    return found.count


def test_dying_before_each_change_leaves_after_the_next_command_all_or_nothing(
    placed: Path, changes: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before, after, other = (everything(placed / name / "quay") for name in ("before", "after", "other"))
    seen = set()
    for last in range(1, changes + 1):
        dead = shutil.copytree(placed / "before", tmp_path / f"{last}")
        failing(monkeypatch, last)
        with pytest.raises(Death):
            place_packs(AFTER, dead)
        failing(monkeypatch)
        next_ = shutil.copytree(dead, tmp_path / f"{last}-next") if last % 3 == 0 else None
        settle(dead / "quay")  # a command that only reads
        stands = is_placed(AFTER, dead)
        seen.add(stands)
        assert everything(dead / "quay") == (after if stands else before), last
        if next_:  # a build
            then, expected = ((offer(b"other", "a4"),), other) if last % 2 else (AFTER, after)
            place_packs(then, next_)
            assert everything(next_ / "quay") == expected, last
    assert seen == {True, False}


def test_dying_while_that_is_put_right_is_put_right_too(
    placed: Path, changes: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before, after = (everything(placed / name / "quay") for name in ("before", "after"))
    for last in range(5, changes + 1, 7):
        dead = shutil.copytree(placed / "before", tmp_path / f"{last}")
        failing(monkeypatch, last)
        with pytest.raises(Death):
            place_packs(AFTER, dead)
        for again in range(1, 100, 5):
            failing(monkeypatch, again)
            with suppress(Death):
                settle(dead / "quay")
        failing(monkeypatch)
        settle(dead / "quay")
        assert everything(dead / "quay") == (after if is_placed(AFTER, dead) else before), last


@pytest.mark.search
def test_a_disk_that_fails_before_any_change_leaves_all_as_it_was(
    placed: Path, changes: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before, after = (everything(placed / name / "quay") for name in ("before", "after"))
    for last in range(1, changes + 1, rounds(2, 1)):
        out = shutil.copytree(placed / "before", tmp_path / f"{last}")
        failing(monkeypatch, last, lambda: OSError(errno.ENOSPC, "No space left on device"), dead=False)
        try:
            place_packs(AFTER, out)
        except Refusal as refusal:
            assert "no space left on device" in str(refusal)
            expected = before
        else:  # it failed to tidy up only
            expected = after
        failing(monkeypatch)
        settle(out / "quay")
        assert everything(out / "quay") == expected, last


@pytest.mark.search
def test_ctrl_c_before_any_change_leaves_all_or_nothing_and_no_leftovers(
    placed: Path, changes: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before, after = (everything(placed / name / "quay") for name in ("before", "after"))
    for last in range(1, changes + 1, rounds(2, 1)):
        out = shutil.copytree(placed / "before", tmp_path / f"{last}")
        failing(monkeypatch, last, KeyboardInterrupt, dead=False)
        with pytest.raises(KeyboardInterrupt):
            place_packs(AFTER, out)
        failing(monkeypatch)
        assert not list(out.rglob(".publisher*")), last
        assert everything(out / "quay") == (after if is_placed(AFTER, out) else before), last


def test_a_staged_file_that_is_not_whole_takes_all_back(
    placed: Path, changes: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A power cut may leave a journal and files whose bytes never came to the disk: then the old set comes back."""
    before, tried = everything(placed / "before"), 0
    for last in range(1, changes + 1, 2):
        out = shutil.copytree(placed / "before", tmp_path / f"{last}")
        failing(monkeypatch, last)
        with pytest.raises(Death):
            place_packs(AFTER, out)
        work = out / "quay/.publisher-work"
        if (work / "journal.json").exists() and (work / "new/packs.json").exists():
            (work / "new/packs.json").write_bytes(b"")
            failing(monkeypatch)
            settle(out / "quay")
            assert everything(out) == before, last
            tried += 1
    assert tried > 5


def test_a_file_that_somebody_changed_after_a_run_died_is_not_replaced(
    placed: Path, changes: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before, after, tried = everything(placed / "before/quay"), everything(placed / "after/quay"), 0
    name = "quay-1.0.0-a4.pdf"
    for last in range(1, changes + 1, 2):
        home = shutil.copytree(placed / "before", tmp_path / f"{last}") / "quay"
        failing(monkeypatch, last)
        with pytest.raises(Death):
            place_packs(AFTER, home.parent)
        if (home / name).exists():
            (home / name).write_bytes(b"mine")
            failing(monkeypatch)
            settle(home)
            assert (home / name).read_bytes() == b"mine", last
            others = {n: data for n, data in everything(home).items() if n != name}
            assert others in [{n: data for n, data in one.items() if n != name} for one in (before, after)], last
            tried += 1
    assert tried > 20
