"""Random small handbooks, random edits of them, and a plain count of what those edits must lapse.

Nothing here asks the code under test what a signature covers: a handbook is kept as plain numbers and
words, its values are summed with fractions, and what is said is compared as it was put in.
"""

import random
from dataclasses import dataclass, field
from datetime import date
from decimal import ROUND_HALF_EVEN, Context, Decimal
from fractions import Fraction

from garboard.records.signoff import Capacity, SignOff
from garboard.review.signing import yaml_of

STATE = {"CL": "approved", "DD": "approved", "PR": "issued", "HZ": "accepted", "AL": "issued", "CN": "authorised", "TR": "accepted"}  # fmt: skip
BASE = {
    "handbook.yml": """\
vessel: Skerry Light
defers_to: [flag, class, surveyor, local codes, licensed trades]
systems: {SA: starting-air}
as_of: 2031-10-01
""",
    "people.yml": """\
lead: {role: lead builder, may: [author, doer, in charge]}
reviewer-1: {role: remote reviewer, may: [checker, approver], class: A}
reviewer-2: {role: remote reviewer, may: [checker, approver], class: A}
""",
}
WORDS = "drain shut open slow valve before after watch joint cold".split()
BANDS = (None, None, "1 %", "0.2 %")


@dataclass
class Part:
    """A receiver; its volume in litres."""

    volume: Fraction
    plus_minus: int = 0
    name: str = "receiver"


@dataclass
class Sum:
    """A calculation `x = n * part + other.x + k`, held against a least figure."""

    part: str
    times: int
    plus: str
    k: Fraction
    least: int
    source: str
    label: str = "as told"


@dataclass
class Entry:
    """One record: its words, what it quotes, rests on and merely mentions."""

    key: str
    words: list[str]
    quotes: list[str] = field(default_factory=list)
    rests: list[str] = field(default_factory=list)
    mentions: list[str] = field(default_factory=list)
    sum: Sum | None = None
    later: str = ""
    comment: str = ""
    wide: bool = False
    """Its layout: other key order, blank lines, other quotes."""
    signed: list[SignOff] = field(default_factory=list)

    @property
    def letters(self) -> str:
        """What kind it is."""
        return self.key[3:5]

    def says(self) -> object:
        """All that its own words are."""
        sums = self.sum and (self.sum.part, self.sum.times, self.sum.plus, self.sum.k, self.sum.least, self.sum.source)  # fmt: skip
        return self.words, self.quotes, self.rests, self.mentions, sums


@dataclass
class Book:
    """A small handbook."""

    parts: dict[str, Part]
    sources: dict[str, str]
    entries: dict[str, Entry]

    def value(self, address: str) -> Fraction:
        """A value in litres."""
        owner, _, name = address.partition(".")
        if owner in self.parts:
            return self.parts[owner].volume
        found = self.entries[f"SA-CL-{owner[1:]}"].sum
        assert found
        if name == "k":
            return found.k
        rest = self.value(found.plus) if found.plus else Fraction(0)
        return found.times * self.value(f"{found.part}.volume") + rest + found.k

    def slack(self, address: str) -> int:
        """What the tolerances of all that it is summed from take off it, in litres."""
        owner, _, name = address.partition(".")
        if owner in self.parts:
            return self.parts[owner].plus_minus
        found = self.entries[f"SA-CL-{owner[1:]}"].sum
        assert found
        if name == "k":
            return 0
        rest = self.slack(found.plus) if found.plus else 0
        return found.times * self.slack(f"{found.part}.volume") + rest

    def verdict(self, entry: Entry) -> str:
        """How its requirement stands."""
        assert entry.sum
        block = block_of(entry.key)
        spare = self.value(f"{block}.x") - entry.sum.least
        if spare < 0:
            return "fails"
        return "at worst" if spare >= self.slack(f"{block}.x") else "only at nominal"

    def uses(self, entry: Entry) -> set[str]:
        """Addresses of the values that it quotes, sets or works out from."""
        found = set(entry.quotes)
        if entry.sum:
            block = block_of(entry.key)
            found |= {f"{block}.x", f"{block}.k", f"{entry.sum.part}.volume"}
            found |= {entry.sum.plus} if entry.sum.plus else set()
        return found

    def files(self) -> dict[str, str]:
        """As text."""
        parts = "".join(f"  {tag}: {{kind: receiver, name: {part.name}, volume: {litres(part.volume)}{f' +/- {part.plus_minus} L' if part.plus_minus else ''}}}\n" for tag, part in self.parts.items())  # fmt: skip
        sources = "".join(f"{key}: {{title: book {key}, edition: {edition}, seen: original, by: lead}}\n" for key, edition in self.sources.items())  # fmt: skip
        own = {
            "systems/starting-air/system.yml": f"status: in test\ncomponents:\n{parts}",
            "sources.yml": sources,
        }
        return {**BASE, **own, **{path_of(one): text_of(one) for one in self.entries.values()}}


