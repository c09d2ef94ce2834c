"""The pages for whoever writes: kinds of parts, and how lines are written.

Everything but the examples is made from the tables and questions that the reader of files itself goes by.
"""

from garboard.book import Book
from garboard.calc.functions import CONSTANTS, FUNCTIONS
from garboard.calc.unit_names import LIBRARY_NAMES
from garboard.reading.shapes import keys_of, words_for
from garboard.records.component import Component
from garboard.records.component_kinds import EVERY_KIND, KINDS, ComponentKind, position_word
from garboard.records.questions import questions_of
from garboard.records.system import OUTSIDE
from garboard.systems.behaviour import BEHAVIOURS
from garboard.views.draft import Draft
from garboard.views.kinds_of_records import inner_rows, plain
from garboard.views.page import Column, Heading, Paragraph, Row, Table

__all__ = ["LINES", "RUNS", "WORDS", "parts_draft", "writing_draft"]

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
    ("E = gas_test_stored_energy(V = V, p_test = p)", "a bundled method, arguments by name"),
    ("t = air / (200 L/min) in min", "the unit in which the result is shown"),
    ("require n >= 6  # asked by the surveyor [assumed]", "what must hold: at its worst corner"),
)
WORDS = (
    ("[](value:sums.n)", "the number, filled in; what you type between the brackets is checked"),
    ("[](value:sums.air?in=L)", "the same in another unit"),
    ("SA-RV-002, SA-CL-001", "the page of that part or record"),
    ("calc sums; what-if p", "behind ```: a field for p on the page; digits 3, hide working"),
)


def parts_draft(book: Book) -> Draft:
    """Every kind of part, and every property."""
    draft = Draft(book, "manual/kinds-of-parts", "Kinds of parts", "manual")
    draft.add(
        Paragraph(
            (
                "A part stands under components: in system.yml, by its tag: the letters of its kind and"
                ' three figures, as in RV-002: {kind: relief valve, name: Relief valve 2, set: "32.5'
                ' bar(g) [cert-RV]"}. What is not asked for may be left out. A number is a quantity with'
                " its unit and source, or the address of a value: SA-RV-002.set,"
                " receiver-sizing.p_max.",
            )
        )
    )
    titles = ("kind", "letters", "asked for", "further numbers", "usual", "ports")
    rows = tuple(Row(((kind.name,), *_told(kind))) for kind in KINDS)
    draft.add(Table("Kinds", tuple(Column(title) for title in titles), rows))
    questions, keys = questions_of(Component), keys_of(Component)
    asks = []
    for key, one in keys.items():
        asks.append(Row(((key,), (plain(questions.get(one.name, "")),), (words_for(one.hint),))))
        asks += [Row(row.cells[:3]) for row in inner_rows(key, one.hint)]
    columns = (Column("property"), Column("what it says"), Column("written as"))
    draft.add(Table("Properties of a part", columns, tuple(asks)))
    numbers = ", ".join(EVERY_KIND)
    draft.add(Paragraph((f"Numbers that a part of every kind may have: {numbers}.",)))
    return draft


def _told(kind: ComponentKind) -> tuple[tuple[str, ...], ...]:
    behaviour = BEHAVIOURS[kind.name]
    ports = ", ".join((*behaviour.ports, *(("any other",) if behaviour.any_port else ())))
    further = tuple(one for one in kind.knows if one not in kind.asks)
    words = (position_word(kind.name, one) for one in kind.usual)
    stands = "a position of its own" if kind.positions else " or ".join(words)
    said = (", ".join(kind.letters), ", ".join(kind.asks), ", ".join(further), stands, ports)
    return tuple((one,) if one else () for one in said)


def writing_draft(book: Book) -> Draft:
    """How connections, calculations, sources and concessions are written."""
    draft = Draft(book, "manual/how-to-write", "How to write it", "manual")
    columns = (Column("written"), Column("means"))
    draft.add(
        Table("Connections, in system.yml", columns, _examples(RUNS)),
        Table("Calculations, between ```calc NAME and ```", columns, _examples(LINES)),
        Paragraph(
            (
                f"Functions: {', '.join(FUNCTIONS)}; {', '.join(CONSTANTS)}. log is the natural"
                " logarithm. interpolate(x, x1, y1, x2, y2, ...) reads a table whose x rise and goes past"
                " neither end; free_air(p, V, T) is what air in V at p and T is at 0 degC and"
                " 1013.25 mbar.",
            )
        ),
        Paragraph(
            (
                "A pressure says what it is counted from: bar(g) from the atmosphere, bar(a) from nothing,"
                " bar(d) a difference. One that is read on a gauge is not multiplied: absolute(p) counts it"
                " from nothing, difference(p) takes the reading.",
            )
        ),
        Paragraph(
            (
                "The page of a bundled method, under Methods, names its arguments and says where it"
                " refuses. Where it has several results they are E.E_isentropic and so on.",
            )
        ),
        Paragraph(
            (f"Units: {', '.join(LIBRARY_NAMES)}; with / . ^ and brackets, as in kJ/(kg.K).",)
        ),
        Heading("In the words of a page"),
        Table("Numbers, parts and records in a text", columns, _examples(WORDS)),
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
