"""The weights of knots: none is small, like places have unlike ones, and together they come to nothing."""

from itertools import pairwise

from publisher.basics import WEIGHTS, weight_of


def test_weights_tell_places_apart_and_add_up_to_little() -> None:
    weights = [weight_of(place) for place in range(WEIGHTS)]
    assert all(1.0 <= abs(weight) <= 2.0 for weight in weights)
    assert len({round(weight, 9) for weight in weights}) == WEIGHTS
    assert all(abs(one - other) > 0.1 for one, other in pairwise(weights))
    for period in (1, 2, 4, 5, 8):  # ends of like lines: what each loses where it is written is the same
        sums = [abs(sum(weights[first::period])) for first in range(period)]
        assert max(sums) < 0.1 * WEIGHTS
    assert weight_of(WEIGHTS) == weight_of(0)
