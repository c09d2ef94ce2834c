"""Cut a line of a calculation into words and signs, each with its place.

A unit is only looked for behind a number and one space, so that names such as `m` or `V` stay free.
A minus stands between two spaces, because `SA-RV-001.set` is one name. What other languages would
accept here, `==`, `**`, text in quotes, is refused with what to write instead.
"""

import re
from dataclasses import dataclass
from enum import StrEnum

from garboard.calc.characters import sign_fault
from garboard.calc.fault import CalcFault, Family, Line, Span
from garboard.calc.unit_names import LIBRARY_NAMES, ROLES, TRAPS, Role

__all__ = ["KEYWORDS", "WORDS_ELSEWHERE", "Cursor", "Sort", "Token", "read_tokens"]

KEYWORDS = frozenset(("if", "else", "in", "require"))
WORDS_ELSEWHERE = {
    "and": "write one require line for each comparison",
    "or": "name the two cases with a if ... else",
    "not": "turn the comparison round",
    "is": "compare with <, <=, > or >=",
    "for": "give each value a line of its own",
    "lambda": "give each value a line of its own",
    "import": "the listed functions and methods are all there is",
}
"""Words of other languages, and what to write; none of them is a unit."""
MOST_DIGITS = 15
HIGHEST_EXPONENT = 12
PIECE = re.compile(
    r"(?P<name>[A-Za-z_][A-Za-z0-9_]*(?:[-.][A-Za-z0-9_]+)*)"
    r"|(?P<number>[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?)"
    r"|(?P<sign>\+/-|±|<=|>=|[-+*/^()\[\],<>=])"
    r"|(?P<blank>[ \t]+)"
)
BORROWED = re.compile(r"\*\*|\+-|==|!=|<>|=>|=<|:=|[-+*/%]=|//|&&|\|\|")
BORROWED_CURES = {
    "**": "write a power as a^2",
    "+-": "write a tolerance as +/-; to subtract write one minus between spaces",
    "==": "one = sets a name; a requirement compares with <= or >=, one line for each side",
    "!=": "a requirement compares with <, <=, > or >=",
    "<>": "a requirement compares with <, <=, > or >=",
    "=>": "write >=",
    "=<": "write <=",
    "//": "write floor(a / b)",
    "&&": "write one require line for each comparison",
    "||": "name the two cases with a if ... else",
}
UNIT_START = re.compile(r"(?![eE]\d)(?:[A-Za-z%\u00b0\u00b5\u03bc\u03a9\u2126]|1/[A-Za-z(])")
UNIT_STOP = re.compile(r"[ \t*+,=<>\[\]#±]|(?<!\^)-")
WORD = re.compile(r"[A-Za-z_%\u00b0][A-Za-z0-9_]*")
COMMA = re.compile(r"([0-9]+),([0-9]+)")
GROUPS = re.compile(r"([0-9]{1,3})((?:['_ ,][0-9]{3})+)(?![0-9])")


class Sort(StrEnum):
    """What a token is."""

    NUMBER = "number"
    UNIT = "unit"
    """Directly behind a number."""
    NAME = "name"
    """A name or an address: `p_max`, `receiver-sizing.n`, `SA-RV-001.set`."""
    SIGN = "sign"
    END = "end"


SORTS = {sort.value: sort for sort in Sort}
OPERANDS = (Sort.NUMBER, Sort.UNIT, Sort.NAME)


@dataclass(frozen=True, slots=True)
class Token:
    """One word or sign."""

    sort: Sort
    text: str
    span: Span


def read_tokens(line: Line, start: int, end: int) -> list[Token]:
    """Cut a part of a line into tokens; the last one marks the end.

    Raises:
        CalcFault: A sign, number or name is not written as this language writes it.

    >>> from garboard.calc.fault import NOWHERE
    >>> [token.text for token in read_tokens(Line("p = 30 bar(g) - dp", NOWHERE), 0, 18)]
    ['p', '=', '30', 'bar(g)', '-', 'dp', '']
    """
    tokens: list[Token] = []
    at = last = start
    while at < end:
        found = PIECE.match(line.text, at, end)
        if not found:
            refuse_borrowed(line, at)
            raise sign_fault(line, at)
        at = found.end()
        if found.lastgroup == "blank":
            continue
        last = at
        token = Token(SORTS[found.lastgroup or ""], found[0], Span(found.start(), at))
        if token.sort is Sort.SIGN:
            check_sign(line, token, tokens)
        tokens.append(token)
        if token.sort is Sort.NUMBER:
            check_number(line, token, end)
            unit = find_unit(line, token, end)
            if unit:
                tokens.append(unit)
                at = last = unit.span.end
    tokens.append(Token(Sort.END, "", Span(last, last)))
    return tokens


