"""What was looked at on each page is counted by reader, with the largest difference."""

from publisher.proof import prove
from tests.proof.made_folder import Made


def test_each_page_says_what_was_looked_at(made_folder: Made) -> None:
    (proof,) = made_folder.proofs.values()
    assert [page.page for page in proof.pages] == list(range(1, len(made_folder.built.packs[0].pack.pages) + 1))
    check = {(one.what, one.reader): one for one in proof.pages[1].looked}
    lengths = sum(one.page == 2 for one in made_folder.built.packs[0].pack.promises.lengths)
    assert check["lengths", "operators"].things == lengths > 100
    assert 0.0 <= (check["lengths", "operators"].largest or 0.0) <= 0.0055
    assert check["sides of squares", "dots"].things == 2
    outlines = [
        one for page in proof.pages for one in page.looked if (one.what, one.reader) == ("outlines", "operators")
    ]
    assert sum(one.things for one in outlines) == len(made_folder.built.packs[0].pack.promises.outlines) > 0


def test_of_a_file_without_promises_only_what_was_read_is_said(made_folder: Made) -> None:
    (pack,) = made_folder.built.packs
    alone = prove(pack.pdf.data, None, "stranger.pdf")
    assert {one.what for page in alone.pages for one in page.looked} == {
        "lines and areas read",
        "words read",
        "pictures read",
    }
    assert prove(b"", None, "nothing.pdf").pages == ()
