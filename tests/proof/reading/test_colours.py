import pytest

from publisher.proof.reading.colours import grey_in, grey_of, picture_coded, space_kind
from publisher.proof.reading.tokens import Name


@pytest.mark.parametrize(
    ("components", "grey"),
    [
        ([0.3], 0.3),
        ([1.0, 1.0, 1.0], 1.0),
        ([1.0, 0.0, 0.0], 0.299),
        ([0.0, 0.0, 0.0, 1.0], 0.0),
        ([0.0, 0.0, 0.0, 0.0], 1.0),
        ([7.0], 1.0),
    ],
)
def test_device_colours(components: list[float], grey: float) -> None:
    assert grey_of(components) == pytest.approx(grey)


def test_a_tint_of_1_is_dark_and_a_pattern_has_no_grey() -> None:
    assert grey_in("Separation", [1.0]) == 0.0
    assert grey_in("Separation", [0.0]) == 1.0
    assert grey_in("Pattern", [Name("P1")]) is None
    assert grey_in("ICCBased", [0.0, 0.0, 0.0]) == 0.0


def test_named_spaces_are_looked_up() -> None:
    spaces = {"/Cs": ["/Separation", "/Spot"]}
    assert space_kind(Name("Cs"), spaces) == "Separation"
    assert space_kind(Name("DeviceRGB"), spaces) == "DeviceRGB"


@pytest.mark.parametrize(
    ("picture", "coded"),
    [
        ({"/ColorSpace": "/DeviceRGB", "/BitsPerComponent": 8}, True),
        ({"/ColorSpace": ["/ICCBased", None], "/BitsPerComponent": 8}, True),
        ({"/ColorSpace": "/DeviceRGB", "/BitsPerComponent": 7}, False),
        ({"/ColorSpace": 8, "/BitsPerComponent": "/DeviceRGB"}, False),  # exchanged: no viewer shows it
        ({"/BitsPerComponent": 8}, False),
        ({"/Filter": "/JPXDecode"}, True),
    ],
)
def test_a_picture_has_a_colour_space_and_bits_that_there_are(picture: dict[str, object], coded: bool) -> None:
    assert picture_coded(picture) is coded
