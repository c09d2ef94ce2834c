"""Say in the author's terms why a piece of YAML cannot be read.

The parsers name tokens; a person in a shed needs to hear about a colon, a quote or a bracket. What
is said depends on the text at the place alone, so it is the same whichever parser met it.
"""

import re
from typing import NamedTuple

__all__ = ["Mark", "Refusal", "explain"]


class Mark(NamedTuple):
    """A line and column, counted from 0."""

    line: int
    column: int


class Refusal(NamedTuple):
    """Where, what is, and the cure."""

    mark: Mark
    text: str
    cure: str


LONGEST_QUOTED = 200
"""A longer line is not repeated in its cure."""
KEY_WITHOUT_SPACE = re.compile(r"\s*(?:- )*([A-Za-z_][\w-]*):(?=[^\s/:])")
KEY_AND_TEXT = re.compile(r"(\s*(?:- )*)([^\s:#\"'\[{][^:#\[{]*): +(.*)$")


def explain(problem: str, mark: Mark, context: Mark | None, lines: list[str]) -> Refusal:
    """Say why the text could not be read.

    Args:
        problem: The words of the parser; only used to tell the sorts of fault apart.
        mark: Where the parser stood.
        context: Where the thing it was reading began.
        lines: The text.
    """
    said = problem.lower()
    mark = _settled(mark, lines)
    if "mapping values are not allowed" in said:
        return _colon(mark, lines)
    if "expected ',' or" in said:
        return _bracket(mark, context or mark, lines)
    if "could not find expected ':'" in said:
        return _no_colon(context or mark, lines)
    if "end of stream" in said or "document" in said:
        return _open_quote(mark, context, lines)
    if "escape" in said or "hexdecimal" in said:
        return _escape(mark, context or mark, lines)
    return _by_sign(mark, lines)


def _settled(mark: Mark, lines: list[str]) -> Mark:
    """A mark with nothing behind it, put behind the last sign: parsers differ about the end."""
    if _line(lines, mark.line)[mark.column :].strip() or any(
        line.strip() for line in lines[mark.line + 1 :]
    ):
        return mark
    last = max((n for n, line in enumerate(lines) if line.strip()), default=0)
    return Mark(last, len(_line(lines, last).rstrip()))


def _colon(mark: Mark, lines: list[str]) -> Refusal:
    above = _line(lines, mark.line - 1)
    missing = KEY_WITHOUT_SPACE.match(above) if mark.line else None
    if missing:
        place = Mark(mark.line - 1, missing.end() - 1)
        text = f"no space stands after {missing[1]}:"
        return Refusal(place, text, "write a space after the colon")
    line = _line(lines, mark.line)
    written = KEY_AND_TEXT.match(line)
    if written and written.start(3) <= mark.column and len(line) > LONGEST_QUOTED:
        return Refusal(mark, "a colon stands in unquoted text", "put the text in quotes")
    if written and written.start(3) <= mark.column:
        cure = f"write {written[2]}: {quote(written[3])}"
        return Refusal(mark, "a colon stands in unquoted text", cure)
    text = "this line is set in further than the one above, and runs on its text"
    place = Mark(mark.line, _indent(line))
    return Refusal(place, text, "set it under the key above, or quote the text")


def _bracket(mark: Mark, context: Mark, lines: list[str]) -> Refusal:
    opened = _sign(lines, context)
    sign = _sign(lines, mark)
    if not sign or (mark.line > context.line and sign != "?"):
        cut = re.search(r" #", _line(lines, context.line)[context.column :])
        why = "; a # in it makes the rest a comment" if cut else ""
        text = f"the {opened} is not closed on its line{why}"
        return Refusal(context, text, "close it, or put the text within it in quotes")
    cure = "put the text that holds it in quotes"
    if sign in "[{":
        cure = f"put the text before it and the {sign} in quotes together"
    return Refusal(mark, f"`{sign}` stands in unquoted text within {opened}", cure)


def _no_colon(context: Mark, lines: list[str]) -> Refusal:
    line = _line(lines, context.line)
    missing = KEY_WITHOUT_SPACE.match(line)
    if missing:
        place = Mark(context.line, missing.end() - 1)
        text = f"no space stands after {missing[1]}:"
        return Refusal(place, text, "write a space after the colon")
    if line.lstrip()[:1] in ("'", '"'):
        return Refusal(
            context, "the quote is not closed on its line", "close it with the same quote"
        )
    if line.lstrip().startswith("-"):
        return Refusal(context, "no space stands after the dash", "write a space after it")
    text = f"`{line.strip()[:40]}` has no colon, so it is neither key nor text"
    cure = "write key: value, or set the line in under the text it belongs to"
    return Refusal(context, text, cure)


def _open_quote(mark: Mark, context: Mark | None, lines: list[str]) -> Refusal:
    sign = _sign(lines, context) if context is not None else ""
    if context is not None and sign in ("'", '"'):
        return Refusal(context, f"the quote {sign} is never closed", f"close it with {sign}")
    rest = _line(lines, mark.line)[mark.column :].strip()
    if not rest:
        return _by_sign(mark, lines)
    text = f"`{rest[:40]}` stands after the end"
    return Refusal(mark, text, "delete it, or set it where it belongs")


def _escape(mark: Mark, context: Mark, lines: list[str]) -> Refusal:
    line = _line(lines, mark.line)
    start = context.column if context.line == mark.line else 0
    column = max(line.rfind("\\", start, mark.column + 1), start)
    text = f"`{line[column : column + 2]}` in double quotes is no sign"
    return Refusal(
        Mark(mark.line, column), text, "write \\\\ for a backslash, or use single quotes"
    )


def _by_sign(mark: Mark, lines: list[str]) -> Refusal:
    """What the sign at the place, and the one before it, say."""
    line = _line(lines, mark.line)
    sign = _sign(lines, mark)
    before = line[: mark.column].rstrip()
    if before[-1:] in ("'", '"', "]", "}") and sign not in "#,":
        text = f"`{line[mark.column :].strip()[:40]}` follows the closing {before[-1]}"
        return Refusal(mark, text, "put the whole text in one pair of quotes")
    if before and sign == "-":
        return Refusal(mark, "a list starts behind its key", "start each - on a line of its own")
    if before and sign:
        text = f"`{sign}` cannot start unquoted text"
        return Refusal(mark, text, "put the text in quotes")
    if before:
        return Refusal(mark, f"nothing follows `{before.strip()[-1]}`", "put the text in quotes")
    text = f"`{line.strip()[:40]}` does not fit under the line above"
    return Refusal(mark, text, "set keys of one level equally far in, and lines of a text further")


def quote(text: str) -> str:
    r"""Text in the quotes that need no escape.

    >>> quote("Valve: stuck"), quote('the "big" one: no')
    ('"Valve: stuck"', '\'the "big" one: no\'')
    """
    text = text.strip()
    if '"' in text or "\\" in text:
        return "'" + text.replace("'", "''") + "'"
    return f'"{text}"'


def _line(lines: list[str], number: int) -> str:
    return lines[number] if 0 <= number < len(lines) else ""


def _sign(lines: list[str], mark: Mark) -> str:
    return _line(lines, mark.line)[mark.column : mark.column + 1]


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))
