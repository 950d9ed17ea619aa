"""Every rule of this room, in one explicit tuple."""

from publisher.basics import Rule
from publisher.design.rules_expressions import EXPRESSION_RULES
from publisher.design.rules_plans import PLAN_RULES

RULES: tuple[Rule, ...] = (*EXPRESSION_RULES, *PLAN_RULES)
