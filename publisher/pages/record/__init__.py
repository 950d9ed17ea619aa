"""The record of a pack, for every later reader: what it was made of, sizes, parts, pages with their ink and words.

Comes in: a pack with its design, parts and inputs. Goes out: the record as JSON, attached and promised; ink, words and structure of a
page, and all that it draws as promises.
Never: draw; work out a size.
"""

from publisher.pages.record.document import record_of, record_schema, with_attachment
from publisher.pages.record.drawn import drawn_promises, link_promises
from publisher.pages.record.ink import beside_furniture, digests_of, ink_id, words_of
from publisher.pages.record.narrowed import pictured_alone, printed_alone, shown_alone, told_alone
from publisher.pages.record.structure import structure_of, tag_promises
