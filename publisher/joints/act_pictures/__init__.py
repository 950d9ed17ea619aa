"""Pictures of acts: what stands thin, what is added thick and held off along its way in, with the signs that say how.

Comes in: acts of the building and the solids of their assemblies. Goes out: a drawing of each, in mm of the paper.
Never: decides what is built when, knows a page.
"""

from publisher.joints.act_pictures.planned import draw_acts
