"""Steps that a design could have: the acts of the trade in their order, and the order of building as it is found from the solids."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from publisher.basics.wording import listed
from publisher.brief import StepText
from publisher.design import PartPlan
from publisher.joints.advice.stack_words import DRY_BRACED, DRY_PILE, asked_by, braced_words, laid_words, wound_words
from publisher.joints.assembled import Assembled
from publisher.joints.building import Group, Site, is_brace, items_of, locked_in, order_of, sites_of

TIMES = ("", "", "twice", "three times", "four times", "five times", "six times", "seven times", "eight times")
MOST_PLACES = 4  # of one part in a row that are told by their names
DRIES = "24 h"
DRY = f"Let it dry for {DRIES} on a flat table: you can stop here."


def proposed_steps(subject: Assembled, uses: Sequence[str]) -> tuple[StepText, ...]:
    """Return the steps of a design from the board to the paint, for its ways of use (trace, paste). Tools and materials are those that
    it lists."""
    at_hand = {*subject.design.tools, *(material.name for material in subject.design.materials)}
    return tuple(
        replace(one, uses=tuple(name for name in one.uses if name in at_hand))
        for one in (*_marked_out(subject, uses), *_cut(subject), *_built(subject), *_finished(subject))
    )


def _marked_out(subject: Assembled, uses: Sequence[str]) -> Iterator[StepText]:
    """Yield how the parts get onto the board, for each way of use."""
    every = _called(subject.design.parts)
    if "trace" in uses:
        letters = " and the small letters at its edges" if _lettered(subject) else ""
        say = (
            "Trace each part as often as the cut list says, with the side that says THIS SIDE UP towards you. Copy the word top with "
            f"its arrow{letters} before you lift the card."
        )
        only = "trace" if len(uses) > 1 else ""
        yield StepText("Trace the parts", "cut", say, every, ("pencil",), only=only, acts=("trace",))
    if "paste" in uses:
        say = "Glue each template on the board as often as the cut list says, with its printed side up."
        only = "paste" if len(uses) > 1 else ""
        yield StepText("Glue the templates on", "glue_templates", say, every, ("stick_glue",), only=only)


def _cut(subject: Assembled) -> Iterator[StepText]:
    plans = subject.design.parts
    every = _called(plans)
    patterned = [plan for plan in plans if plan.surface is not None]
    if patterned:
        verb = "Draw" if all(plan.surface and plan.surface.how == "drawn" for plan in patterned) else "Press in"
        say = f"{verb} the pattern on the outside face while the board is whole: mark its lines at the edges, and join them with a rule."
        yield StepText(f"{verb} the pattern", "texture", say, _called(patterned), ("pencil", "steel_rule"))
    pierced = {part.id for part in subject.parts if part.outline.holes}
    holed = [plan for plan in plans if plan.id in pierced]
    knife = ("craft_knife", "steel_rule", "cutting_mat")
    if holed:
        say = "Cut openings and closed slots before the outlines, while the board is large and stiff. Start each cut in a corner."
        yield StepText("Cut the holes first", "cut", say, _called(holed), knife, acts=("cut_openings",))
    tabbed = any(join.joint == "tab_and_slot" for panels in subject.design.panels for join in panels.joins)
    say = f"Cut the outlines with the knife upright, in two or three light strokes{', and keep every tab' if tabbed else ''}."
    yield StepText("Cut the outlines", "cut", say, every, knife)


def _built(subject: Assembled) -> Iterator[StepText]:
    for site in sites_of(subject).values():
        if not site.made_of and len(site.movers) > 1:
            held = {m.part for m in site.movers.values() if not is_brace(m.name)}
            parts = _called([plan for plan in subject.design.parts if plan.id in held])
            say = "Put it together without glue, in the order of the step that glues it. "
            say += DRY_PILE if site.stack else "It must stand on the table without rocking, and no joint may gape."
            say += DRY_BRACED if any(map(is_brace, site.movers)) else ""
            yield StepText(f"Put the {_words(site.name)} up dry", "dry_fit", say, parts)
    for site in sites_of(subject).values():
        yield _glued(subject, site)


def _glued(subject: Assembled, site: Site) -> StepText:
    found = order_of(site)
    order = found if found is not None else tuple(Group((name,)) for name in site.movers)
    remark = "" if found is not None else f"no order puts {listed(locked_in(site))} together by straight moves"
    adds = items_of(site, order)
    glue = ("white_glue", "masking_tape", "pins")
    name = _words(site.name)
    each = f"Build it {_often(site.times)}. " if site.times > 1 else ""
    if site.made_of:
        lifted = [
            t.name for plan in subject.design.wholes if plan.name == site.name for t in plan.things if t.lifts_off
        ]
        say = f"Set down one after another: {listed(_words(n) for group in order for n in group.names)}. Glue them where they touch"
        say += f", but for what lifts off: {listed(map(_words, lifted))}." if lifted else "."
        return StepText(f"Put the {name} together", "glue", say, (), ("white_glue",), adds, remark=remark)
    parts = _called([plan for plan in subject.design.parts if plan.id in {m.part for m in site.movers.values()}])
    if site.stack:
        report = next(one for one in subject.wholes if one.stack.name == site.name)
        known = {part.id: part for part in subject.parts}
        say = f"Glue each layer on the one below{laid_words(report, known)}, and press it down. "
        say += f"{wound_words(report, known)}{braced_words(report, known)}{each}Weigh it down. {DRY}"
        title, asked = f"Glue the layers of the {name}", asked_by(report)
        return StepText(title, "glue", say, parts, glue, adds, remark=remark, wait=DRIES, blanks=asked)
    first, *others = order
    say = f"Begin with the {_places(subject, site, first.names[:1])}. "
    if others:
        say += f"Then glue on, in this order: {', then '.join(_runs(subject, site, others))}. "
    return StepText(f"Glue the {name}", "glue", f"{say}{each}{DRY}", parts, glue, adds, remark=remark, wait=DRIES)


def _finished(subject: Assembled) -> Iterator[StepText]:
    every = listed(_words(name) for name in sites_of(subject)) or "parts"
    say = f"Fill what gapes at the joints of the {every}, and seal the bare foam with white glue thinned with water, on all sides."
    yield StepText("Close and seal", "seal", say, (), ("filler", "white_glue"))
    say = "Paint it dark, and brush lighter shades over the edges once that has dried."
    yield StepText("Paint", "paint", say, (), ("acrylic_paint", "brushes"))


def _runs(subject: Assembled, site: Site, order: Sequence[Group]) -> Iterator[str]:
    """Yield what is glued on one after another: the places of one part in a row, or how often where those are many."""
    alike = groupby(order, lambda g: tuple(_part(subject, site, name) for name in g.names))
    for names, own in alike:
        groups = list(own)
        bent = any(site.movers[name].bent for group in groups for name in group.names)
        once = len(names) == 1 and len(groups) <= MOST_PLACES
        every = [[name for group in groups for name in group.names]] if once else [[name] for name in groups[0].names]
        many = len(groups) > MOST_PLACES
        each = [part if many else _places(subject, site, own) for part, own in zip(names, every, strict=True)]
        said = f"the {' and the '.join(each)}" + (", joined before, as one" if len(names) > 1 else "")
        said += ", bent in" if bent else ""
        yield said if once or len(groups) == 1 else f"{said}, {_often(len(groups))}"


def _places(subject: Assembled, site: Site, names: Sequence[str]) -> str:
    """Return the places of one part in words, and what the part is called where that says more."""
    part, said = _part(subject, site, names[0]), [_words(name) for name in names]
    places = " and ".join([*([", ".join(said[:-1])] if said[1:] else []), said[-1]])
    return places if part.lower() == places.lower() else f"{places} ({part})"


def _lettered(subject: Assembled) -> bool:
    """Tell whether edges that meet have letters."""
    return any(join.match for panels in subject.design.panels for join in panels.joins)


def _part(subject: Assembled, site: Site, name: str) -> str:
    part = next(part for part in subject.parts if part.id == site.movers[name].part)
    return part.name[:1].lower() + part.name[1:] if not part.name[1:2].isupper() else part.name


def _called(plans: Sequence[PartPlan]) -> tuple[str, ...]:
    """Return what a spec calls parts: layers of a family by their family."""
    return tuple(dict.fromkeys(plan.family.name if plan.family else plan.id for plan in plans))


def _words(name: str) -> str:
    return name.replace("_", " ")


def _often(count: int) -> str:
    return TIMES[count] if count < len(TIMES) else f"{count} times"
