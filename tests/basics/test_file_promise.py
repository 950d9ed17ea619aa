"""Promises of files know which files there are, of one variant or of several."""

from publisher.basics import CutFilePromise, FilePromises, PackFiles


def test_the_files_of_two_variants_are_those_of_both() -> None:
    one = FilePromises(
        (PackFiles("a.pdf", "a.json", ("page-01.png",)),), (CutFilePromise("part.svg", ()),), (("t.csv", ()),)
    )
    other = FilePromises((PackFiles("b.pdf", "b.json"),))
    assert one.paths == {"a.pdf", "a.json", "page-01.png", "part.svg", "t.csv"}
    assert one.with_others(other).paths == one.paths | {"b.pdf", "b.json"}
