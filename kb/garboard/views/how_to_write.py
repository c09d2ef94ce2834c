"""The pages for whoever writes: kinds of parts, kinds of records, and how lines are written.

Everything but the examples is made from the tables and questions that the reader of files itself goes by.
"""

from dataclasses import fields

from garboard.book import Book
from garboard.calc.functions import CONSTANTS, FUNCTIONS
from garboard.reading.shapes import keys_of, words_for
from garboard.records.base import Asked, Record
from garboard.records.component import Component
from garboard.records.component_kinds import EVERY_KIND, KINDS, ComponentKind
from garboard.records.kinds import KINDS as RECORD_KINDS
from garboard.records.kinds import Kind
from garboard.records.questions import meaning_of, questions_of
from garboard.records.system import OUTSIDE
from garboard.systems.behaviour import BEHAVIOURS
from garboard.views.draft import Draft
from garboard.views.page import Column, Heading, Paragraph, Row, Table

__all__ = ["LINES", "RUNS", "parts_draft", "records_draft", "writing_draft"]

RUNS = (
    ("CP-001 > NV-001 > AR-001", "it flows from left to right through each part"),
    ("CP-001 > filling line > AR-001", "a name under headers: is a pipe that several runs share"),
    ("filling line > PS-003", "it branches off the shared pipe"),
    ("AR-001.relief > RV-002", "behind the dot stands a port; a vessel may have ports of any name"),
    ("AR-001.drain > HV-003 > overboard", f"an end outside: one of {', '.join(OUTSIDE)}"),
)
LINES = (
    ("p = 30 bar(g) +/- 0.5 bar  # cut-out [assumed]", "a number, what it is, where it is from"),
    ("one = 0.3 m3 +/- 10 %  # free air a start [assumed]", "a tolerance in per cent"),
    ("V = SA-AR-001.volume", "a number of a part; site.atmosphere is one of handbook.yml"),
    ("air = V * difference(p) / site.atmosphere", "+ - * / ^ and brackets; units are checked"),
    ("n = floor(air / one)", "a function, see below"),
    ("t = air / (200 L/min) in min", "the unit in which the result is shown"),
    ("require n >= 6  # asked by the surveyor [assumed]", "what must hold: at its worst corner"),
)


def parts_draft(book: Book) -> Draft:
    """Every kind of part, and every property."""
    draft = Draft(book, "manual/kinds-of-parts", "Kinds of parts", "manual")
    draft.add(
        Paragraph(
            (
                "A part stands under components: in system.yml, by its tag: the letters of its kind and"
                " three figures. What is not asked for may be left out.",
            )
        )
    )
    titles = ("kind", "letters", "asked for", "further numbers", "stands", "ports")
    rows = tuple(Row(((kind.name,), *_told(kind))) for kind in KINDS)
    draft.add(Table("Kinds", tuple(Column(title) for title in titles), rows))
    questions, keys = questions_of(Component), keys_of(Component)
    asks = tuple(
        Row(((key,), (_plain(questions.get(one.name, "")),), (words_for(one.hint),)))
        for key, one in keys.items()
    )
    columns = (Column("property"), Column("what it says"), Column("written as"))
    draft.add(Table("Properties of a part", columns, asks))
    numbers = ", ".join(EVERY_KIND)
    draft.add(Paragraph((f"Numbers that a part of every kind may have: {numbers}.",)))
    return draft


def _told(kind: ComponentKind) -> tuple[tuple[str], ...]:
    behaviour = BEHAVIOURS[kind.name]
    ports = ", ".join((*behaviour.ports, *(("any other",) if behaviour.any_port else ())))
    further = tuple(one for one in kind.knows if one not in kind.asks)
    stands = "positions of its own" if kind.positions else " or ".join(kind.usual)
    said = (", ".join(kind.letters), ", ".join(kind.asks), ", ".join(further), stands, ports)
    return tuple((one or "none",) for one in said)


def records_draft(book: Book) -> Draft:
    """Every kind of record, with what it asks."""
    draft = Draft(book, "manual/kinds-of-records", "Kinds of records", "manual")
    draft.add(
        Paragraph(("garboard new KIND SYSTEM starts one, with these questions as comments in it.",))
    )
    common = {item.name for item in fields(Record)}
    for kind in RECORD_KINDS:
        draft.add(Heading(f"{kind.letters} {kind.name}"), Paragraph((meaning_of(kind.record),)))
        draft.add(_questions(f"What a {kind.name} says", kind, common, own=True))
    draft.add(Heading("Every record"))
    draft.add(_questions("What any record may say", RECORD_KINDS[0], common, own=False))
    return draft


def _questions(caption: str, kind: Kind, common: set[str], *, own: bool) -> Table:
    questions, keys = questions_of(kind.record), keys_of(kind.record)
    rows = []
    for item in fields(kind.record):
        key = keys.get(item.name.rstrip("_"))
        if key is None or item.metadata.get("beside") or (item.name in common) is own:
            continue
        asked = item.metadata.get("asked", Asked())
        told = (key.key, _plain(questions.get(key.name, "")), words_for(key.hint))
        rows.append(Row((*((one,) for one in told), (_wanted(asked, kind),))))
    titles = ("key", "question", "written as", "wanted")
    return Table(caption, tuple(Column(title) for title in titles), tuple(rows))


def _wanted(asked: Asked, kind: Kind) -> str:
    if asked.later:
        return "later, when it has happened"
    if asked.before_leaving_start:
        return f"before it leaves {kind.machine.start}"
    if asked.classes:
        return f"of class {' and '.join(asked.classes)}, at rest"
    return "where it helps"


def writing_draft(book: Book) -> Draft:
    """How connections, calculations, sources and concessions are written."""
    draft = Draft(book, "manual/how-to-write", "How to write it", "manual")
    columns = (Column("written"), Column("means"))
    draft.add(
        Table("Connections, in system.yml", columns, _examples(RUNS)),
        Table("Calculations, between ```calc NAME and ```", columns, _examples(LINES)),
        Paragraph(
            (
                f"Functions: {', '.join(FUNCTIONS)}; {', '.join(CONSTANTS)}. A gauge pressure is not"
                " multiplied: absolute(p) counts it from nothing, difference(p) takes the reading. The"
                " bundled methods are called by name, each with its page under Methods.",
            )
        ),
        Heading("A new system"),
        Paragraph(
            (
                "Make systems/NAME/system.yml with system: and its two capital letters, title:, status:"
                " sketch, purpose:, medium:, components: and connections:, and name it in handbook.yml:"
                " systems: {BG: bilge, SA: NAME}.",
            )
        ),
        Heading("A source"),
        Paragraph(
            (
                "Each name in square brackets is a key of sources.yml: plate-R1: {title: plate of"
                " receiver 1, edition: 1961, seen: original, by: lead}. It may also be the id of a test,"
                " or assumed, which every page then says.",
            )
        ),
        Heading("What has to stay as it is"),
        Paragraph(
            (
                "garboard new concession SYSTEM, with the fingerprint that garboard check printed under"
                " the finding. It has a day on which it ends, and it ends at once when the layout changes"
                " what was found.",
            )
        ),
    )
    return draft


def _examples(pairs: tuple[tuple[str, str], ...]) -> tuple[Row, ...]:
    return tuple(Row(((written,), (means,))) for written, means in pairs)


def _plain(text: str) -> str:
    return text.replace("`", "")
