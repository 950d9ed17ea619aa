"""Pages are drawn as large as somebody's pictures of them."""

from publisher.proof.measuring import page_dots
from tests.proof.made_folder import Made


def test_a_page_is_drawn_at_the_size_of_its_picture_and_only_in_its_shape(made_folder: Made) -> None:
    (pack,) = made_folder.built.packs
    count = len(pack.pack.pages)
    sizes = [(298, 421)] * count
    sizes[1], sizes[2] = (421, 298), (0, 0)
    drawn = page_dots(pack.pdf.data, tuple(sizes))
    assert drawn is not None and drawn[0] is not None
    assert drawn[0].shape == (421, 298) and (drawn[0].min() < 80, drawn[0].max()) == (True, 255)
    assert drawn[1] is None and drawn[2] is None


def test_a_file_with_other_pages_or_none_gives_nothing(made_folder: Made) -> None:
    (pack,) = made_folder.built.packs
    assert page_dots(pack.pdf.data, ((298, 421),)) is None
    assert page_dots(b"%PDF-1.7", ((298, 421),)) is None
