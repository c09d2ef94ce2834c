"""Read one word of a record as what its field wants: a date, a count, yes or no, an id.

Each reader gives the value, or raises Unfit with what is and the cure. A word that another tool
would silently read as something else is refused with the things it could mean.
"""

import re
from collections.abc import Callable, Mapping
from datetime import date
from typing import Any

from garboard.names import ADDRESS, is_identifier, is_record_id, is_tag
from garboard.records import base
from garboard.records.component import PortPair

__all__ = [
    "GRAMMARS",
    "SOURCE",
    "WORDS",
    "Unfit",
    "full_tag",
    "read_count",
    "read_date",
    "read_number",
    "read_yes_no",
]


class Unfit(Exception):  # noqa: N818 - it says what the text is
    """The text is not what the field wants."""

    def __init__(self, text: str, cure: str) -> None:
        super().__init__(text)
        self.text, self.cure = text, cure


WHOLE = re.compile(r"-?(?:0|[1-9]\d*)")
DECIMAL = re.compile(r"-?(?:0|[1-9]\d*)(?:\.\d+)?")
ISO = re.compile(r"(\d{4})-(\d{2})-(\d{2})")
MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
PERSON = re.compile(r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*")
SOURCE = re.compile(r"[A-Za-z0-9][A-Za-z0-9._/-]*")
PAIR = re.compile(r"[A-Za-z0-9_]+-[A-Za-z0-9_]+")
CARD = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9-]{0,10}[A-Za-z0-9])?")
STEPS = re.compile(r"(?P<from>\d{1,3})-(?P<to>\d{1,3})")
SHORT_TAG = re.compile(r"[A-Z]{2}-\d{3}(?:\.[A-Za-z][A-Za-z0-9_.]*)?")
INTERVAL = re.compile(
    r"\d+(?:\.\d+)? (?:running )?(?:h|d|days?|weeks?|months?|years?|starts?|trips?)"
)


def read_date(text: str) -> date:
    """A date, year first.

    Raises:
        Unfit: It is written otherwise, or there is no such day.

    >>> read_date("2031-03-09")
    datetime.date(2031, 3, 9)
    """
    found = ISO.fullmatch(text)
    if not found:
        raise Unfit(f"`{text}` is no date as this book writes them", _date_cure(text))
    try:
        return date(int(found[1]), int(found[2]), int(found[3]))
    except ValueError:
        raise Unfit(f"there is no day {text}", "write year-month-day, such as 2031-03-09") from None


def _date_cure(text: str) -> str:
    numbers = [int(part) for part in re.findall(r"\d+", text[:20])]
    if re.match(r"\d{4}-\d{2}-\d{2}[T ]\d", text):
        return f"write the day alone: {text[:10]}"
    if re.fullmatch(r"\d{4}[-/.]\d{1,2}[-/.]\d{1,2}", text):
        return f"write {numbers[0]:04}-{numbers[1]:02}-{numbers[2]:02}"
    if re.fullmatch(r"\d{1,2}[-/.]\d{1,2}[-/.]\d{4}", text):
        return _year_last(*numbers)
    named = re.search(r"(?i)\b(" + "|".join(MONTHS) + r")", text)
    if named and len(numbers) == 2 and max(numbers) > 31:
        month = MONTHS.index(named[1].lower()) + 1
        return f"write {max(numbers):04}-{month:02}-{min(numbers):02}"
    return "write year-month-day, such as 2031-03-09"


def _year_last(one: int, two: int, year: int) -> str:
    """A date with the year last can be read in two ways, unless a part is above 12."""
    day_first, month_first = f"{year:04}-{two:02}-{one:02}", f"{year:04}-{one:02}-{two:02}"
    if one > 12 or one == two:
        return f"write {day_first}"
    if two > 12:
        return f"write {month_first}"
    return f"write {day_first} or {month_first}, whichever it was"


