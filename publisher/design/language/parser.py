"""From tokens to steps for a stack machine, so that reading and working out take time in step with the length."""

from functools import lru_cache

from publisher.basics import record
from publisher.basics.wording import did_you_mean
from publisher.design.language.amounts import Amount
from publisher.design.language.functions import CONSTANTS, FUNCTIONS
from publisher.design.language.lexer import Fault, Token, read_tokens
from publisher.design.language.stray_tokens import misplaced
from publisher.design.language.units import UNIT_BY_NAME
from publisher.design.rules import expressions as rules

DEEPEST_EXPRESSION = 40  # brackets, signs and powers inside each other


@record
class Step:
    """One step: push an ``amount``, push the value of a name, or do ``word`` with the last ``takes`` values.

    ``at`` is the offset of the word in the text.
    """

    word: str
    at: int
    takes: int = 0
    amount: Amount | None = None
    is_name: bool = False
    end: int = 0


@record
class Expression:
    """An expression that was read: its text, its steps, and the names that it uses with their offsets."""

    text: str
    steps: tuple[Step, ...]
    names: tuple[tuple[str, int], ...]


@lru_cache(maxsize=4096)
def parse(text: str) -> Expression:
    """Read an expression. Raises Fault with the offset of what cannot be read."""
    reader = _ExpressionReader(text)
    reader.sum(0)
    left = reader.token
    if left.kind != "end":
        raise reader.unexpected(left)
    names = tuple((step.word, step.at) for step in reader.steps if step.is_name)
    return Expression(text, tuple(reader.steps), names)


class _ExpressionReader:
    """Recursive descent over the tokens; the depth is bounded before the recursion is."""

    def __init__(self, text: str) -> None:
        self.tokens = read_tokens(text)
        self.position = 0
        self.steps: list[Step] = []
        if len(self.tokens) == 1:
            raise Fault(rules.SYNTAX, "there is no value here", "write a number with its unit, or a size", 0)

    @property
    def token(self) -> Token:
        return self.tokens[self.position]

    def next(self) -> Token:
        token = self.token
        self.position += 1
        return token

    def at_mark(self, marks: str) -> bool:
        return self.token.kind == "mark" and self.token.text in marks

    def sum(self, depth: int) -> None:
        """product {+|- product}"""
        self.product(depth)
        while self.at_mark("+-"):
            mark = self.next()
            self.product(depth)
            self.steps.append(Step(mark.text, mark.start, 2))

    def product(self, depth: int) -> None:
        """signed {*|/ signed}"""
        self.signed(depth)
        while self.at_mark("*/"):
            mark = self.next()
            self.signed(depth)
            self.steps.append(Step(mark.text, mark.start, 2))

    def signed(self, depth: int) -> None:
        """+|- signed, or a power: -2^2 is -(2^2)"""
        if not self.at_mark("+-"):
            self.power(depth)
            return
        mark = self.next()
        self.signed(self.deeper(depth, mark))
        if mark.text == "-":
            self.steps.append(Step("negative", mark.start, 1))

    def power(self, depth: int) -> None:
        """atom [^ signed]: 2^3^2 is 2^(3^2)"""
        self.atom(depth)
        if self.at_mark("^"):
            mark = self.next()
            self.signed(self.deeper(depth, mark))
            self.steps.append(Step("^", mark.start, 2))

    def atom(self, depth: int) -> None:
        token = self.next()
        if token.kind == "literal":
            self.steps.append(Step(token.text, token.start, amount=token.amount, end=token.end))
        elif token.kind == "name":
            self.name(token, depth)
        elif token.kind == "mark" and token.text == "(":
            self.sum(self.deeper(depth, token))
            self.close(token)
        else:
            raise self.unexpected(token)

    def name(self, token: Token, depth: int) -> None:
        if self.at_mark("("):
            self.call(token, depth)
        elif token.text in FUNCTIONS:
            raise Fault(rules.SYNTAX, f"“{token.text}” is a function", f"write {token.text}(…)", token.start)
        elif token.text in UNIT_BY_NAME:
            raise Fault(
                rules.SYNTAX,
                f"the unit {token.text} has no number before it",
                f"a unit follows a number: write 1 {token.text}, or multiply by it: * 1 {token.text}",
                token.start,
            )
        elif token.text in CONSTANTS:
            self.steps.append(Step(token.text, token.start, amount=Amount(CONSTANTS[token.text]), end=token.end))
        else:
            self.steps.append(Step(token.text, token.start, is_name=True, end=token.end))

    def call(self, token: Token, depth: int) -> None:
        function = FUNCTIONS.get(token.text)
        if function is None:
            raise Fault(
                rules.UNKNOWN_NAME,
                f"there is no function “{token.text}”",
                did_you_mean(token.text, FUNCTIONS) or "to multiply, write * before the bracket",
                token.start,
            )
        bracket = self.next()
        count = 1
        self.sum(self.deeper(depth, bracket))
        while self.at_mark(","):
            self.next()
            self.sum(self.deeper(depth, bracket))
            count += 1
        self.close(bracket)
        if not function.least <= count <= function.most:
            wanted = "one value" if function.most == 1 else "two values or more"
            raise Fault(rules.SYNTAX, f"{token.text} takes {wanted}; here it has {count}", "", token.start)
        self.steps.append(Step(token.text, token.start, count))

    def close(self, opened: Token) -> None:
        if not self.at_mark(")"):
            if self.token.kind == "end":
                raise Fault(rules.SYNTAX, "this bracket is never closed", "add the missing )", opened.start)
            raise self.unexpected(self.token)
        self.next()

    def deeper(self, depth: int, token: Token) -> int:
        if depth >= DEEPEST_EXPRESSION:
            raise Fault(
                rules.TOO_BIG,
                f"this expression is nested more than {DEEPEST_EXPRESSION} deep",
                "give parts of it names under sizes",
                token.start,
            )
        return depth + 1

    def unexpected(self, token: Token) -> Fault:
        index = self.tokens.index(token)
        return misplaced(token, self.tokens[index - 1] if index else None)
