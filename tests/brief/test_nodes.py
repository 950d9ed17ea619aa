"""Nodes by themselves: what a mapping answers about its keys, what a node starts from."""

from publisher.brief.nodes import Key, Mapping, Scalar, Sequence


def a_mapping() -> Mapping:
    first, second = Scalar("5 mm", True, 1, 4), Scalar("6 mm", True, 2, 4)
    return Mapping(False, 1, 1, [(Key("a", 1, 1), first), (Key("a", 2, 1, dropped=True), second)])


def test_the_first_of_two_keys_with_one_name_counts() -> None:
    top = a_mapping()
    node, key = top.get("a"), top.key("a")
    assert isinstance(node, Scalar)
    assert key is not None
    assert (node.text, key.line, key.dropped) == ("5 mm", 1, False)


def test_a_key_that_is_not_there_is_none() -> None:
    assert a_mapping().get("A") is None
    assert a_mapping().key("A") is None


def test_a_scalar_has_no_depth_and_lists_and_mappings_have() -> None:
    one, two, three = Scalar("x", True, 1, 1), Sequence(True, 1, 1), Mapping(True, 1, 1)
    assert [node.depth for node in (one, two, three)] == [0, 1, 1]
    assert [node.size for node in (one, two, three)] == [1, 1, 1]


def test_nodes_share_no_list() -> None:
    one, other = Mapping(False, 1, 1), Mapping(False, 2, 1)
    one.entries.append((Key("a", 1, 1), Scalar("x", True, 1, 4)))
    assert other.entries == []
    first, second = Sequence(False, 1, 1), Sequence(False, 2, 1)
    first.items.append(one)
    assert second.items == []
