"""The front of a pack: cover, print check, what to buy and to cut, cautions, how to use a template.

Comes in: all that was worked out, and which templates stand where. Goes out: drafts of pages.
Never: place a template.
"""

from publisher.pages.front.board_gauges import boards_to_go_on, first_to_fail
from publisher.pages.front.cautions import caution_drafts, cautions_before, licence_stands_here
from publisher.pages.front.check_pieces import (
    inner_square_words,
    off_within,
    outer_square_words,
    square_between,
)
from publisher.pages.front.check_squares import INCH_SIDE, SQUARE_SIDE
from publisher.pages.front.coupon import fit_of
from publisher.pages.front.cover import about_drafts, cover_drafts
from publisher.pages.front.cover_picture import NO_COVER_PICTURE
from publisher.pages.front.coverings import Covering, covering_words, coverings_of
from publisher.pages.front.cut_list import cut_list_drafts
from publisher.pages.front.finished import FIGURE_GAP, figure_beside
from publisher.pages.front.licence import licence_of, licensing
from publisher.pages.front.one_part import ONE_PART, one_part_drafts
from publisher.pages.front.pages_to_print import ranges
from publisher.pages.front.piles import PILING
from publisher.pages.front.print_check import CHECK_PAGE, gauges_on, has_two_squares, print_check_drafts
from publisher.pages.front.shop_pages import SHOP_KIND, shop_drafts, shop_picture_names
from publisher.pages.front.to_buy import CARD_THICK, materials_to_buy, tools_to_buy
