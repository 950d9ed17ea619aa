from publisher.proof.reading.units import MM_PER_INCH, MM_PER_PT, PT_PER_INCH


def test_one_hundred_millimetres_are_283_4646_points() -> None:
    # ISO 32000-1, 8.3.2.3 and the inch of 1959
    assert round(100 / MM_PER_PT, 4) == 283.4646
    assert MM_PER_INCH / PT_PER_INCH == MM_PER_PT
