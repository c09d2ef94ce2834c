"""The book: everything that was read and worked out; what rules and views look at."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from typing import TypeVar

from garboard.calc.method import Method
from garboard.calc.network import Network, evaluate
from garboard.calc.sheet import Fence as CalcFence
from garboard.calc.show import show_in
from garboard.calc.store import Store
from garboard.calc.value import Citation, Given, Value
from garboard.errors import Diagnostic
from garboard.names import is_identifier, system_of
from garboard.reading.content import Content
from garboard.reading.fences import Fence
from garboard.reading.mentions import Mentioned, mentions_in
from garboard.records.base import Record
from garboard.records.change import Change
from garboard.records.component import Component
from garboard.records.component_kinds import noun_of
from garboard.records.demand import Demand, demands_of
from garboard.records.edition import Edition
from garboard.records.finding import Finding
from garboard.records.inspection import Test
from garboard.records.logged import log_values
from garboard.records.measured import Measurement, Plant, measurements_of, value_source
from garboard.records.procedure import Procedure
from garboard.records.reply import Waiting
from garboard.records.standing import is_live, state_of
from garboard.records.successors import successors
from garboard.records.system import ServiceStatus, System
from garboard.review.covers import Signed
from garboard.review.replies import waiting_replies
from garboard.review.service_status import held_statuses
from garboard.review.setback import Setback, set_back
from garboard.review.signoffs import Reviewed, weigh
from garboard.schematic.sheet import Sheet
from garboard.schematic.sheets import Sheets
from garboard.systems.laying import lay_out_plant
from garboard.systems.survey import Survey, survey
from garboard.systems.walked import Walked, walk_all

__all__ = ["Book", "Calculations", "Mentioned", "calculations_of", "make_book", "with_signed"]

R = TypeVar("R", bound=Record)
NOT_LOOKED = "extent.not_looked"


@dataclass(frozen=True, slots=True)
class Calculations:
    """All that is worked out, before it is."""

    fences: tuple[CalcFence, ...]
    givens: Mapping[str, Given]
    """Numbers that somebody wrote outside the fences, by address."""
    aliases: Mapping[str, str]
    """Properties that are drawn from elsewhere: their address to the one it is drawn from."""


@dataclass(frozen=True, slots=True)
class Book:
    """Everything read and computed; it never changes."""

    content: Content
    network: Network
    mentions: tuple[Mentioned, ...]
    today: date
    """The date that time rules are judged by."""
    measured: Mapping[str, tuple[Measurement, ...]] = field(default_factory=dict)
    """What was read of each quantity that has a design value, by its address, oldest first."""
    demands: Mapping[str, tuple[Demand, ...]] = field(default_factory=dict)
    """What calculations demand of single quantities, by address."""
    reviews: Mapping[str, Reviewed] = field(default_factory=dict)
    """How far each record and written page is reviewed, by id or path."""
    setbacks: Mapping[str, Setback] = field(default_factory=dict)
    """Records that count as less far than they are written, by id."""
    waiting: Mapping[str, tuple[Waiting, ...]] = field(default_factory=dict)
    """Replies of reviewers that nobody has confirmed yet, by what they are about."""
    heirs: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """What took the place of each replaced record or tag, one after the other, a live one last."""
    held: Mapping[str, ServiceStatus] = field(default_factory=dict)
    """By code: the status that binds a system because nobody signed that it was set back."""

    surveys: Mapping[str, Survey] = field(default_factory=dict)
    """Each system as a graph, and what the checks of its layout found, by code."""
    walks: Mapping[str, Walked] = field(default_factory=dict)
    """Each procedure walked on the layout of its system, by id."""
    sheets: Mapping[str, tuple[Sheet, ...]] = field(default_factory=dict)
    """Each system as drawn, by code; laid out when first asked for."""

    @property
    def edition(self) -> Edition | None:
        """The edition that was issued last; None where there is none."""
        return self.content.editions.last

    @property
    def records(self) -> Mapping[str, Record]:
        """Filed records by id."""
        return self.content.records

    @property
    def components(self) -> Mapping[str, Component]:
        """Components by full tag."""
        return self.content.components

    @property
    def systems(self) -> Mapping[str, System]:
        """Systems by code."""
        return self.content.systems

    @property
    def values(self) -> Mapping[str, Value]:
        """Values by address."""
        return self.network.values

    def of_kind(self, kind: type[R]) -> Iterator[R]:
        """Filed records of one kind, in order of id."""
        return (record for record in self.records.values() if isinstance(record, kind))

    def raised(self, code: str) -> Iterator[Diagnostic]:
        """What reading and working out reported under one code."""
        both = (*self.content.diagnostics, *self.network.diagnostics)
        return (item for item in both if item.code == code)

    def state(self, record: Record) -> str:
        """The state that a record counts as today: as written, or where the machine moves it back.

        What is open, what may be leaned on and what a page shows go by this. What a record had to say
        when it got where it is written to stand goes by `standing.state_of`.
        """
        setback = self.setbacks.get(str(record.id))
        return setback.state if setback else state_of(record)

    def is_live(self, record: Record) -> bool:
        """Whether a record speaks of how things are now, by the state that it counts as."""
        return is_live(record, self.state(record))

    def status_of(self, about: str) -> ServiceStatus:
        """The service status of the system that something belongs to.

        Args:
            about: A record id, a tag, an address, a system code, a block name or a page's path.
                What belongs to no system counts as in service, so that every rule binds it.

        Returns:
            As written; where it was set back since the last edition and nobody in charge signed
            that, as issued.
        """
        owner = about.split(".", maxsplit=1)[0]
        sheet = self.network.sheets.get(owner)
        if sheet is not None:
            owner = sheet.owner
        paths = (about, owner)  # of a written page, or of one that holds the block
        written = next((one.system for one in self.content.pages if one.where.path in paths), "")
        code = system_of(owner) if is_identifier(owner) else written or owner
        system = self.systems.get(code)
        return self.held.get(code) or (system.status if system else ServiceStatus.IN_SERVICE)

    def fences_of(self, owner: str) -> Iterator[Fence]:
        """The calc fences of a record or page, in the order of its text."""
        return (fence for fence in self.content.fences if fence.owner == owner)

    def show(self, address: str, unit: str = "") -> str | None:
        """A value as shown, in another unit where one is named.

        Args:
            address: `receiver-sizing.n`.
            unit: A unit of the same kind, `psi(g)`; empty for its own.

        Returns:
            The text, `not computed` for a broken value, None where there is no such value or unit.
        """
        value = self.values.get(address)
        if value is None:
            return None
        return show_in(value, unit) if unit else value.text

    def source_of(self, address: str) -> str:
        """Where a property of a part that is drawn from elsewhere has its value."""
        return value_source(self.components, address)

    def declared(self, name: str) -> bool:
        """Whether an id, tag, source or address means something here."""
        return (
            name in self.records
            or name in self.components
            or name in self.content.sources
            or name in self.values
        )

    def mentions_of(self, name: str) -> Iterator[Mentioned]:
        """Where something is named."""
        return (item for item in self.mentions if item.to == name)


def make_book(
    content: Content,
    methods: Mapping[str, Method],
    store: Store | None = None,
    on: date | None = None,
) -> Book:
    """Work out everything that was read.

    Args:
        content: What was read.
        methods: The methods that a calculation may call.
        store: What was worked out before; what still holds is taken from it.
        on: The day that time rules are judged by, whatever the vessel says.
    """
    asked = calculations_of(content)
    network = evaluate(asked.fences, asked.givens, methods, asked.aliases, store)
    network = _with_aliases(network, asked.aliases, content.components)
    today = on or content.vessel.as_of or date.today()  # noqa: DTZ011 - a vessel keeps its own day
    book = Book(content, network, tuple(mentions_in(content)), today)
    held = held_statuses(content.systems, content.editions.last, content.people)
    book = _with_reviews(replace(book, held=held))
    demands: dict[str, list[Demand]] = defaultdict(list)
    for one in demands_of(network.requirements, network.values):
        demands[book.source_of(one.address)].append(one)
    book = replace(book, demands={address: tuple(them) for address, them in demands.items()})
    surveys = _surveys(content, network)
    plants = {code: surveyed.plant for code, surveyed in surveys.items()}
    walks = walk_all(book.of_kind(Procedure), plants, network.values)
    return replace(
        book, measured=_measured(book), surveys=surveys, walks=walks, sheets=Sheets(plants)
    )


def with_signed(book: Book, thing: Signed) -> Book:
    """A book as it would stand with one record or written page signed otherwise.

    Args:
        book: The book.
        thing: One of its records or pages; nothing but its state and signatures differs.
    """
    content = book.content
    if isinstance(thing, Record):
        content = replace(content, records={**content.records, str(thing.id): thing})
    else:
        pages = (thing if one.where == thing.where else one for one in content.pages)
        content = replace(content, pages=tuple(pages))
    return _with_reviews(replace(book, content=content))


def _with_reviews(book: Book) -> Book:
    """The book with its signatures weighed, and with what that moves back."""
    reviews = weigh(book.content, book.network)
    setbacks = set_back(book.records, reviews, book.today)
    return replace(
        book,
        reviews=reviews,
        setbacks=setbacks,
        heirs=successors(book.records, book.content.retired),
        waiting=waiting_replies(book.content),
    )


def _surveys(content: Content, network: Network) -> Mapping[str, Survey]:
    return {
        code: survey(lay_out_plant(system, content.components, network.values))
        for code, system in content.systems.items()
    }


def _measured(book: Book) -> Mapping[str, tuple[Measurement, ...]]:
    named: dict[str, set[str]] = defaultdict(set)
    for item in book.mentions:
        if not item.field.startswith(NOT_LOOKED):  # of what nobody looked at nothing was found
            named[item.by].add(item.to)
    plant = Plant(
        book.values,
        book.components,
        book.content.vessel.instruments or {},
        book.demands,
        tuple(book.of_kind(Change)),
        tuple(book.of_kind(Finding)),
        lambda by: frozenset(named[by]),
    )
    return measurements_of(book.of_kind(Test), plant)


def calculations_of(content: Content) -> Calculations:
    """Everything of a content folder that is worked out."""
    return Calculations(
        tuple(_as_calc(fence) for fence in content.fences),
        dict(_givens(content)),
        dict(_aliases(content)),
    )


def _as_calc(fence: Fence) -> CalcFence:
    first = fence.lines[0].where if fence.lines else fence.where
    texts = tuple(line.text for line in fence.lines)
    return CalcFence(fence.name, fence.options_text, texts, first, fence.owner)


def _givens(content: Content) -> Iterator[tuple[str, Given]]:
    for name, given in content.vessel.conditions.items():
        yield f"site.{name}", replace(given, address=f"site.{name}")
    for tag, part in content.components.items():
        plate = (Citation(part.plate, "plate"),) if part.plate else ()
        for name, given in part.givens():
            sources = given.sources or plate
            label = given.label or f"{noun_of(name)} of {part.name or tag}"
            address = f"{tag}.{name}"
            yield address, replace(given, address=address, sources=sources, label=label)
    for test, log in content.logged.items():
        yield from log_values(log, test)


def _aliases(content: Content) -> Iterator[tuple[str, str]]:
    for tag, part in content.components.items():
        for name, address in part.aliases():
            yield f"{tag}.{name}", address


def _with_aliases(
    network: Network, aliases: Mapping[str, str], components: Mapping[str, Component]
) -> Network:
    """The network with a value for each property that is drawn from elsewhere."""
    values = dict(network.values)
    feeds = dict(network.feeds)
    for address, source in aliases.items():
        value = network.values.get(_last(aliases, source))
        if value is None:
            continue
        tag, _, name = address.partition(".")
        part = components[tag]
        values[address] = replace(
            value,
            address=address,
            where=part.at_place(name),
            label=f"{noun_of(name)} of {part.name or tag}",
            uses=(source,),
            given=False,
        )
        feeds[source] = (*feeds.get(source, ()), address)
    return replace(network, values=values, feeds=feeds)


def _last(aliases: Mapping[str, str], address: str) -> str:
    """The address at the end of a chain of aliases; a ring of them ends where it began."""
    seen = {address}
    while address in aliases and aliases[address] not in seen:
        address = aliases[address]
        seen.add(address)
    return address
