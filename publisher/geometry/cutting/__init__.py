"""What is cut from board where that is not the part itself: pieces and lap plates of split parts, pieces that are folded.

Comes in: parts. Goes out: parts of their own, with seams, laps and grooves.
Never: change a part that is neither split nor folded.
"""

from publisher.geometry.cutting.by_sizes import sizes_key, sizes_of
from publisher.geometry.cutting.halves import half_marks
from publisher.geometry.cutting.plates import PLATE
from publisher.geometry.cutting.split_parts import cut_pieces, free_letters, with_seams
