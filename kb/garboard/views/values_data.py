"""The numbers of the handbook as two files: JSON, and CSV that a spreadsheet may open safely.

A spreadsheet takes a cell that begins with `=`, `+`, `-` or `@` for a formula. Text that begins so, or
with an apostrophe, gets one apostrophe before it; numbers stay numbers. Taking one apostrophe off what
begins with one gives the text back.
"""

import csv
import io
import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict, fields

from garboard.views.numbers import NumberRow, SourceCited
from garboard.views.which_copy import WORKING, Copy

__all__ = ["CSV", "JSON", "SCHEMA", "columns", "flat", "guarded", "values_csv", "values_json"]

JSON, CSV = "values.json", "values.csv"
SCHEMA = "garboard-values-1"
"""Another number when a field is taken away or means something else; a new field keeps it."""
HONEST = (
    "As entered and worked out at this build; no approval of anything. A value that is null was not"
    " computed, or its range is not known."
)
GUARDED = ("=", "+", "-", "@", "'", "\t", "\r", "\n")
JOINED = "; "
COPY = "copy"
"""The last column of the CSV."""
Flat = Mapping[str, str | float | None]


def columns() -> tuple[tuple[str, str], ...]:
    """Every field of a row and what it is, in order."""
    return tuple((one.name, MEANINGS[one.name]) for one in fields(NumberRow))


def values_json(rows: Iterable[NumberRow], vessel: str, copy: Copy = WORKING) -> str:
    """All rows as JSON, one a line.

    Args:
        rows: In their order.
        vessel: Its name.
        copy: Which copy of the handbook they stand in.
    """
    head = {
        "schema": SCHEMA,
        "vessel": vessel,
        "edition": f"edition {copy.number}" if copy.number else "working copy",
        "copy": " ".join(filter(None, (copy.words, copy.beside))),
        "issued": copy.issued,
        "valid_until": copy.valid_until,
        "note": HONEST,
        "fields": dict(columns()),
    }
    opening = json.dumps(head, ensure_ascii=False, indent=1)[:-2]
    lines = ",\n".join(json.dumps(asdict(row), ensure_ascii=False, allow_nan=False) for row in rows)
    return f'{opening},\n "values": [\n{lines}\n ]\n}}\n'


def values_csv(rows: Iterable[NumberRow], copy: Copy = WORKING) -> str:
    """All rows as CSV: a head, then one row a line; text is guarded, what is missing is empty.

    Each row ends with the copy that it stands in, so that a line taken out of the file still says so.
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow([*(name for name, _ in columns()), COPY])
    for row in rows:
        writer.writerow([*(_cell(one) for one in flat(row).values()), copy.line])
    return text.getvalue()


def flat(row: NumberRow) -> Flat:
    """A row without anything inside a field: lists are joined, a source is written as cited."""
    return {one.name: _flattened(getattr(row, one.name)) for one in fields(NumberRow)}


def _flattened(value: object) -> str | float | None:
    if isinstance(value, tuple):
        return JOINED.join(_source(one) if isinstance(one, SourceCited) else one for one in value)
    return value if isinstance(value, float | str) else None


def _source(one: SourceCited) -> str:
    cited = f"{one.source} {one.clause}".strip()
    about = ", ".join(part for part in (one.title, one.edition, one.read) if part)
    return f"{cited} ({about})" if about else cited


def _cell(value: str | float | None) -> str:
    if value is None:
        return ""
    if isinstance(value, float):
        return repr(value)
    return guarded(value)


def guarded(text: str) -> str:
    """Text that a spreadsheet takes for text.

    >>> guarded("=1+1"), guarded("SA-HV-001")
    ("'=1+1", 'SA-HV-001')
    """
    return f"'{text}" if text.startswith(GUARDED) else text


MEANINGS: Mapping[str, str] = {
    "address": "how it is quoted; the key of the row",
    "label": "what it is",
    "text": "as the handbook shows it, rounded; the words not computed where it is not",
    "unit": "of value, low, high, usual_low and usual_high; empty for a plain number",
    "kind": "what it measures and counts from: gauge pressure, absolute pressure, amount of free air",
    "value": "the number in its unit",
    "low": "least, when everything is at its worst",
    "high": "most, when everything is at its worst",
    "usual_low": "least, usually; null where no tolerance reaches it",
    "usual_high": "most, usually",
    "si": "the number in SI units, to the last bit; a gauge pressure in Pa above the atmosphere,"
    " a temperature in kelvin, free air in m3 at 0 degC and 101325 Pa",
    "si_low": "low in SI units",
    "si_high": "high in SI units",
    "si_usual_low": "usual_low in SI units",
    "si_usual_high": "usual_high in SI units",
    "origin": "given (by a person), given by a method, worked out, or drawn from another address",
    "tolerance": "as written; empty where none is stated",
    "sources": "where it comes from: source, clause, title, edition, and how it was read",
    "uses": "addresses it is worked out from directly",
    "written": "its line as its author wrote it",
    "worked": "its line with numbers in place of names",
    "page": "path and place of its page in the site",
    "block": "the calculation it stands in",
    "record": "the record or part that owns it",
    "review": "how far that page may be relied on",
    "fault": "why it is not computed",
}
