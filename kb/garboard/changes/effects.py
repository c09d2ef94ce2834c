"""What must be seen to because two books differ: cards, people, tests, pages, spares."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping

from garboard.book import Book
from garboard.changes.comparison import Affected, Caution, Entry, Number, Sort, StepChange
from garboard.changes.hanging import record_of
from garboard.changes.touched import touched_by
from garboard.records.base import Class, bare_id
from garboard.records.card_shown import ListedCard, shown_otherwise
from garboard.records.change import Change
from garboard.records.inspection import Test
from garboard.records.people import PersonEntry
from garboard.records.standing import has_left
from garboard.records.vessel import Card
from garboard.review.covers import Cover

__all__ = [
    "REWORDED",
    "TOUCHED",
    "cards_to_print",
    "pages_moved",
    "people_to_tell",
    "spares_moved",
    "tests_voided",
]

TOUCHED = "touched"
REWORDED = "says something else"
MOVING = (Sort.MOVED, Sort.NEW, Sort.GONE)


def cards_to_print(old: Book, new: Book) -> Iterator[Affected]:
    """Cards that hang and no longer say what they should, with their places; new ones; ended ones."""
    before = {one.card: one for one in _hanging(old)}
    after = {one.card: one for one in _hanging(new)}
    for number in sorted({*before, *after}):
        here, there = before.get(number), after.get(number)
        if there is None:
            if here is not None:
                yield _card(here, ("take it down: it hangs in no list any more",))
            continue
        why = tuple(_out_of_date(old, new, here, there))
        if why:
            yield _card(there, why)


def _hanging(book: Book) -> Iterator[Card]:
    return (one for one in book.content.vessel.cards if one.removed is None)


def _card(card: Card, why: tuple[str, ...]) -> Affected:
    return Affected(name=card.card, what=f"{card.of}, {card.place}", why=why)


def _out_of_date(old: Book, new: Book, here: Card | None, there: Card) -> Iterator[str]:
    if here is None or here.of != there.of:
        yield "print it: it is new" if here is None else f"print it: it was of {here.of}"
        return
    record = new.records.get(bare_id(there.of))
    if record is None or has_left(record):
        yield "take it down: what it is of is no longer in force"
        return
    if here.place != there.place:
        yield f"hang it here: the place was {here.place}"
    before, after = _listed(old, here), _listed(new, there)
    if before and after:
        yield from shown_otherwise(before, after)
    yield from _moved_under(_cover(old, there.of), _cover(new, there.of))


def _listed(book: Book, card: Card) -> ListedCard | None:
    record = record_of(book, card)
    return ListedCard(card, record, tuple(_hanging(book))) if record else None


def _cover(book: Book, key: str) -> Cover | None:
    reviewed = book.reviews.get(bare_id(key))
    return reviewed.cover if reviewed else None


def _moved_under(before: Cover | None, after: Cover | None) -> Iterator[str]:
    """What of all that a record says, quotes and rests on is not as it was."""
    if before is None or after is None:
        return
    if before.whole != after.whole:
        yield "its own words"
    for rows in ((before.values, after.values), (before.answers, after.answers)):
        for name in sorted({*rows[0], *rows[1]}):
            one, other = rows[0].get(name), rows[1].get(name)
            if one is not None and other is not None and one != other:
                yield f"{name}: {one} -> {other}"
    for name in sorted(before.records.keys() & after.records.keys()):
        if before.records[name] != after.records[name]:
            yield f"{name} has changed"


def people_to_tell(
    new: Book, steps: Iterable[StepChange], cautions: Iterable[Caution]
) -> Iterator[Affected]:
    """People by role: who masters a procedure whose steps changed; everybody aboard for class A warnings."""
    changed = _by_procedure(steps, cautions)
    for person in new.content.people.values():
        for one in person.competence:
            words = changed.get(bare_id(one.procedure))
            if words:
                yield Affected(name=person.role, what=bare_id(one.procedure), why=(words,))
    grave = [f"{one.about}: {one.what} {one.strength}" for one in cautions if one.weight == Class.A]
    if not grave:
        return
    aboard = Counter(one.role for one in new.content.people.values() if _aboard(new, one))
    if aboard:
        roles = (role if count == 1 else f"{role} ({count})" for role, count in aboard.items())
        why = tuple(dict.fromkeys(grave))
        yield Affected(name=", ".join(roles), what="everybody aboard", why=why)


def _aboard(book: Book, person: PersonEntry) -> bool:
    today = book.today
    return any(one.from_ <= today and (one.to is None or today <= one.to) for one in person.aboard)


def _by_procedure(steps: Iterable[StepChange], cautions: Iterable[Caution]) -> Mapping[str, str]:
    """What changed in each procedure, in words."""
    found: dict[str, Counter[tuple[str, str]]] = {}
    for step in steps:
        found.setdefault(step.procedure, Counter())["step", WORDS[step.sort]] += 1
    for one in cautions:
        if " at step " in one.what:
            found.setdefault(one.about, Counter())["guard of a step", str(one.strength)] += 1
    return {
        key: ", ".join(f"{thing} {word}: {count}" for (thing, word), count in counts.items())
        for key, counts in found.items()
    }


WORDS = {
    Sort.NEW: "added",
    Sort.GONE: "removed",
    Sort.CHANGED: "reworded",
    Sort.MOVED: "moved",
}


def tests_voided(old: Book, new: Book, numbers: Iterable[Number]) -> Iterator[Affected]:
    """Tests that prove how things were: a value they name, a part, their procedure or line moved since."""
    moved = {
        one.address: f"{one.address}: {one.before} -> {one.after}"
        for one in numbers
        if one.sort in MOVING
    }
    voided: dict[str, list[str]] = {}
    for change in new.of_kind(Change):
        before = old.records.get(str(change.id))
        known = before.voids if isinstance(before, Change) else ()
        for name in change.voids:
            if name not in known:
                voided.setdefault(bare_id(name), []).append(f"{change.id} voids it")
    for test in new.of_kind(Test):
        key = str(test.id)
        was = old.records.get(key)
        if not isinstance(was, Test) or has_left(test):
            continue
        why = [*voided.get(key, ()), *_overtaken(old, new, test, moved)]
        if why:
            yield Affected(name=key, what=test.title, why=tuple(dict.fromkeys(why)))


def _overtaken(old: Book, new: Book, test: Test, moved: Mapping[str, str]) -> Iterator[str]:
    cover = _cover(new, str(test.id))
    if cover is not None:
        yield from (moved[address] for address in cover.values if address in moved)
    for one in test.tested:
        yield from (words for address, words in moved.items() if address.startswith(f"{one.tag}."))
        before, after = old.components.get(one.tag), new.components.get(one.tag)
        if before is not None and after is None:
            yield f"{one.tag} is gone"
        elif before and after and (before.item, before.kind) != (after.item, after.kind):
            yield f"{one.tag} is another item"
    was = _cover(old, str(test.id))
    if cover and was:
        names = sorted(was.records.keys() & cover.records.keys())
        yield from (
            f"{name} has changed" for name in names if was.records[name] != cover.records[name]
        )


def pages_moved(
    new: Book,
    numbers: Iterable[Number],
    entries: Iterable[Entry],
    listed: tuple[Mapping[str, tuple[str, str]], Mapping[str, tuple[str, str]]] | None,
) -> Iterator[Affected]:
    """Pages that say something else.

    Args:
        new: The newer book.
        numbers: Its numbers that are not as they were.
        entries: Its records and parts that are not.
        listed: Title and digest of each page by key, before and after; without them the pages are
            those of what is touched.
    """
    if listed is not None:
        yield from _by_digest(*listed)
        return
    names = [one.name for one in entries if one.sort is not Sort.GONE]
    found = touched_by(new, [one.address for one in numbers], names)
    for key in (*found.records, *found.tags, *found.pages):
        thing = new.records.get(key)
        part = new.components.get(key)
        page = next((one for one in new.content.pages if one.where.path == key), None)
        title = thing.title if thing else (part.name or part.kind) if part else ""
        yield Affected(name=key, what=title or (page.title if page else ""), why=(TOUCHED,))


def _by_digest(
    before: Mapping[str, tuple[str, str]], after: Mapping[str, tuple[str, str]]
) -> Iterator[Affected]:
    for key in {**before, **after}:
        one, other = before.get(key), after.get(key)
        if one is None or other is None:
            known = other or one
            word = "new" if one is None else "gone"
            yield Affected(name=key, what=known[0] if known else "", why=(word,))
        elif one[1] != other[1]:
            yield Affected(name=key, what=other[0], why=(REWORDED,))


def spares_moved(new: Book, entries: Iterable[Entry]) -> Iterator[Affected]:
    """Spares that fit a part that is not as it was, or that are listed otherwise."""
    parts = {one.name: one for one in entries if one.kind == "part"}
    own = {one.name: one for one in entries if one.kind == "spare" and one.sort is not Sort.GONE}
    touched = set(touched_by(new, names=parts).spares)
    for key in sorted(touched | own.keys()):
        spare = new.content.spares.get(key)
        if spare is None:
            continue
        why = [f"fits {tag}: {_what(parts[tag])}" for tag in spare.fits if tag in parts]
        if key in own:
            why.append(f"listed otherwise: {_what(own[key])}")
        yield Affected(name=key, what=spare.name, why=tuple(why))


def _what(entry: Entry) -> str:
    return ", ".join(entry.fields) if entry.sort is Sort.CHANGED else str(entry.sort)
