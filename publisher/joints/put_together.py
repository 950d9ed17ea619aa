"""A design put together: the one function that knows all of this room."""

from collections.abc import Iterator
from dataclasses import replace
from math import inf

from publisher.basics import run_checks
from publisher.brief import StepText
from publisher.design import Board, Design, Fact, Figure
from publisher.geometry import Mark, Part, free_letters, with_seams
from publisher.joints import footprint
from publisher.joints.act_pictures import draw_acts
from publisher.joints.advice import proposed_steps
from publisher.joints.assembled import Assembled, LayeredDecks, MatedPanels, mate
from publisher.joints.budget import board_ranges, budget_of, meetings_of
from publisher.joints.building import (
    built_by_steps,
    ends_in_steps,
    glued_along_seams,
    glued_pairs,
    laid_in_steps,
    levels_in_steps,
    lines_in_steps,
    past_ends_in_steps,
    put_into_in_steps,
    reaches_in_steps,
)
from publisher.joints.checks import CHECKS
from publisher.joints.drawings import draw
from publisher.joints.facts import made_fact, part_facts
from publisher.joints.footing import mass_of
from publisher.joints.model import Joined, Placed
from publisher.joints.panels import (
    balance_of,
    facts_of_decks,
    place_panels,
    plates_on,
    seat_marks,
    seatings_of,
    standing_facts,
)
from publisher.joints.panels import facts as panel_facts
from publisher.joints.stacks import (
    LaidStack,
    StackReport,
    knee_marks,
    lay_all,
    layer_seats,
    layer_turns,
    seats_of,
    turn_marks,
)
from publisher.joints.stacks import facts as stack_facts
from publisher.joints.wholes import (
    PiledThings,
    PlacedWhole,
    decks_between,
    decks_of_layers,
    facts_of_roots,
    loaded_decks,
    panels_of_stack,
    piles_of,
    put_things,
)
from publisher.joints.wholes import facts_of as whole_facts


def put_together(design: Design, parts: tuple[Part, ...], drawn: bool = True) -> Joined:
    """Put the parts together as the design says; return layers, places, facts, meetings, drawings and findings.

    ``drawn`` False leaves the drawings out, which take half the time: for trying other sizes. Assemblies whose parts could not
    be drawn are left out as far as they depend on them; geometry has said why.
    """
    subject, whole = assemble(design, parts)
    meetings = meetings_of(subject)
    subject = replace(subject, meetings=meetings)
    additions = built_by_steps(subject).additions
    return Joined(
        layers=tuple((stack.name, stack.layers) for stack in whole),
        placed=tuple(
            (m.assembly.plan.name, tuple(Placed(p.name, p.part.id, p.frame.matrix()) for p in m.assembly.panels))
            for m in subject.panels
        ),
        facts=subject.facts,
        meetings=meetings,
        drawings=(*draw(subject), *draw_acts(subject, additions)) if drawn else (),
        findings=run_checks(CHECKS, subject),
        budget=budget_of(meetings),
        boards=board_ranges(meetings, design.boards),
        additions=additions,
        ends=ends_in_steps(subject, additions),
        lines=lines_in_steps(subject, additions),
        reaches=reaches_in_steps(subject, additions),
        past_ends=past_ends_in_steps(subject, additions),
        levels=levels_in_steps(subject, additions),
        laid=laid_in_steps(subject, additions),
        put_into=put_into_in_steps(subject, additions),
        glued=tuple((plan.name, len(glued_pairs(subject, plan))) for plan in design.panels),
        seamed=tuple((part.id, glued_along_seams(part)) for part in subject.parts if part.seams),
    )


def as_glued(design: Design, parts: tuple[Part, ...]) -> tuple[Part, ...]:
    """Return the parts with an outline and a letter on each where another part is glued on its face or the next layer lies on it, and the
    knee braces of each stack as many times as steps need one; those that none needs are left out."""
    parts, marks = _with_braces(design, parts)
    by_id = {part.id: part for part in parts}
    letters = free_letters(parts)
    for stack in lay_all(design.stacks, by_id)[1]:
        for part, own in layer_seats(stack, by_id).items():
            marks.setdefault(part, []).extend(own)
        for part, mark in turn_marks(layer_turns(stack, by_id), letters):
            marks.setdefault(part, []).append(mark)
    for plan in design.panels:
        if plan.seats:  # posts in openings among them
            assembly = place_panels(plan, by_id)
            for part, own in seat_marks(assembly, seatings_of(assembly)).items():
                marks.setdefault(part, []).extend(own)
    return tuple(replace(part, marks=(*part.marks, *marks[part.id])) if part.id in marks else part for part in parts)