def read_count(text: str) -> int:
    """A whole number.

    Raises:
        Unfit: It is none, or could be read as another.

    >>> read_count("12")
    12
    """
    if WHOLE.fullmatch(text) and len(text) <= 12:
        return int(text)
    raise Unfit(f"`{text}` is no whole number", _number_cure(text))


def read_number(text: str) -> float:
    """A decimal number without a unit.

    Raises:
        Unfit: It is none, or could be read as another.

    >>> read_number("4.75")
    4.75
    """
    if DECIMAL.fullmatch(text) and len(text) <= 16:
        return float(text)
    raise Unfit(f"`{text}` is no number", _number_cure(text))


def _number_cure(text: str) -> str:
    """What a number that others read otherwise could mean."""
    if len(text) > 24:
        return "write figures alone, such as 12"
    if re.fullmatch(r"-?\d+(?:\.\d+)?[eE][-+]?\d{1,2}", text):
        return f"write it out: {float(text):.15g}; {text} is a number to some, text to others"
    if re.fullmatch(r"0[xob][0-9a-fA-F]+", text):
        return f"write it out in tens; {text} is a number to some, text to others"
    if re.fullmatch(r"-?\d[\d_]*\d", text) and "_" in text:
        return f"write {text.replace('_', '')}"
    return _other_number_cure(text)


def _other_number_cure(text: str) -> str:
    if re.fullmatch(r"-?0\d+", text):
        plain = text.lstrip("-0") or "0"
        eight = f", {int(text, 8)} by others" if re.fullmatch(r"-?0[0-7]+", text) else ""
        return f"write {plain}; with the 0 before it, it is read as {plain} by some{eight}"
    if re.fullmatch(r"\d+(?::\d{1,2})+", text):
        total = 0
        for part in text.split(":"):
            total = total * 60 + int(part)
        return f"write one number; {text} is a time of day to some, {total} to others"
    if re.fullmatch(r"-?\d+,\d+", text):
        return f"write {text.replace(',', '.')} or {text.replace(',', '')}, whichever it is"
    return "write figures alone, such as 12"


def read_yes_no(text: str) -> bool:
    """Yes or no.

    Raises:
        Unfit: It is another word.

    >>> read_yes_no("yes")
    True
    """
    if text in ("yes", "no"):
        return text == "yes"
    folded = text.casefold()
    if folded in ("yes", "true", "on", "y"):
        raise Unfit(f"`{text}` is not yes or no", "write yes")
    if folded in ("no", "false", "off", "n"):
        raise Unfit(f"`{text}` is not yes or no", "write no")
    raise Unfit(f"`{text}` is not yes or no", "write yes or no")


def full_tag(text: str, system: str) -> str:
    """A tag in full, where it is written in the short form of its own system.

    >>> full_tag("RV-001", "SA"), full_tag("RV-001.set", "SA"), full_tag("open", "SA")
    ('SA-RV-001', 'SA-RV-001.set', 'open')
    """
    return f"{system}-{text}" if SHORT_TAG.fullmatch(text) else text


def _record_id(text: str) -> str:
    if is_record_id(base.bare_id(text)):
        return text
    if is_tag(text):
        cure = f"write the id of a record; {text} is the tag of a component"
        raise Unfit(f"`{text}` is no record", cure)
    raise Unfit(f"`{text}` is no record id", _identifier_cure(text, "SA-DD-003"))


def _tag(text: str) -> str:
    if is_tag(text):
        return text
    if is_record_id(text):
        raise Unfit(f"`{text}` is no component", f"write a tag; {text} is the id of a record")
    raise Unfit(f"`{text}` is no tag", _identifier_cure(text, "SA-RV-001"))


def _identifier(text: str) -> str:
    if is_identifier(text):
        return text
    raise Unfit(f"`{text}` is no id or tag", _identifier_cure(text, "SA-RV-001"))


