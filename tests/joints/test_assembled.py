from types import SimpleNamespace


def test_a_fact_is_found_by_its_name_or_not_at_all(make: SimpleNamespace) -> None:
    subject = make.assembled(make.design(), make.wall("w", 60, 40))
    assert subject.fact("w.width").value == 60.0
    assert subject.fact("w.depth") is None
