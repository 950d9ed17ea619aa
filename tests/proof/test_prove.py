"""The whole proof: readings worth showing, the same answer each time."""

from dataclasses import replace
from typing import Any

import pytest

from publisher.basics import Pose, Severity, errors
from publisher.proof import prove


def test_readings_of_the_good_pack(kit: Any) -> None:
    pack = kit.good()
    measured = prove(pack.write(), pack.promises, "good.pdf").measured
    squares = [m for m in measured if m.what.startswith("calibration") and "pixels" not in m.what]
    seen = [m for m in measured if "by pixels" in m.what]
    assert {m.page for m in squares} == {m.page for m in seen} == {1, 2, 3, 4}
    assert all(abs(m.found - m.promised) <= 0.01 for m in squares)
    assert all(abs(m.found - m.promised) <= 0.1 for m in seen)
    assert any("put together" in m.what for m in measured)


def test_the_same_file_gets_the_same_answer(kit: Any) -> None:
    pack = kit.good()
    del pack.sheets[1].items["outline"]
    data = pack.write()
    assert prove(data, pack.promises, "a.pdf") == prove(data, pack.promises, "a.pdf")


def test_promises_of_pages_that_are_not_there_do_no_harm(kit: Any) -> None:
    pack = kit.good()
    moved = replace(pack.promises, outlines=tuple(replace(o, page=o.page + 9) for o in pack.promises.outlines))
    found = prove(pack.write(), moved, "a.pdf").findings
    assert "proof/outline" in {f.check for f in found}


def test_a_contradicting_promise_is_no_crash(kit: Any) -> None:
    pack = kit.good()
    lengths = tuple(replace(p, end=p.start) for p in pack.promises.lengths)
    outlines = tuple(replace(o, pose=Pose(1e9, 0.0)) for o in pack.promises.outlines)
    found = prove(pack.write(), replace(pack.promises, lengths=lengths, outlines=outlines), "a.pdf").findings
    assert errors(found)
    assert all(f.severity is Severity.ERROR for f in found)


def test_a_scaled_print_copy_is_never_passed(kit: Any) -> None:
    """Every page at 97 %, as a fit to the margins would make it: each page's square is found."""
    pack = kit.good()
    for sheet in pack.sheets:
        sheet.items = {"q": kit.literal("q 0.97 0 0 0.97 9 12 cm"), **sheet.items, "Q": kit.literal("Q")}
    found = prove(pack.write(), pack.promises, "small.pdf").findings
    for check in (
        "proof/calibration",
        "proof/calibration-by-pixels",
        "proof/outline",
        "proof/ruler",
        "proof/corner-mark",
    ):
        assert any(f.check == check for f in found), check
    assert {f.subject for f in found if f.check == "proof/calibration"} >= {f"page {n}" for n in (1, 2, 3, 4)}


@pytest.mark.parametrize("data", [b"", b"%PDF-", b"\x00" * 100])
def test_a_file_that_cannot_be_read_is_not_judged_further(data: bytes, kit: Any) -> None:
    proof = prove(data, kit.good().promises, "x.pdf")
    assert [f.check for f in proof.findings] == ["proof/not-readable"]
    assert proof.judged == () and not proof.opened  # nothing was found to hold
