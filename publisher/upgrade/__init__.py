"""A spec of format 1 rewritten in format 2. All that the house still knows of format 1 stands here.

What format 1 meant: a plain number where a length or an angle is wanted was mm or degrees; a join said ``rests`` and ``on``, a section
``on``, a brace ``every`` so many-th step from the top. The meaning is first written out in format 2 word for word
(``reach * 1 mm`` at every use); then sizes get the unit where that reads better, as long as parts and facts come out equal.
"""

from publisher.upgrade.rewriting import Upgraded, upgrade
from publisher.upgrade.rules import RULES
from publisher.upgrade.units import with_unit, with_units_in_sum

__all__ = ["RULES", "Upgraded", "upgrade", "with_unit", "with_units_in_sum"]
