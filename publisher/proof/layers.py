"""Optional content (ISO 32000-1, 8.11): which groups a reader sees, and which a printer prints, when nobody touches them."""

from typing import Any

from publisher.proof.objects import plain


class Layers:
    """The groups of a file that are off by default, on screen or on paper."""

    def __init__(self, catalogue: Any) -> None:
        """Read /OCProperties of the catalogue."""
        properties = plain(catalogue.get("/OCProperties")) or {}
        default = plain(properties.get("/D")) or {}
        groups = list(plain(properties.get("/OCGs")) or [])
        on = {_key(g) for g in plain(default.get("/ON")) or []}
        off = {_key(g) for g in plain(default.get("/OFF")) or []}
        if str(plain(default.get("/BaseState"))) == "/OFF":
            off |= {_key(g) for g in groups} - on
        automatic = set()
        for rule in plain(default.get("/AS")) or []:
            usage = plain(rule) or {}
            automatic |= {_key(g) for g in plain(usage.get("/OCGs")) or []}
        for group in groups:
            usage = plain((plain(group) or {}).get("/Usage")) or {}
            printed = plain((plain(usage.get("/Print")) or {}).get("/PrintState"))
            viewed = plain((plain(usage.get("/View")) or {}).get("/ViewState"))
            if _key(group) in automatic and "/OFF" in (str(printed), str(viewed)):
                off.add(_key(group))
        self.off = off
        self.names = {_key(g): str(plain((plain(g) or {}).get("/Name")) or "without a name") for g in groups}

    def hidden(self, reference: Any) -> str:
        """Return the name of the group that hides content marked with this group or membership; "" when it shows."""
        if reference is None or not self.off:
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
