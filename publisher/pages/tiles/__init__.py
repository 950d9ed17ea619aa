"""Tiles: parts that fit no page, cut where the match marks say, with their map and overview.

Comes in: parts that fit no page, and templates that may share pages with them. Goes out: drafts of all pages at true size, with the
promises about seams. Never: lay tiles on board.
"""

from publisher.pages.tiles.seams import Cell
from publisher.pages.tiles.tile_pages import TOO_MANY_TILES, tiles_refusal
from publisher.pages.tiles.tile_plan import Tiling
from publisher.pages.tiles.true_pages import TruePages, plan_true_pages, true_page_drafts