def block_of(key: str) -> str:
    """The fence of a calculation."""
    return f"c{key[6:]}"


def litres(number: Fraction) -> str:
    """As typed: a plain decimal."""
    return f"{Decimal(number.numerator) / Decimal(number.denominator):f} L"


def path_of(entry: Entry) -> str:
    """Where its file lies."""
    if entry.letters in ("DD", "CN"):
        return f"log/2031/2031-03-10-{entry.key.lower()}.md"
    return f"systems/starting-air/{entry.key.lower()}.md"


def text_of(entry: Entry) -> str:
    """A record as a file."""
    keys = [f"id: {entry.key}", f"title: Thing {entry.key[6:]}", "system: SA", "class: A", "author: lead", "drafted: 2031-03-10", f"state: {STATE[entry.letters]}"]  # fmt: skip
    keys += resting(entry)
    if entry.mentions:
        keys.append(f"affects: [{', '.join(entry.mentions)}]")
    if entry.wide:
        keys = [*keys[:1], *reversed(keys[1:]), "# laid out anew"]
    if entry.later:
        keys.append(entry.later)
    if entry.signed:
        keys.append("\n".join(("signed:", *(f"  - {yaml_of(line)}" for line in entry.signed))))
    gap = "\n\n\n" if entry.wide else "\n\n"
    body = [f"{' '.join(entry.words)}."]
    body += [f"It is [](value:{address})." for address in entry.quotes]
    body += [f"See {name}." for name in entry.mentions]
    if entry.comment:
        body.append(f"<!-- {entry.comment} -->")
    text = gap.join(body)
    if entry.sum:
        text += f"\n\n{fence_of(entry, entry.sum)}"
    return "---\n" + "\n".join(keys) + f"\n---\n{text}\n"


def resting(entry: Entry) -> list[str]:
    """The fields that name what it rests on."""
    listed = ", ".join(entry.rests)
    if entry.letters == "PR":
        steps = [f"  - {{do: Open, message: {one}}}" for one in entry.rests]
        return ["\n".join(("steps:", "  - {do: Look}", *steps))]
    if entry.letters == "CN":
        basis = [f"basis: {entry.rests[0]}"] if entry.rests else []
        return [*basis, f"procedures: [{', '.join(entry.rests[1:])}]"]
    if entry.letters == "TR":
        return [f"procedure: {listed}"] if entry.rests else []
    return []


def fence_of(entry: Entry, one: Sum) -> str:
    """The fence of a calculation."""
    gap = "  " if entry.wide else " "
    rest = f" + {one.plus}" if one.plus else ""
    lines = [
        f"k ={gap}{litres(one.k)}  # {one.label} [{one.source}]",
        f"x = {one.times}{gap}*{gap}{one.part}.volume{rest} + k  # {one.label}",
        f"require x >={gap}{one.least} L  # {one.label} [{one.source}]",
    ]
    return "\n".join((f"```calc {block_of(entry.key)}", *lines, "```"))


