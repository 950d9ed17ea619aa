"""Steps that a design could have: the acts of the trade in their order, and the order of building as it is found from the solids.

They speak the language of the design, and of tools and materials name those alone that it lists.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from publisher.basics.wording import listed
from publisher.brief import StepText
from publisher.design import PartPlan
from publisher.joints.advice.stack_words import asked_by, braced_words, laid_words, wound_words
from publisher.joints.advice.step_words import StepWords, step_words
from publisher.joints.assembled import Assembled
from publisher.joints.building import Group, Site, is_brace, items_of, locked_in, order_of, sites_of
from publisher.joints.panels import stands

MOST_PLACES = 4  # of one part in a row that are told by their names
DRIES = "24 h"
FILLER, SEALER, PAINT = "filler", "white_glue", "acrylic_paint"


def proposed_steps(subject: Assembled, uses: Sequence[str]) -> tuple[StepText, ...]:
    """Return the steps of a design from the board to the paint, for its ways of use (trace, paste). Tools and materials are those that
    it lists."""
    at_hand = _at_hand(subject)
    words = step_words(subject.design.language)
    made = (
        *_marked_out(subject, uses, words),
        *_cut(subject, words),
        *_built(subject, words),
        *_finished(subject, words),
    )
    return tuple(replace(one, uses=tuple(name for name in one.uses if name in at_hand)) for one in made)


def _at_hand(subject: Assembled) -> frozenset[str]:
    """Return the keys of the tools and materials that a design lists."""
    return frozenset((*subject.design.tools, *(material.name for material in subject.design.materials)))


def _marked_out(subject: Assembled, uses: Sequence[str], words: StepWords) -> Iterator[StepText]:
    """Yield how the parts get onto the board, for each way of use."""
    every = _called(subject.design.parts)
    if "trace" in uses:
        card = words.say("card" if "thin_card" in _at_hand(subject) else "template")
        marks = {(True, True): "both", (True, False): "top", (False, True): "letters"}.get(
            (_upright(subject), _lettered(subject))
        )
        say = words.say("trace", copy=words.say(f"copy_{marks}", card=card) if marks else "")
        only = "trace" if len(uses) > 1 else ""
        yield StepText(words.say("trace_title"), "cut", say, every, ("pencil",), only=only, acts=("trace",))
    if "paste" in uses:
        only = "paste" if len(uses) > 1 else ""
        say, title = words.say("paste"), words.say("paste_title")
        yield StepText(title, "glue_templates", say, every, ("stick_glue",), only=only)


def _cut(subject: Assembled, words: StepWords) -> Iterator[StepText]:
    plans = subject.design.parts
    every, at_hand = _called(plans), _at_hand(subject)
    patterned = [plan for plan in plans if plan.surface is not None]
    if patterned:
        how = "draw" if all(plan.surface and plan.surface.how == "drawn" for plan in patterned) else "press"
        say = words.say(how, rule=words.say("rule") if "steel_rule" in at_hand else "")
        yield StepText(words.say(f"{how}_title"), "texture", say, _called(patterned), ("pencil", "steel_rule"))
    pierced = {part.id for part in subject.parts if part.outline.holes}
    holed = [plan for plan in plans if plan.id in pierced]
    knife = ("craft_knife", "steel_rule", "cutting_mat")
    if holed:
        say, title = words.say("holes"), words.say("holes_title")
        yield StepText(title, "cut", say, _called(holed), knife, acts=("cut_openings",))
    tabbed = any(join.joint == "tab_and_slot" for panels in subject.design.panels for join in panels.joins)
    upright = words.say("upright" if "craft_knife" in at_hand else "upright_unsaid")
    say = words.say("cut", upright=upright, tabs=words.say("tabs") if tabbed else "")
    yield StepText(words.say("cut_title"), "cut", say, every, knife)


def _built(subject: Assembled, words: StepWords) -> Iterator[StepText]:
    for site in sites_of(subject).values():
        if not site.made_of and len(site.movers) > 1:
            held = {m.part for m in site.movers.values() if not is_brace(m.name)}
            parts = _called([plan for plan in subject.design.parts if plan.id in held])
            say = words.say("dry_pile" if site.stack else "dry_panels")
            say += words.say("dry_braced") if any(map(is_brace, site.movers)) else ""
            yield StepText(words.say("dry_title", name=_words(site.name)), "dry_fit", say, parts)
    sites = sites_of(subject)
    single = {
        name for name, site in sites.items() if site.stack and len(site.movers) == 1
    }  # a plate is glued on nothing: it is set down
    for site in sites.values():
        laid = tuple(dict.fromkeys(own for own in site.made_of.values() if own in single))
        if site.name in single and any(site.name in other.made_of.values() for other in sites.values()):
            continue
        single.difference_update(laid)
        step = _glued(subject, site, words)
        yield replace(
            step, adds=(*(add for own in laid for add in items_of(sites[own], order_of(sites[own]) or ())), *step.adds)
        )


def _glued(subject: Assembled, site: Site, words: StepWords) -> StepText:
    found = order_of(site)
    order = found if found is not None else tuple(Group((name,)) for name in site.movers)
    remark = "" if found is not None else f"no order puts {listed(locked_in(site))} together by straight moves"
    adds = items_of(site, order)
    glue = ("white_glue", "masking_tape", "pins")
    name, dry = _words(site.name), words.say("dry", time=DRIES)
    each = words.say("each", often=words.often(site.times)) if site.times > 1 else ""
    if site.made_of:
        lifted = [
            t.name for plan in subject.design.wholes if plan.name == site.name for t in plan.things if t.lifts_off
        ]
        form = "set_down_lifted" if lifted else "set_down"
        things = listed(_words(n) for group in order for n in group.names)
        say = words.say(form, things=things, lifted=listed(map(_words, lifted)))
        title = words.say("set_down_title", name=name)
        return StepText(title, "glue", say, (), ("white_glue",), adds, remark=remark)
    parts = _called([plan for plan in subject.design.parts if plan.id in {m.part for m in site.movers.values()}])
    if site.stack:
        report = next(one for one in subject.wholes if one.stack.name == site.name)
        known = {part.id: part for part in subject.parts}
        of_stack = {"laid": laid_words, "wound": wound_words, "braced": braced_words}
        said = {form: made(report, known, words) for form, made in of_stack.items()}
        say, title, asked = words.say("layers", each=each, dry=dry, **said), "layers_title", asked_by(report)
        return StepText(
            words.say(title, name=name), "glue", say, parts, glue, adds, remark=remark, wait=DRIES, blanks=asked
        )
    first, *others = order
    say = words.say("begin", places=_places(subject, site, first.names[:1], words))
    for lifts, groups in groupby(others, lambda group: site.lifted.issuperset(group.names)):
        runs = words.say("then_next").join(_runs(subject, site, list(groups), words))
        say += words.say("set_on" if lifts else "then", runs=runs)
    title = words.say("glue_title", name=name)
    return StepText(title, "glue", f"{say}{each}{dry}", parts, glue, adds, remark=remark, wait=DRIES)


def _finished(subject: Assembled, words: StepWords) -> Iterator[StepText]:
    """Yield how it is filled, sealed and painted, as far as the design lists what that takes."""
    at_hand = _at_hand(subject)
    names = listed(_words(name) for name in sites_of(subject)) or words.say("parts")
    fills = FILLER in at_hand
    seals = SEALER in at_hand and any(board.material == "foam" for board in subject.design.boards)
    if fills or seals:
        form = "fill_and_seal" if fills and seals else "fill" if fills else "seal"
        yield StepText(words.say(f"{form}_title"), "seal", words.say(form, names=names), (), (FILLER, SEALER))
    if PAINT in at_hand:
        yield StepText(words.say("paint_title"), "paint", words.say("paint"), (), (PAINT, "brushes"))


def _runs(subject: Assembled, site: Site, order: Sequence[Group], words: StepWords) -> Iterator[str]:
    """Yield what is glued on one after another: the places of one part in a row, or how often where those are many."""
    alike = groupby(order, lambda g: tuple(_part(subject, site, name, words) for name in g.names))
    for names, own in alike:
        groups = list(own)
        bent = any(site.movers[name].bent for group in groups for name in group.names)
        once = len(names) == 1 and len(groups) <= MOST_PLACES
        every = [[name for group in groups for name in group.names]] if once else [[name] for name in groups[0].names]
        many = len(groups) > MOST_PLACES
        each = [part if many else _places(subject, site, own, words) for part, own in zip(names, every, strict=True)]
        said = words.say("run", places=words.say("together").join(each))
        said += words.say("joined") if len(names) > 1 else ""
        said += words.say("bent") if bent else ""
        yield said if once or len(groups) == 1 else f"{said}, {words.often(len(groups))}"


def _places(subject: Assembled, site: Site, names: Sequence[str], words: StepWords) -> str:
    """Return the places of one part in words, and what the part is called where that says more."""
    part, places = _part(subject, site, names[0], words), words.all_of(map(_words, names))
    return places if part.lower() == places.lower() else f"{places} ({part})"


def _upright(subject: Assembled) -> bool:
    """Tell whether a part stands wherever it is: its template says which way is up."""
    rises: dict[str, list[float]] = {}
    for mated in subject.panels:
        for panel in mated.assembly.panels:
            rises.setdefault(panel.part.id, []).append(float(panel.frame.axes[2, 1]))
    return any(stands(min(own)) for own in rises.values())


def _lettered(subject: Assembled) -> bool:
    """Tell whether edges that meet have letters."""
    return any(join.match for panels in subject.design.panels for join in panels.joins)


def _part(subject: Assembled, site: Site, name: str, words: StepWords) -> str:
    return words.called(next(part for part in subject.parts if part.id == site.movers[name].part).name)


def _called(plans: Sequence[PartPlan]) -> tuple[str, ...]:
    """Return what a spec calls parts: layers of a family by their family."""
    return tuple(dict.fromkeys(plan.family.name if plan.family else plan.id for plan in plans))


def _words(name: str) -> str:
    return name.replace("_", " ")
