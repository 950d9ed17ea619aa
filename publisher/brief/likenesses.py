"""Parts that are like another one but for a few fields: what they do not say is taken over, each value with its own place."""

from collections.abc import Callable, Container

from publisher.basics import Finding, Place, Rule
from publisher.brief import limits, rules
from publisher.brief.bind import KeyPath, Schema, pointer
from publisher.brief.nodes import Key, Mapping, RawNode, Scalar, Sequence
from publisher.brief.wording import proposal, short

OWN = ("name", "letter")  # what tells a part from all others is never taken over
LIKENESS = ("like", "without")

Sizes = Callable[[str], Container[str]]


def with_likenesses(top: Mapping, file: str, schema: Schema) -> tuple[Mapping, tuple[Finding, ...]]:
    """Return a spec in which every part that is like another one has all of its fields, and findings for those that cannot.

    What is taken over keeps the line and column at which it is written. A part that cannot be resolved keeps its ``like``.
    """
    parts = top.get("parts")
    if not isinstance(parts, Mapping):
        return top, ()
    reader = _LikeParts(parts, file, schema)
    made = [(key, reader.part(key.text) or node) for key, node in parts.entries]
    if all(node is old for (_, node), (_, old) in zip(made, parts.entries, strict=True)):
        return top, tuple(reader.findings)
    whole = _mapping(parts, made)
    if top.size - parts.size + whole.size > limits.NODES:
        message = f"with all that parts take over from each other the spec holds more than {limits.NODES:,} values"
        place = Place(file, parts.line, parts.column, "/parts")
        hint = "say fewer things in the parts that others are like"
        return top, (rules.NODES.found(message, hint=hint, place=place, limit=float(limits.NODES)),)
    entries = [(key, whole if node is parts else node) for key, node in top.entries]
    return _mapping(top, entries), tuple(reader.findings)


