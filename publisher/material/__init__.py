"""Room 6: parts and counts in, board sheets out.

Comes in: a ``Design``'s boards and its ``Part``s. Goes out: cut list, verified layouts, yield; the store of layouts. Never:
imports joints, knows printer pages.
"""

from publisher.basics import Rule
from publisher.material.checks import CHECKS
from publisher.material.counts import CountKey, SheetCount, count_layouts
from publisher.material.judge import LayoutFault
from publisher.material.model import (
    BoardNeeds,
    CutRow,
    Item,
    Layout,
    Piece,
    Spare,
    Yield,
    YieldRow,
)
from publisher.material.needs import MOST_TRACINGS, lay_out
from publisher.material.packing import pack
from publisher.material.promised import Alike, different_sheets, layout_key
from publisher.material.promised_files import promised_sheet, promised_yields
from publisher.material.rules import LAYOUTS_STALE, STORE_UNREADABLE, STORED_LAYOUT_WRONG
from publisher.material.shopping import ListedDesign, Shared, shop_together
from publisher.material.store import Stored, layouts_document, store_document
from publisher.material.yield_csv import gain, yield_csv

RULES: tuple[Rule, ...] = (*CHECKS, LAYOUTS_STALE, STORE_UNREADABLE, STORED_LAYOUT_WRONG)

__all__ = [
    "MOST_TRACINGS",
    "RULES",
    "Alike",
    "BoardNeeds",
    "CountKey",
    "CutRow",
    "Item",
    "Layout",
    "LayoutFault",
    "ListedDesign",
    "Piece",
    "Shared",
    "SheetCount",
    "Spare",
    "Stored",
    "Yield",
    "YieldRow",
    "count_layouts",
    "different_sheets",
    "gain",
    "lay_out",
    "layout_key",
    "layouts_document",
    "pack",
    "promised_sheet",
    "promised_yields",
    "shop_together",
    "store_document",
    "yield_csv",
]
