"""Tiles: parts that fit no page, cut where the match marks say, with their map and overview.

Comes in: parts that fit no page. Goes out: drafts of tile pages, with the promises about seams.
Never: lay tiles on board.
"""

from publisher.pages.tiles.tile_pages import TOO_MANY_TILES, tile_drafts

__all__ = [
    "TOO_MANY_TILES",
    "tile_drafts",
]
