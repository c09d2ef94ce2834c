"""A page while it is being put together: its blocks, and the numbered list of its sources."""

from garboard.book import Book
from garboard.calc.value import Citation
from garboard.errors import Diagnostic
from garboard.names import is_identifier
from garboard.records.calibration import Calibrated, calibration_of
from garboard.records.inspection import Test
from garboard.views.inline import day, person, title_of
from garboard.views.page import Block, Link, Message, Page, Review, SourceLine

__all__ = ["DEFERRAL", "NOT_REVIEWED", "Draft"]

NOT_REVIEWED = Review("NOT REVIEWED. Nobody has checked this page.")

DEFERRAL = (
    "Estimate for discussion. It does not replace the flag state, class, surveyor, insurer, or local"
    " pressure, electrical and fire codes. Pressure parts, gas and electrics are worked on by licensed"
    " people. If an input is guessed, so is the answer."
)


class Draft:
    """Collects what goes on a page; `page()` freezes it."""

    def __init__(self, book: Book, key: str, title: str, kind: str, *, system: str = "") -> None:
        self.book = book
        self.key = key
        self.title = title
        self.kind = kind
        self.system = system
        self.ident = key if is_identifier(key) else ""
        self.messages: tuple[Message, ...] = ()
        self.blocks: list[Block] = []
        self.standing: tuple[Diagnostic, ...] = ()
        self.nav: tuple[str, ...] = ()
        self.calculated = False
        self.last_change = ""
        self.source_path = ""
        self.follows: tuple[str, ...] = ()
        """Records whose review and faults are those of the page."""
        self._cited: dict[tuple[str, str], int] = {}

    def add(self, *blocks: Block) -> None:
        """Put blocks at the foot of what is there."""
        self.blocks.extend(blocks)

    def cite(self, *citations: Citation) -> tuple[int, ...]:
        """Number sources in the page's own list, each once."""
        return tuple(
            self._cited.setdefault((item.source, item.clause), len(self._cited) + 1)
            for item in citations
        )

    def page(self, used_on: tuple[Link, ...] = ()) -> Page:
        """The finished page."""
        system = self.book.systems.get(self.system)
        return Page(
            key=self.key,
            path=_path(self.key),
            title=self.title,
            kind=self.kind,
            review=NOT_REVIEWED,
            system=self.system,
            system_title=system.title if system else "",
            ident=self.ident,
            status=str(system.status) if system else "",
            messages=self.messages,
            standing=self.standing,
            blocks=tuple(self.blocks),
            sources=tuple(
                self._source_line(number, source, clause)
                for (source, clause), number in self._cited.items()
            ),
            deferral=DEFERRAL if self.calculated else "",
            used_on=used_on,
            last_change=self.last_change,
            source_path=self.source_path,
            nav=self.nav,
        )

    def _source_line(self, number: int, source: str, clause: str) -> SourceLine:
        known = self.book.content.sources.get(source)
        if known:
            parts = (known.title, known.edition, clause)
            read = str(known.seen or "")
            if read and known.by:
                read = f"{read}, by {person(self.book, known.by)}"
            return SourceLine(number, source, ", ".join(part for part in parts if part), read)
        title = f"{source} {title_of(self.book, source)}".strip()
        text = ", ".join(part for part in (title, clause) if part)
        record = self.book.records.get(source)
        measured = f"; {_who_measured(self.book, record)}" if isinstance(record, Test) else ""
        return SourceLine(number, source, f"{text}{measured}", "")


def _who_measured(book: Book, test: Test) -> str:
    """Who measured, when and with what, so that a printed page answers for it."""
    logged = test.log.channels.values() if test.log else ()
    instruments = dict.fromkeys(
        one.instrument for one in (*test.readings, *logged) if one.instrument
    )
    used = ", ".join(f"{one} ({_calibrated(book, one, test)})" for one in instruments)
    on = f" on {day(test.on)}" if test.on else ", on what day is not recorded"
    return f"measured by {person(book, test.did)}{on}{f', with {used}' if used else ''}"


def _calibrated(book: Book, instrument: str, test: Test) -> str:
    held = book.content.vessel.instruments or {}
    found = calibration_of(instrument, test.on, held, book.components)
    that_day = " that day" if found.state is Calibrated.IN_DATE else ""
    return f"calibration {found.state}{that_day}"


def _path(key: str) -> str:
    """Where a page stands in the site.

    Record and component pages share a folder each; all other keys are paths.
    """
    if is_identifier(key):
        return f"id/{key}"
    return key
