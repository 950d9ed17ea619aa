"""Tiles: parts that fit no page, cut where the match marks say, with their map and overview.

Comes in: parts that fit no page. Goes out: drafts of tile pages, with the promises about seams.
Never: lay tiles on board.
"""

from publisher.pages.tiles.tile_pages import MAP_FROM, MOST_TILES_OF_PART, TOO_MANY_TILES, tile_drafts
from publisher.pages.tiles.tile_plan import least_tiles, tiling
