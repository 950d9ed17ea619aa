"""What the things on a page are to a reader who cannot see it."""

from publisher.basics import Box, Layer, polyline
from publisher.pages import LineStyle, Picture, Stroke, StructureElement, Words
from publisher.pages.record.structure import structure_of
from publisher.pages.sheet import described
from publisher.pages.type import BODY, SMALL, Column, Faces, Setter, face, make_table

SETTER = Setter(Faces(face("regular"), face("bold")))


def line(tag: str) -> Stroke:
    return Stroke(LineStyle("cut", 0.5), (polyline(((0.0, 0.0), (9.0, 0.0))),), Layer.PAGE, tag=tag)


def word(text: str, tag: str = "p", y: float = 0.0) -> Words:
    return Words(text, "regular", 4.0, 0.0, y, Layer.PAGE, tag=tag)


def test_lines_of_a_paragraph_are_one_and_two_paragraphs_are_two() -> None:
    one = SETTER.paragraph("Cut twice along the middle of the line.\n\nThen fold.", BODY, 0.0, 0.0, 30.0)
    assert len(one.drawn) > 3
    found = structure_of(one.drawn, "")
    assert [element.role for element in found] == ["P", "P"]
    assert [n for element in found for n in element.things] == list(range(len(one.drawn)))
    assert found[1].things == (len(one.drawn) - 1,)


def test_the_title_comes_first_and_furniture_is_left_out() -> None:
    drawn = (word("Cut."), word("page 1", "artifact"), line(""), word("Templates", "h1"))
    assert structure_of(drawn, "") == (StructureElement("H1", (3,)), StructureElement("P", (0,)))


def test_a_step_s_number_is_part_of_its_heading_and_another_heading_is_not() -> None:
    drawn = (word("1", "h2"), word("Cut", "h2", 0.7), word("Lines", "h2", -9.0))
    assert structure_of(drawn, "") == (StructureElement("H2", (0, 1)), StructureElement("H2", (2,)))


def test_items_with_their_numbers_make_one_list() -> None:
    drawn = (
        word("1", "lbl"),
        word("Print.", "li"),
        word("2", "lbl"),
        word("Cut.", "li"),
        word("Done."),
        word("Glue", "li"),
    )
    first, between, second = structure_of(drawn, "")
    assert first == StructureElement(
        "L",
        kids=(
            StructureElement("LI", kids=(StructureElement("Lbl", (0,)), StructureElement("LBody", (1,)))),
            StructureElement("LI", kids=(StructureElement("Lbl", (2,)), StructureElement("LBody", (3,)))),
        ),
    )
    assert (between.role, second.kids) == ("P", (StructureElement("LI", kids=(StructureElement("LBody", (5,)),)),))


def test_a_table_has_a_cell_for_every_column_and_a_second_one_begins_anew() -> None:
    columns = (Column("Part", 20.0), Column("Cut", 30.0, "right"), Column("", 12.0))
    table = make_table(SETTER, columns, (("A", "", "x"), ("", "14 copies of it and one", "")), style=SMALL)
    drawn = (*table.place(0.0, 100.0), *table.place(0.0, 50.0))
    one, two = structure_of(drawn, "")
    assert [[cell.role for cell in row.kids] for row in one.kids] == [["TH"] * 3, ["TD"] * 3, ["TD"] * 3]

    def said(element: StructureElement) -> str:
        return " ".join(drawn[n].text for n in element.things)  # type: ignore[union-attr]

    texts = [[said(cell) for cell in row.kids] for row in one.kids]
    assert texts == [["Part", "Cut", ""], ["A", "", "x"], ["", "14 copies of it and one", ""]]
    assert [[said(cell) for cell in row.kids] for row in two.kids] == texts


def test_a_figure_is_one_thing_with_words_in_its_place() -> None:
    shown = described((line("figure"), word("cut the card"), line("")), "A corner of a card")
    plain = described((line("figure"), word("A")), "")
    mixed = described((line("figure"), word("sheet 1 of 2")), "sheet 1 of 2", figures_only=True)
    photo = Picture("post.png", Box(0.0, 0.0, 10.0, 10.0), "A post", Layer.PAGE)
    drawn = (*shown, *plain, *mixed, photo, line("figure"))
    assert structure_of(drawn, "Parts at true size") == (
        StructureElement("Figure", (0, 1, 2), alt="A corner of a card"),
        StructureElement("Figure", (5,), alt="sheet 1 of 2"),
        StructureElement("P", (6,)),
        StructureElement("Figure", (7,), alt="A post"),
        StructureElement("Figure", (8,), alt="Parts at true size"),
    )
