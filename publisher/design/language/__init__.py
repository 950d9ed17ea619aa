"""The designer's language: from text to values with a dimension, and the named sizes worked out.

Comes in: text with its place. Goes out: amounts, lengths, angles, counts, the scope in which names mean something.
Never: know a board, a part or an assembly.
"""

from publisher.design.language.amounts import Amount, of_kind
from publisher.design.language.counts import MOST_OF_ONE_PART, count_beyond, read_count
from publisher.design.language.functions import CONSTANT_WORDS, function_words
from publisher.design.language.lexer import Fault, read_literal
from publisher.design.language.overrides import (
    PASTED,
    STANDARD,
    asked_variants,
    given_sizes,
    languages_of,
    uses_of,
    variant_and_language,
    variant_and_use,
    variants,
)
from publisher.design.language.parser import parse
from publisher.design.language.said_in import in_language
from publisher.design.language.scope import Scope, column_of
from publisher.design.language.sizes import work_out_sizes
from publisher.design.language.units import UNITS, unit_words
from publisher.design.language.wording import pick_hint, say, trial_words, tried_sizes
