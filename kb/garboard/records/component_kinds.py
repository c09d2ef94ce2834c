"""The kinds a component can be, by hand: letters, numbers it has, what it wants, how it can stand.

A kind that is not here is a fault of the text and never a silent pipe.
"""

from collections.abc import Mapping
from dataclasses import dataclass

__all__ = [
    "COMPONENT_KINDS",
    "EVERY_KIND",
    "SWITCHED",
    "SWITCHES",
    "ComponentKind",
    "kinds_of_letters",
    "noun_of",
    "position_word",
]

EVERY_KIND = (
    "rated",
    "test",
    "size",
    "height",
    "normal",
    "low",
    "high",
    "alarm_low",
    "alarm_high",
    "trip",
)
"""Numbers that every kind may have."""

OPEN_SHUT = ("open", "shut")
SWITCHES = ("switch", "breaker")
"""A valve for current: what is open to one electrician is off to the next, so it is on or off."""
SWITCHED = {"on": "open", "off": "shut"}
"""How they are kept: open is where it passes."""
RUN_STOP = ("running", "stopped")


@dataclass(frozen=True, slots=True)
class ComponentKind:
    """One kind of component."""

    name: str
    letters: tuple[str, ...]
    """Letters its tag may have."""
    knows: tuple[str, ...] = ()
    """Numbers it may have, beside those of every kind; `range` is its scale."""
    wants: tuple[str, ...] = ()
    """Properties that are asked for, beside name and place."""
    usual: tuple[str, ...] = ()
    """Words it may usually stand at; none: it cannot be moved."""
    positions: bool = False
    """It names positions of its own, and stands at one of them."""

    @property
    def numbers(self) -> tuple[str, ...]:
        """Every number it may have."""
        return (*EVERY_KIND, *self.knows)

    @property
    def asks(self) -> tuple[str, ...]:
        """Every property that is asked for."""
        return ("name", "place", *self.wants)


def _vessel(name: str, letters: str, *wants: str) -> ComponentKind:
    return ComponentKind(name, (letters,), ("volume",), wants)


def _run(name: str, letters: str, *wants: str) -> ComponentKind:
    return ComponentKind(name, (letters,), (), wants)


def _valve(name: str, *letters: str) -> ComponentKind:
    return ComponentKind(name, letters, (), ("usual",), OPEN_SHUT)


def _relief(name: str, letters: str) -> ComponentKind:
    return ComponentKind(name, (letters,), ("set", "passes"), ("set",))


def _machine(name: str, letters: str) -> ComponentKind:
    return ComponentKind(name, (letters,), ("makes", "delivers", "draws"), ("makes",), RUN_STOP)


def _source(name: str, letters: str, *knows: str) -> ComponentKind:
    return ComponentKind(name, (letters,), ("makes", *knows), ("makes",))


def _gauge(name: str, letters: str) -> ComponentKind:
    return ComponentKind(name, (letters,), ("range", "accuracy"), ("range",))


def _switch(name: str, letters: str) -> ComponentKind:
    knows = ("set", "cuts_in", "cuts_out", "range", "accuracy")
    return ComponentKind(name, (letters,), knows)


def _end(name: str, *letters: str) -> ComponentKind:
    return ComponentKind(name, letters)


KINDS = (
    # what holds pressure, and what is only a wider place in the pipe
    _vessel("receiver", "AR", "rated", "volume"),
    _vessel("tank", "TK", "volume"),
    _vessel("separator", "SE", "rated"),
    _vessel("filter", "FI", "rated"),
    _vessel("strainer", "ST"),
    _vessel("cooler", "HE", "rated"),
    _run("restrictor", "RS", "size"),
    _run("tee", "TE"),
    _run("hose", "HS", "rated", "fitted"),
    _run("bellows", "BE", "rated", "fitted"),
    _run("vented loop", "VL", "height"),
    # what opens and shuts
    _valve("stop valve", "HV"),
    _valve("drain valve", "HV"),
    _valve("vent valve", "HV"),
    _valve("cock", "HV"),
    _valve("test cock", "CK"),
    _valve("plug", "PG"),
    _valve("coupling", "QC"),
    _valve("quick-closing valve", "QV"),
    ComponentKind("solenoid valve", ("SV",), (), ("usual", "fails"), OPEN_SHUT),
    _valve("stop-check valve", "SN"),
    ComponentKind("three-way valve", ("TV",), (), ("positions", "usual"), positions=True),
    # what acts by itself
    _run("check valve", "NV"),
    ComponentKind("regulator", ("RG",), ("set", "passes"), ("set",)),
    _relief("relief valve", "RV"),
    _relief("bursting disc", "BD"),
    # what makes pressure
    _machine("compressor", "CP"),
    _machine("pump", "PU"),
    _source("pressure source", "SH", "volume"),
    # what looks on
    _gauge("gauge", "PI"),
    _switch("pressure switch", "PS"),
    _switch("level switch", "LS"),
    ComponentKind("transmitter", ("PT",), ("set", "range", "accuracy"), ("range",)),
    # where it ends
    ComponentKind("consumer", ("EN", "US"), ("draws", "volume"), (), RUN_STOP),
    _end("sea", "SC", "OD"),
    _end("compartment", "BW"),
    # direct current
    _source("battery", "BA", "capacity"),
    _source("alternator", "GE", "delivers"),
    _source("charger", "CH", "delivers", "draws"),
    _run("fuse", "FU", "rated"),
    ComponentKind("breaker", ("CB",), ("set",), ("rated", "usual"), OPEN_SHUT),
    _valve("switch", "SW"),
    ComponentKind("changeover", ("XO",), (), ("positions", "usual"), positions=True),
    _run("bus", "BB", "rated"),
    _run("cable", "CW", "rated", "size"),
    _run("diode", "DI", "rated"),
    ComponentKind("load", ("LD",), ("draws",), ("draws",), RUN_STOP),
    _gauge("measuring shunt", "MS"),
    _gauge("voltmeter", "EI"),
    _gauge("ammeter", "II"),
)

COMPONENT_KINDS: Mapping[str, ComponentKind] = {kind.name: kind for kind in KINDS}
"""By name."""


def position_word(kind: str, position: str) -> str:
    """A position as a person is told it: of a switch or breaker on or off.

    >>> position_word("breaker", "open"), position_word("stop valve", "open")
    ('on', 'open')
    """
    told = {kept: said for said, kept in SWITCHED.items()} if kind in SWITCHES else {}
    return told.get(position, position)


def kinds_of_letters(letters: str) -> tuple[str, ...]:
    """The kinds whose tags have these letters.

    >>> kinds_of_letters("EN"), kinds_of_letters("ZZ")
    (('consumer',), ())
    """
    return tuple(kind.name for kind in KINDS if letters in kind.letters)


NOUNS = {
    "delivers": "delivery",
    "draws": "draw",
    "makes": "output",
    "cuts_in": "cut-in",
    "cuts_out": "cut-out",
}
"""What a property is called of which the name is a verb."""


def noun_of(name: str) -> str:
    """The name of a property as a thing that a part has.

    >>> noun_of("delivers"), noun_of("alarm_low")
    ('delivery', 'alarm low')
    """
    return NOUNS.get(name, name.replace("_", " "))