def _with_braces(design: Design, parts: tuple[Part, ...]) -> tuple[tuple[Part, ...], dict[str, list[Mark]]]:
    by_id = {part.id: part for part in parts}
    marks: dict[str, list[Mark]] = {}
    if not any(plan.brace for plan in design.stacks):
        return parts, marks
    boards = {board.id: board for board in design.boards}
    counts: dict[str, int] = {}
    for stack in lay_all(design.stacks, by_id)[1]:
        if stack.brace is None or not stack.layers or stack.brace.part not in by_id:
            continue
        report = stack_facts.report_on(stack, by_id, boards, inf, stack.brace.place, True, design.figure)
        counts[stack.brace.part] = len(report.knees)
        for part, own in knee_marks(report, by_id).items():
            marks.setdefault(part, []).extend(own)
    return tuple(
        replace(part, count=part.count * counts.get(part.id, 1)) for part in parts if counts.get(part.id, 1)
    ), marks


def facts_of(design: Design, parts: tuple[Part, ...]) -> tuple[Fact, ...]:
    """Return the facts alone: no drawings, no checks. For trying other sizes."""
    return assemble(design, _with_braces(design, parts)[0])[0].facts


def propose_steps(design: Design, parts: tuple[Part, ...], uses: tuple[str, ...]) -> tuple[StepText, ...]:
    """Return steps that the design could have, from the board to the paint, in an order by which it can be built, for its ways of use."""
    return proposed_steps(assemble(design, parts)[0], uses)


def assemble(design: Design, parts: tuple[Part, ...]) -> tuple[Assembled, tuple[LaidStack, ...]]:
    """Return the design put together as the checks look at it, and every stack assembly with its sections joined."""
    parts = with_seams(design, parts)
    by_id = {part.id: part for part in parts}
    boards = {board.id: board for board in design.boards}
    facts: list[Fact] = [fact for part in parts for fact in part_facts.facts_of(part)]
    facts += footprint.part_masses(parts, boards)
    stacks, whole = lay_all(design.stacks, by_id)
    places = {plan.name: plan.place for plan in design.stacks}
    reports = list(_reports(design, stacks, whole, by_id, boards))
    facts += [fact for report in reports for fact in _facts_of_stack(report, by_id, boards)]
    facts += [fact for stack in whole for fact in seats_of(stack, places)]
    mated = []
    for plan in design.panels:
        mated.append(mate(place_panels(plan, by_id), boards, design.figure))
        facts += _facts_of_panels(mated[-1], boards)
    of_stack = {report.stack.name: report for report in reports if report.whole}
    things = _things(design, whole, mated, by_id, boards, of_stack)
    layered = tuple(_layered(report, by_id, boards, design.figure) for report in reports if report.whole)
    facts = [*_as_decks(facts, reports, layered)]
    facts += [fact for made, piles in things for fact in _facts_of_things(made, piles, by_id, boards, design.figure)]
    facts += footprint.longest(facts)
    subject = Assembled(
        design,
        parts,
        tuple(reports),
        tuple(mated),
        tuple(facts),
        things=tuple(made for made, _ in things),
        layered=layered,
        piles=tuple(pile for _, piles in things for pile in piles),
    )
    return subject, whole


def _as_decks(facts: list[Fact], reports: list[StackReport], layered: tuple[LayeredDecks, ...]) -> Iterator[Fact]:
    """Yield facts, with those of layers that bend as decks behind them; what a stack bears that has no other weak places is what these
    bear, whether it is asked for by the one name or the other."""
    made = {one.stack: {f.name: f for f in facts_of_decks(one.stack, one.place, one.decks)} for one in layered}
    same: dict[str, float] = {}
    for report in reports:
        own, name = made.get(report.stack.name, {}), report.stack.name
        if own and report.all_decks:
            pairs = (("strength_factor", "deck_strength_factor"), ("step_carries", "deck_carries"))
            same |= {f"{name}.{a}": own[f"{name}.{b}"].value for a, b in pairs if f"{name}.{b}" in own}
    yield from (replace(fact, value=same.get(fact.name, fact.value)) for fact in facts)
    yield from (fact for own in made.values() for fact in own.values())


def _reports(
    design: Design,
    stacks: tuple[LaidStack, ...],
    whole: tuple[LaidStack, ...],
    parts: dict[str, Part],
    boards: dict[str, Board],
) -> Iterator[StackReport]:
    """Yield what is measured on each stack, sections first. ``whole``: the stacks with their sections joined; a section without a
    name of its own gives way to its stack: stair.height is the whole stair's."""
    places = {plan.name: plan.place for plan in design.stacks}
    names = {stack.name for stack in whole}
    for stack in (*(s for s in stacks if s.name not in names), *whole):
        if stack.layers:
            place, height = places.get(stack.name, design.stacks[0].place), _figure_height(design, stack.name)
            yield stack_facts.report_on(stack, parts, boards, height, place, stack in whole, design.figure)


