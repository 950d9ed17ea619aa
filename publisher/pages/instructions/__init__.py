"""The instructions: numbered steps with their pictures.

Comes in: steps and line drawings. Goes out: drafts of pages.
Never: draw an assembly.
"""

from publisher.pages.instructions.steps import step_drafts
