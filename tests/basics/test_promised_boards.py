"""Keys under which pages carry what was promised."""

from publisher.basics import LayoutPromise


def test_words_of_a_layout_have_keys_of_their_own() -> None:
    """Of each piece and cut one, whatever numbers they share; none is the picture's."""
    promise = LayoutPromise("layout:foam:A3:1", "foam", "A3", 297.0, 420.0, 1, 1, 1, ())
    keys = {promise.key_of("piece", 1), promise.key_of("cut", 1), promise.key_of("caption"), promise.key_of("offcut")}
    assert len(keys) == 4 and promise.key not in keys
    assert promise.key_of("piece", 1) != promise.key_of("piece", 11)
