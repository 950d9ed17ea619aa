"""Plans of folded pieces: panels that are cut as one piece of board and folded along the edges that they share."""

from publisher.basics import Place, record


@record
class FoldedPanel:
    """A panel of a folded piece. All but the first are folded to an earlier one: ``edge`` of this part lies on ``on_edge``
    of the panel with the index ``on``; ``corner``: the inside angle in degrees."""

    part: str
    edge: str
    on: int
    on_edge: str
    corner: float
    place: Place


@record
class FoldPlan:
    """Panels cut as one piece, ``count`` times, with ``spare`` copies on top; each part has all its copies in this plan.

    ``parts``: ids of the parts, each once, in the order of the panels."""

    id: str
    panels: tuple[FoldedPanel, ...]
    parts: tuple[str, ...]
    count: int
    spare: int
