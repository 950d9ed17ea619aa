"""The instructions: numbered steps with their pictures, and the acts of the trade that they ask for.

Comes in: steps and line drawings. Goes out: drafts of pages, and links between templates, steps and the pages that words name.
Never: draw an assembly.
"""

from publisher.pages.instructions.pack_acts import act_titles
from publisher.pages.instructions.page_links import pages_of_use, use_links, worded_links
from publisher.pages.instructions.phone_pages import phone_drafts
from publisher.pages.instructions.steps import step_drafts
from publisher.pages.instructions.trade_acts import trade_act_drafts