def refuse_borrowed(line: Line, at: int) -> None:
    """Refuse what another language would write here.

    Raises:
        CalcFault: It is such a sign.
    """
    found = BORROWED.match(line.text, at)
    if found:
        cure = BORROWED_CURES.get(found[0], "write name = expression, each name once")
        text = f"`{found[0]}` is no sign of this language"
        raise line.fault(Family.SYNTAX, Span(at, found.end()), text, cure)


def check_sign(line: Line, token: Token, before: list[Token]) -> None:
    """Refuse borrowed signs, and a minus that does not stand between spaces.

    Raises:
        CalcFault: It is one.
    """
    start, end = token.span.start, token.span.end
    refuse_borrowed(line, start)
    if token.text != "-" or not before:
        return
    previous = before[-1]
    if previous.sort not in OPERANDS and previous.text not in (")", "]"):
        return
    if previous.sort is Sort.NAME and previous.text in KEYWORDS:
        return
    if line.text[start - 1] in " \t" and line.text[end : end + 1] in (" ", "\t"):
        return
    follows = WORD.match(line.text, end) or re.compile(r"[0-9.]*").match(line.text, end)
    part = Span(previous.span.start, follows.end() if follows else end)
    text = f"the minus in `{line.quote(part)}` does not stand between two spaces"
    after = line.text[end : part.end].strip()
    cure = f"write {line.quote(previous.span)} - {after}"
    if not after or previous.sort is Sort.SIGN:
        cure = "put a space on both sides of it"
    if previous.sort is Sort.UNIT:
        cure += f"; a negative power is {previous.text}^-1"
    raise line.fault(Family.SYNTAX, part, text, cure)


def check_number(line: Line, token: Token, end: int) -> None:
    """Refuse numbers written in another way than 1234.5.

    Raises:
        CalcFault: It has a comma, groups of three, no space before its unit, or too many digits.
    """
    text, span = line.text, token.span
    grouped = GROUPS.match(text, span.start, end)
    comma = COMMA.match(text, span.start, end)
    if grouped and (not comma or grouped.end() >= comma.end()):
        raise groups_fault(line, grouped)
    if comma:
        raise line.fault(
            Family.SYNTAX,
            Span(*comma.span()),
            f"`{comma[0]}` has a comma inside a number",
            f"write {comma[1]}.{comma[2]}; two values are parted by a comma and a space",
        )
    after = text[span.end : span.end + 1] if span.end < end else ""
    if after == "." or (after == "_" and text[span.end + 1 : span.end + 2].isdigit()):
        part = Span(span.start, span.end + 1)
        cure = "write a decimal number as 5 or 5.0, without other signs"
        raise line.fault(Family.SYNTAX, part, f"`{line.quote(part)}` is no number", cure)
    word = WORD.match(text, span.end, end)
    if word:
        raise glued_fault(line, token, word)
    check_size(line, token)


def groups_fault(line: Line, grouped: re.Match[str]) -> CalcFault:
    """Refuse a thousands separator."""
    whole = grouped[1] + re.sub(r"[^0-9]", "", grouped[2])
    cure = f"write {whole}"
    if "," in grouped[2]:
        cure += f", or {grouped[0].replace(',', '.', 1)} if a decimal point is meant"
    text = f"`{grouped[0]}` parts the thousands"
    return line.fault(Family.SYNTAX, Span(*grouped.span()), text, cure)


def glued_fault(line: Line, token: Token, word: re.Match[str]) -> CalcFault:
    """Refuse a number and a word without a space between them."""
    stop = unit_end(line.text, word.start(), len(line.text))
    unit = line.text[word.start() : stop]
    stem = re.match(r"[A-Za-z_%\u00b0]*", unit)
    name = stem[0] if stem else unit
    part = Span(token.span.start, stop)
    cure = f"write {token.text} * {word[0]}"
    if name in LIBRARY_NAMES or name in TRAPS:
        cure = f"write {token.text} {unit}, one space between number and unit"
        if ROLES.get(unit) is Role.PRESSURE:
            cure = f"write {token.text} {unit}(g), with a space, and (a) or (d) where it is one"
    return line.fault(
        Family.SYNTAX, part, f"`{line.quote(part)}` has no space behind the number", cure
    )


