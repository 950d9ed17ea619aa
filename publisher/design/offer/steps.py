"""Steps of the instructions, tools and materials."""

from collections.abc import Iterable

from publisher.basics import Place, record
from publisher.basics.wording import listed
from publisher.brief import Brief, Node, Row, Table, Value
from publisher.design.language import STANDARD, Scope, pick_hint, uses_of
from publisher.design.offer.adds import AddsReader
from publisher.design.offer.texts import check_blank, read_text
from publisher.design.records import Blank, Buildable, MaterialPlan, PicturePlan, StepPlan, TextPlan
from publisher.design.rules import plans as rules

_AMOUNTS = ("length", "amount", "count", "area", "weight")
_KINDS = ("whole", "exploded", "plan", "part", "photo")


@record
class StepsReader:
    """Reads steps and materials. ``parts`` and ``assemblies`` are what they may show; ``layers`` counts the layers of each
    stack assembly and section."""

    brief: Brief
    parts: tuple[str, ...]
    assemblies: tuple[str, ...]
    layers: dict[str, int]
    scope: Scope
    families: dict[str, tuple[str, ...]]
    use: str = "trace"  # how this pack's templates are used
    variant: str = ""  # which variant of the spec this is; "" for the sizes as written
    built: tuple[Buildable, ...] = ()  # the assemblies, to which steps may add

    @property
    def owners(self) -> tuple[str, ...]:
        """What facts may start with: parts, assemblies and sections."""
        return (*self.parts, *dict.fromkeys((*self.assemblies, *self.layers)))

    def text(self, value: Value | None, place: Place, subject: str) -> TextPlan:
        """Return a text; an empty one when unsaid."""
        return TextPlan(("",), place) if value is None else read_text(value, self.owners, self.scope, subject)

    def materials(self) -> tuple[MaterialPlan, ...]:
        """Return what to buy."""
        plans = []
        for number, node in enumerate(self.brief.fields.row("materials"), 1):
            subject = f"material {number}"
            if isinstance(node, Value):
                plans.append(MaterialPlan(node.text, None, None, node.place))
            elif isinstance(node, Table):
                words = node.value("text")
                text = None if words is None else self.text(words, node.place, subject)
                plans.append(MaterialPlan(node.text("name"), text, self.blank(node, subject), node.place))
        return tuple(plans)

    def blank(self, table: Table, subject: str) -> Blank | None:
        """Return the amount of a material as an expression, checked but not worked out: it may use facts."""
        value = next((found for key in _AMOUNTS if (found := table.value(key)) is not None), None)
        if value is None:
            return None
        blank = Blank(value.text, value.place)
        check_blank(blank, self.owners, self.scope, subject)
        return blank

    def steps(self, at_hand: tuple[str, ...]) -> tuple[StepPlan, ...]:
        """Return the steps. ``at_hand``: the tools and materials that the design lists."""
        rows = [node for node in self.brief.fields.row("steps") if isinstance(node, Table)]
        for node in rows:
            self.shown_nowhere(node)
        mine = filter(self.is_mine, rows)
        adds = AddsReader(self.built, self.scope)
        steps = tuple(self.step(n, node, at_hand, adds) for n, node in enumerate(mine, 1))
        adds.check(steps)
        return steps

    def elsewhere(self) -> frozenset[str]:
        """Return the tools and materials that only steps of other packs need: this pack's buyer buys none."""
        mine: set[str] = set()
        others: set[str] = set()
        for node in self.brief.fields.row("steps"):
            if isinstance(node, Table):
                (mine if self.is_mine(node) else others).update(names_in(node.get("uses")))
        return frozenset(others - mine)

    def is_mine(self, table: Table) -> bool:
        """Tell whether a step is for packs of this way of use and this variant."""
        only, when = table.value("only"), names_in(table.get("when"))
        return (only is None or only.text == self.use) and (not when or (self.variant or STANDARD) in when)

    def shown_nowhere(self, table: Table) -> None:
        """Add findings about a way of use or a variant that a step is for and the design has not."""
        only = table.value("only")
        if only is not None and only.text not in uses_of(self.brief):
            self.scope.findings.append(
                rules.STEP_NEVER_SHOWN.found(
                    f"this step is only for packs to {only.text}, and the design has none",
                    subject="steps",
                    hint="write use: [trace, paste], or leave “only” out",
                    place=only.place,
                )
            )
        known = (STANDARD, *(entry.key for entry in self.brief.fields.table("variants").entries))
        for name in table.row("when"):
            if isinstance(name, Value) and name.text not in known:
                self.scope.findings.append(
                    rules.STEP_NEVER_SHOWN.found(
                        f"when: this step is for the variant “{name.text}”, and the design has none of that name",
                        subject="steps",
                        hint=pick_hint(name.text, known, "variants"),
                        place=name.place,
                    )
                )

    def step(self, number: int, table: Table, at_hand: tuple[str, ...], adds: AddsReader) -> StepPlan:
        """Return one step."""
        subject = f"step {number}"
        picture = table.get("picture")
        return StepPlan(
            title=self.text(table.value("title"), table.place, subject),
            stage=table.text("stage"),
            say=self.text(table.value("say"), table.place, subject),
            parts=self.known(table, "parts", self.parts, subject),
            uses=self.known(table, "uses", at_hand, subject),
            picture=self.picture(picture, subject) if isinstance(picture, Table) else None,
            place=table.place,
            adds=adds.read(table, subject),
            acts=names_in(table.get("acts")) if table.get("acts") is not None else None,
            wait=table.text("wait"),
        )

    def known(self, table: Table, key: str, known: tuple[str, ...], subject: str) -> tuple[str, ...]:
        """Return the names of a list that are known; findings for the others."""
        names = [node for node in table.row(key) if isinstance(node, Value)]
        rule = rules.UNKNOWN_PART if key == "parts" else rules.UNKNOWN_MATERIAL
        what = "parts" if key == "parts" else "tools and materials"
        for node in names:
            if node.text not in known and not (key == "parts" and node.text in self.families):
                message = f"{key}: “{node.text}” is not among the {what} of this design"
                hint = pick_hint(node.text, known, what)
                cause = f"name {node.text}" if key == "parts" else f"at hand {node.text}"
                found = rule.found(message, subject=subject, hint=hint, place=node.place, cause=cause)
                self.scope.findings.append(found)
        ids = [one for node in names for one in self.families.get(node.text, (node.text,))]
        return tuple(dict.fromkeys(one for one in ids if one in known))

    def picture(self, table: Table, subject: str) -> PicturePlan | None:
        """Return what a step's picture shows; None after a finding."""
        said = [entry for entry in table.entries if entry.key in _KINDS]
        if len(said) != 1 or not isinstance(said[0].node, Value):
            return self.refuse("a picture shows one thing", f"say one of {listed(_KINDS)}", table.place, subject)
        value = said[0].node
        known = {
            "part": self.parts,
            "plan": tuple(self.layers),
            "photo": tuple(f.name for f in self.brief.files if f.kind == "picture"),
        }
        wholes = tuple(dict.fromkeys((*self.assemblies, *self.layers)))
        choices = known.get(said[0].key, wholes)
        if value.text not in choices:
            hint = pick_hint(value.text, choices, "things to show as " + said[0].key)
            what = f"{said[0].key}: there is no “{value.text}” to show"
            cause = "" if said[0].key == "photo" else f"name {value.text}"
            return self.refuse(what, hint, value.place, subject, cause)
        layer = self.layer(table, said[0].key, value.text, subject)
        alt = table.value("alt")
        text = None if alt is None else self.text(alt, table.place, subject)
        for kind in _KINDS:
            if kind == said[0].key:
                return PicturePlan(kind, value.text, layer, text, table.place)  # type: ignore[arg-type]
        return None

    def photos(self, names: Iterable[Node]) -> tuple[PicturePlan, ...]:
        """Return the photographs of the finished piece; one that is no picture file has its finding from the reading of the folder."""
        known = {file.name for file in self.brief.files if file.kind == "picture"}
        given = (name for name in names if isinstance(name, Value) and name.text in known)
        return tuple(PicturePlan("photo", name.text, 0, None, name.place) for name in given)

    def layer(self, table: Table, kind: str, target: str, subject: str) -> int:
        """Return the layer of a plan, from 1 at the table; 0 if unsaid or wrong."""
        value = table.value("layer")
        number = None if value is None or kind != "plan" else self.scope.number(value, subject, "count")
        if value is None or number is None:
            return 0
        layers = self.layers[target]
        # no layers: a count has no value, which has its finding already
        if layers and not 1 <= number <= layers:
            what = f"there is no layer {number:g} in {target}"
            self.refuse(what, f"it has layers 1 to {layers}", value.place, subject, self.cause_in(target))
            return 0
        return int(number)

    def cause_in(self, stack: str) -> str:
        """Return why layers of a stack are missing, where a finding has said so."""
        whole = next((name for name in self.assemblies if stack == name or stack.startswith(f"{name}_")), "")
        return next((f.cause for f in self.scope.findings if f.cause and f.subject == f"assembly {whole}"), "")

    def refuse(self, message: str, hint: str, place: Place, subject: str, cause: str = "") -> PicturePlan | None:
        """Add a finding about a picture."""
        self.scope.findings.append(rules.PICTURE.found(message, subject=subject, hint=hint, place=place, cause=cause))
        return None


def names_in(node: Row | Table | Value | None) -> tuple[str, ...]:
    """Return the words of a list of names, or of one name."""
    if isinstance(node, Value):
        return (node.text,)
    return tuple(item.text for item in node.items if isinstance(item, Value)) if isinstance(node, Row) else ()
