"""What is offered beside the parts: boards and sheets, papers, needs, steps, and the texts that buyers read.

Comes in: the scope. Goes out: plans of them.
Never: lay out a sheet or a page.
"""

from publisher.design.offer.boards import read_boards
from publisher.design.offer.figures import read_figure
from publisher.design.offer.fits import read_fits
from publisher.design.offer.gaps import gaps, unsigned
from publisher.design.offer.given import given_words, things_used
from publisher.design.offer.licence import OwnLicence, own_licence, read_licence
from publisher.design.offer.needs import read_needs
from publisher.design.offer.papers import promised_paper, read_papers
from publisher.design.offer.sheets import named_sheets, sheet_size
from publisher.design.offer.spans import SizeSpan, size_span, two_ranges
from publisher.design.offer.steps import StepsReader, names_in
from publisher.design.offer.texts import amount, fill, filled, read_text, said_numbers, text_findings
