"""Registers of the whole vessel: one table each, everything in it, from A to Z or by date."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import partial

from garboard.book import Book
from garboard.changes.kept_comparisons import Compared
from garboard.records.change import Change
from garboard.records.decision import Decision
from garboard.records.hazard import Hazard
from garboard.records.kinds import KINDS, kind_of
from garboard.views.a_to_z import a_to_z
from garboard.views.draft import Draft
from garboard.views.emergencies import emergencies
from garboard.views.finding_registers import findings, lessons, who_caught_what
from garboard.views.history import value_history
from garboard.views.inline import cell, day, person, shown
from garboard.views.locked_valves import locked_valves
from garboard.views.maintenance import due
from garboard.views.may_it_run import Answer, may_it_run
from garboard.views.messages import worst_first
from garboard.views.milestones import milestones
from garboard.views.night_registers import alarm_register, symptom_register
from garboard.views.notices import notices
from garboard.views.number_index import number_index
from garboard.views.page import (
    Cell,
    Column,
    Download,
    Link,
    Paragraph,
    Plate,
    Row,
    Run,
    Table,
)
from garboard.views.places import place_register
from garboard.views.safety_devices import safety_devices
from garboard.views.spares import spares
from garboard.views.tables import newest_first, record_table
from garboard.views.unknowns import unknowns
from garboard.views.values_data import CSV, JSON
from garboard.views.waiting import waiting_table
from garboard.views.word_register import word_register

__all__ = ["register_drafts"]


def register_drafts(
    book: Book,
    compared: Iterable[Compared] = (),
    answers: Mapping[str, Answer] | None = None,
) -> Iterator[Draft]:
    """Every register, in the order of the contents.

    Args:
        book: The book.
        compared: Editions held against each other, for what was caught between them.
        answers: Whether each system may be run, by its code.
    """
    makers: tuple[tuple[str, str, Callable[[Draft], None]], ...] = (
        ("emergencies", "Emergencies", emergencies),
        ("alarms", "Alarms", alarm_register),
        ("symptoms", "What the crew notices", symptom_register),
        ("may-it-be-run", "May it be run?", partial(may_it_run, answers=answers or {})),
        ("hazards", "What could hurt you", _hazards),
        ("safety-devices", "Safety devices", safety_devices),
        ("locked-valves", "Locked valves", locked_valves),
        ("numbers", "What a number is here", number_index),
        ("places", "Where things are", place_register),
        ("a-to-z", "Everything from A to Z", a_to_z),
        ("tags", "Tags, A to Z", _tags),
        ("values", "Values and where they come from", _values),
        ("records", "Records, A to Z", _records),
        ("decisions", "Decisions by date", _decisions),
        ("findings", "Findings", findings),
        ("who-caught-what", "Who caught what", partial(who_caught_what, compared=compared)),
        ("lessons", "Lessons", lessons),
        ("sources", "Sources", _sources),
        ("glossary", "Words", word_register),
        ("unknowns", "What we do not know", unknowns),
        ("due", "What is due", due),
        ("milestones", "What must be done, and before what", milestones),
        ("spares", "Spares", spares),
        ("notices", "Notices to holders", notices),
        ("to-be-filed", "To be filed", _unfiled),
    )
    for key, title, fill in makers:
        draft = Draft(book, f"registers/{key}", title, "register")
        fill(draft)
        yield draft


def _system(book: Book, code: str) -> str:
    system = book.systems.get(code)
    return system.title if system else code


def _hazards(draft: Draft) -> None:
    found = worst_first(list(draft.book.of_kind(Hazard)))
    names = ("source", "where_", "severity")
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
