"""Registers of the whole vessel: one table each, everything in it, from A to Z or by date."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from functools import partial

from garboard.book import Book
from garboard.changes.kept_comparisons import Compared
from garboard.records.alarm import Alarm, Fault
from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.hazard import Hazard
from garboard.records.kinds import KINDS, kind_of
from garboard.views.draft import Draft
from garboard.views.finding_registers import findings, lessons, who_caught_what
from garboard.views.history import value_history
from garboard.views.inline import cell, day, person, shown
from garboard.views.locked_valves import locked_valves
from garboard.views.maintenance import due
from garboard.views.messages import worst_first
from garboard.views.notices import notices
from garboard.views.page import (
    Bullets,
    Cell,
    Column,
    Download,
    Heading,
    Link,
    Paragraph,
    Plate,
    Row,
    Run,
    Table,
    Tiles,
)
from garboard.views.safety_devices import safety_devices
from garboard.views.spares import spares
from garboard.views.tables import newest_first, record_table
from garboard.views.values_data import CSV, JSON
from garboard.views.waiting import waiting_table

__all__ = ["register_drafts"]


def register_drafts(book: Book, compared: Iterable[Compared] = ()) -> Iterator[Draft]:
    """Every register, in the order of the contents.

    Args:
        book: The book.
        compared: Editions held against each other, for what was caught between them.
    """
    makers: tuple[tuple[str, str, Callable[[Draft], None]], ...] = (
        ("alarms", "Alarms", _alarms),
        ("symptoms", "What the crew notices", _symptoms),
        ("hazards", "What could hurt you", _hazards),
        ("safety-devices", "Safety devices", safety_devices),
        ("locked-valves", "Locked valves", locked_valves),
        ("tags", "Tags, A to Z", _tags),
        ("values", "Values and where they come from", _values),
        ("records", "Records, A to Z", _records),
        ("decisions", "Decisions by date", _decisions),
        ("findings", "Findings", findings),
        ("who-caught-what", "Who caught what", partial(who_caught_what, compared=compared)),
        ("lessons", "Lessons", lessons),
        ("sources", "Sources", _sources),
        ("glossary", "Words", _glossary),
        ("unknowns", "What we do not know", _unknowns),
        ("due", "What is due", due),
        ("spares", "Spares", spares),
        ("notices", "Notices to holders", notices),
        ("people", "Who may do what", _people),
        ("to-be-filed", "To be filed", _unfiled),
    )
    for key, title, fill in makers:
        draft = Draft(book, f"registers/{key}", title, "register")
        fill(draft)
        yield draft


def _alarms(draft: Draft) -> None:
    found = sorted(draft.book.of_kind(Alarm), key=lambda one: one.wording or one.title)
    tiles = tuple(
        (Link(str(one.id), one.wording or one.title), _system(draft.book, one.system))
        for one in found
    )
    draft.add(Paragraph(("Each alarm as the panel words it.",)), Tiles(tiles))
    draft.add(record_table(draft.book, "Settings", found, "tag", "set", "direction", "priority"))


def _system(book: Book, code: str) -> str:
    system = book.systems.get(code)
    return system.title if system else code


def _symptoms(draft: Draft) -> None:
    rows = []
    for fault in draft.book.of_kind(Fault):
        for symptom in fault.symptoms:
            link: Cell = (Link(str(fault.id), fault.title),)
            rows.append(
                (symptom.casefold(), Row(((symptom,), link, (_system(draft.book, fault.system),))))
            )
    columns = tuple(Column(title) for title in ("what is noticed", "go to", "system"))
    draft.add(
        Table(
            "Symptoms, A to Z",
            columns,
            tuple(row for _, row in sorted(rows, key=lambda one: one[0])),
        )
    )


def _hazards(draft: Draft) -> None:
    found = worst_first(list(draft.book.of_kind(Hazard)))
    names = ("source", "where_", "severity", "likelihood", "review_on")
    draft.add(record_table(draft.book, "Hazards, worst first", found, *names))


def _tags(draft: Draft) -> None:
    book = draft.book
    rows = tuple(
        Row(((Plate(tag),), (part.name or "",), (part.kind,), (part.place or "not recorded",)), tag)
        for tag, part in sorted(book.components.items())
    )
    draft.add(Table("Tags", tuple(Column(one) for one in ("tag", "name", "kind", "place")), rows))


def _values(draft: Draft) -> None:
    book = draft.book
    rows = []
    for address, value in sorted(book.values.items()):
        refs = "".join(f"[{number}]" for number in draft.cite(*value.sources))
        how = refs or ("no source recorded" if value.given else "worked out")
        rows.append(Row(((address,), (shown(book, address),), (value.label,), (how,)), address))
    columns = (
        Column("address"),
        Column("value", number=True, strong=True),
        Column("what"),
        Column("source"),
    )
    files: Cell = (
        "The same as files: ",
        Download(CSV, CSV),
        ", ",
        Download(JSON, JSON),
        "; field by field on ",
        Link("manual/numbers-as-data", "Numbers as data"),
        ".",
    )
    draft.add(Paragraph(files), Table("Values", columns, tuple(rows)))


def _records(draft: Draft) -> None:
    book = draft.book
    for kind in KINDS:
        found = [record for record in book.records.values() if kind_of(record) is kind]
        if found:
            draft.add(record_table(book, kind.plural.capitalize(), found))


def _decisions(draft: Draft) -> None:
    book = draft.book
    found = newest_first(book.of_kind(Decision))
    draft.add(record_table(book, "Decisions, newest first", found, "drafted", "question", "chosen"))
    draft.add(value_history(draft, list(book.of_kind(Change))))


def _sources(draft: Draft) -> None:
    book = draft.book
    cited: dict[str, set[str]] = defaultdict(set)
    for item in book.mentions:
        if item.to in book.content.sources:
            cited[item.to].add(item.by)
    for value in book.values.values():
        for citation in value.sources:
            cited[citation.source].add(value.address.split(".")[0])
    rows = []
    for key, source in sorted(book.content.sources.items()):
        users: list[Run] = []
        for user in sorted(cited[key]):
            users += [_user(book, user), " "]
        read = f"{source.seen or 'not recorded'}, {person(book, source.by)}"
        cells: tuple[Cell, ...] = (
            (key,),
            (source.title,),
            (source.edition or "not recorded",),
            (read,),
            tuple(users) or ("nothing",),
        )
        rows.append(Row(cells, key))
    columns = tuple(Column(one) for one in ("source", "title", "edition", "read", "used by"))
    draft.add(Table("Sources", columns, tuple(rows)))


def _user(book: Book, user: str) -> Run:
    if user in book.network.sheets:
        return Link(user, user)
    return cell(book, user)[0] if user else user


def _glossary(draft: Draft) -> None:
    rows = []
    for key, term in sorted(draft.book.content.glossary.items(), key=lambda one: one[0].casefold()):
        meaning: Cell = (term.means, f" Not: {term.not_}" if term.not_ else "")
        cells: tuple[Cell, ...] = (
            (key,),
            meaning,
            (", ".join(term.crew_words),),
            (term.abbreviation or "",),
        )
        rows.append(Row(cells, key.replace(" ", "-")))
    columns = tuple(Column(one) for one in ("word", "means", "the crew says", "short"))
    draft.add(Table("Words of the trade", columns, tuple(rows)))


def _unknowns(draft: Draft) -> None:
    book = draft.book
    gaps: list[Cell] = []
    for record in book.records.values():
        gaps += [
            (Link(str(record.id), str(record.id)), ": ", *cell(book, gap)) for gap in record.gaps
        ]
    for system in book.systems.values():
        gaps += [(f"{system.title}: ", *cell(book, gap)) for gap in system.gaps]
    for page in book.content.pages:
        gaps += [(f"{page.title}: ", *cell(book, gap)) for gap in page.gaps]
    guesses: list[Cell] = [
        (shown(book, value.address), f" {value.label} ({value.address})")
        for value in book.values.values()
        if any(citation.source == "assumed" for citation in value.sources)
    ]
    broken: list[Cell] = [
        (f"{value.address}: {value.fault.text if value.fault else 'not computed'}",)
        for value in book.values.values()
        if value.si is None
    ]
    for title, items in (
        ("Known to be missing", gaps),
        ("Assumed", guesses),
        ("Not computed", broken),
    ):
        draft.add(Heading(title))
        draft.add(Bullets(tuple(items)) if items else Paragraph(("None entered.",)))


def _people(draft: Draft) -> None:
    rows = []
    for one in draft.book.content.people.values():
        may = ", ".join(str(capacity) for capacity in one.may)
        proved = ", ".join(
            f"{item.procedure} {item.level or ''}".strip() for item in one.competence
        )
        scope = f"class {one.class_}" if one.class_ else "every class"
        rows.append(
            Row(((one.role,), (may,), (scope,), cell(draft.book, proved) or ("none recorded",)))
        )
    columns = tuple(Column(one) for one in ("role", "may act as", "up to", "has shown"))
    draft.add(Paragraph(("People are shown by role only.",), quiet=True))
    draft.add(Table("Roles", columns, tuple(rows)))


def _unfiled(draft: Draft) -> None:
    book = draft.book
    draft.add(
        Paragraph(("Entries that have no id yet. They stand in no edition until they are filed.",))
    )
    rows = tuple(
        Row(
            (
                (one.title,),
                (_system(book, one.system),),
                (one.text.strip(),),
                (one.where.path,),
                (day(one.drafted),),
            )
        )
        for one in book.content.unfiled
    )
    columns = tuple(Column(one) for one in ("title", "system", "says", "file", "drafted"))
    draft.add(Table("To be filed", columns, rows, "none"), *waiting_table(book))
