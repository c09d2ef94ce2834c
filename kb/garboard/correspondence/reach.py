"""What follows from it: numbers, records, procedures, alarms, cards, tests, and where else it is so."""

from collections.abc import Iterable, Iterator

from garboard.book import Book
from garboard.calc.value import ASSUMED
from garboard.changes.comparison import Caution
from garboard.correspondence.figures import Figure
from garboard.correspondence.pack import Line, Part, Sort, fact, point, say
from garboard.correspondence.subject import Subject
from garboard.correspondence.weakened import Shifted
from garboard.records.change import Change
from garboard.records.inspection import Test
from garboard.records.standing import kind_name
from garboard.views.inline import person, title_of
from garboard.views.tables import stands

__all__ = [
    "alarms",
    "cards",
    "moved_words",
    "numbers",
    "procedures",
    "rests_on_it",
    "tests",
    "where_else",
]

ELSEWHERE = ("procedure", "hazard", "alarm", "test", "plan line")
"""Kinds that have a part of their own."""


def numbers(subject: Subject) -> Part:
    """Before, after, change, limit and margins; most margin lost first."""
    lines = [say(subject.before.words)]
    lines += [_figures(number, one) for number, one in enumerate(subject.numbers, 1)]
    if subject.still:
        lines.append(say(f"{subject.still} more numbers rest on it and did not move."))
    if not subject.numbers:
        lines.append(say("It moves and quotes no number."))
    return Part("Numbers, most margin lost first", tuple(lines), cut=6)


def _figures(number: int, one: Figure) -> Line:
    cells = [
        ("before", one.before or "no before"),
        ("after", one.after),
        (
            "change",
            one.change or ("not told" if one.before != one.after and one.before else "none"),
        ),
    ]
    if one.limit:
        cells += [
            ("limit", f"{one.limit} [{one.source}]"),
            ("margin before", one.margin(one.margin_before) if one.before else "no before"),
            ("margin after", one.margin(one.margin_after)),
            ("stands", one.verdict or "not asked any more"),
        ]
    if one.guess:
        cells.append(("take care", one.guess.upper() if one.guess == ASSUMED else one.guess))
    return Line(Sort.FIGURES, f"{number}. {one.name}", cells=tuple(cells))


def rests_on_it(subject: Subject) -> Part:
    """Records and pages that quote, use or name what it moves."""
    book = subject.book
    own = [key for key in subject.touched.records if key != subject.key]
    rest = [key for key in own if kind_name(book.records[key]) not in ELSEWHERE]
    lines = [point(_named(book, key)) for key in rest]
    titles = {page.where.path: page.title for page in book.content.pages}
    lines += [
        point(f"written page {titles.get(path) or path}")
        for path in subject.touched.pages
        if path != subject.key
    ]
    lines += [
        point(f"{person(book, key)} has shown to master {procedure} and must be told")
        for key, procedure in subject.touched.people
    ]
    lines += [
        point(f"spare {one}, {book.content.spares[one].name}") for one in subject.touched.spares
    ]
    return Part("What now rests on it", tuple(lines) or (say("Nothing else does."),), cut=2)


def _named(book: Book, key: str) -> str:
    record = book.records[key]
    return f"{kind_name(record)} {key}, {record.title} ({stands(book, record)})"


def procedures(subject: Subject) -> Part:
    """Procedures and safety messages that are touched, and what guards its parts."""
    lines: list[Line] = []
    known = subject.before.book is not None and not subject.before.put_back
    for how in subject.shifts:
        record = subject.book.records.get(how.about)
        if record is None and not (how.weaker or how.others):
            continue
        state = f" ({stands(subject.book, record)})" if record else ""
        kind = f"{kind_name(record)} " if record else ""
        lines.append(point(f"{kind}{how.about}, {how.title}{state}"))
        lines += _told(how, known=known)
    if lines and not known:
        lines.append(
            say("Whether any of them became weaker is not known: nothing was issued before.")
        )
    none = (say("No procedure and no safety message is touched."),)
    return Part("Procedures and cautions touched, weakened first", tuple(lines) or none, cut=4)


def _told(how: Shifted, *, known: bool) -> Iterator[Line]:
    if how.new:
        yield fact("new", "it was not there before")
    for one in how.weaker:
        yield fact("WEAKER", moved_words(one))
    for one in how.others:
        yield fact(str(one.strength), moved_words(one))
    if known and how.reworded and not (how.weaker or how.others):
        yield fact("changed", "its words, not what warns or guards")


def moved_words(one: Caution) -> str:
    """What became of one thing: `message before step 5: from SA-HZ-002 to nothing`."""
    return f"{one.what}: from {one.before or 'nothing'} to {one.after or 'nothing'}"


def alarms(subject: Subject) -> Part:
    """Alarms that are touched, as the panel words them."""
    book = subject.book
    lines = []
    for key in subject.touched.of_kind(book, "alarm"):
        record = book.records[key]
        wording = getattr(record, "wording", None) or record.title
        address = getattr(record, "set", None)
        value = book.show(address) if address else None
        setting = (
            f", at {value or 'not recorded'} {getattr(record, 'direction', None) or ''}".rstrip()
        )
        lines.append(point(f'{key} "{wording}"{setting} ({stands(subject.book, record)})'))
    return Part("Alarms", tuple(lines) or (say("No alarm is touched."),), cut=7)


def cards(subject: Subject) -> Part:
    """Cards that hang somewhere and are of something that is touched."""
    lines = tuple(
        point(f"card {one.card} of {one.of}, {title_of(subject.book, one.of)}: {one.place}")
        for one in subject.touched.cards
    )
    return Part("Cards that hang", lines or (say("No card is touched."),), cut=7)


def tests(subject: Subject) -> Part:
    """Tests that prove nothing any more, those that take their place, and others of the same parts."""
    book, record = subject.book, subject.record
    lines: list[Line] = []
    voids = record.voids if isinstance(record, Change) else ()
    again = record.retests if isinstance(record, Change) else ()
    lines += [fact("void", _test(book, key)) for key in voids]
    lines += [fact("done again", _test(book, key)) for key in again]
    if isinstance(record, Change) and not voids:
        lines.append(fact("void", "none named"))
    if isinstance(record, Change) and not again:
        lines.append(fact("done again", "none named"))
    named = {*voids, *again, subject.key}
    others = [key for key in subject.touched.of_kind(book, "test", "plan line") if key not in named]
    lines += [fact("touched too", _test(book, key)) for key in others]
    return Part("Tests voided and re-tests", tuple(lines) or (say("No test is touched."),), cut=3)


def _test(book: Book, key: str) -> str:
    record = book.records.get(key)
    if record is None:
        return f"{key}, not recorded"
    result = f", {record.result}" if isinstance(record, Test) and record.result else ""
    return f"{key}, {record.title}{result} ({stands(book, record)})"


def where_else(subject: Subject) -> Part:
    """Other parts of the same kind: the same may be so there."""
    lines = tuple(_alike(subject.book, subject.tags))
    none = (say("It names no part." if not subject.tags else "No other part is of the same kind."),)
    return Part("Where else: parts of the same kind", lines or none, cut=1)


def _alike(book: Book, tags: Iterable[str]) -> Iterator[Line]:
    kinds = dict.fromkeys(book.components[tag].kind for tag in tags)
    mine = set(tags)
    for kind in kinds:
        for tag, part in sorted(book.components.items()):
            if part.kind == kind and tag not in mine:
                yield point(
                    f"{kind} {tag}, {part.name or 'no name'}, {part.place or 'place not recorded'}"
                )