def _identifier_cure(text: str, example: str) -> str:
    found = re.fullmatch(r"([A-Za-z]{2})[\s._/-]?([A-Za-z]{2})[\s._/-]?(\d{1,3})", text)
    if found:
        return f"write {found[1].upper()}-{found[2].upper()}-{int(found[3]):03}"
    if " " in text and re.search(r"[A-Z]{2}-[A-Z]{2}-\d{3}", text):
        return "write the id alone; say the rest in the text below"
    return f"write system, letters and three figures, such as {example}"


def _person(text: str) -> str:
    if PERSON.fullmatch(text):
        return text
    # The cure offers no key made of the text: what was written may be somebody's name.
    raise Unfit(f"`{text}` is no key of people.yml", "write the person's key, such as volunteer-1")


def _source(text: str) -> str:
    if SOURCE.fullmatch(text):
        return text
    raise Unfit(f"`{text}` is no key of sources.yml", "write the key alone, without spaces")


def _address(text: str) -> str:
    if ADDRESS.fullmatch(text):
        return text
    if is_identifier(text):
        cure = f"write which property: {text}.set, {text}.rated"
        raise Unfit(f"`{text}` is no address of a value", cure)
    cure = "write block.name or TAG.property, such as SA-RV-001.set"
    raise Unfit(f"`{text}` is no address of a value", cure)


def _date_or_text(text: str) -> str:
    if ISO.fullmatch(text):
        return read_date(text).isoformat()
    if re.match(r"\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}\b", text):
        raise Unfit(f"`{text}` is neither a date nor an event", _date_cure(text))
    return text


def _interval(text: str) -> str:
    if text[:1].isdigit() and not INTERVAL.fullmatch(text):
        cure = "write number, space and h, d, weeks, months, years or running h: 6 months"
        raise Unfit(f"`{text}` is no interval", cure)
    return text


def _card(text: str) -> str:
    if CARD.fullmatch(text):
        return text
    cure = "write letters, figures and hyphens, twelve at most: K-01"
    raise Unfit(f"`{text}` is no number of a card", cure)


def _steps(text: str) -> str:
    found = STEPS.fullmatch(text)
    if found and 1 <= int(found["from"]) <= int(found["to"]):
        return text
    cure = "write the first and the last step: 1-4; of one step 5-5"
    raise Unfit(f"`{text}` is no row of steps", cure)


def _pair(text: str) -> str:
    if PAIR.fullmatch(text):
        return text
    raise Unfit(f"`{text}` is no pair of ports", "write the two ports it joins: common-a")


def _text(text: str) -> str:
    return text


GRAMMARS: Mapping[Any, Callable[[str], str]] = {
    base.RecordId: _record_id,
    base.Tag: _tag,
    base.Identifier: _identifier,
    base.Person: _person,
    base.SourceId: _source,
    base.Address: _address,
    base.DateOrText: _date_or_text,
    base.Interval: _interval,
    base.CardNumber: _card,
    base.StepRange: _steps,
    PortPair: _pair,
    base.Mention: _text,
    base.Figure: _text,
    str: _text,
}
"""What a name of each type must look like."""

WORDS: Mapping[Any, tuple[str, str]] = {
    base.RecordId: ("a record id", "record ids"),
    base.Tag: ("a tag", "tags"),
    base.Identifier: ("an id or tag", "ids or tags"),
    base.Person: ("a person's key", "keys of people"),
    base.SourceId: ("a source's key", "keys of sources"),
    base.Address: ("the address of a value", "addresses of values"),
    base.DateOrText: ("a date or an event", "dates or events"),
    base.Interval: ("an interval", "intervals"),
    base.CardNumber: ("the number of a card", "numbers of cards"),
    base.StepRange: ("a row of steps", "rows of steps"),
    PortPair: ("a pair of ports", "pairs of ports"),
    base.Mention: ("text", "texts"),
    base.Figure: ("a quantity or text", "quantities or texts"),
    str: ("text", "texts"),
    int: ("a whole number", "whole numbers"),
    float: ("a number", "numbers"),
    bool: ("yes or no", "yes or no"),
    date: ("a date", "dates"),
}
"""How a type is called in a message: one, and several."""
