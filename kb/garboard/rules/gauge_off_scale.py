"""A gauge ends below a pressure it will be asked to show.

Why: a needle against its stop says nothing, and a gauge driven past its scale lies from then on.
The relief setting and the test pressure of what it watches, or stands in one run with, belong on
the scale. Working outside 25 to 75 percent of it is only warned of: published habits differ
(verify before citing).

Fix: fit a gauge whose scale holds both, or correct the scale from the dial; a gauge taken out for
the test still needs the relief setting on it.
"""

from collections.abc import Iterator, Sequence

from garboard.book import Book
from garboard.calc.value import Value
from garboard.errors import Diagnostic, Severity
from garboard.records.component import Component
from garboard.rules.recorded import as_written, is_pressure, margin, recorded
from garboard.rules.runs import find_views, relief_of

CODE = "gauge-off-scale"
SEVERITY = Severity.HOLD
BINDS_FROM = "building"
WAIVABLE = True

GAUGES = ("gauge", "transmitter")
LOWEST, HIGHEST = 0.25, 0.75


def check(book: Book) -> Iterator[Diagnostic]:
    """Compare every pressure gauge with the highest it must show, then with its working range."""
    views, guards = find_views(book), relief_of(book)
    for gauge in book.components.values():
        top = recorded(book, gauge, "range.to")
        if gauge.kind not in GAUGES or top is None or not is_pressure(top):
            continue
        seen = [book.components[tag] for tag in views[gauge.tag] if tag in book.components]
        beyond = [
            (distance, name, value)
            for part in seen
            for name, value in _demands(book, part, guards.get(part.tag, []))
            if (distance := margin(book, value, top) or 0) < 0
        ]
        if beyond:
            _, name, value = min(beyond, key=lambda item: item[0])
            text = f"{gauge.tag} ends at {top.text}, {name} is {as_written(value)}"
            cure = f"fit one that reaches {value.text}, or correct its range from the dial"
            yield Diagnostic(top.where, SEVERITY, text, cure, CODE, gauge.tag)
        else:
            yield from _at_work(book, gauge, top, seen)


def _demands(
    book: Book, part: Component, guards: Sequence[Component]
) -> Iterator[tuple[str, Value]]:
    """What a gauge on a part must be able to show: its relief settings, its test pressure."""
    for relief in guards:
        if lift := recorded(book, relief, "set"):
            yield f"the setting of {relief.tag}", lift
    if test := recorded(book, part, "test"):
        yield f"the test of {part.tag}", test


def _at_work(
    book: Book, gauge: Component, top: Value, seen: list[Component]
) -> Iterator[Diagnostic]:
    """Say where the needle stands too near an end in normal use."""
    bottom = recorded(book, gauge, "range.from")
    for part in seen:
        normal = recorded(book, part, "normal")
        if normal is None or bottom is None or normal.type != top.type:
            continue
        share = _share(bottom, normal.si, top)
        if share is not None and not LOWEST <= share <= HIGHEST:
            text = f"{gauge.tag} shows the normal {normal.text} of {part.tag}"
            text += f" at {share * 100:.0f} % of its scale, which ends at {top.text}"
            cure = "fit one that works between 25 and 75 %, or keep it and say why"
            yield Diagnostic(top.where, Severity.WARN, text, cure, CODE, gauge.tag)
            return


def _share(bottom: Value, reading: float | None, top: Value) -> float | None:
    """Where a reading stands on the scale; 0 at its beginning, 1 at its end."""
    if bottom.si is None or top.si is None or reading is None or top.si <= bottom.si:
        return None
    return (reading - bottom.si) / (top.si - bottom.si)
