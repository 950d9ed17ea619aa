"""Two edges of a panel exchanged."""

from types import SimpleNamespace

from publisher.joints.panels import exchanged_edges, matings_of, meets, place_panels


def test_each_two_joins_of_a_panel_are_tried_with_its_edges_exchanged(make: SimpleNamespace) -> None:
    """Left and right of one wall of a ring of four: it stands on its head, and its edges meet as before."""
    around = {"f": "long", "r": "short", "b": "long", "l": "short"}
    ways = (("f.right", "r.left"), ("r.right", "b.left"), ("b.right", "l.left"), ("l.right", "f.left"))
    plan = make.panels("box", around, "f.bottom", *(make.join(a, b) for a, b in ways))
    parts = {"long": make.wall("long", 120, 60), "short": make.wall("short", 80, 60)}
    assembly = place_panels(plan, parts)
    tried = list(exchanged_edges(assembly, ("r",)))
    assert [(name, said) for name, said, _ in tried] == [("r", "[f.right, r.right] and [r.left, b.left]")]
    one, other = (next(p.frame for p in made.panels if p.name == "r") for made in (assembly, tried[0][2]))
    assert (
        one.axes[2, 1] > 0.99 and other.axes[2, 1] < -0.99 and all(meets(mating) for mating in matings_of(tried[0][2]))
    )
