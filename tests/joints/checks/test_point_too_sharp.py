from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.joints.checks.point_too_sharp import point_too_sharp

ID = "joints/point-too-sharp"


@pytest.mark.keeps(ID)
def test_blunt_parts_pass(make: SimpleNamespace) -> None:
    blade = make.polygon("blade", [(0, -10), (60, -1), (60, 1), (0, 10)])
    outcome = point_too_sharp.run(
        make.assembled(make.design(), make.wall("w", 60, 40), blade, make.disc()), point_too_sharp
    )
    assert (outcome.looked_at, outcome.findings) == (3, ())


@pytest.mark.breaks(ID)
def test_a_point_is_named_with_its_angle_and_place(make: SimpleNamespace) -> None:
    blade = make.polygon("blade", [(0, -10), (60, 0), (0, 10)])
    (found,) = point_too_sharp.run(make.assembled(make.design(), blade), point_too_sharp).findings
    assert found.severity is Severity.WARNING
    assert "has a point of 19° (60 mm across and 0 mm up); one under 45° is blunted to 2.00 mm" in found.message
    thick = make.polygon("blade", [(0, -10), (60, -1), (60, 1), (0, 10)], thickness=10.0)
    (cut,) = point_too_sharp.run(
        make.assembled(make.design(boards=(make.board(10.0),)), thick), point_too_sharp
    ).findings
    assert "cut off only 2.00 mm (0.08 in) wide" in cut.message
    assert "blunted to 4.00 mm" in cut.message
