"""Which signatures still stand, and what moved under those that do not.

Something that a signature covers moved: it has lapsed. Something it rests on has itself lapsed: the
record rests on a lapsed one, and does again when that is signed anew with the same content. So one
edit asks for one review. The machine only ever says that less is reviewed than was written down.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date

from garboard.calc.network import Network
from garboard.reading.content import Content
from garboard.records.base import Record
from garboard.records.kinds import kind_of
from garboard.records.signoff import Capacity, SignOff, Verdict
from garboard.records.standing import describes, state_of
from garboard.records.states import LAPSED
from garboard.review.band import has_moved, read_band
from garboard.review.canonical import SHORT
from garboard.review.covers import Cover, Covers, Signed, name_of
from garboard.review.proof import Proof, proof_of

__all__ = ["JUDGING", "Moved", "Reviewed", "Weighed", "weigh"]

JUDGING = (Capacity.CHECKER, Capacity.APPROVER, Capacity.VERIFIER, Capacity.NAMED_PARTY)
"""The capacities whose word lapses when what they saw moves."""
OWN_WORDS = "its own words"
NO_DIGEST = "it bears no digest, so nothing says what was seen"
"""Of a signature that somebody typed."""


@dataclass(frozen=True, slots=True)
class Moved:
    """One thing that is no longer what was signed."""

    what: str
    """An address, a requirement, an id, or `its own words`."""
    before: str
    """As it was signed: a value, how a requirement stood, a digest; empty where it was not seen."""
    after: str
    """As it is; empty where it is gone."""

    def __str__(self) -> str:
        if self.what == OWN_WORDS and not self.before:
            return NO_DIGEST
        if self.what == OWN_WORDS or not self.is_value:
            return f"{self.what} changed"
        return f"{self.what} {self.before} -> {self.after or 'gone'}"

    @property
    def is_value(self) -> bool:
        """Whether it is a value or an answer, and not the words of a record."""
        return "." in self.what or ": " in self.what


@dataclass(frozen=True, slots=True)
class Weighed:
    """One signature, weighed against what stands now."""

    line: SignOff
    number: int
    """Which line under `signed` it is, from 0."""
    moved: tuple[Moved, ...] = ()
    counts: bool = True
    """The newest of its capacity."""
    proof: Proof = Proof.NOT_ASKED
    """Whether the key of its person made it."""

    @property
    def stands(self) -> bool:
        """Whether it counts, everything it covers is as it was, and nothing says it is forged."""
        return self.counts and not self.moved and self.proof.believed


@dataclass(frozen=True, slots=True)
class Reviewed:
    """How far one record or written page has been reviewed, as it stands now."""

    key: str
    state: str
    """As it now stands: as written, or `lapsed`."""
    cover: Cover
    signatures: tuple[Weighed, ...] = ()
    rests_on: tuple[str, ...] = ()
    """Records that it rests on, near or far, and that have lapsed themselves."""
    scope: frozenset[str] = field(default_factory=frozenset)
    """What standing checks covered."""
    not_checked: tuple[str, ...] = ()
    """What a standing check says it did not cover and no other one did."""

    @property
    def lapsed(self) -> tuple[Weighed, ...]:
        """The signatures that count and no longer fit."""
        return tuple(each for each in self.signatures if each.counts and each.moved)

    def standing(self, *capacities: Capacity) -> tuple[Weighed, ...]:
        """The signatures in these capacities that stand, and do not object."""
        return tuple(
            each
            for each in self.signatures
            if each.stands
            and each.line.capacity in capacities
            and each.line.verdict not in (Verdict.OBJECT, Verdict.FINDING)
        )


def weigh(content: Content, network: Network) -> Mapping[str, Reviewed]:
    """Weigh every signature of a handbook.

    Returns:
        By id of the record, or path of the written page.
    """
    covers = Covers(content, network)
    things: tuple[Signed, ...] = (*content.records.values(), *content.pages)
    found = {name_of(thing): _weigh_one(thing, covers) for thing in things}
    return _with_chain(found, _leaning(found, covers.owners, network))


def _weigh_one(thing: Signed, covers: Covers) -> Reviewed:
    cover = covers.of(thing)
    newest: dict[Capacity, tuple[date, int]] = {}
    for number, line in enumerate(thing.signed if _binds(thing) else ()):
        if line.capacity in JUDGING:
            newest[line.capacity] = max(
                newest.get(line.capacity, (date.min, -1)), (line.on, number)
            )
    last = {number for _, number in newest.values()}
    signatures = tuple(
        Weighed(
            line,
            number,
            _moved(line, cover, covers) if number in last else (),
            counts=number in last,
            proof=proof_of(name_of(thing), line, covers.content.signers),
        )
        for number, line in enumerate(thing.signed)
    )
    scope = frozenset(part for each in signatures if each.stands for part in each.line.scope)
    left_out = tuple(
        dict.fromkeys(
            part
            for each in signatures
            if each.stands
            for part in each.line.not_checked
            if part not in scope
        )
    )
    state = _state(thing, signatures)
    return Reviewed(name_of(thing), state, cover, signatures, (), scope, left_out)


def _binds(thing: Signed) -> bool:
    """Whether signatures on it still carry anything: on history nothing rests any more."""
    if not isinstance(thing, Record):
        return True
    kind = kind_of(thing)
    if kind is None:
        return False
    if kind.machine.lapses:
        return kind.machine.may_lapse(state_of(thing))
    return describes(
        thing
    )  # a hazard: its moves know no lapsed state, its message is read all the same


def _state(thing: Signed, signatures: tuple[Weighed, ...]) -> str:
    """The state as written, or `lapsed` where a signature that carries it no longer fits."""
    if not isinstance(thing, Record):
        return thing.state or ""
    kind, state = kind_of(thing), state_of(thing)
    lapsed = any(each.counts and each.moved for each in signatures)
    return LAPSED if kind and kind.machine.may_lapse(state) and lapsed else state


def _moved(line: SignOff, cover: Cover, covers: Covers) -> tuple[Moved, ...]:
    """What is no longer as one signature saw it."""
    if not line.digest:
        return (Moved(OWN_WORDS, "", cover.own),)
    found: list[Moved] = []
    if len(line.digest) < SHORT or not cover.whole.startswith(line.digest):
        found.append(Moved(OWN_WORDS, line.digest, cover.own))
    band = read_band(line.band)
    now = cover.saw
    laid_out = {"".join(name.split()): name for name in now}
    saw = {
        laid_out.get("".join(name.split()), name): text for name, text in (line.saw or {}).items()
    }
    for name in (*saw, *(each for each in now if each not in saw)):
        before, after = saw.get(name, ""), now.get(name, "")
        if name in cover.values and name in saw:
            if has_moved(before, covers.value(name), band):
                found.append(Moved(name, before, after))
        elif before != after:
            found.append(Moved(name, before, after))
    return tuple(found)


def _leaning(
    found: Mapping[str, Reviewed], owners: Mapping[str, str], network: Network
) -> dict[str, set[str]]:
    """For each record those it rests on: named ones, and those whose values it uses."""
    leaning: dict[str, set[str]] = {}
    for key, each in found.items():
        names = set(each.cover.records)
        for address in each.cover.values:
            names.update(_owners(address, owners, network))
        leaning[key] = (names & found.keys()) - {key}
    return leaning


def _owners(address: str, owners: Mapping[str, str], network: Network) -> Iterator[str]:
    """The record that sets a value; of a property drawn from elsewhere, the one that sets that."""
    waiting, seen = [address], {address}
    while waiting:
        one = waiting.pop()
        owner = owners.get(one.partition(".")[0])
        value = network.values.get(one)
        if owner:
            yield owner
        elif value:
            fresh = [name for name in value.uses if name not in seen]
            seen.update(fresh)
            waiting += fresh


def _with_chain(found: dict[str, Reviewed], leaning: Mapping[str, set[str]]) -> dict[str, Reviewed]:
    """Each record with the lapsed ones it rests on, near and far."""
    leaned: dict[str, list[str]] = {}
    for key, names in leaning.items():
        for name in names:
            leaned.setdefault(name, []).append(key)
    rests: dict[str, set[str]] = {key: set() for key in found}
    for lapsed in (key for key, each in found.items() if each.lapsed):
        waiting, seen = [lapsed], {lapsed}
        while waiting:
            for user in leaned.get(waiting.pop(), ()):
                if user not in seen:
                    seen.add(user)
                    rests[user].add(lapsed)
                    waiting.append(user)
    return {
        key: Reviewed(
            each.key,
            each.state,
            each.cover,
            each.signatures,
            tuple(sorted(rests[key])),
            each.scope,
            each.not_checked,
        )
        for key, each in found.items()
    }
