"""Which letter belongs to which template."""

import shapely

from tests.rehearsal.letters import Tag
from tests.rehearsal.parts import off_tiles
from tests.rehearsal.tiles import Tile


def test_a_tag_on_a_tile_names_no_template_beside_it() -> None:
    """A template with its letter in small words alone took that of the deck's tile below it."""
    deck, pier, soffit = (
        Tag("B", 20.0, 40.0, 30.0, 50.0),
        Tag("F", 80.0, 40.0, 90.0, 50.0),
        Tag("D", 150.0, 20.0, 160.0, 30.0),
    )
    sides = (shapely.box(5.0, 5.0, 5.5, 90.0), shapely.box(60.0, 5.0, 60.5, 90.0))
    tile = Tile(8, sides, {"B1-2-a": (10.0, 8.0)}, (deck,))
    within = shapely.box(70.0, 30.0, 120.0, 70.0)
    assert off_tiles((deck, pier, soffit), (tile,), (within,)) == (pier, soffit)
    assert off_tiles((deck,), (tile,), (shapely.box(15.0, 35.0, 40.0, 55.0),)) == (deck,)
    assert off_tiles((deck,), (), ()) == (deck,)
