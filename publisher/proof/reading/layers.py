"""Optional content (ISO 32000-1, 8.11): which groups a reader sees, and which a printer prints, when nobody touches them."""

from typing import Any

from publisher.proof.reading.objects import array, dictionary, plain


class Layers:
    """The groups of a file that are off by default, on screen or on paper."""

    def __init__(self, catalogue: Any) -> None:
        """Read /OCProperties of the catalogue."""
        properties = dictionary(catalogue.get("/OCProperties"))
        default = dictionary(properties.get("/D"))
        groups = list(array(properties.get("/OCGs")))
        on = {_key(g) for g in array(default.get("/ON"))}
        off = {_key(g) for g in array(default.get("/OFF"))}
        if str(plain(default.get("/BaseState"))) == "/OFF":
            off |= {_key(g) for g in groups} - on
        automatic = set()
        for rule in array(default.get("/AS")):
            automatic |= {_key(g) for g in array(dictionary(rule).get("/OCGs"))}
        for group in groups:
            usage = dictionary(dictionary(group).get("/Usage"))
            printed = plain(dictionary(usage.get("/Print")).get("/PrintState"))
            viewed = plain(dictionary(usage.get("/View")).get("/ViewState"))
            if _key(group) in automatic and "/OFF" in (str(printed), str(viewed)):
                off.add(_key(group))
        self.off = off
        self.names = {_key(g): str(plain(dictionary(g).get("/Name")) or "without a name") for g in groups}

    @staticmethod
    def by_expression(reference: Any) -> bool:
        """Say whether a membership decides by an expression over groups (/VE), which is not followed."""
        member = plain(reference)
        return isinstance(member, dict) and plain(member.get("/VE")) is not None

    def hidden(self, reference: Any) -> str:
        """Return the name of the group that hides content marked with this group or membership; "" when it shows."""
        if reference is None:
            return ""
        if _key(reference) in self.off:
            return self.names.get(_key(reference), "without a name")
        member = plain(reference)
        if not isinstance(member, dict) or str(plain(member.get("/Type"))) != "/OCMD":
            return ""
        inside = member.get("/OCGs")
        several = plain(inside)
        groups = list(several) if isinstance(several, list) else ([inside] if inside is not None else [])
        if not groups:
            return ""
        states = [_key(g) not in self.off for g in groups]
        policy = str(plain(member.get("/P")) or "/AnyOn")
        shown = {
            "/AllOn": all(states),
            "/AnyOff": not all(states),
            "/AllOff": not any(states),
        }.get(policy, any(states))
        return "" if shown else self.names.get(_key(groups[0]), "without a name")


def _key(reference: Any) -> tuple[str, int]:
    idnum = getattr(reference, "idnum", None)
    if idnum is None:
        inner = getattr(reference, "indirect_reference", None)
        idnum = getattr(inner, "idnum", None)
    return ("object", int(idnum)) if idnum is not None else ("memory", id(reference))
