"""Every rule of this room, in one explicit tuple."""

from publisher.basics import Rule
from publisher.design.rules.expressions import EXPRESSION_RULES
from publisher.design.rules.plans import PLAN_RULES

RULES: tuple[Rule, ...] = (*EXPRESSION_RULES, *PLAN_RULES)