def random_book(chance: random.Random) -> Book:
    """A handbook of two or three parts and of seven kinds of record that lean on each other."""
    parts = {
        f"SA-AR-00{number}": Part(Fraction(chance.randint(100, 900)), chance.choice((0, 0, 5)))
        for number in range(1, chance.randint(3, 4))
    }
    book = Book(parts, {"BOOK-1": "1", "BOOK-2": "1"}, {})
    for number in range(1, chance.randint(2, 4)):
        add_sum(chance, book, f"SA-CL-00{number}")
    for letters in ("HZ", "PR", "DD", "CN", "TR", "AL"):
        for number in range(1, chance.randint(2, 3)):
            add_entry(chance, book, f"SA-{letters}-00{number}")
    return book


def add_sum(chance: random.Random, book: Book, key: str) -> None:
    """A calculation on a part, and often on one before it; no sum ends just halfway to a figure."""
    before = [f"{block_of(one)}.x" for one in book.entries]
    plus = chance.choice(["", *before])
    source = chance.choice(["BOOK-1", "BOOK-2", chance.choice(list(book.parts))])
    one = Sum(chance.choice(list(book.parts)), chance.randint(1, 4), plus, Fraction(chance.randint(10, 900) * 10 + 3, 100), 0, source)  # fmt: skip
    book.entries[key] = Entry(key, some_words(chance), sum=one)
    one.least = int(book.value(f"{block_of(key)}.x")) - chance.choice((0, 3, 12, 60, -30))


def add_entry(chance: random.Random, book: Book, key: str) -> None:
    """A record that quotes some values, rests on some records and mentions some more."""
    values = [f"{tag}.volume" for tag in book.parts]
    values += [f"{block_of(one)}.x" for one in book.entries if one[3:5] == "CL"]
    other = {letters: [one for one in book.entries if one[3:5] == letters] for letters in STATE}
    rests = {
        "PR": some(chance, other["HZ"], 2),
        "CN": [chance.choice(other["DD"] or [""]), *some(chance, other["PR"], 1)],
        "TR": some(chance, other["PR"], 1),
    }.get(key[3:5], [])  # fmt: skip
    quotes = chance.sample(values, chance.randint(0, 2))
    mentions = chance.sample([*book.entries, *book.parts], chance.randint(0, 2))
    book.entries[key] = Entry(key, some_words(chance), quotes, rests, mentions)


def some(chance: random.Random, names: list[str], most: int) -> list[str]:
    """None, or up to so many of some names."""
    return chance.sample(names, min(len(names), chance.randint(0, most)))


def some_words(chance: random.Random) -> list[str]:
    """A few words."""
    return chance.choices(WORDS, k=4)


IN_RECORDS = (
    "words",
    "label",
    "comment",
    "layout",
    "later",
    "constant",
    "constant a little",
    "least",
)
BESIDE = ("part", "part a little", "part a little", "name of a part", "tolerance", "edition")


def edit(chance: random.Random, book: Book) -> str:
    """Change one thing in a handbook, and say what."""
    what = chance.choice(IN_RECORDS + BESIDE)
    if what in BESIDE:
        edit_beside(chance, book, what)
    else:
        edit_record(chance, book, what)
    return what


def edit_record(chance: random.Random, book: Book, what: str) -> None:
    """Change something in the file of a record."""
    entry = chance.choice(list(book.entries.values()))
    one = chance.choice([each.sum for each in book.entries.values() if each.sum])
    tag = chance.choice(list(book.parts))
    match what:
        case "words":
            entry.words[chance.randrange(4)] = chance.choice(WORDS)
        case "label":
            one.label = f"see {tag}.volume"
        case "comment":
            entry.comment = f"ask about {tag}.volume"
        case "layout":
            entry.wide = not entry.wide
        case "later":
            entry = book.entries["SA-TR-001"]
            entry.later = f'made_good: ["drained, [](value:{tag}.volume) again", {tag}.volume]'
        case "constant":
            one.k += chance.randint(5, 50)
        case "constant a little":
            one.k += Fraction(1, 100)
        case "least":
            one.least += 1


