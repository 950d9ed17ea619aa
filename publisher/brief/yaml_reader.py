"""Text of a spec to its node graph, from the parser's events: nothing is ever constructed from a tag.

The usual loaders either lose positions or accept duplicate keys, and read ``1_000``, ``012`` and dates as something else.
"""

import yaml

from publisher.basics import Finding, Place, Refusal
from publisher.brief import rules
from publisher.brief.graph import Builder
from publisher.brief.nodes import Mapping, Scalar, Sequence
from publisher.brief.yaml_faults import explain

# The parser in C keeps the same positions; the one in Python serves where PyYAML was built without it.
PARSER: type = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def read_nodes(text: str, file: str) -> tuple[Mapping, tuple[Finding, ...]]:
    """Return the top mapping of a spec's text and findings such as duplicate keys.

    Raises Refusal when the text is no YAML, or more than a spec may hold: nothing can then be read from it.
    """
    builder = Builder(file)
    try:
        parser = PARSER(text)
        try:
            while parser.check_event():
                builder.take(parser.get_event())
        finally:
            parser.dispose()
    except yaml.YAMLError as fault:
        raise Refusal(*builder.findings, explain(fault, text, file)) from None
    top = builder.top
    if top is None or (isinstance(top, Scalar) and top.plain and not top.text):
        raise Refusal(rules.EMPTY.found("the spec is empty", hint="begin with “format: 2”", place=Place(file)))
    if not isinstance(top, Mapping):
        what = "a list" if isinstance(top, Sequence) else "words"
        raise Refusal(
            rules.TOP.found(
                f"the spec holds {what}, not “key: value” lines",
                hint="begin with “format: 2” in the first column",
                place=Place(file, top.line, top.column),
            )
        )
    return top, tuple(builder.findings)