def check_size(line: Line, token: Token) -> None:
    """Refuse numbers with more digits or larger exponents than a measurement has."""
    mantissa, _, exponent = token.text.lower().partition("e")
    digits = len(mantissa.replace(".", "").lstrip("0"))
    if digits > MOST_DIGITS:
        text = f"`{line.quote(token.span)}` has {digits} digits"
        raise line.fault(Family.LIMIT, token.span, text, f"write at most {MOST_DIGITS}")
    decimals = len(mantissa.partition(".")[2])
    if decimals > MOST_DIGITS + HIGHEST_EXPONENT:
        text = f"`{line.quote(token.span)}` has {decimals} figures behind the point"
        raise line.fault(Family.LIMIT, token.span, text, "take a smaller unit")
    if exponent and (len(exponent) > 4 or abs(int(exponent)) > HIGHEST_EXPONENT):
        text = f"the exponent of `{line.quote(token.span)}` is beyond {HIGHEST_EXPONENT}"
        cure = "take a larger or smaller unit; exponents go from -12 to 12"
        raise line.fault(Family.LIMIT, token.span, text, cure)


def find_unit(line: Line, number: Token, end: int) -> Token | None:
    """The unit behind a number and one space, if one stands there.

    Raises:
        CalcFault: More than one space stands before it.
    """
    at = number.span.end
    start = at
    while start < end and line.text[start] in " \t":
        start += 1
    if start == at or not UNIT_START.match(line.text, start, end):
        return None
    word = WORD.match(line.text, start, end)
    if word and (word[0] in KEYWORDS or word[0] in WORDS_ELSEWHERE):
        return None
    stop = unit_end(line.text, start, end)
    span = Span(start, stop)
    if line.text[at:start] != " ":
        part = Span(number.span.start, stop)
        text = f"`{line.quote(part)}` has more than one space before the unit"
        raise line.fault(Family.SYNTAX, part, text, f"write {number.text} {line.quote(span)}")
    return Token(Sort.UNIT, line.text[start:stop], span)


def unit_end(text: str, start: int, end: int) -> int:
    """Where a unit stops: at a blank, a sign, or a bracket it did not open."""
    depth, at = 0, start
    while at < end and not UNIT_STOP.match(text, at):
        depth += {"(": 1, ")": -1}.get(text[at], 0)
        if depth < 0:
            break
        at += 1
    return at


class Cursor:
    """A place in the tokens of a line."""

    def __init__(self, line: Line, start: int, end: int) -> None:
        self.line = line
        self.tokens = read_tokens(line, start, end)
        self.at = 0

    @property
    def next(self) -> Token:
        """The token that stands here."""
        return self.tokens[self.at]

    def after(self, count: int = 1) -> Token:
        """A token further on, or the end."""
        return self.tokens[min(self.at + count, len(self.tokens) - 1)]

    def take(self) -> Token:
        """The token that stands here, and go on."""
        token = self.tokens[self.at]
        if token.sort is not Sort.END:
            self.at += 1
        return token

    def on(self, sort: Sort) -> bool:
        """Whether a token of this sort stands here."""
        return self.tokens[self.at].sort is sort

    def sees(self, *texts: str) -> bool:
        """Whether one of these signs or keywords stands here."""
        token = self.tokens[self.at]
        return token.text in texts and token.sort in (Sort.SIGN, Sort.NAME)

    def expect(self, text: str, cure: str) -> Token:
        """Take a sign that must stand here.

        Raises:
            CalcFault: Another one does.
        """
        if not self.sees(text):
            raise self.fault(f"`{text}` is missing", cure)
        return self.take()

    def fault(self, text: str, cure: str) -> CalcFault:
        """Refuse the line at the token that stands here."""
        token = self.next
        here = f"before `{token.text}`" if token.text else "at the end of the line"
        return self.line.fault(Family.SYNTAX, token.span, f"{text} {here}", cure)