def _layered(report: StackReport, parts: dict[str, Part], boards: dict[str, Board], figure: Figure) -> LayeredDecks:
    """Return the layers of a stack that bend on what is under them; steps that wind or climb are judged where they leave those below."""
    stack = report.stack
    steps, loose = ({f"layer_{stack.layers[k].number}" for k in some} for some in (stack.steps, stack.loose))
    panels = panels_of_stack(stack, parts, report.place, report.knees)
    return LayeredDecks(stack.name, report.place, decks_of_layers(panels, steps, loose, boards, figure))


def _facts_of_stack(report: StackReport, parts: dict[str, Part], boards: dict[str, Board]) -> list[Fact]:
    """Return the facts of a stack and of its pile, braces included."""
    stack = report.stack
    pile = [parts[layer.part] for layer in stack.layers]
    if stack.brace and stack.brace.part in parts:
        pile += [parts[stack.brace.part]] * len(report.knees)
    return [*stack_facts.facts_of(report, parts, boards), *footprint.packed(stack.name, pile, report.place)]


def _facts_of_things(
    made: PlacedWhole, piles: tuple[PiledThings, ...], parts: dict[str, Part], boards: dict[str, Board], figure: Figure
) -> list[Fact]:
    """Return the sizes of things on things, how they stand together, what their steps and decks bear, and how they are packed."""
    name, place = made.plan.name, made.plan.place
    decks = facts_of_decks(name, place, made.decks)
    balance = balance_of(made.panels, lambda part: mass_of(part, boards), figure)
    if balance.with_figure is None and any(pile.all_of_it for pile in piles):
        balance = replace(balance, with_figure=balance.empty)  # as that of a stack on which nobody finds room
    return [
        *whole_facts(made),
        *(Fact(f"{name}.{fact}", value, kind, place) for fact, value, kind in standing_facts(balance)),
        *decks,
        *(
            made_fact(f"{name}.{fact}", value, kind, place)
            for fact, value, kind in facts_of_roots(piles, decks, parts, boards, figure)
        ),
        *footprint.packed(name, (panel.part for panel in made.panels), place),
    ]


def _things(
    design: Design,
    stacks: tuple[LaidStack, ...],
    mated: list[MatedPanels],
    parts: dict[str, Part],
    boards: dict[str, Board],
    reports: dict[str, StackReport],
) -> tuple[tuple[PlacedWhole, tuple[PiledThings, ...]], ...]:
    """Return the assemblies of things, as far as all their things could be put together, each with its piles of layers."""
    places = {plan.name: plan.place for plan in design.stacks}
    if not design.wholes:
        return ()
    made = {
        s.name: panels_of_stack(s, parts, places.get(s.name, design.stacks[0].place), reports[s.name].knees)
        for s in stacks
        if s.name in reports
    }
    made |= {m.assembly.plan.name: m.assembly.solid for m in mated if not m.assembly.unplaced}
    put = (put_things(plan, made, lambda part: mass_of(part, boards)) for plan in design.wholes)
    plans = {m.assembly.plan.name: m.assembly.plan for m in mated}
    done = []
    for whole in put:
        if whole is not None:
            piles = piles_of(whole, reports, parts, design.figure)
            steps = frozenset(step for pile in piles for step in pile.steps)
            between = decks_between(whole, plans, steps, boards, design.figure)
            decks = (*between, *loaded_decks(whole, plans, boards, design.figure))
            done.append((replace(whole, decks=decks), piles))
    return tuple(done)


def _facts_of_panels(mated: MatedPanels, boards: dict[str, Board]) -> list[Fact]:
    """Return the sizes of a panel assembly, its mass and its pile; of one without a panel that could be placed no mass."""
    plan, pieces = mated.assembly.plan, [panel.part for panel in mated.assembly.panels]
    facts = [*panel_facts.facts_of(mated.assembly, mated.balance), *facts_of_decks(plan.name, plan.place, mated.decks)]
    if pieces:
        facts.append(
            footprint.panels_mass(
                plan.name, [*pieces, *(plate.part for plate in plates_on(mated.assembly.panels))], boards, plan.place
            )
        )
        facts += footprint.packed(plan.name, pieces, plan.place)
    return facts


def _figure_height(design: Design, stack: str) -> float:
    """Return the headroom that the design asks of a stack (mm); without one every higher layer narrows a tread (inf)."""
    asked = [n.at_least for n in design.needs if n.fact == f"{stack}.headroom" and n.at_least is not None]
    return max(asked, default=inf)