def edit_beside(chance: random.Random, book: Book, what: str) -> None:
    """Change a part or a source."""
    part = chance.choice(list(book.parts.values()))
    match what:
        case "part":
            part.volume *= Fraction(chance.choice((90, 110, 150)), 100)
        case "part a little":
            part.volume += Fraction(chance.choice((1, 2, 3, 4, 6, -2, -4)), 10)
        case "name of a part":
            part.name = chance.choice(("receiver", "air receiver", "bottle"))
        case "tolerance":
            part.plus_minus = chance.choice((0, 5, 20))
        case "edition":
            key = chance.choice(list(book.sources))
            book.sources[key] = f"{int(book.sources[key]) + 1}"


def half(value: Fraction, *, worked: bool) -> Fraction:
    """Half of the last figure that is shown: three for a worked value, all for a typed one."""
    if not worked:
        typed = litres(value).split()[0]
        return Fraction(1, 2 * 10 ** len(typed.partition(".")[2]))
    shown = Context(3, ROUND_HALF_EVEN).create_decimal(Decimal(value.numerator) / value.denominator)
    exponent = shown.as_tuple().exponent
    assert isinstance(exponent, int)
    return Fraction(10) ** exponent / 2


def shown_of(value: Fraction, *, worked: bool) -> Fraction:
    """As a signer sees it."""
    if not worked:
        return value
    return Fraction(Context(3, ROUND_HALF_EVEN).create_decimal(Decimal(value.numerator) / value.denominator))  # fmt: skip


def moved(was: Book, now: Book, address: str, band: str | None) -> bool:
    """Whether a value left the band around what was shown."""
    worked = address.endswith(".x")
    seen = shown_of(was.value(address), worked=worked)
    share = Fraction(band.removesuffix(" %")) / 100 if band else Fraction(0)
    allowed = max(share * seen, half(was.value(address), worked=worked))
    if abs(now.value(address) - seen) > allowed:
        return True
    return not worked and was.slack(address) != now.slack(address)


def must_lapse(was: Book, now: Book, key: str) -> bool:
    """Whether what a signature on a record covers is no longer as it was signed."""
    before, after = was.entries[key], now.entries[key]
    if before.says() != after.says():
        return True
    band = before.signed[-1].band
    if any(moved(was, now, address, band) for address in was.uses(before)):
        return True
    if any(was.entries[one].says() != now.entries[one].says() for one in before.rests if one):
        return True
    if before.sum:
        source = before.sum.source
        if was.verdict(before) != now.verdict(after):
            return True
        return was.sources.get(source) != now.sources.get(source) or was.parts.get(
            source
        ) != now.parts.get(source)
    return False


def must_rest(book: Book, lapsed: set[str]) -> dict[str, set[str]]:
    """For each record the lapsed ones that it leans on, near and far."""
    leans = {
        key: {one for one in entry.rests if one}
        | {f"SA-CL-{one[1:4]}" for one in book.uses(entry) if one[0] == "c"}
        for key, entry in book.entries.items()
    }
    found = {key: set(names) - {key} for key, names in leans.items()}
    while True:
        wider = {key: names.union(*(found[one] for one in names)) - {key} for key, names in found.items()}  # fmt: skip
        if wider == found:
            return {key: names & lapsed for key, names in found.items()}
        found = wider


def lines(capacity: Capacity, by: str, to: str, band: str | None) -> SignOff:
    """A signature before it says what it covers."""
    return SignOff(capacity=capacity, by=by, on=date(2031, 3, 12), to=to, band=band)
