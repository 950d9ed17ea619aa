from types import SimpleNamespace

import pytest

from publisher.joints.assembled import Assembled, MatedPanels
from publisher.joints.checks.off_its_curve import off_its_curve
from publisher.joints.panels import linings_of
from tests.joints.panels.test_linings import bridge


def said(make: SimpleNamespace, **wrong: float) -> Assembled:
    assembly = bridge(make, **wrong)
    return Assembled(make.design(), (), (), (MatedPanels(assembly, (), (), (), linings_of(assembly)),), ())


@pytest.mark.keeps("joints/off-its-curve")
def test_a_soffit_of_the_arch(make: SimpleNamespace) -> None:
    outcome = off_its_curve.run(said(make), off_its_curve)
    assert (outcome.looked_at, outcome.findings) == (2, ())


@pytest.mark.breaks("joints/off-its-curve")
@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        ({"radius": 35.0, "angle": 154.0}, "off it"),
        ({"angle": 150.0}, "from its end"),
        ({"wide": 34.0}, "leaves 3.00 mm"),
    ],
)
def test_a_soffit_of_another_arch(make: SimpleNamespace, wrong: dict[str, float], words: str) -> None:
    findings = off_its_curve.run(said(make, **wrong), off_its_curve).findings
    assert len(findings) == 2
    assert all(words in finding.message for finding in findings)