class _LikeParts:
    """Resolves the parts of one spec, each once."""

    def __init__(self, parts: Mapping, file: str, schema: Schema) -> None:
        self.parts = parts
        self.file = file
        self.defs: Schema = schema.get("$defs", {})
        self.findings: list[Finding] = []
        self.made: dict[str, Mapping | None] = {}

    def part(self, name: str) -> Mapping | None:
        """Return a part with all of its fields; None when it is like nothing that could be found."""
        first, chain = name, list[str]()
        while name not in self.made:
            own = self.parts.get(name)
            like = own.get("like") if isinstance(own, Mapping) else None
            if not isinstance(own, Mapping) or not isinstance(like, Scalar):
                self.made[name] = own if isinstance(own, Mapping) and like is None else None
                break
            chain.append(name)
            if self.leads_nowhere(like, chain):
                break
            name = like.text.strip()
        for one in reversed(chain):
            if one not in self.made:
                self.made[one] = self.like(one)
        return self.made[first]

    def leads_nowhere(self, like: Scalar, chain: list[str]) -> bool:
        """Tell whether the last part of a chain is like one of the chain, or like none; those are then none, and a finding says why."""
        name, other = chain[-1], like.text.strip()
        if other in chain:
            circle = chain[chain.index(other) :]
            words = " → ".join((*circle, other))
            self.refuse(
                f"these parts are like each other: {words}", "one of them must say all of its fields", like, name
            )
            self.made.update(dict.fromkeys(circle))
            return True
        if isinstance(self.parts.get(other), Mapping):
            return False
        known = [key.text for key, _ in self.parts.entries if key.text != name]
        hint = proposal(other, known) if known else "there is no other part"
        self.refuse(f"there is no part “{short(other)}” to be like", hint, like, name)
        self.made[name] = None
        return True

    def like(self, name: str) -> Mapping | None:
        """Return a part over the one that it is like, which is resolved."""
        own = self.parts.get(name)
        like = own.get("like") if isinstance(own, Mapping) else None
        base = self.made.get(like.text.strip()) if isinstance(like, Scalar) else None
        if not isinstance(own, Mapping) or base is None or not isinstance(own.get("without"), Sequence | None):
            return None
        base = self.left(base, own.get("without"), name)
        said = _mapping(own, [(key, node) for key, node in own.entries if key.text not in LIKENESS])
        base = _without(base, OWN)
        if said.get("drawing") is not None and base.get("drawing") is None:
            base = _without(base, ("shape", "with"))
        elif said.get("shape") is not None and said.get("drawing") is None:
            base = _without(base, ("drawing",))
        merged = _over(base, said)
        merged = self.of_word(merged, said, base, "shape", "with", self.sizes_of_shape)
        merged = self.inside(merged, said, base, "surface", self.surface)
        return self.inside(merged, said, base, "openings", self.openings)

    def left(self, base: Mapping, without: RawNode | None, name: str) -> Mapping:
        """Return a part without the fields that the one like it leaves out."""
        for item in without.items if isinstance(without, Sequence) else ():
            if not isinstance(item, Scalar):
                continue
            path = item.text.strip().split(".")
            less = _less(base, path)
            if less is None:
                known = [key.text for key, _ in base.entries] + [
                    f"{key.text}.{inner.text}"
                    for key, node in base.entries
                    if isinstance(node, Mapping)
                    for inner, _ in node.entries
                ]
                message = f"the part that “{name}” is like has no “{short(item.text.strip())}” to leave out"
                self.refuse(message, proposal(item.text.strip(), known), item, name)
            else:
                base = less
        return base

    def of_word(self, merged: Mapping, said: Mapping, base: Mapping, word: str, under: str, sizes: Sizes) -> Mapping:
        """Return a mapping without the sizes under a key that its own word (a shape, a pattern) does not have."""
        own, old = said.get(word), base.get(word)
        if not (isinstance(own, Scalar) and isinstance(old, Scalar)) or own.text.strip() == old.text.strip():
            return merged
        taken, written = merged.get(under), said.get(under)
        if not isinstance(taken, Mapping):
            return merged
        known = sizes(own.text.strip())
        new = [key.text for key, _ in written.entries] if isinstance(written, Mapping) else []
        kept = _mapping(taken, [(key, node) for key, node in taken.entries if key.text in new or key.text in known])
        return _mapping(merged, [(key, kept if key.text == under else node) for key, node in merged.entries])

    def inside(
        self,
        merged: Mapping,
        said: Mapping,
        base: Mapping,
        key: str,
        fit: Callable[[Mapping, Mapping, Mapping], Mapping],
    ) -> Mapping:
        """Return a mapping with what stands under a key fitted to the words that are said there."""
        own, old, both = said.get(key), base.get(key), merged.get(key)
        if not (isinstance(own, Mapping) and isinstance(old, Mapping) and isinstance(both, Mapping)):
            return merged
        new = fit(both, own, old)
        return _mapping(merged, [(k, new if k.text == key else node) for k, node in merged.entries])

    def surface(self, merged: Mapping, said: Mapping, base: Mapping) -> Mapping:
        """Return a pattern without sizes of another one."""
        return self.of_word(merged, said, base, "pattern", "with", self.sizes_of_pattern)

    def openings(self, merged: Mapping, said: Mapping, base: Mapping) -> Mapping:
        """Return openings, those of another kind without the sizes of the old one."""
        made: list[tuple[Key, RawNode]] = []
        for key, both in merged.entries:
            own, old, node = said.get(key.text), base.get(key.text), both
            if isinstance(node, Mapping) and isinstance(own, Mapping) and isinstance(old, Mapping):
                kind, before = own.get("kind"), old.get("kind")
                if isinstance(kind, Scalar) and isinstance(before, Scalar) and kind.text != before.text:
                    known, new = self.sizes_of_opening(kind.text.strip()), [k.text for k, _ in own.entries]
                    node = _mapping(node, [(k, n) for k, n in node.entries if k.text in new or k.text in known])
            made.append((key, node))
        return _mapping(merged, made)

    def sizes_of_shape(self, shape: str) -> Container[str]:
        """Return the names of a shape's sizes."""
        return self.defs.get(f"with_{shape}", {}).get("properties", {})  # type: ignore[no-any-return]

    def sizes_of_pattern(self, pattern: str) -> Container[str]:
        """Return the names of a pattern's sizes."""
        return self.defs.get(f"pattern_{pattern}", {}).get("properties", {})  # type: ignore[no-any-return]

    def sizes_of_opening(self, kind: str) -> Container[str]:
        """Return the names of an opening's sizes."""
        for branch in self.defs.get("opening", {}).get("allOf", ()):
            if branch["if"]["properties"]["kind"]["const"] == kind:
                return branch["then"]["properties"]  # type: ignore[no-any-return]
        return ()

    def refuse(self, message: str, hint: str, node: Scalar, name: str, rule: Rule = rules.LIKENESS) -> None:
        """Add a finding about a part's likeness, at the word that cannot be followed."""
        path: KeyPath = ("parts", name, "like")
        place = Place(self.file, node.line, node.column, pointer(path))
        self.findings.append(rule.found(message, subject=f"part {name}", hint=hint, place=place))


def _mapping(like: Mapping, entries: list[tuple[Key, RawNode]]) -> Mapping:
    """Return a mapping with other entries in the place of one."""
    size = 1 + sum(1 + node.size for _, node in entries)
    depth = 1 + max((node.depth for _, node in entries), default=0)
    return Mapping(like.flow, like.line, like.column, entries, size, depth)


def _without(base: Mapping, keys: Container[str]) -> Mapping:
    return _mapping(base, [(key, node) for key, node in base.entries if key.text not in keys])


def _over(base: Mapping, own: Mapping) -> Mapping:
    """Return all of both: what both have, as the second says it; mappings are gone into, lists are not."""
    made: list[tuple[Key, RawNode]] = []
    for key, node in base.entries:
        new, new_key = own.get(key.text), own.key(key.text)
        if new is None or new_key is None:
            made.append((key, node))
        else:
            both = _over(node, new) if isinstance(node, Mapping) and isinstance(new, Mapping) else new
            made.append((new_key, both))
    made += [(key, node) for key, node in own.entries if base.get(key.text) is None]
    return _mapping(own, made)


def _less(base: Mapping, path: list[str]) -> Mapping | None:
    """Return a mapping without the field at a path; None where there is none."""
    node = base.get(path[0])
    if node is None:
        return None
    if len(path) == 1:
        return _without(base, path)
    less = _less(node, path[1:]) if isinstance(node, Mapping) else None
    return None if less is None else _mapping(base, [(k, less if k.text == path[0] else n) for k, n in base.entries])
